"""Run as `python -m rimbook`."""

from __future__ import annotations

import sys

from rimbook.cli import main

sys.exit(main())
