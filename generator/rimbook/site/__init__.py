"""What is published: the book as pages and data files, without knowing who carries them."""
