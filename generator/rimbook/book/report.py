"""Print problems: for people, as annotations of a forge, and as JSON."""

from __future__ import annotations

import json
from collections.abc import Collection, Sequence
from dataclasses import asdict, dataclass
from itertools import groupby
from typing import get_args

from rimbook.book.forge_words import as_data, as_property, no_commands
from rimbook.book.problems import STOPPING, Problem, Severity, in_order
from rimbook.book.rules.words import listed
from rimbook.book.text import visible

JSON_FORMAT = 1
SEVERITIES: tuple[Severity, ...] = get_args(Severity)

# A forge shows no more annotations than this of one kind in one step.
ANNOTATIONS_SHOWN = 10

_MOST_CHARACTERS = 600
_COLOURS = {"error": "31;1", "warning": "33", "note": "36"}
_ANNOTATION = {"error": "error", "warning": "warning", "note": "notice"}


@dataclass(frozen=True, slots=True)
class Extent:
    """How much was looked at: what a report that found nothing still says."""

    maps: int
    parts: int
    clubs: int = 0
    moved: int = 0


def people(problems: Sequence[Problem], extent: Extent, *, colour: bool = False, notes: bool = False) -> str:
    """Problems by file, each with the place an editor opens first, and a count at the end.

    Notes are counted and left out unless `notes` asks for them.
    """
    told = [problem for problem in in_order(problems) if notes or problem.severity != "note"]
    blocks = [
        _block(tuple(group), colour=colour) for _, group in groupby(told, key=lambda problem: problem.file)
    ]
    closing = [_closing(problems, extent, notes=notes), *_unfinished(problems)]
    return "\n\n".join([*blocks, "\n".join(closing)]) + "\n"


def _block(problems: Sequence[Problem], *, colour: bool) -> str:
    places = [_plain(problem.place) for problem in problems]
    wide = max(map(len, places))
    lines: list[str] = []
    for problem, place in zip(problems, places, strict=True):
        word = f"{problem.severity:<7}"
        if colour:
            word = f"\x1b[{_COLOURS[problem.severity]}m{word}\x1b[0m"
        lines.append(f"{place:<{wide}}  {word}  {_plain(problem.message)}  [{problem.rule}]")
        lines += [f"    {label:<8}  {_plain(text)}" for label, text in _more(problem)]
    return "\n".join(lines)


def _more(problem: Problem) -> list[tuple[str, str]]:
    labelled = (
        ("hole", problem.hole),
        ("found", problem.found),
        ("expected", problem.expected),
        ("nearest", problem.nearest),
        ("tip", problem.tip),
    )
    return [(label, text) for label, text in labelled if text]


def _closing(problems: Sequence[Problem], extent: Extent, *, notes: bool) -> str:
    counts = counted_by_severity(problems)
    counted = [_count(extent.maps, "map"), _count(extent.parts, "part")]
    counted += [_count(extent.clubs, "club")] if extent.clubs else []
    counted += [_count(extent.moved, "moved name")] if extent.moved else []
    looked_at = f"{', '.join(counted[:-1])} and {counted[-1]}"
    grave = [_count(counts[kind], kind) for kind in ("error", "warning") if counts[kind]]
    hidden = (
        f" {_count(counts['note'], 'note')} left out: see --notes." if counts["note"] and not notes else ""
    )
    if not grave:
        return f"Nothing wrong in {looked_at}.{hidden}"
    files = len({problem.file for problem in problems if problem.severity != "note"})
    return f"{' and '.join(grave)} in {_count(files, 'file')}, of {looked_at}.{hidden}"


def _unfinished(problems: Sequence[Problem]) -> list[str]:
    """A line for the files in which something stood in the way of what else may be wrong; none otherwise."""
    files = sorted({_plain(problem.file) for problem in problems if problem.rule in STOPPING})
    if not files:
        return []
    said = "was not checked to its end" if len(files) == 1 else "were not checked to their end"
    return [f"{listed(files)} {said}: mend these first, more may follow."]


def counted_by_severity(problems: Sequence[Problem]) -> dict[str, int]:
    """How many problems there are of each severity."""
    return {kind: sum(problem.severity == kind for problem in problems) for kind in SEVERITIES}


def forge(
    problems: Sequence[Problem], extent: Extent, *, changed: Collection[str] = (), notes: bool = False
) -> str:
    """Annotations, those in `changed` files first, and below them the full list for people.

    A forge shows ten of a kind; what is left out is said.
    """
    listing = people(problems, extent, notes=notes)
    ranked = sorted(in_order(problems), key=lambda problem: problem.file not in changed)
    lines: list[str] = []
    for kind in SEVERITIES if notes else ("error", "warning"):
        of_kind = [problem for problem in ranked if problem.severity == kind]
        lines += [_annotation(problem) for problem in of_kind[:ANNOTATIONS_SHOWN]]
        if left := len(of_kind) - ANNOTATIONS_SHOWN:
            lines += [f"{_count(left, f'more {kind}')} in the list below."] if left > 0 else []
    if not lines:
        return listing
    return "\n".join([*lines, no_commands(listing)])


def _annotation(problem: Problem) -> str:
    """One workflow command, as GitHub documents under "Workflow commands for GitHub Actions"."""
    text = "\n".join(
        [_plain(problem.message), *(f"{label}: {_plain(text)}" for label, text in _more(problem))]
    )
    properties = (
        f"file={as_property(_plain(problem.file))},line={problem.line},col={problem.column},"
        f"title={as_property(problem.rule)}"
    )
    return f"::{_ANNOTATION[problem.severity]} {properties}::{as_data(text)}"


def as_json(problems: Sequence[Problem], extent: Extent) -> str:
    """Everything, notes too: `{"format": 1, "problems": […], "counts": {…}}`."""
    counts = counted_by_severity(problems) | asdict(extent)
    listed = [asdict(problem) for problem in in_order(problems)]
    whole = {"format": JSON_FORMAT, "problems": listed, "counts": counts}
    return json.dumps(whole, indent=2, ensure_ascii=True) + "\n"


def _plain(text: str) -> str:
    """One line in which nothing is hidden, and not endless."""
    plain = visible(text)
    return plain if len(plain) <= _MOST_CHARACTERS else f"{plain[: _MOST_CHARACTERS - 1]}…"


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
