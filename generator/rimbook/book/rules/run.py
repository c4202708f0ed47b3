"""Run rules, and turn what they find into problems with a file, a line and a column."""

from __future__ import annotations

import traceback
from collections.abc import Iterable, Iterator, Mapping
from pathlib import PurePath

from rimbook.book.problems import Problem
from rimbook.book.reader import Document
from rimbook.book.rules.rule import Finding, Given, Rule

OWN_FAULT_RULE = "own-fault"


def run(
    rules: Iterable[Rule],
    subject: object,
    document: Document | None,
    given: Given,
    others: Mapping[str, Document] | None = None,
) -> Iterator[Problem]:
    """All problems that the rules find in one subject.

    Findings point into `document`, or into the one of `others` that they name.
    A rule that fails stops no other: its failure comes out as a problem too.
    """
    known = dict(others or {})
    if document is not None:
        known[""] = document
    whole = document.file if document else next(iter(known), "").split("/")[0] or "."
    for rule in rules:
        try:
            findings = tuple(rule.check(subject, given))
            problems = tuple(_problem(rule, finding, known[finding.file or ""]) for finding in findings)
        except Exception as error:
            problems = (own_fault(f"The rule {rule.name}", whole, error),)
        yield from problems


def own_fault(who: str, file: str, error: Exception) -> Problem:
    """A failure of the program itself, said as plainly as any other problem."""
    frame = traceback.extract_tb(error.__traceback__)[-1]
    return Problem(
        rule=OWN_FAULT_RULE,
        severity="error",
        file=file,
        line=1,
        column=1,
        message=f"{who} failed: this is rimbook's own fault.",
        found=f"{type(error).__name__}: {error} ({PurePath(frame.filename).name}, line {frame.lineno})",
        tip="Nothing need be wrong with this file. Please report it together with the file.",
    )


def _problem(rule: Rule, finding: Finding, document: Document) -> Problem:
    line, column = document.mark(finding.path, key=finding.key)
    return Problem(
        rule=rule.name,
        severity=finding.severity or rule.severity,
        file=document.file,
        line=line,
        column=column,
        message=finding.message,
        hole=finding.hole,
        found=finding.found,
        expected=finding.expected,
        nearest=finding.nearest,
        tip=finding.tip,
    )
