"""What differs between two states of the book, in sentences and drawings for the person who reviews it."""
