"""How the numbers are worked out: a page a topic, with figures that the code works out while it builds."""
