"""The numbers of a shelf's working-out, as the browser takes them over (`browser/shelf_terms.js`)."""

from __future__ import annotations

from typing import Any

from rimbook.bench import shelf_files, shelf_packs, shelf_poisson, shelf_pool, shelf_stock
from rimbook.bench.shelf_compare import SERVICES
from rimbook.bench.shelf_levels import SURE
from rimbook.bench.shelf_terms import WEEKS
from rimbook.bench.shelf_update import PRIOR_YEARS
from rimbook.book.rules.club_shelf_time import MOST_RESTRINGS

FORMAT = 1
"""The edition of the shape; the script reads no other."""


def shelf_rules() -> dict[str, Any]:
    """Every number that both sides must share, in plain values; the names are those of the script."""
    return {
        "format": FORMAT,
        "weeksOfYear": WEEKS,
        "priorYears": PRIOR_YEARS,
        "services": list(SERVICES),
        "poisson": {"largestMean": shelf_poisson.LARGEST_MEAN, "idle": shelf_poisson.IDLE, "sure": SURE},
        "pool": {"mostSteps": shelf_pool.MOST_STEPS, "deepest": shelf_pool.DEEPEST},
        "packs": {"mostPieces": shelf_packs.MOST_PIECES},
        "spares": {"most": shelf_stock.MOST_SPARES, "largestMean": shelf_stock.LARGEST_MEAN},
        "used": {"mostCount": shelf_files.MOST_COUNT, "mostWeeks": shelf_files.MOST_WEEKS},
        "most": {"restrings": MOST_RESTRINGS},
    }
