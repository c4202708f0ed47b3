"""How rules put numbers, holes and lists into words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rimbook.book.model import Address, PartKind

KINDS: dict[PartKind, str] = {
    "single": "a single part",
    "wide": "a wide part",
    "twin-even": "an even twin",
    "twin-uneven": "an uneven twin",
    "strip": "a strip",
    "set": "a set",
}


def mm(value: float) -> str:
    """A length as people write it: `2.7 mm`."""
    return f"{round(value, 3):g} mm"


def counted(number: int, noun: str) -> str:
    """`1 hole`, `3 holes`, `2 passes`."""
    plural = f"{noun}es" if noun.endswith("s") else f"{noun}s"
    return f"{number} {noun if number == 1 else plural}"


def listed(items: Iterable[object], most: int = 6) -> str:
    """`a, b and c`; a long list ends with how many more there are."""
    words = [str(item) for item in items]
    if len(words) > most:
        words = [*words[: most - 1], f"{len(words) - most + 1} more"]
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def runs(holes: Sequence[Address]) -> str:
    """Holes in short: `R4, R9-R13, L9-L13`. A hole on both sides loses its side: `9-13`."""
    by_side = {side: sorted(at.number for at in holes if at.side == side) for side in ("R", "L")}
    if by_side["R"] == by_side["L"]:
        return ", ".join(_runs("", by_side["R"]))
    return ", ".join(_runs("R", by_side["R"]) + _runs("L", by_side["L"]))


def _runs(side: str, numbers: Sequence[int]) -> list[str]:
    found: list[list[int]] = []
    for number in numbers:
        if found and number == found[-1][-1] + 1:
            found[-1].append(number)
        else:
            found.append([number])
    return [f"{side}{run[0]}" if len(run) == 1 else f"{side}{run[0]}-{side}{run[-1]}" for run in found]
