"""A tension limit far above what the sport uses is rather a slip of the unit."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.limits import TENSION_DOUBTFUL_N
from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule

# Exact by definition: 1 lb = 0.45359237 kg, and standard gravity is 9.80665 m/s2.
NEWTON = {"N": 1.0, "kg": 9.80665, "lb": 0.45359237 * 9.80665}


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    limit, sport = file.frame.tension_limit, file.frame.sport
    if limit is None:
        return
    newtons = limit.value * NEWTON[limit.unit]
    doubtful = TENSION_DOUBTFUL_N[sport]
    if newtons > doubtful:
        pounds, most = newtons / NEWTON["lb"], doubtful / NEWTON["lb"]
        fits = [unit for unit in NEWTON if limit.value * NEWTON[unit] <= doubtful and unit != "N"]
        yield Finding(
            ("tension_limit",),
            f"A limit of {limit.value:g} {limit.unit} is {pounds:.0f} lb: more than {sport} is strung at.",
            expected=f"at most about {most:.0f} lb",
            nearest=f"{limit.value:g} {fits[0]}" if fits else None,
            tip="Copy number and unit as the maker printed them: too high a limit breaks frames.",
        )


RULE = Rule(
    name="tension-plausible",
    scope="map",
    severity="warning",
    summary="The printed tension limit is one that the sport uses, so that lb and kg were not mixed up.",
    example="A limit of 28 kg is 62 lb: more than badminton is strung at.",
    check=check,
)
