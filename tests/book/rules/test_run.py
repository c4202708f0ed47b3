"""Running rules: places, and rules that fail themselves."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.run import OWN_FAULT_RULE, run
from tests.book.rules.small_book import TODAY, loaded


def failing(file: MapFile, given: Given) -> Iterator[Finding]:
    yield Finding(("name",), "Never told, since the rule fails before it ends.")
    raise KeyError("R9")


def naming(file: MapFile, given: Given) -> Iterator[Finding]:
    yield Finding(("mains",), "The value.")
    yield Finding(("mains",), "The key.", key=True, severity="note")
    yield Finding(("walk", 3), "A word of the walk.", hole="R4")
    yield Finding(("head", "nothing"), "What is not there stands where its parent is.")


def lost(file: MapFile, given: Given) -> Iterator[Finding]:
    yield Finding((), "In a file nobody knows.", file="elsewhere.yaml")


def rule(name: str, check: object) -> Rule:
    assert callable(check)
    return Rule(name, "map", "warning", "A rule.", "An example.", check)


FILE = loaded().maps["lapwing-20"]
GIVEN = Given(loaded().book, TODAY)


def test_findings_become_problems_with_a_line_and_a_column() -> None:
    found = list(run([rule("naming", naming)], FILE, FILE.document, GIVEN))
    assert [(problem.line, problem.column, problem.severity) for problem in found] == [
        (9, 8, "warning"),
        (9, 1, "note"),
        (13, 12, "warning"),
        (6, 7, "warning"),
    ]
    assert {problem.file for problem in found} == {"frames/maps/lapwing-20.yaml"}


def test_a_rule_that_fails_stops_no_other_and_is_rimbooks_own_fault() -> None:
    rules = [rule("failing", failing), rule("lost", lost), rule("naming", naming)]
    first, second, *rest = run(rules, FILE, FILE.document, GIVEN)
    assert first.rule == second.rule == OWN_FAULT_RULE
    assert first.message == "The rule failing failed: this is rimbook's own fault."
    assert first.found
    assert first.found.startswith("KeyError: 'R9' (test_run.py, line ")
    assert second.found
    assert second.found.startswith("KeyError: 'elsewhere.yaml'")
    assert len(rest) == 4
