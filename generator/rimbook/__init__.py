"""Rimbook: an open book of frame grommet maps for racket sports."""

__version__ = "0.1.0"
