"""Each main passes twice on a half of the rim, and each cross once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rimbook.book.load import MapFile
from rimbook.book.model import Address, Frame, Pass, Side
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import Tally, halves, tally, walk_of
from rimbook.book.rules.words import counted, listed

MOST_TOLD = 5

_SIDE = {"R": "the right half", "L": "the left half"}
_TIMES = {0: "nowhere", 1: "only once", 2: "twice"}


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    if frame.mains % 2:
        return
    for side in halves(frame):
        tallies = tally(frame, side)
        wrong = [line for line in tallies.values() if len(line.seen) != line.wanted]
        for line in wrong[:MOST_TOLD]:
            yield _finding(frame, line, tallies)
        if len(wrong) > MOST_TOLD:
            rest = listed((line.string for line in wrong[MOST_TOLD:]), most=12)
            yield Finding(_walk(frame, side), f"On {_half(frame, side)} the same goes for {rest}.")


def _finding(frame: Frame, line: Tally, tallies: Mapping[Pass, Tally]) -> Finding:
    if line.wanted == 0:
        return _beyond(frame, line)
    if len(line.seen) < line.wanted:
        return _missing(frame, line, tallies)
    return _too_often(frame, line, tallies)


def _missing(frame: Frame, line: Tally, tallies: Mapping[Pass, Tally]) -> Finding:
    seen = f", at {line.seen[0]}" if line.seen else ""
    message = (
        f"{line.string} passes {_TIMES[len(line.seen)]} on {_half(frame, line.side)}{seen}; {_needs(line)}."
    )
    gap = _gap(frame, line, tallies)
    if not gap:
        return Finding(_walk(frame, line.side), message)
    between = listed(f"{at} ({string})" for at, string in gap)
    free = _free_hole(frame, gap)
    return Finding(
        where.on_walk(frame, free or gap[0][0]),
        message,
        hole=str(free or gap[0][0]),
        nearest=f"{free}, which has no string"
        if free
        else f"{'between' if len(gap) > 1 else 'beside'} {between}",
    )


def _free_hole(frame: Frame, gap: tuple[tuple[Address, Pass], ...]) -> Address | None:
    """The only hole without a string between two neighbours, if there is one."""
    side, numbers = gap[0][0].side, range(gap[0][0].number + 1, gap[-1][0].number)
    free = [
        hole.address
        for hole in frame.drilled
        if hole.address.side == side and hole.address.number in numbers and not hole.passes
    ]
    return free[0] if len(free) == 1 else None


def _too_often(frame: Frame, line: Tally, tallies: Mapping[Pass, Tally]) -> Finding:
    missing = [other.string for other in tallies.values() if len(other.seen) < other.wanted]
    near = [s for s in missing if s.kind == line.string.kind and abs(s.number - line.string.number) == 1]
    times = _TIMES.get(len(line.seen), f"{len(line.seen)} times")
    return Finding(
        where.on_walk(frame, line.seen[-1]),
        f"{line.string} passes {times} on {_half(frame, line.side)}, at {listed(line.seen)}; {_needs(line)}.",
        hole=str(line.seen[-1]),
        nearest=f"{near[0]}, which is missing" if near else None,
    )


def _beyond(frame: Frame, line: Tally) -> Finding:
    main = line.string.kind == "m"
    last = frame.mains // 2 if main else frame.crosses
    name = counted(frame.mains, "main") if main else counted(frame.crosses, "cross")
    return Finding(
        where.on_walk(frame, line.seen[0]),
        f"{line.string} passes on {_half(frame, line.side)}, but {name} are {line.string.kind}1 to "
        f"{line.string.kind}{last} on a half.",
        hole=str(line.seen[0]),
        tip=f"If the walk is right, {'mains' if main else 'crosses'} is too small.",
    )


def _gap(frame: Frame, line: Tally, tallies: Mapping[Pass, Tally]) -> tuple[tuple[Address, Pass], ...]:
    """The holes of the neighbouring strings between which the missing pass belongs."""
    kind, number = line.string
    middle = len(walk_of(frame, line.side)) / 2
    at_throat = kind == "m" and bool(line.seen) and line.seen[0].number <= middle
    neighbours: list[tuple[Address, Pass]] = []
    for step in (-1, 1):
        string = Pass(kind, number + step)
        seen = tallies[string].seen if string in tallies else ()
        if kind == "m":
            seen = tuple(at for at in seen if (at.number > middle) == at_throat)
        if seen:
            neighbours.append((seen[0], string))
    return tuple(sorted(neighbours, key=lambda pair: pair[0].number))


def _needs(line: Tally) -> str:
    return "a main passes twice" if line.wanted == 2 else "a cross passes once"


def _half(frame: Frame, side: Side) -> str:
    return "each half" if frame.mirrored else _SIDE[side]


def _walk(frame: Frame, side: Side) -> tuple[str, ...]:
    return ("left", "walk") if side == "L" and not frame.mirrored else ("walk",)


RULE = Rule(
    name="strings-on-each-half",
    scope="map",
    severity="error",
    summary="Each main passes twice on a half of the rim, at the head and at the throat; each cross once.",
    example="m2 passes only once on each half, at R2; a main passes twice.",
    check=check,
)
