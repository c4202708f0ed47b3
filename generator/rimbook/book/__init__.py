"""What is written down: frame maps, the catalogue of parts, and the rules they keep."""
