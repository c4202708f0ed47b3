"""What a drawer label says of a part, line by line."""

from __future__ import annotations

from collections.abc import Sequence

from rimbook.book.model import Catalogue, Part
from rimbook.draw.labels import shortened, text_width
from rimbook.draw.words import bore_words


def size_lines(part: Part, catalogue: Catalogue) -> tuple[str, ...]:
    """The sizes of a part; of a set, what it holds."""
    if part.kind == "set":
        held = ((count, catalogue.get(each), each) for each, count in sorted(part.contains.items()))
        return tuple(f"{count} × {found.name if found else each}" for count, found, each in held)
    lengths = " and ".join(map(bore_words, part.length_mm)) if part.length_mm else None
    lines = [_size("barrel", part.barrel_mm), _size("bore", part.bore_mm), _line("length", lengths)]
    if part.kind == "strip":
        lines.append(f"{part.posts} posts" if part.posts else "posts unknown")
    else:
        lines.append(_size("flange", part.flange_mm))
    if part.kind in ("twin-even", "twin-uneven"):
        lines.append(_size("pitch", part.pitch_mm))
    return tuple(lines)


def _size(name: str, size_mm: float | None) -> str:
    return _line(name, None if size_mm is None else bore_words(size_mm))


def _line(name: str, words: str | None) -> str:
    return f"{name} unknown" if words is None else f"{name} {words} mm"


def paired(lines: Sequence[str]) -> tuple[str, ...]:
    """Two to a line: `barrel 2.05, bore 1.3 mm`."""
    pairs = [lines[index : index + 2] for index in range(0, len(lines), 2)]
    return tuple(
        ", ".join(pair).replace(" mm,", ",") if pair[-1].endswith(" mm") else ", ".join(pair)
        for pair in pairs
    )


def served_lines(names: Sequence[str], size: float, width: float, most: int) -> tuple[str, ...]:
    """`For Plover 76, Pipit 76 and 3 more`, broken into at most so many lines of this width.

    As many names as fit; one that is too long by itself is cut.
    """
    if not names:
        return tuple(_broken("For no frame of this book", size, width)[:most])
    for count in range(len(names), 0, -1):
        lines = _broken(_served(names, count), size, width)
        if len(lines) <= most and all(text_width(line, size) <= width for line in lines):
            return tuple(lines)
    rest = f" and {len(names) - 1} more" if len(names) > 1 else ""
    name = shortened(f"For {names[0]}", size, width - text_width(rest, size))
    return (f"{name}{rest}",)


def level_line(reorder: int, up_to: int, size: float, width: float) -> str:
    """`Reorder below 3, fill up to 8`, in fewer words where a label is narrow.

    A drawer that may run empty before it is ordered for has no reorder point to name.
    """
    full = f"Reorder below {reorder}, fill up to {up_to}" if reorder else f"Fill up to {up_to}"
    short = f"Below {reorder}, up to {up_to}" if reorder else f"Up to {up_to}"
    return full if text_width(full, size, bold=True) <= width else short


def _served(names: Sequence[str], count: int) -> str:
    more = len(names) - count
    if more:
        return f"For {', '.join(names[:count])} and {more} more"
    return f"For {', '.join(names[:-1])} and {names[-1]}" if count > 1 else f"For {names[0]}"


def _broken(text: str, size: float, width: float) -> list[str]:
    """Text in lines no wider than asked, unless a word alone is."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
