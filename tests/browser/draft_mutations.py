"""Changes by chance to a draft, of the kinds that people make and some that nobody would."""

from __future__ import annotations

from collections.abc import Callable, Collection
from copy import deepcopy
from random import Random
from typing import Any

Draft = dict[str, Any]
Change = Callable[[Draft, Random, list[str]], None]

MISSHAPEN = 0.15
"""How often a draft gets a key that no map may have, or a value of another kind."""

BORES = ("2.1", "2.7", "2.70", "3", "0.9", "unknown", "wide")


def mutated(draft: Draft, draw: Random, parts: Collection[str]) -> Draft:
    """A copy with one to three changes; `parts` are ids that may be named."""
    copy = deepcopy(draft)
    for change in draw.sample(CHANGES, draw.choice([1, 1, 2, 3])):
        change(copy, draw, list(parts))
    if draw.random() < MISSHAPEN:
        _misshape(copy, draw)
    return copy


def places_of(draft: Draft) -> int:
    """How many places the walk has."""
    return len(str(draft["walk"]).split())


def _walk(draft: Draft, draw: Random, _: list[str]) -> None:
    draft["walk"] = " ".join(_words(str(draft["walk"]).split(), draw))


def _words(words: list[str], draw: Random) -> list[str]:
    for _ in range(draw.choice([1, 1, 2, 4])):
        at = draw.randrange(len(words))
        kind = draw.randrange(7)
        if kind == 0 and at + 1 < len(words):
            words[at], words[at + 1] = words[at + 1], words[at]
        elif kind == 1 and len(words) > 2:
            del words[at]
        elif kind == 2:
            words.insert(at, draw.choice(words))
        elif kind == 3:
            words[at] = draw.choice([".", "x"])
        elif kind == 4:
            words[at] = f"{draw.choice('mc')}{draw.randint(1, 23)}"
        elif kind == 5 and at + 1 < len(words):
            words[at : at + 2] = [f"{words[at]}+{words[at + 1]}"]
        elif kind == 6:
            words[at] = draw.choice(["m3c1", "M2", "m1+m2+c3", "c4+c4", "m03", words[at] * 2])
    return words


def _left(draft: Draft, draw: Random, _: list[str]) -> None:
    words = str(draft["walk"]).split()
    draft["left"] = {"walk": " ".join(words if draw.random() < 0.4 else _words(words, draw))}


def _places(draft: Draft, draw: Random, _: list[str]) -> None:
    count = places_of(draft) + draw.choice([0] * 8 + [1])
    places: list[Any] = [round(3 + 335 * index / count + draw.uniform(-6, 6), 1) for index in range(count)]
    for index in range(count):
        if draw.random() < 0.5:
            places[index] = "unknown"
    draft["places_mm"] = places


def _selector(draft: Draft, draw: Random) -> Any:
    last = places_of(draft) + draw.choice([0] * 9 + [2])
    first, second = sorted(draw.choices(range(1, last + 1), k=2))
    side = draw.choice(["", "R", "L"])
    return draw.choice(
        [
            first,
            f"{side}{first}",
            f"{side}{first}-{side}{min(second, first + 3)}",
            f"{side}{second}-{side}{first}",
        ]
    )


def _lengths(name: str) -> Change:
    def change(draft: Draft, draw: Random, _: list[str]) -> None:
        usual = draw.choice([2.1, 2.7, 9.4, "unknown"])
        keys = draw.sample(BORES, draw.randint(1, 3))
        lines = {key: [_selector(draft, draw) for _ in range(draw.randint(0, 3))] for key in keys}
        draft[name] = {"default": usual, **lines} if draw.random() < 0.95 else lines

    return change


def _fitted(draft: Draft, draw: Random, parts: list[str]) -> None:
    fitted = dict(draft.get("fitted", {}))
    for _ in range(draw.randint(1, 3)):
        last = places_of(draft)
        run = f"R{draw.randint(1, last)}-L{draw.randint(1, last)}"
        bore = f"bore {draw.choice(BORES)}"
        key = draw.choice([str(_selector(draft, draw)), str(_selector(draft, draw)), run, bore, "default"])
        part = draw.choice(parts)
        part = draw.choice([part, part, "unknown", part[:-1] + "x", part[1:]])
        fitted = {key: part, **fitted} if draw.random() < 0.3 else {**fitted, key: part}
    draft["fitted"] = fitted


def _strips(draft: Draft, draw: Random, parts: list[str]) -> None:
    strips = list(draft.get("strips", []))
    for index in range(draw.randint(1, 2)):
        ends: list[Any] = [_selector(draft, draw), _selector(draft, draw)]
        last = places_of(draft)
        sided = [f"{draw.choice('RL')}{draw.randint(1, last)}" for _ in range(2)]
        numbers = sorted(draw.choices(range(1, last + 1), k=2))
        holes = draw.choice([ends, sided, sided, numbers])
        strips.append({"name": f"strip {index}", "holes": holes, "part": draw.choice([*parts, "unknown"])})
    draft["strips"] = strips


def _tie_offs(draft: Draft, draw: Random, _: list[str]) -> None:
    holes = [f"{draw.choice('RL')}{draw.randint(1, places_of(draft) + 1)}" for _ in range(draw.randint(1, 5))]
    draft["stringing"] = {"pieces": draw.choice([1, 2]), "tie_offs": holes}


def _head(draft: Draft, draw: Random, _: list[str]) -> None:
    width, height = draw.randint(170, 300), draw.randint(200, 400)
    draft["head"] = draw.choice(
        [
            {"outline": "ellipse", "inside_mm": [width, height]},
            {"outline": "superellipse", "inside_mm": [width, height], "exponent": 2.4},
            {"outline": "teardrop", "inside_mm": [width, height], "taper": draw.choice([0.3, 0.95])},
            {"outline": "teardrop", "inside_mm": [width, height]},
            {
                "outline": "points",
                "points_mm": [[0, 120], [60, 100], [93, 20], [40, -110], [-40, -112], [-90, 18], [-62, 99]],
            },
        ]
    )


def _counts(draft: Draft, draw: Random, _: list[str]) -> None:
    draft["mains"] = max(2, draft["mains"] + draw.choice([-2, -1, 0, 1, 2]))
    draft["crosses"] = max(1, draft["crosses"] + draw.choice([-1, 0, 1, 7]))


def _numbers(draft: Draft, draw: Random, _: list[str]) -> None:
    draft["overall_mm"] = draw.choice([[674, 206], [240.0625, 180], [700.12345, 240], [210, 674]])
    draft["tension_limit"] = draw.choice(["28 lb", "30 kg", "12.5 kg", "300 N", "999 lb"])
    draft["spacing_mm"] = {"mains": draw.uniform(5, 12), "crosses": draw.uniform(5, 14)}


def _people(draft: Draft, draw: Random, _: list[str]) -> None:
    names = ["a-handle", "b-handle", "c-handle"]
    days = ["2026-11-02", "2026-11-03", "2024-02-29"]
    people = [{"by": draw.choice(names), "on": draw.choice(days)} for _ in range(3)]
    draft["measured"], draft["confirmed"] = {**people[0], "resolution_mm": 0.5}, people[1:]
    draft["year"] = draw.choice([2026, 2027, 2028])


def _misshape(draft: Draft, draw: Random) -> None:
    key = draw.choice(list(draft))
    kind = draw.randrange(4)
    if kind == 0:
        del draft[key]
    elif kind == 1:
        draft[f"{key}s"] = 1
    else:
        draft[key] = draw.choice(["", "some words", 3, -1.5, True, None, {}, ["a", 1], {"a": 1}, "x" * 90])


CHANGES: list[Change] = [
    _walk,
    _left,
    _places,
    _lengths("bore_mm"),
    _lengths("rim_depth_mm"),
    _fitted,
    _strips,
    _tie_offs,
    _head,
    _counts,
    _numbers,
    _people,
]
