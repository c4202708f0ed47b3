"""What is seen: drawings of a frame and its parts as SVG text."""
