"""What follows from the book for a bench: pure functions, no input or output."""
