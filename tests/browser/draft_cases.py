"""Drafts of a small map, each broken in a place or two, and what `rimbook check` says of them.

`tests/cases/drafts.json` keeps them, so that the browser and the build are held to the same words. Where
those are meant to change, `python -m tests.browser.draft_cases` writes them anew: then read what changed.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

from rimbook.bench.check import check
from rimbook.book.load import Loaded, MapFile, PartsFile, catalogue, map_from
from rimbook.book.problems import Problem
from rimbook.book.reader import Document, Unreadable, read
from rimbook.book.text import hidden_character
from rimbook.book.written import WrittenFrame
from tests.book.rules.small_book import MAP, PARTS, TODAY, changed, parts_file
from tests.book.rules.test_every_rule import BREAKS
from tests.browser.draft_mutations import mutated
from tests.browser.draft_swaps import SWAPS

FILE = Path(__file__).parents[1] / "cases" / "drafts.json"
SLUG = "lapwing-20"
MUTATIONS = 60

Draft = dict[str, Any]

ORDER = [field.alias or name for name, field in WrittenFrame.model_fields.items()]
TEXTS = ("rule", "severity", "message", "hole", "found", "expected", "nearest", "tip")


@dataclass(frozen=True)
class Case:
    """A draft as the last map of a small book; `parts` and `others` are what else is in it, as written."""

    name: str
    draft: Draft
    slug: str = SLUG
    parts: Mapping[str, Any] = field(default_factory=dict)
    others: Mapping[str, Draft] = field(default_factory=dict)

    @property
    def parts_file(self) -> PartsFile:
        parts = {**BASE_PARTS, **self.parts}
        return parts_file(json.dumps({"format": 1, "parts": parts}))

    @property
    def maps(self) -> dict[str, MapFile]:
        """The other maps by slug, which must be readable."""
        parts = catalogue((self.parts_file,))
        files = {
            slug: map_from(read(yaml_of(draft), _file(slug)), slug, parts)[0]
            for slug, draft in self.others.items()
        }
        return {slug: file for slug, file in files.items() if file}


def yaml_of(draft: Draft) -> str:
    """A draft as YAML: a key a line, in the order of the guide, with all that nobody can see escaped."""
    keys = sorted(draft, key=lambda key: ORDER.index(key) if key in ORDER else len(ORDER))
    return "".join(f"{_flow(key)}: {_flow(draft[key])}\n" for key in keys)


def _flow(value: object) -> str:
    text = json.dumps(value, ensure_ascii=False)
    while found := hidden_character(text):
        number = ord(text[found[0]])
        text = text.replace(chr(number), f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}")
    return text


def _file(slug: str) -> str:
    return f"frames/maps/{slug}.yaml"


def judged(
    draft: Draft, slug: str, parts: tuple[PartsFile, ...], others: Mapping[str, MapFile]
) -> tuple[Document | None, list[Problem]]:
    """The draft as a file of a book, and what is wrong with that file."""
    try:
        document = read(yaml_of(draft), _file(slug))
    except Unreadable as unreadable:
        return None, list(unreadable.problems)
    file, problems = map_from(document, slug, catalogue(parts))
    maps = {**others, **({slug: file} if file else {})}
    book = Loaded(maps, parts, problems, len(maps))
    return document, [problem for problem in check(book, TODAY) if problem.file == document.file]


def texts_of(problem: Problem) -> dict[str, Any]:
    """What a problem says, without what it leaves unsaid."""
    return {name: getattr(problem, name) for name in TEXTS if getattr(problem, name) is not None}


def in_json(value: Any) -> Any:
    """A value as JavaScript keeps it: 7.0 is 7."""
    if isinstance(value, dict):
        return {key: in_json(each) for key, each in value.items()}
    if isinstance(value, list):
        return [in_json(each) for each in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value


BASE: Draft = in_json(read(MAP, "small").value)
BASE_PARTS: dict[str, Any] = in_json(read(PARTS, "small").value["parts"])
UNEVEN = {"twin-21": {**BASE_PARTS["twin-21"], "kind": "twin-uneven", "length_mm": [9, 16]}}
WREN: Draft = {**BASE, "name": "Wren 20", "variant_of": SLUG}
OTHERS: dict[str, Draft] = {
    "avocet-20": {**BASE, "name": "Avocet 20", "maker": "Oakum Lane", "aliases": ["Old 20"]},
    "wren-20": WREN,
    "wren-21": {**WREN, "name": "Wren 21", "year": 2021, "variant_of": "wren-20"},
}


KEYS: dict[str, Draft] = {
    "a variant of itself": {"variant_of": SLUG},
    "a variant of none": {"variant_of": "wrn-20"},
    "a variant of another maker's": {"variant_of": "avocet-20"},
    "a ring of two": {"variant_of": "wren-20"},
    "a ring of three": {"variant_of": "wren-21"},
    "names of others": {"aliases": ["OLD 2O", "wrén 20", "Wren 21", "Wren-20"]},
    "names of others by another maker": {"name": "Avocet 20", "maker": "OAKUM LANE"},
    "a name told apart by its year": {"name": "Wren 21", "year": 2022},
    "a name of letters that look alike": {
        "aliases": ["WRΕΝ 20", "ОLD 2O", "Οld"],
        "maker": "Saltmarsh Wоrks",
    },
    "hidden characters": {"name": "Lap\u200bwing", "aliases": ["a\u0001", "b", "\u202e"]},
}


def cases() -> Iterator[Case]:
    """Each rule's own example, what its tests break, and the small map changed by chance."""
    for rule, book in BREAKS.items():
        slug, file = list(book.maps.items())[-1]
        others = {each: in_json(other.document.value) for each, other in book.maps.items() if each != slug}
        parts = in_json(book.parts_files[0].document.value["parts"])
        case = Case(
            f"the example of {rule}",
            in_json(file.document.value),
            slug,
            {key: part for key, part in parts.items() if BASE_PARTS.get(key) != part},
            others,
        )
        if not book.clubs and rule in {problem.rule for problem in problems_of(case)[1]}:
            yield case
    for name, swaps in SWAPS.items():
        yield Case(name, in_json(read(changed(MAP, *swaps), "small").value))
    for depth in (15.5, 19):
        yield Case(
            f"an uneven twin in a rim of {depth}",
            {**BASE, "rim_depth_mm": {"default": 9.4, str(depth): [10]}},
            parts=UNEVEN,
        )
    for name, changes in KEYS.items():
        yield Case(name, {**BASE, **changes}, others=OTHERS)
    draw = Random(7)
    for index in range(MUTATIONS):
        yield Case(f"changed by chance, {index + 1}", in_json(mutated(BASE, draw, BASE_PARTS)))


def problems_of(case: Case) -> tuple[Document | None, list[Problem]]:
    """What is wrong with the draft of a case."""
    return judged(case.draft, case.slug, (case.parts_file,), case.maps)


def kept(case: Case) -> dict[str, Any]:
    """A case as the file keeps it: only what differs from the small book."""
    problems = [
        {"at": [problem.line, problem.column], **texts_of(problem)} for problem in problems_of(case)[1]
    ]
    whole = {
        "name": case.name,
        "slug": case.slug if case.slug != SLUG else None,
        "parts": case.parts,
        "others": {slug: _changes(draft) for slug, draft in case.others.items()},
        "draft": _changes(case.draft),
        "without": [key for key in BASE if key not in case.draft],
        "problems": problems,
    }
    return {key: value for key, value in whole.items() if value or key == "problems"}


def case_of(written: Mapping[str, Any]) -> Case:
    """A case from what the file keeps."""
    base = {key: value for key, value in BASE.items() if key not in written.get("without", ())}
    others = {slug: {**BASE, **changes} for slug, changes in written.get("others", {}).items()}
    return Case(
        written["name"],
        deepcopy({**base, **written.get("draft", {})}),
        written.get("slug", SLUG),
        written.get("parts", {}),
        others,
    )


def _changes(draft: Draft) -> Draft:
    return {
        key: value
        for key, value in draft.items()
        if key not in BASE or BASE[key] != value or _order(value) != _order(BASE[key])
    }


def _order(value: object) -> list[str]:
    return list(value) if isinstance(value, dict) else []


def main() -> None:
    """Write the cases anew."""
    lines = ",\n".join(json.dumps(kept(case), ensure_ascii=False) for case in cases())
    FILE.write_text(f"[\n{lines}\n]\n", encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
