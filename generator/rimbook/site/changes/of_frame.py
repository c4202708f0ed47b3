"""What differs between two states of one frame."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from difflib import SequenceMatcher

from rimbook.book.address import SIDES
from rimbook.book.model import Address, Frame, Head, Hole, Strip
from rimbook.site.changes.change import Change, from_to
from rimbook.site.spans import plain, selectors, spans
from rimbook.site.words import listed

_FACTS: tuple[tuple[str, Callable[[Frame], object], str], ...] = (
    ("name", lambda frame: frame.name, ""),
    ("maker", lambda frame: frame.maker, ""),
    ("sport", lambda frame: frame.sport, ""),
    ("year", lambda frame: frame.year, ""),
    ("sister frame", lambda frame: frame.variant_of, ""),
    ("other names", lambda frame: listed(frame.aliases) or "none", ""),
    ("head", lambda frame: _head(frame.head), ""),
    ("whole racket", lambda frame: frame.overall_mm, "mm"),
    ("mains", lambda frame: frame.mains, ""),
    ("crosses", lambda frame: frame.crosses, ""),
    ("spacing of mains and crosses", lambda frame: frame.spacing_mm, "mm"),
    ("pieces of string", lambda frame: frame.stringing.pieces, ""),
    ("mains start", lambda frame: frame.stringing.mains_start, ""),
    ("crosses start", lambda frame: frame.stringing.crosses_start, ""),
    ("first cross", lambda frame: frame.stringing.first_cross, ""),
    ("tension limit", lambda frame: _limit(frame), ""),
    ("measured", lambda frame: _measured(frame), ""),
    ("note", lambda frame: frame.note or "none", ""),
)

_HOLE_FACTS: tuple[tuple[str, Callable[[Hole], object], str], ...] = (
    ("bore", lambda hole: hole.bore_mm, "mm"),
    ("part", lambda hole: hole.part, ""),
    ("rim depth", lambda hole: hole.rim_depth_mm, "mm"),
    ("measured place", lambda hole: hole.place_mm, "mm"),
    ("tie-off", lambda hole: "yes" if hole.tie_off else "no", ""),
)


def changes_of(before: Frame, after: Frame) -> list[Change]:
    """Every difference, facts of the whole frame first, then hole by hole, like changes together."""
    found = [
        Change("frame", after.slug, f"{from_to(what, fact(before), fact(after), unit)}.")
        for what, fact, unit in _FACTS
        if fact(before) != fact(after)
    ]
    found += _confirmations(before, after)
    pairs = _pairs(before, after)
    found += _walk(before, after, pairs)
    found += _strips(before, after)
    found += _holes(before, after, pairs)
    return found


def _confirmations(before: Frame, after: Frame) -> Iterator[Change]:
    known = {each.by for each in before.confirmed}
    now = {each.by for each in after.confirmed}
    for who in sorted(now - known):
        yield Change("frame", after.slug, f"Confirmed by {who}.")
    for who in sorted(known - now):
        yield Change("frame", after.slug, f"No longer confirmed by {who}.")


def _pairs(before: Frame, after: Frame) -> dict[Address, Address]:
    """For each hole of the newer state the hole of the older that it most likely is, down each side."""
    pairs: dict[Address, Address] = {}
    for side in SIDES:
        old, new = (_down(frame, side) for frame in (before, after))
        before_words, after_words = ([_passes(hole) for hole in holes] for holes in (old, new))
        matcher = SequenceMatcher(None, before_words, after_words, autojunk=False)
        for tag, i, i_end, j, j_end in matcher.get_opcodes():
            if tag == "equal" or (tag == "replace" and i_end - i == j_end - j):
                pairs |= {
                    new[j + at].address: old[i + at].address
                    for at in range(i_end - i)
                    if new[j + at].drilled == old[i + at].drilled
                }
    return pairs


def _walk(before: Frame, after: Frame, pairs: Mapping[Address, Address]) -> Iterator[Change]:
    kept = set(pairs.values())
    for hole in after.drilled:
        if hole.address not in pairs:
            yield Change("frame", after.slug, f"{hole.address} is new: {_passes(hole)}.", (hole.address,))
    for hole in before.drilled:
        if hole.address not in kept:
            gone = f"{hole.address} is gone; {_passes(hole)} passed there."
            yield Change("frame", after.slug, gone, (hole.address,), breaking=True)
    moved = {new: old for new, old in pairs.items() if new != old and after.hole(new).drilled}
    if moved:
        first = next(iter(moved))
        words = f"{_words(moved)}: numbered anew, {moved[first]} is now {first}."
        yield Change("frame", after.slug, words, breaking=True)
    for new, old in pairs.items():
        one, other = before.hole(old), after.hole(new)
        if one.passes != other.passes:
            words = f"{new}: {from_to('string', _passes(one), _passes(other))}."
            yield Change("frame", after.slug, words, (new,))


def _holes(before: Frame, after: Frame, pairs: Mapping[Address, Address]) -> Iterator[Change]:
    old = {hole.address: hole for hole in before.holes}
    for what, fact, unit in _HOLE_FACTS:
        alike: dict[str, list[Address]] = {}
        for hole in after.holes:
            if hole.address not in pairs:
                continue
            earlier = old[pairs[hole.address]]
            if fact(earlier) == fact(hole) or (what == "part" and _in_strip(earlier, hole)):
                continue
            alike.setdefault(from_to(what, fact(earlier), fact(hole), unit), []).append(hole.address)
        for words, holes in alike.items():
            yield Change("frame", after.slug, f"{_words(holes)}: {words}.", tuple(holes))


def _strips(before: Frame, after: Frame) -> Iterator[Change]:
    old, new = ({_strip_key(strip): strip for strip in frame.strips} for frame in (before, after))
    for key, strip in new.items():
        earlier = old.get(key)
        if earlier is None:
            words = f"{strip.name} is new: {_ends(strip)}, {strip.part or 'part unknown'}."
            yield Change("frame", after.slug, words, strip.holes)
        elif earlier.holes != strip.holes:
            words = f"{strip.name}: {from_to('holes', _ends(earlier), _ends(strip))}."
            yield Change("frame", after.slug, words, strip.holes)
        if earlier is not None and earlier.part != strip.part:
            words = f"{strip.name}: {from_to('part', earlier.part, strip.part)}."
            yield Change("frame", after.slug, words, strip.holes)
    for key, strip in old.items():
        if key not in new:
            yield Change("frame", after.slug, f"{strip.name} is gone; it held {_ends(strip)}.", strip.holes)


def _in_strip(before: Hole, after: Hole) -> bool:
    return before.strip is not None and after.strip is not None


def _strip_key(strip: Strip) -> tuple[str, str]:
    """What tells a strip from the others: its name, and the side it begins on."""
    return strip.name, strip.holes[0].side if strip.holes else ""


def _down(frame: Frame, side: str) -> list[Hole]:
    own = (hole for hole in frame.holes if hole.address.side == side)
    return sorted(own, key=lambda hole: hole.address.number)


def _passes(hole: Hole) -> str:
    if not hole.drilled:
        return "no hole"
    return "+".join(map(str, hole.passes)) or "no string"


def _ends(strip: Strip) -> str:
    return f"{strip.holes[0]} to {strip.holes[-1]}" if strip.holes else "no hole"


def _words(holes: Mapping[Address, object] | list[Address]) -> str:
    return plain(spans(selectors(holes)))


def _head(head: Head) -> str:
    more = f", exponent {head.exponent:g}" if head.exponent is not None else ""
    more += f", taper {head.taper:g}" if head.taper is not None else ""
    return f"{head.outline} {head.width_mm:g} × {head.height_mm:g} mm{more}"


def _limit(frame: Frame) -> str:
    limit = frame.tension_limit
    return f"{limit.value:g} {limit.unit}" if limit else "none"


def _measured(frame: Frame) -> str:
    measured = frame.measured
    if measured is None:
        return "by nobody"
    return f"by {measured.by}" + (f" on {measured.on.isoformat()}" if measured.on else "")
