"""Purchases to be solved: what a shop meets, coverings, traps. All invented, the same for the same seed."""

from __future__ import annotations

from random import Random
from typing import Any

from tests.affine import affine_lines, affine_points

Problem = dict[str, Any]
PACKS = (1, 5, 10, 25, 50, 100)


def need(name: str, count: int, *parts: str) -> dict[str, Any]:
    return {"id": name, "count": count, "parts": list(parts)}


def offer(name: str, price: int, **holds: int) -> dict[str, Any]:
    return {"id": name, "price": price, "holds": holds}


def any_case(random: Random) -> Problem:
    """A few needs with substitutes, packs, sets and a shelf; now and then one that cannot be met."""
    parts = [f"p{i}" for i in range(random.randint(1, 7))]
    dear = random.choice((5, 40, 900))
    needs = [
        need(f"n{i}", random.randint(0, 30), *random.sample(parts, random.randint(1, min(3, len(parts)))))
        for i in range(random.randint(1, 6))
    ]
    offers = []
    for i in range(random.randint(1, 12)):
        held = random.sample(parts, 1 if random.random() < 0.6 else random.randint(1, len(parts)))
        holds = {part: random.choice((1, 1, 2, 3, 5, 10, 25)) for part in held}
        offers.append(offer(f"o{i}", random.randint(0, dear) * sum(holds.values()) // len(holds), **holds))
    shelf = {part: random.randint(0, 12) for part in parts if random.random() < 0.4}
    return {"needs": needs, "offers": offers, "shelf": shelf}


def shop_case(random: Random, holes: int = 100, groups: int = 6, offers: int = 60) -> Problem:
    """A frame with many holes, parts in packs of several sellers, substitutes, and a few sets."""
    parts = [f"p{i}" for i in range(2 * groups)]
    worth = {part: random.randint(30, 120) for part in parts}
    counts = [0] * groups
    for _ in range(holes):
        counts[min(random.randrange(groups), random.randrange(groups))] += 1
    needs = []
    for i, count in enumerate(counts):
        others = [part for part in random.sample(parts, random.randint(0, 3)) if part != parts[i]]
        needs.append(need(f"n{i}", count, parts[i], *others))
    sold = [offer(f"{part}x1", worth[part], **{part: 1}) for part in parts]
    while len(sold) < offers - 6:
        part, count = random.choice(parts), random.choice(PACKS[1:])
        price = round(worth[part] * count * random.uniform(0.55, 0.95))
        sold.append(offer(f"{part}x{count}-{len(sold)}", price, **{part: count}))
    while len(sold) < offers:
        holds = {
            part: random.randint(1, 40)
            for part in random.sample(parts, random.randint(3, min(7, len(parts))))
        }
        price = round(sum(worth[part] * count for part, count in holds.items()) * random.uniform(0.4, 0.9))
        sold.append(offer(f"set-{len(sold)}", price, **holds))
    shelf = {part: random.randint(0, 7) for part in parts if random.random() < 0.3}
    return {"needs": needs, "offers": sold, "shelf": shelf}


def cover_case(
    random: Random, places: int = 76, offers: int = 60, density: float = 0.5, most: int = 1
) -> Problem:
    """Every place asks a part of its own, and every offer holds many of them: dense multi-cover."""
    parts = [f"p{i}" for i in range(places)]
    held: list[dict[str, int]] = [
        {part: random.randint(1, most) for part in parts if random.random() < density} for _ in range(offers)
    ]
    for part in parts:
        if not any(part in holds for holds in held):
            random.choice(held)[part] = 1
    return {
        "needs": [need(f"n-{part}", random.randint(1, most), part) for part in parts],
        "offers": [offer(f"o{i}", random.randint(100, 999), **holds) for i, holds in enumerate(held)],
        "shelf": {},
    }


def affine_case(dimension: int) -> Problem:
    """Every line of the affine space AG(n, 3) must hold one of the points that are bought, each for 1.

    Points are the vectors over the integers modulo 3, lines the triples of them that add up to zero.
    """
    names = {frozenset(line): f"line-{i}" for i, line in enumerate(affine_lines(dimension))}
    return {
        "needs": [need(name, 1, name) for name in names.values()],
        "offers": [
            offer(f"point-{i}", 1, **{name: 1 for line, name in names.items() if point in line})
            for i, point in enumerate(affine_points(dimension))
        ],
        "shelf": {},
    }


def greedy_trap(size: int, scale: int) -> Problem:
    """Single pieces for `scale`/i each, and one set of all for a little more than `scale`."""
    parts = [f"p{i}" for i in range(1, size + 1)]
    singles = [offer(f"single-{i}", scale // i, **{part: 1}) for i, part in enumerate(parts, start=1)]
    whole = offer("set", scale + 1, **dict.fromkeys(parts, 1))
    return {"needs": [need(f"n-{part}", 1, part) for part in parts], "offers": [*singles, whole], "shelf": {}}


def greedy_price(problem: Problem) -> int:
    """What the obvious way pays: always the offer with the lowest price for each need that it newly meets."""
    lacking = {each["parts"][0] for each in problem["needs"]}
    price = 0
    while lacking:
        best = min(
            (each for each in problem["offers"] if lacking & each["holds"].keys()),
            key=lambda each: each["price"] / len(lacking & each["holds"].keys()),
        )
        lacking -= best["holds"].keys()
        price += best["price"]
    return price
