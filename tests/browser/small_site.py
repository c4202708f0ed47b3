"""A site of a few invented frames with the browser's scripts in it, and modules opened for a look inside."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from html import escape
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from rimbook.book.model import Moved
from rimbook.browser.bundle import PAGE_SCRIPTS, bundle, module_sources, script_of, stylesheet
from rimbook.browser.smaller import smaller
from rimbook.site.board_card import BoardPart, board_card, board_file
from rimbook.site.finder_index import FinderFrame, FinderPart, FinderPlace, finder_index, glossary_word

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "base-uri 'none'; form-action 'self'"
)

FRAMES = (
    FinderFrame(
        "plover-76", "Plover 76", "Saltmarsh Works", "badminton", 22, 21, 76, ("2.1", "2.7"), (9, 10, 13),
        ("barrel-21-short", "barrel-27-short", "plover-crown"), ("Plover seventy-six",), 2024,
    ),
    FinderFrame(
        "plover-78", "Plover 78", "Saltmarsh Works", "badminton", 22, 21, 78, ("2.1", "2.7"), (8, 9),
        ("barrel-21-short", "barrel-27-short"),
    ),
    FinderFrame(
        "treadle-60", "Treadle 60", "Oakum Lane", "squash", 14, 18, 60, ("2.9",), (13, 20), ("twin-29-even",),
    ),
    FinderFrame(
        "sluice-66", "Sluice 66", "Millrace Frames", "tennis", 16, 19, 66, ("3.1", "3.6"), (),
        ("barrel-27-short",),
    ),
    FinderFrame("elan-os", "Élan Ø/S+", "Łódka & Søn", "tennis", 18, 20, 70, (), (9, 13)),
)  # fmt: skip

PARTS = (
    FinderPart("barrel-21-short", "Short barrel 2.1", "single"),
    FinderPart("barrel-27-short", "Short barrel 2.7", "wide"),
    FinderPart("twin-29-even", "Even twin 2.9", "even twin"),
    FinderPart("plover-crown", "Plover crown", "strip", "Saltmarsh Works"),
)

PLACES = (
    FinderPlace("maker", "Saltmarsh Works", "makers/saltmarsh-works/index.html", (), "2 frames"),
    FinderPlace("bore", "Bore 2.7 mm", "bores/2.7/index.html", ("2.7",), "2 frames"),
    FinderPlace("page", "How to regrommet", "regrommet/index.html"),
    FinderPlace("page", "Trim with care", "regrommet/index.html#trim", (), "How to regrommet"),
    glossary_word("Twin", "glossary/index.html#twin", ["U-shaped grommet", "two-post grommet"]),
    glossary_word("Wide", "glossary/index.html#wide", ["double", "large grommet"]),
    glossary_word("Cross", "glossary/index.html#cross", []),
)

MOVED = Moved({"plover-old": "plover-76", "treadle-old": "treadle-60"}, {"old-barrel-27": "barrel-27-short"})

HOLES = ("R1", "R2", "R3", "R4", "L4", "L3", "L2", "L1")


def write_site(folder: Path) -> None:
    """The finder, the board and two frame pages, below `folder`."""
    for kind in PAGE_SCRIPTS:
        _write(folder / f"assets/{kind}.js", script_of(kind))
    _write(folder / "assets/browser.css", stylesheet())
    for path, data in finder_index(FRAMES, PARTS, PLACES, MOVED).items():
        _write(folder / path, data)
    for frame in FRAMES[:3]:
        _write(folder / board_file(frame.slug), _card(frame))
        _write(folder / f"frames/{frame.slug}/face.svg", _drawing("face", HOLES).encode())
    _page(
        folder / "finder/index.html",
        "finder",
        '<div data-rb-finder data-rb-root="../">A list of all frames.</div>',
    )
    _page(
        folder / "board/index.html", "board", '<div data-rb-board data-rb-root="../">Needs JavaScript.</div>'
    )
    for frame in FRAMES[:2]:
        _page(folder / f"frames/{frame.slug}/index.html", "frame", _frame_body(frame))


def look_inside(page: Page, wanted: Mapping[str, Sequence[str]]) -> None:
    """Open a blank page whose `inside` holds the named exports of some modules, ready for `page.evaluate`.

    They are made smaller as on the site: so every test of a module is one of the minifier as well.
    """
    imports = "".join(
        f'import {{ {", ".join(names)} }} from "./{module}.js";\n' for module, names in wanted.items()
    )
    names = ", ".join(name for names in wanted.values() for name in names)
    script = bundle("probe", {**module_sources(), "probe": f"{imports}globalThis.inside = {{ {names} }};\n"})
    page.goto("about:blank")
    page.evaluate(smaller({"probe": script})["probe"].decode())


def handed_over(script: bytes) -> str:
    """The JSON inside a data script, as JavaScript text."""
    text = script.decode()
    return text[text.index(",") + 1 : text.rindex(");")]


def frame_record(slug: str, name: str, **others: Any) -> FinderFrame:
    """A frame of which only a little matters."""
    plain: dict[str, Any] = {
        "maker": "Oakum Lane",
        "sport": "squash",
        "mains": 14,
        "crosses": 18,
        "holes": 60,
    }
    return FinderFrame(slug=slug, name=name, **{**plain, **others})


def _card(frame: FinderFrame) -> bytes:
    parts = [
        BoardPart("barrel-21-short", "Short barrel 2.1", "single", frame.holes - 10, "singly"),
        BoardPart(None, "unknown part", "unknown", 2, "unknown"),
    ]
    if frame.sport == "badminton":
        parts.append(BoardPart("barrel-27-short", "Short barrel 2.7", "wide", 8, "singly"))
    facts = [("Strings", f"{frame.mains} × {frame.crosses}"), ("Bores", ", ".join(frame.bores))]
    shelf = '{"places":[],"items":{}}'
    return board_card(frame.slug, frame.name, f"frames/{frame.slug}/face.svg", facts, parts, shelf)


def _frame_body(frame: FinderFrame) -> str:
    drawings = "".join(
        f"""<figure data-rb-drawing="{name}">
        <label><input type="checkbox" checked data-rb-layer="strings">strings</label>
        <div class="rb-scroll" role="region" aria-label="{name}" tabindex="0">{_drawing(name, HOLES)}</div>
        </figure>"""
        for name in ("face", "unrolled")
    )
    rows = "".join(
        f"""<tr id="{hole}" data-hole="{hole}" data-bore="{_bore(hole)}">
        <th scope="row"><a href="#{hole}">{hole}</a></th><td>m{hole[1]}</td><td>{_bore(hole)}</td></tr>"""
        for hole in HOLES
    )
    name = escape(frame.name)
    return f"""<h1>{name}</h1><a href="../../finder/index.html" data-rb-finder-link>Finder</a>
    <button type="button" hidden data-rb-keep="{frame.slug}" data-rb-name="{name}"></button>
    <span data-rb-kept-count></span>
    {drawings}
    <p>See <a href="#R2">R2</a> and <a href="#elsewhere">more</a>.</p>
    <div class="rb-scroll"><table data-rb-table="holes">
    <thead><tr><th scope="col">Hole</th><th scope="col">String</th><th scope="col">Bore</th></tr></thead>
    <tbody>{rows}</tbody></table></div>"""


def _bore(hole: str) -> str:
    return {"R3": "10", "L2": "unknown"}.get(hole, "2.7" if hole[1] == "4" else "2.1")


def _drawing(name: str, holes: Iterable[str]) -> str:
    marks = "".join(
        f'<use href="#{name}-o" id="{name}-{hole}" class="hole" x="{20 + 40 * at}" y="30" role="img" '
        f'tabindex="{-1 if at else 0}" data-address="{hole}" aria-label="{hole}"/>'
        for at, hole in enumerate(holes)
    )
    return f"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 340 60" width="680" class="drawing">
    <title>{name}</title><defs><circle id="{name}-o" r="8" fill="#456"/></defs>
    <g class="layer layer-strings"/>{marks}</svg>"""


def _page(file: Path, script: str, body: str) -> None:
    root = "../" * (2 if file.parts[-3] == "frames" else 1)
    text = f"""<!doctype html><html lang="en"><head><meta charset="utf-8">
    <meta http-equiv="Content-Security-Policy" content="{POLICY}">
    <meta name="viewport" content="width=device-width"><title>{script}</title>
    <link rel="icon" href="data:,"><link rel="stylesheet" href="{root}assets/browser.css">
    <script defer src="{root}assets/{script}.js"></script></head>
    <body><main id="content">{body}</main></body></html>"""
    _write(file, text.encode())


def _write(file: Path, data: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(data)
