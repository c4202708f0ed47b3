"""The strict reader: what a person reads is what is meant."""

from __future__ import annotations

import time
from contextlib import suppress
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.reader import MAX_BYTES, Document, Mark, Unreadable, core_scalar, read

LOADERS = [pytest.param(yaml.SafeLoader, id="python")]
if hasattr(yaml, "CSafeLoader"):
    LOADERS.append(pytest.param(yaml.CSafeLoader, id="c"))


@pytest.fixture(params=LOADERS)
def loader(request: pytest.FixtureRequest) -> type:
    found: type = request.param
    return found


def refusal(text: str | bytes, loader: type = yaml.SafeLoader) -> str:
    """The first problem of a text that must be refused, as `line:column message`."""
    with pytest.raises(Unreadable) as caught:
        read(text, "maps/a.yaml", loader=loader)
    problem = caught.value.problems[0]
    return f"{problem.line}:{problem.column} {problem.message}"


# YAML 1.2.2, chapter 10.3.2 (core schema), tag resolution table.
CORE_SCHEMA = {
    "null": None,
    "~": None,
    "true": True,
    "False": False,
    "12": 12,
    "-3": -3,
    "010": 10,
    "0o14": 12,
    "0xC": 12,
    "1.5": 1.5,
    "-.5": -0.5,
    "1e3": 1000.0,
    "12.": 12.0,
}
YAML_1_1_TRAPS = ["6:12", "1:10", "no", "on", "yes", "off", "y", "1_0", "1_000.5", "0b11", "2026-10-04", "="]


@pytest.mark.parametrize(("word", "value"), CORE_SCHEMA.items())
def test_scalars_follow_the_core_schema_of_yaml_1_2(word: str, value: object) -> None:
    found = core_scalar(word)
    assert found == value
    assert type(found) is type(value)


@pytest.mark.parametrize("word", YAML_1_1_TRAPS)
def test_what_yaml_1_1_would_turn_into_something_else_stays_a_word(word: str, loader: type) -> None:
    assert read(f"key: {word}", "a.yaml", loader=loader).value == {"key": word}
    assert read(f"{word}: 1", "a.yaml", loader=loader).value == {word: 1}


def test_infinity_and_nan_are_numbers_for_the_next_step_to_refuse() -> None:
    assert core_scalar("-.inf") == float("-inf")
    assert core_scalar(".nan") != core_scalar(".nan")


def test_a_number_longer_than_any_measurement_stays_a_word() -> None:
    assert core_scalar("9" * 5000) == "9" * 5000


SAMPLE = """\
name: Plover
head: {size: [186, 244]}
walk: >-
  m1 m2
    m3+c1
  m2
strips:
  - {name: crown}
"""


def test_every_value_keeps_its_place(loader: type) -> None:
    document = read(SAMPLE, "a.yaml", loader=loader)
    assert document.mark(("name",)) == Mark(1, 7)
    assert document.mark(("name",), key=True) == Mark(1, 1)
    assert document.mark(("head", "size", 1)) == Mark(2, 20)
    assert document.mark(("strips", 0, "name")) == Mark(8, 12)


def test_each_word_of_a_walk_has_a_place(loader: type) -> None:
    document = read(SAMPLE, "a.yaml", loader=loader)
    marks = [document.mark(("walk", index)) for index in range(4)]
    assert marks == [Mark(4, 3), Mark(4, 6), Mark(5, 5), Mark(6, 3)]


def test_a_plain_walk_over_several_lines_has_places_too(loader: type) -> None:
    document = read("walk: m1\n  m2 c1\n", "a.yaml", loader=loader)
    assert [document.mark(("walk", index)) for index in range(3)] == [Mark(1, 7), Mark(2, 3), Mark(2, 6)]


def test_what_is_not_there_has_the_place_of_what_would_hold_it() -> None:
    assert read(SAMPLE, "a.yaml").mark(("head", "size", 7)) == Mark(2, 14)


def test_both_loaders_read_the_book_alike() -> None:
    pytest.importorskip("yaml._yaml", reason="PyYAML without its C part: nothing to compare")
    for path in sorted((Path(__file__).parents[2] / "frames").rglob("*.yaml")):
        slow, fast = (
            read(path.read_bytes(), path.name, loader=one) for one in (yaml.SafeLoader, yaml.CSafeLoader)
        )
        assert (slow.value, slow.marks, slow.key_marks) == (fast.value, fast.marks, fast.key_marks)


REFUSED = {
    "a: 1\nb: 2\na: 3": "3:1 The key “a” stands twice; the first is in line 1.",
    "a: {b: 1, b: 2}": "1:11 The key “b” stands twice; the first is in line 1.",
    "a: &x 1": "1:4 Anchors and aliases are not used here: &x.",
    "a: *x": "1:4 Anchors and aliases are not used here: *x.",
    "a: !!python/name:os.system x": "1:4 Tags are not used here: “tag:yaml.org,2002:python/name:os.system”.",
    "? [a]\n: 1": "1:3 A key must be a word or a number, not a list or a mapping.",
    "a: 1\n---\nb: 2": "2:1 A second document starts here; a file holds one.",
    "": "1:1 The file is empty.",
    "# only a comment": "1:1 The file is empty.",
    "a: \x07": "1:4 There is a character that nobody can see: U+0007 control character.",
    "a: b\u202ec": "1:5 There is a character that nobody can see: U+202E right-to-left override.",
    'a: "\\u202e"': "1:4 There is a character that nobody can see: U+202E right-to-left override.",
}


@pytest.mark.parametrize(("text", "message"), REFUSED.items())
def test_what_a_map_never_needs_is_refused_with_its_place(text: str, message: str, loader: type) -> None:
    assert refusal(text, loader) == message


def test_all_keys_said_twice_are_named_at_once() -> None:
    with pytest.raises(Unreadable) as caught:
        read("a: 1\na: 2\nb: 1\nb: 2", "a.yaml")
    assert [problem.line for problem in caught.value.problems] == [2, 4]


def test_broken_yaml_says_where(loader: type) -> None:
    assert refusal("a: [1, 2", loader).startswith(("1:9 This is not YAML", "2:1 This is not YAML"))
    assert refusal("a: b: c", loader).startswith("1:5 This is not YAML")
    assert refusal("\ta: 1", loader).startswith("1:1 This is not YAML")
    assert (
        refusal("a:\n  b: 1\n\tc: 2", loader)
        == "3:1 This is not YAML: a tab stands where a line is indented."
    )
    assert refusal("a: @b", loader) == "1:4 This is not YAML: nothing begins with “@”."


def test_bytes_that_are_not_utf8_say_where() -> None:
    assert refusal(b"a: 1\nb: \xff") == "2:4 This byte is not UTF-8 text."


def test_a_byte_order_mark_is_no_fault() -> None:
    assert read(b"\xef\xbb\xbfa: 1", "a.yaml").value == {"a": 1}


BOMBS = {
    "large file": "a: " + "x" * MAX_BYTES,
    "deep flow": "[" * 5000,
    "deep block": "\n".join(" " * depth + "a:" for depth in range(300)),
    "many values": "[" + "1," * 50_000 + "1]",
    "aliases": "a: &a [x,x]\nb: &b [*a,*a]\nc: [*b,*b]",
    "merge": "a: &a {x: 1}\n" + "\n".join(f"b{index}: {{<<: *a}}" for index in range(2000)),
    "same key": "a: 1\n" * 20_000,
}


@pytest.mark.parametrize("name", BOMBS)
def test_no_text_can_exhaust_the_reader(name: str, loader: type) -> None:
    start = time.process_time()
    with pytest.raises(Unreadable) as caught:
        read(BOMBS[name], "a.yaml", loader=loader)
    assert 1 <= len(caught.value.problems) <= 100
    assert time.process_time() - start < 5, "a bound is missing: this took seconds of CPU"


def test_a_number_of_many_digits_is_never_counted_out(loader: type) -> None:
    assert read("a: " + "9" * 200_000, "a.yaml", loader=loader).value == {"a": "9" * 200_000}


# Words that another writer, who knows only YAML 1.1, leaves bare although 1.2 reads a number: -.0
plain = st.text(alphabet="abcxyz 0123456789_.-", max_size=12).filter(lambda word: core_scalar(word) == word)
values = st.recursive(
    st.none() | st.booleans() | st.integers(-9999, 9999) | plain,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(plain, inner, max_size=4),
    max_leaves=20,
)


@given(values)
def test_what_another_writer_wrote_is_read_back(value: object) -> None:
    text = yaml.safe_dump({"root": value}, default_flow_style=None)
    document: Document = read(text, "a.yaml")
    assert document.value == {"root": _with_text_keys(value)}


def _with_text_keys(value: object) -> object:
    if isinstance(value, dict):
        return {str(key): _with_text_keys(inner) for key, inner in value.items()}
    return [_with_text_keys(inner) for inner in value] if isinstance(value, list) else value


@given(st.text(max_size=200) | st.binary(max_size=200))
def test_any_text_is_read_or_refused(text: str | bytes) -> None:
    with suppress(Unreadable):
        document = read(text, "a.yaml")
        assert all(mark.line >= 1 and mark.column >= 1 for mark in document.marks.values())
