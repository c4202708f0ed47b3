"""The limits of the sports, held to the numbers that their rules print.

Badminton: BWF Laws of Badminton, Law 4 (copy at badminton.org.nz). Tennis: ITF Rules
of Tennis, Appendix II. Squash: WSF racket specification (undated copy at
ceepol.com/squashreferee). Racquetball: USA Racquetball rule 2.4(b).
"""

from __future__ import annotations

from math import pi
from typing import cast

import pytest

from rimbook.book.limits import LIMITS
from rimbook.book.model import Address, Head, Sport
from rimbook.book.rules.rule import Given
from rimbook.rim.outline import area, curve
from rimbook.rim.rules.placed import PlacedMap
from rimbook.rim.rules.strung_within_law import check as check_strung
from rimbook.rim.types import Curve, Placed, Point, Rim
from tests.book.rules.small_book import TODAY, loaded, map_with, said

# sport, what, the largest that is allowed: mm as the rule prints them.
PRINTED = [
    ("badminton", "frame length", 680.0),  # Law 4.1
    ("badminton", "frame width", 230.0),  # Law 4.1
    ("badminton", "strung length", 280.0),  # Law 4.2.2
    ("badminton", "strung width", 220.0),  # Law 4.2.2
    ("tennis", "frame length", 737.0),  # Appendix II(c); 29.0 in would be 736.6, but SI units take precedence
    ("tennis", "frame width", 317.0),  # Appendix II(c)
    ("tennis", "strung length", 394.0),  # Appendix II(c)
    ("tennis", "strung width", 292.0),  # Appendix II(c)
    ("squash", "frame length", 686.0),
    ("squash", "frame width", 215.0),
    ("squash", "strung length", 390.0),
    ("racquetball", "frame length", 22 * 25.4),  # rule 2.4(b): 22 inches
]

# A modest size of each, within every limit of every sport.
MODEST = {"frame length": 550.0, "frame width": 205.0, "strung length": 240.0, "strung width": 180.0}


def told(sport: str, what: str, value: float) -> list[str]:
    """What is said of a frame that has this one size and is modest otherwise."""
    size = MODEST | {what: value}
    if what == "strung length":
        size |= {"frame length": 505.0, "strung width": 150.0}
    if what == "strung width":
        size |= {"frame length": 450.0, "frame width": value + 10}
    book = map_with(
        ("sport: badminton", f"sport: {sport}"),
        ("[674, 206]", f"[{size['frame length']}, {size['frame width']}]"),
        ("[186, 244]", f"[{size['strung width']}, {size['strung length']}]"),
    )
    return [
        text
        for rule in ("frame-within-law", "strung-within-law")
        for text in said(rule, book)
        if what in text
    ]


@pytest.mark.parametrize(("sport", "what", "most"), PRINTED)
def test_exactly_at_a_limit_is_allowed_and_a_tenth_more_is_not(sport: str, what: str, most: float) -> None:
    assert told(sport, what, most) == []
    (message,) = told(sport, what, round(most + 0.1, 1))
    assert message.startswith(f"The {what} is {most + 0.1:g} mm; ")
    assert message.endswith(f" allows {most:g} mm.")


def test_no_limit_is_left_out_here() -> None:
    asked = {(sport, what) for sport, what, _ in PRINTED} | {("squash", "strung area")}
    assert asked == set(LIMITS)


def test_tennis_limits_are_millimetres_and_not_inches() -> None:
    """Appendix II, opening line: SI units take precedence. 29.0 in are 736.6 mm; 737.0 is allowed."""
    assert told("tennis", "frame length", 736.8) == []


def strung(line: Curve, sport: str = "badminton", outline: str = "points") -> list[str]:
    """What is said of a strung area bordered by a line."""
    file = map_with(("sport: badminton", f"sport: {sport}")).maps["lapwing-20"]
    head = Head(outline, 1, 1)  # type: ignore[arg-type]
    frame = type(file.frame)(
        "lapwing-20", "Lapwing 20", "Saltmarsh Works", cast(Sport, sport), head, 6, 5, file.frame.holes
    )
    rim = Rim(frame, line, cast("dict[Address, Placed]", {}), ())
    given = Given(loaded().book, TODAY)
    return [finding.message for finding in check_strung(PlacedMap(frame, file.document, rim), given)]


def with_throat(width: float, length: float) -> Curve:
    """A head 200 mm wide and 280 mm long that runs on into the throat, `length` in all."""
    right = [
        (0, 140),
        (100, 140),
        (100, -140),
        (width / 2, -140),
        (width / 2, 140 - length),
        (0, 140 - length),
    ]
    left = [(-x, y) for x, y in reversed(right[1:-1])]
    return Curve(tuple(Point(x, y) for x, y in [*right, *left]), (), 0.0)


@pytest.mark.parametrize(
    ("width", "length", "message"),
    [
        (35.0, 330.0, None),
        (35.1, 330.0, "The strung length is 330 mm; BWF Law 4.2.2 allows 280 mm."),
        (35.0, 330.1, "The strung length is 330.1 mm; BWF Law 4.2.2.2 allows 330 mm."),
        (199.0, 280.0, None),
    ],
)
def test_badminton_strings_may_run_into_a_narrow_throat(
    width: float, length: float, message: str | None
) -> None:
    """Law 4.2.2.1 and 4.2.2.2: the extension no wider than 35 mm, the whole no longer than 330 mm."""
    assert strung(with_throat(width, length)) == ([message] if message else [])


def test_a_plain_oval_has_no_throat_to_run_into() -> None:
    assert strung(with_throat(35, 330), outline="ellipse") == [
        "The strung length is 330 mm; BWF Law 4.2.2 allows 280 mm."
    ]


def test_squash_strings_cover_at_most_500_square_centimetres() -> None:
    """WSF racket specification. The area of an ellipse is π a b."""
    height = 340.0
    width = 50_000 * 4 / (pi * height)
    assert strung(curve(Head("ellipse", width, height)), "squash", "ellipse") == []
    assert strung(curve(Head("ellipse", width + 0.1, height)), "squash", "ellipse") == [
        "The strung area is 500.3 cm²; the WSF racket specification allows 500 cm²."
    ]


@pytest.mark.parametrize(
    ("width", "height", "square_cm"),
    # The largest ellipse within Law 4.2.2 and within Appendix II(c): π a b, computed.
    [(220, 280, 483.805), (292, 394, 903.585)],
)
def test_the_area_of_the_largest_ellipses(width: float, height: float, square_cm: float) -> None:
    assert area(curve(Head("ellipse", width, height))) / 100 == pytest.approx(square_cm, rel=2e-5)
