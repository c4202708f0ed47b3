"""Where things are: the outline, the hole places on it, and the way of the string."""
