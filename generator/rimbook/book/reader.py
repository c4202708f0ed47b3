"""The strict reader: YAML text to plain values that remember where they stand.

PyYAML parses; this module only listens to its events. What a person reads is
what is meant: scalars follow the core schema of YAML 1.2 (so `no`, `6:12` and
`1_0` are words and `010` is ten), keys stay the text that was written, and a
key said twice is an error. Anchors, aliases, tags and a second document are
refused, and size, depth and number of values are bounded, so that a stranger's
file costs at most a few milliseconds.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import Any, NamedTuple

import yaml

from rimbook.book.problems import Problem
from rimbook.book.text import hidden_character, shown

MAX_BYTES = 256 * 1024
MAX_DEPTH = 40
MAX_VALUES = 20_000
MAX_NUMBER_LENGTH = 30
MAX_REPORTED = 100

RULE = "readable"

Path = tuple[str | int, ...]
Scalar = str | int | float | bool | None

FASTEST_LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

_NULL = frozenset(("", "~", "null", "Null", "NULL"))
_BOOL = {word: word.lower() == "true" for word in ("true", "True", "TRUE", "false", "False", "FALSE")}
_INT = re.compile(r"[-+]?[0-9]+")
_BASED = {"0o": (re.compile(r"0o[0-7]+"), 8), "0x": (re.compile(r"0x[0-9a-fA-F]+"), 16)}
_FLOAT = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_PLAIN = re.compile(r"[^\s,\[\]{}]+")
_SPECIAL = re.compile(r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)")


class Mark(NamedTuple):
    """Line and column, both from 1."""

    line: int
    column: int


class Unreadable(Exception):
    """The text is no document; `problems` says why, each with its place."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(problems[0].message)
        self.problems = tuple(problems)


@dataclass(frozen=True)
class Document:
    """A file as plain values, and the place of every one of them."""

    file: str
    text: str
    value: Any
    marks: dict[Path, Mark] = field(repr=False)
    key_marks: dict[Path, Mark] = field(repr=False)

    def mark(self, path: Path, *, key: bool = False) -> Mark:
        """Where the value at `path` stands, or what holds it where there is none.

        The words of a walk are addressed by their index, as in `("walk", 3)`.
        """
        if path and isinstance(path[-1], int) and isinstance(self.at(path[:-1]), str):
            inside = path[:-1]
            if inside not in self._known_words:
                self._known_words[inside] = self._words(inside)
            words = self._known_words[inside]
            if path[-1] < len(words):
                return words[path[-1]]
        if key and path in self.key_marks:
            return self.key_marks[path]
        while path and path not in self.marks:
            path = path[:-1]
        return self.marks.get(path, Mark(1, 1))

    def at(self, path: Path) -> Any:
        """The value at `path`, or None where there is none."""
        value = self.value
        for step in path:
            inside = (isinstance(value, dict) and step in value) or (
                isinstance(value, list) and isinstance(step, int) and step < len(value)
            )
            if not inside:
                return None
            value = value[step]
        return value

    def plain(self, path: Path) -> str:
        """A number, true or false as it was written: `010`, not 10."""
        mark = self.marks[path]
        found = _PLAIN.match(self.text, self._line_starts[mark.line - 1] + mark.column - 1)
        return found.group() if found else str(self.at(path))

    def problem(
        self, rule: str, path: Path, message: str, *, key: bool = False, **more: str | None
    ) -> Problem:
        """An error at `path`; `more` are the other texts of a problem."""
        line, column = self.mark(path, key=key)
        return Problem(rule, "error", self.file, line, column, message, **more)

    def _words(self, path: Path) -> list[Mark]:
        start = self.marks.get(path)
        if start is None:
            return []
        first_line, offset = start.line - 1, self._line_starts[start.line - 1] + start.column - 1
        words = str(self.at(path)).split()
        header = re.compile(r"[>|][-+0-9]*[^\n]*\n").match(self.text, offset)
        offset = header.end() if header else offset
        marks = []
        for word in words:
            offset = self.text.find(word, offset)
            if offset < 0:
                return [Mark(first_line + 1, start.column)] * len(words)
            line = bisect_right(self._line_starts, offset) - 1
            marks.append(Mark(line + 1, offset - self._line_starts[line] + 1))
            offset += len(word)
        return marks

    @cached_property
    def _known_words(self) -> dict[Path, list[Mark]]:
        """The words of each walk that was asked for, looked up once however many of them are wrong."""
        return {}

    @cached_property
    def _line_starts(self) -> list[int]:
        return [0, *(match.end() for match in re.finditer(r"\r\n|\r|\n", self.text))]


def read(source: str | bytes, file: str, *, loader: type = FASTEST_LOADER) -> Document:
    """Read one YAML document.

    Raises Unreadable where the text is too large, is not UTF-8, is not YAML, or
    uses what a map never needs.
    """
    text = _decoded(source, file)
    builder = _Builder(text, file)
    try:
        events: Iterator[Any] = iter(yaml.parse(text, Loader=loader))
        value = builder.document(events)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        place = Mark(mark.line + 1, mark.column + 1) if mark else Mark(1, 1)
        reason, tip = _reason(error, text, place)
        raise Unreadable([_problem(file, place, f"This is not YAML: {reason}.", tip)]) from None
    except yaml.YAMLError as error:
        raise Unreadable([_problem(file, Mark(1, 1), f"This is not YAML: {shown(str(error))}.")]) from None
    if builder.problems:
        raise Unreadable(builder.problems)
    return Document(file, text, value, builder.marks, builder.key_marks)


def _reason(error: yaml.MarkedYAMLError, text: str, place: Mark) -> tuple[str, str | None]:
    """What the parser says, and a tip; of a character that begins nothing it does not say which."""
    if "cannot start any token" in str(error.problem) or "tab character" in str(error.problem):
        lines = re.split(r"\r\n|\r|\n", text)
        sign = lines[place.line - 1][place.column - 1 : place.column] if place.line <= len(lines) else ""
        if sign == "\t":
            return "a tab stands where a line is indented", "Indent by spaces."
        if sign:
            return f"nothing begins with {shown(sign)}", "Put the word in quotes."
    return f"{error.context}: {error.problem}" if error.context else str(error.problem), None


def _problem(file: str, mark: Mark, message: str, tip: str | None = None) -> Problem:
    return Problem(RULE, "error", file, mark.line, mark.column, message, tip=tip)


def _decoded(source: str | bytes, file: str) -> str:
    if len(source) > MAX_BYTES:
        message = f"The file has {len(source):,} bytes; at most {MAX_BYTES:,} are read."
        raise Unreadable([_problem(file, Mark(1, 1), message, "A map needs a few thousand.")])
    try:
        text = source if isinstance(source, str) else source.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = error.object[: error.start].decode("utf-8", "replace")
        message = "This byte is not UTF-8 text."
        raise Unreadable([_problem(file, _mark_after(before), message, "Save the file as UTF-8.")]) from None
    found = hidden_character(text)
    if found:
        offset, name = found
        message = f"There is a character that nobody can see: {name}."
        raise Unreadable([_problem(file, _mark_after(text[:offset]), message, "Delete it.")])
    return text


def _mark_of(event: Any) -> Mark:
    return Mark(event.start_mark.line + 1, event.start_mark.column + 1)


def _mark_after(text: str) -> Mark:
    line = text.count("\n")
    return Mark(line + 1, len(text) - (text.rfind("\n") + 1) + 1)


class _Stop(Exception):
    """Reading on would only repeat what was said."""


class _Builder:
    """Turns the event stream into values, noting marks and problems on the way."""

    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        self.marks: dict[Path, Mark] = {}
        self.key_marks: dict[Path, Mark] = {}
        self.problems: list[Problem] = []
        self.count = 0

    def document(self, events: Iterator[Any]) -> Any:
        value: Any = None
        documents = 0
        try:
            for event in events:
                if isinstance(event, yaml.DocumentStartEvent):
                    documents += 1
                    if documents > 1:
                        self._complain(event, "A second document starts here; a file holds one.")
                        raise _Stop
                elif isinstance(event, yaml.NodeEvent):
                    value = self._value(event, events, ())
        except _Stop:
            pass
        if not documents and not self.problems:
            self.problems.append(_problem(self.file, Mark(1, 1), "The file is empty."))
        return value

    def _complain(self, event: Any, message: str, tip: str | None = None) -> None:
        if len(self.problems) >= MAX_REPORTED:
            raise _Stop
        self.problems.append(_problem(self.file, _mark_of(event), message, tip))

    def _value(self, event: Any, events: Iterator[Any], path: Path) -> Any:
        self._guard(event, path)
        self.marks[path] = _mark_of(event)
        if isinstance(event, yaml.ScalarEvent):
            return self._scalar(event)
        if isinstance(event, yaml.SequenceStartEvent):
            items: list[Any] = []
            while not isinstance(inner := next(events), yaml.SequenceEndEvent):
                items.append(self._value(inner, events, (*path, len(items))))
            return items
        return self._mapping(events, path)

    def _mapping(self, events: Iterator[Any], path: Path) -> dict[str, Any]:
        mapping: dict[str, Any] = {}
        while not isinstance(event := next(events), yaml.MappingEndEvent):
            self._guard(event, path)
            if not isinstance(event, yaml.ScalarEvent):
                self._complain(event, "A key must be a word or a number, not a list or a mapping.")
                raise _Stop
            key = event.value
            if key in mapping:
                first = self.key_marks[(*path, key)]
                self._complain(
                    event,
                    f"The key {shown(key)} stands twice; the first is in line {first.line}.",
                    "Keep one of the two.",
                )
            else:
                self.key_marks[(*path, key)] = _mark_of(event)
            self._scalar(event)
            mapping[key] = self._value(next(events), events, (*path, key))
        return mapping

    def _guard(self, event: Any, path: Path) -> None:
        self.count += 1
        if self.count > MAX_VALUES:
            self._complain(event, f"There are more than {MAX_VALUES:,} values; reading stops here.")
            raise _Stop
        if len(path) > MAX_DEPTH:
            self._complain(event, f"This is nested more than {MAX_DEPTH} deep; reading stops here.")
            raise _Stop
        if isinstance(event, yaml.AliasEvent) or event.anchor:
            sign = "*" if isinstance(event, yaml.AliasEvent) else "&"
            self._complain(
                event,
                f"Anchors and aliases are not used here: {sign}{shown(event.anchor, quote=False)}.",
                "Write the value out.",
            )
            raise _Stop
        if event.tag:
            self._complain(event, f"Tags are not used here: {shown(event.tag)}.", "Leave the tag out.")
            raise _Stop

    def _scalar(self, event: Any) -> Scalar:
        if event.style:
            hidden = hidden_character(event.value)
            if hidden:
                self._complain(event, f"There is a character that nobody can see: {hidden[1]}.", "Delete it.")
            return str(event.value)
        return core_scalar(event.value)


@lru_cache(maxsize=4096)
def core_scalar(word: str) -> Scalar:
    """A plain scalar by the core schema of YAML 1.2 (chapter 10.3 of its specification).

    A number longer than any measurement stays a word.
    """
    if word in _NULL:
        return None
    if word in _BOOL:
        return _BOOL[word]
    if len(word) > MAX_NUMBER_LENGTH:
        return word
    if _INT.fullmatch(word):
        return int(word)
    pattern = _BASED.get(word[:2])
    if pattern and pattern[0].fullmatch(word):
        return int(word, pattern[1])
    if _FLOAT.fullmatch(word):
        return float(word)
    if _SPECIAL.fullmatch(word):
        return float(word.lower().replace(".", ""))
    return word
