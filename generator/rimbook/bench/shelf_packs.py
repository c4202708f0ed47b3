"""Which packs to order so that enough comes: the least left over, or the least to pay.

The unbounded covering knapsack, worked out piece by piece (for instance S. Martello and P. Toth, Knapsack
Problems).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

MOST_PIECES = 20_000
"""For more, the largest packs come first, so that the rest is at most so much."""


def packs_for(
    pieces: int, sizes: Sequence[int], prices: Mapping[int, float] | None = None
) -> tuple[tuple[int, int], ...]:
    """The packs, the largest first, each with its number, that bring at least so many pieces.

    With prices: of those the cheapest, then the least left over; a size without a price is not bought.
    Without: the least left over, then the fewest packs. Raises ValueError where nothing is sold.
    """
    sold = sorted(size for size in set(sizes) if size > 0 and (prices is None or size in prices))
    if not sold:
        raise ValueError("There is no pack to order.")
    if pieces <= 0:
        return ()
    bulk = max(0, pieces - MOST_PIECES) // sold[-1]
    rest = pieces - bulk * sold[-1]
    found: Counter[int] = Counter({sold[-1]: bulk} if bulk else {})
    best: list[tuple[float, int, int, int]] = [(0.0, 0, 0, 0)]  # to pay, brought, packs, the last pack
    for wanted in range(1, rest + 1):
        ways = []
        for size in sold:
            paid, brought, count, _ = best[max(0, wanted - size)]
            paid += prices[size] if prices is not None else 0.0
            ways.append((round(paid, 6), brought + size, count + 1, size))
        best.append(min(ways))
    while rest > 0:
        size = best[rest][3]
        found[size] += 1
        rest -= size
    return tuple(sorted(found.items(), reverse=True))
