"""Formulas: written as text, drawn as MathML, and both the same as what the code works out."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import etree

from rimbook.bench.head_pull import head_pull
from rimbook.bench.length import reach
from rimbook.bench.load import held, resultant
from rimbook.bench.pressure import bearing_pressure
from rimbook.bench.room import RATIOS, enclosing, thickest
from rimbook.bench.tension import pull_of
from rimbook.bench.thresholds import DEFAULT
from rimbook.bench.turns import turns
from rimbook.bench.uncertainty import combined, go_nogo, limits, of_resolution, of_tolerance
from rimbook.bench.units import newtons
from rimbook.book.model import Head
from rimbook.rim.outline import STEPS, curve
from rimbook.site.numbers.formula import mathml, parts, plain
from rimbook.site.numbers.topics import TOPICS
from tests.site.read_mathml import holds, value
from tests.site.sample import demo_book

FORMULAS = {one.anchor: one for topic in TOPICS for one in topic.formulas}
TEXTS = [one.text for one in FORMULAS.values()] + [each.text for topic in TOPICS for each in topic.symbols]

# The elements of MathML Core that a formula here is made of, and how many children each takes.
CHILDREN = {"mi": 0, "mn": 0, "mo": 0, "mfrac": 2, "msup": 2, "msub": 2}


def drawn(anchor: str, part: int = 0) -> str:
    """One formula of a page as it is drawn."""
    return mathml(parts(FORMULAS[anchor].text)[part])


@pytest.mark.parametrize("text", TEXTS)
def test_a_formula_is_well_formed_mathml(text: str) -> None:
    tree = etree.fromstring(mathml(text, block=True))
    assert tree.tag == "math"
    assert tree.get("display") == "block"
    for element in tree.iterdescendants():
        assert element.tag in {*CHILDREN, "mrow", "msqrt"}
        assert len(element) == CHILDREN.get(element.tag, len(element))
        assert element.text if element.tag in ("mi", "mn", "mo") else not element.text
        assert set(element.keys()) <= {"separator"}


@pytest.mark.parametrize("text", TEXTS)
def test_the_text_of_a_formula_stands_in_it(text: str) -> None:
    tree = etree.fromstring(mathml(text))
    assert tree.get("alttext") == plain(text)
    assert not set(plain(text)) & set("*{}\\$")
    letters = [sign for sign in "".join(tree.itertext()) if sign.isalpha()]
    assert letters == [sign for sign in text if sign.isalpha()]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("2 +", "it ends"),
        ("a b", "'b' stands"),
        ("(a", "it ends"),
        ("a)", r"'\)' stands"),
        ("|a", "it ends"),
        ("a ++ b", r"'\+' stands"),
        ("", "it ends"),
        ("a $ b", "'\\$', which no formula has"),
    ],
)
def test_what_is_no_formula_is_refused(text: str, told: str) -> None:
    with pytest.raises(ValueError, match=told):
        mathml(text)


@pytest.mark.parametrize(
    ("text", "printed"), [("T_1^2", "T₁²"), ("c_min", "c_min"), ("e^(−µ·θ)", "e^(−µ·θ)"), ("x^25", "x^25")]
)
def test_the_text_is_printed_as_a_person_would(text: str, printed: str) -> None:
    assert plain(text) == printed


def test_a_list_is_cut_at_the_commas_outside_brackets() -> None:
    assert parts("x = min(a, b), y = 2") == ["x = min(a, b)", "y = 2"]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("a·b/c", 6 / 4),
        ("(a + b)/c", 5 / 4),
        ("a/b/c", 2 / 3 / 4),
        ("a − b − c", -5),
        ("a·b^a", 18),
        ("√a·b", 3 * 2**0.5),
    ],
)
def test_what_binds_closer(text: str, told: float) -> None:
    assert value(mathml(text), {"a": 2, "b": 3, "c": 4}) == pytest.approx(told)


FORCES = st.floats(1, 500)
TURNS = st.floats(0.01, math.pi)
LENGTHS = st.floats(0.5, 12)


@given(FORCES, FORCES, TURNS, st.floats(0, 0.5))
def test_pull_and_friction(one: float, other: float, turn: float, friction: float) -> None:
    given = {"T": one, "T_1": one, "T_2": other, "θ": turn, "µ": friction, "e": math.e}
    assert value(drawn("pull"), given) == pytest.approx(one * resultant(turn))
    assert value(drawn("rigging"), {"T": one, "α": math.pi - turn}) == pytest.approx(one * resultant(turn))
    assert value(drawn("rigging", 1), given) == pytest.approx(math.pi - turn)
    assert value(drawn("friction"), given) == pytest.approx(one * held(friction, turn))
    assert value(drawn("unequal"), given) == pytest.approx(pull_of(one, other, turn), abs=1e-6)


@given(FORCES, LENGTHS, LENGTHS)
def test_pressure(force: float, length: float, depth: float) -> None:
    engaged = reach(length, depth).engaged_mm
    assert engaged is not None
    assert value(drawn("bearing-length"), {"l": length, "t": depth}) == engaged
    found = value(drawn("pressure"), {"F": force, "d": 2.1, "L": engaged})
    assert found == pytest.approx(bearing_pressure(force, 2.1, engaged))


def test_head() -> None:
    frame = demo_book().frames["plover-76"]
    found = head_pull(frame, 100, 90)
    assert value(drawn("head-pull"), {"M": frame.mains, "T": 100}) == found.along_n
    assert value(drawn("head-across"), {"C": frame.crosses, "T_c": 90}) == found.across_n


@given(LENGTHS, st.floats(0.001, 0.2), st.floats(0.001, 0.2))
def test_uncertainty(size: float, step: float, tolerance: float) -> None:
    u = of_resolution(step)
    assert value(drawn("resolution"), {"δ": step}) == pytest.approx(u)
    assert value(drawn("tolerance"), {"a": tolerance}) == pytest.approx(of_tolerance(tolerance))
    assert value(drawn("combined"), {"u_1": u, "u_2": tolerance}) == pytest.approx(combined(u, tolerance))
    pins = go_nogo(size, size + step)
    given = {"G": size, "N": size + step}
    assert (value(drawn("pins"), given), value(drawn("pins", 1), given)) == pytest.approx(pins)
    ends = {"D": pins.mm, "k": DEFAULT.coverage, "u": pins.u_mm or 0.0}
    assert (value(drawn("limits"), ends), value(drawn("limits", 1), ends)) == pytest.approx(
        limits(pins, DEFAULT.coverage)
    )


@given(st.floats(0.5, 1.5), st.floats(0.5, 1.5), st.floats(0.3, 1.5))
def test_room(one: float, two: float, three: float) -> None:
    c, b, a = sorted((one, two, three))
    assert value(drawn("strings-need"), {"q_n": RATIOS[3], "d": a}) == pytest.approx(enclosing((a,) * 3))
    assert value(drawn("two-strings"), {"d_1": a, "d_2": b}) == pytest.approx(enclosing((a, b)))
    in_the_gap = holds(drawn("third-string"), {"a": a, "b": b, "c": c})
    inverse = value(drawn("three-strings"), {"p": 1 / a, "q": 1 / b, "r": 1 / c})
    if c < a * (1 - 1e-6):
        assert enclosing((a, b, c)) == pytest.approx(a + b if in_the_gap else 1 / inverse)
    assert [value(drawn("three-strings", part), {"a": a, "b": b, "c": c}) for part in (1, 2, 3)] == [
        1 / a, 1 / b, 1 / c,
    ]  # fmt: skip
    free = value(drawn("thickest"), {"B": 3.0, "j": DEFAULT.threading_mm, "q_n": RATIOS[2]})
    assert free == pytest.approx(thickest(3.0, 2))


@given(LENGTHS, LENGTHS)
def test_length(length: float, depth: float) -> None:
    found = reach(length, depth)
    proud = value(drawn("proud"), {"l": length, "t": depth})
    assert proud == found.proud_mm
    assert found.engaged_mm is not None
    if abs(found.engaged_mm - DEFAULT.hold_share * depth) > 1e-6:
        told = holds(drawn("holds"), {"L": found.engaged_mm, "h": DEFAULT.hold_share, "t": depth})
        assert told == found.holds
    if found.word == "trim":
        cut = value(drawn("trim"), {"p": proud, "r": DEFAULT.leave_proud_mm})
        assert cut == pytest.approx(found.trim_mm)


@given(st.floats(0.6, 1.4), st.floats(1.0, 3.0), st.integers(1, 4), st.integers(0, 6))
def test_turning(string: float, opening: float, strings: int, quarters: int) -> None:
    groove = value(drawn("groove"), {"g": DEFAULT.groove_per_string, "d": string})
    found = turns(groove, opening, opening + 4, strings)
    assert found.groove_deg is not None
    if groove >= opening * (1 - 1e-6):
        return
    angle = value(drawn("groove-angle"), {"w": groove, "B": opening})
    assert math.degrees(angle) == pytest.approx(found.groove_deg)
    assert holds(drawn("land"), {"f": opening + 4, "B": opening, "i": DEFAULT.land_per_string, "d": string})
    places = 4 if math.degrees(angle) <= 90 else 2
    assert value(drawn("positions"), {"Q": places, "n": strings}) == found.positions
    left = value(drawn("turns-left"), {"P": found.positions or 0, "k": quarters, "z": found.step})
    assert left == found.left(quarters)


@given(st.floats(1, 80))
def test_units(tension: float) -> None:
    assert value(drawn("units"), {"P": tension}) == pytest.approx(newtons(tension, "lb"), rel=1e-12)
    assert value(drawn("kilograms"), {"K": tension}) == pytest.approx(newtons(tension, "kg"), rel=1e-12)


@pytest.mark.parametrize(
    ("anchor", "told"),
    [
        ("clearance", lambda s: s["D"] - s["d"]),
        ("least-clearance", lambda s: s["D_min"] - s["d_max"]),
        ("most-clearance", lambda s: s["D_max"] - s["d_min"]),
        ("multiple", lambda s: s["F"] / s["T"]),
        ("passes", lambda s: 2 * 22 + 2 * 21),
        ("ranking", lambda s: abs(s["c"] - (DEFAULT.driving_under_mm + DEFAULT.finger_over_mm) / 2)),
    ],
)
def test_small_sums(anchor: str, told: Callable[[dict[str, float]], float]) -> None:
    symbols = {
        "D": 2.7, "d": 2.65, "D_min": 2.675, "D_max": 2.725, "d_min": 2.6, "d_max": 2.71, "F": 250.0,
        "T": 100.0, "M": 22, "C": 21, "c": 0.08, "c_drive": DEFAULT.driving_under_mm,
        "c_snug": DEFAULT.finger_over_mm,
    }  # fmt: skip
    assert value(drawn(anchor), symbols) == pytest.approx(told(symbols))


def test_the_outline_lies_on_its_formula() -> None:
    for point in curve(Head("superellipse", 186, 244, exponent=2.15)).points[:: STEPS // 12]:
        symbols = {"x": point.x, "y": point.y, "a": 93, "b": 122, "n": 2.15}
        left = drawn("superellipse").replace("<mo>=</mo><mn>1</mn>", "")
        assert value(left, symbols) == pytest.approx(1)
    for point in curve(Head("ellipse", 186, 244)).points[:: STEPS // 12]:
        left = drawn("curve").replace("<mo>=</mo><mn>1</mn>", "")
        assert value(left, {"x": point.x, "y": point.y, "a": 93, "b": 122}) == pytest.approx(1)
