"""The published limits of each sport on rackets, as data, each with its source.

Millimetres are the limit, never a conversion from inches. A racket exactly at
a limit is within it.

Sources:

- Badminton: Badminton World Federation, Laws of Badminton, Law 4, as copied at
  https://badminton.org.nz/courses/laws-of-badminton/lessons/racket-equipment-and-compliance/
- Tennis: International Tennis Federation, Rules of Tennis, Appendix II, as published at
  http://www.itftennis.com/technical/publications/rules/rackets/appendix-ii.aspx
  Its paragraph (b) borders the hitting surface by the points where the strings
  enter the head, so the line of holes is what is measured here.
- Squash: World Squash Federation, Rules of Squash, specification of the racket, as copied at
  http://ceepol.com/squashreferee/referee_appendix9.html (an undated copy; whether it is
  the current text was not verified).
- Racquetball: USA Racquetball, official rules, rule 2.4(b), as published at
  https://www.usaracquetball.com/play/rules/2-courts-and-equipment
  It says 22 inches, which are 558.8 mm.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from rimbook.book.model import Sport

What = Literal["frame length", "frame width", "strung length", "strung width", "strung area"]

# A worked-out length is a sum of many pieces; a thousandth of a millimetre is no excess.
ROUNDING = 0.001


@dataclass(frozen=True, slots=True)
class Limit:
    """The most that a rule of a sport allows: mm, or square centimetres for an area."""

    most: float
    rule: str


LIMITS: Mapping[tuple[Sport, str], Limit] = {
    ("badminton", "frame length"): Limit(680, "BWF Law 4.1"),
    ("badminton", "frame width"): Limit(230, "BWF Law 4.1"),
    ("badminton", "strung length"): Limit(280, "BWF Law 4.2.2"),
    ("badminton", "strung width"): Limit(220, "BWF Law 4.2.2"),
    ("tennis", "frame length"): Limit(737, "ITF Rules of Tennis, Appendix II(c)"),
    ("tennis", "frame width"): Limit(317, "ITF Rules of Tennis, Appendix II(c)"),
    ("tennis", "strung length"): Limit(394, "ITF Rules of Tennis, Appendix II(c)"),
    ("tennis", "strung width"): Limit(292, "ITF Rules of Tennis, Appendix II(c)"),
    ("squash", "frame length"): Limit(686, "the WSF racket specification"),
    ("squash", "frame width"): Limit(215, "the WSF racket specification"),
    ("squash", "strung length"): Limit(390, "the WSF racket specification"),
    ("squash", "strung area"): Limit(500, "the WSF racket specification"),
    ("racquetball", "frame length"): Limit(558.8, "USA Racquetball rule 2.4(b)"),
}

# Badminton's strung area may run on into what else would be the throat: Law 4.2.2.1 and 4.2.2.2.
THROAT_WIDTH = Limit(35, "BWF Law 4.2.2.1")
LENGTH_WITH_THROAT = Limit(330, "BWF Law 4.2.2.2")

# No rule of any sport: above these a printed limit is rather a slip of the unit.
# From memory, well above usual practice: 40, 40, 80 and 60 lb.
TENSION_DOUBTFUL_N: Mapping[Sport, float] = {
    "badminton": 178.0,
    "squash": 178.0,
    "tennis": 356.0,
    "racquetball": 267.0,
}

# No rule of any sport: a line of holes less wide or less high than this was not measured in mm.
# Common practice, no published source: the heads of all four sports are far larger each way.
SMALLEST_HEAD_MM = 100.0


# One force in two units differs in the last digit of a float, which is no excess.
_FORCE_ROUNDING = 1e-9


def over_printed(tension_n: float, most_n: float) -> bool:
    """Whether a tension (N) exceeds the one that a maker printed (N); one that meets it does not."""
    return tension_n > most_n * (1 + _FORCE_ROUNDING)


def over(value: float, limit: Limit) -> bool:
    """Whether a value exceeds a limit; one that meets it does not."""
    return value > limit.most + ROUNDING
