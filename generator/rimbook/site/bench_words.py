"""The bench numbers of one part in one hole, each as a sentence; where one is missing, what to measure."""

from __future__ import annotations

from collections.abc import Iterable

from rimbook.bench.fit import Fit
from rimbook.bench.length import Reach
from rimbook.bench.reasons import MEASURE, Missing, Reason
from rimbook.bench.room import Room, Through
from rimbook.bench.turns import Turns
from rimbook.site.words import capital, counted, listed, number

_ROOM = {"runs free": "through easily", "tight": "through tight", "will not go": "not through"}
_STEP = {1: "a quarter turn", 2: "a half turn"}


def measure(missing: Iterable[Missing]) -> str:
    """What to do about measures that are missing, in whole sentences."""
    return " ".join(MEASURE[each] for each in dict.fromkeys(missing))


def fit_words(fitted: Fit) -> str:
    """`snug: 0.05 mm of air, −0.01 to 0.11 mm at the limits (transition: finger fit or needs driving)`."""
    if fitted.word is None or fitted.clearance_mm is None:
        return f"no fit is claimed. {measure(fitted.missing)}"
    words = f"{fitted.word}: {_clearance(fitted.clearance_mm)}"
    if fitted.least_mm is None or fitted.most_mm is None:
        return f"{words}; limits unknown. {measure(fitted.missing)}"
    words += f", {signed(fitted.least_mm)} to {signed(fitted.most_mm)} mm at the limits"
    if fitted.sure:
        return f"{words} ({fitted.kind})"
    return f"{words} ({fitted.kind}: {fitted.loosest} to {fitted.tightest})"


def room_words(room: Room, through: tuple[Through, ...] | None, thickest_mm: float | None) -> str:
    """`2 strings: 0.62 mm through easily; 0.66 and 0.7 mm through tight`."""
    if through is None:
        return measure(room.missing) or "unknown"
    if thickest_mm is None:
        return "no string here"
    by_word: dict[str, list[str]] = {}
    for each in through:
        by_word.setdefault(each.word, []).append(number(each.string_mm))
    found = "; ".join(f"{listed(sizes)} mm {_ROOM[word]}" for word, sizes in by_word.items())
    return f"{counted(room.strings, 'string')}: {found}; easily up to {number(thickest_mm)} mm"


def length_words(reach: Reach) -> str:
    """`proud by 1.1 mm`, or `short by 0.8 mm, so the string meets the frame`."""
    if reach.word is None or reach.proud_mm is None:
        return measure(reach.missing)
    by = f"by {number(abs(reach.proud_mm))} mm"
    if reach.word == "short":
        lets_go = "" if reach.holds else ", and too little of it is in the rim to hold"
        return f"short {by}, so the string meets the frame{lets_go}"
    if reach.word == "flush":
        return "flush" if abs(reach.proud_mm) < 0.005 else f"flush, within {number(abs(reach.proud_mm))} mm"
    if reach.word == "trim":
        return f"proud {by}: cut {number(reach.trim_mm or 0.0)} mm off after fitting"
    return f"proud {by}, nothing to cut"


def turns_words(turned: Turns) -> str:
    """`4 fresh positions, the first included, a quarter turn apart`."""
    if turned.positions is None:
        return measure(turned.missing) or "unknown"
    if turned.positions == 1:
        return "one position only: there is no fresh place to turn it to"
    return f"{turned.positions} fresh positions, the first included, {_STEP[turned.step]} apart"


def reasons_words(reasons: Iterable[Reason]) -> str:
    """The reasons of a verdict as a list in words, empty where there are none."""
    return "; ".join(map(str, reasons))


def force_words(newtons: float) -> str:
    """`1,234` newtons, to the whole one; as the browser writes them."""
    return f"{newtons:,.0f}"


def at_each(values: Iterable[float], digits: int) -> str:
    """`2.8100,2.6053,2.4159`: a number at each coefficient of friction in turn, for the browser."""
    return ",".join([f"{value:.{digits}f}" for value in values])


def pressure_words(megapascals: float) -> str:
    """`6.1` megapascals, to a tenth; as the browser writes them."""
    return f"{megapascals:.1f}"


def signed(value: float) -> str:
    """A length with a true minus sign: `−0.05`."""
    text = number(abs(value))
    return f"−{text}" if value < 0 and text != "0" else text


def sentence(text: str) -> str:
    """The text with a large first letter and a full stop."""
    return capital(text) if text.endswith((".", "!")) else f"{capital(text)}."


def _clearance(clearance_mm: float) -> str:
    amount = f"{number(abs(clearance_mm))} mm"
    return f"{amount} of air" if clearance_mm >= 0 else f"{amount} of squeeze"
