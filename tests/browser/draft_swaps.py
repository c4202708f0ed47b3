"""Changes that break the small map, by what they are: each first text is put for the second."""

from __future__ import annotations


def _left(walk: str) -> tuple[str, str]:
    return ("stringing:", f"left: {{walk: {walk}}}\nstringing:")


def _places(*places: object) -> tuple[str, str]:
    words = [str(place) for place in places] + ["unknown"] * (10 - len(places))
    return ("stringing:", f"places_mm: [{', '.join(words)}]\nstringing:")


WALK = "m1 m2 m3 c1 c2\n  c3 c4 m3+c5 m2 m1"
CROWN = "{name: crown strip, holes: [L2, R2], part: lapwing-crown}"
SIDE = "{name: side strip, holes: [4, 5], part: unknown}"
BUMPER = "{name: bumper, holes: [L6, L5], part: unknown}"

SWAPS: dict[str, tuple[tuple[str, str], ...]] = {
    "a good map": (),
    "a pass missing and one double": ((WALK, "m1 m2 m3 c1 c2 c2 c4 m3+c5 m2 m1"),),
    "a pass too many": ((WALK, "m1 m2 m3 c1 c2 c2 c4 c2 m3+c5 m2 m1"),),
    "size and holes swapped": (("bore_mm: {default: 2.1, 2.7: [8]}", "bore_mm: {default: 2.1, 4-6: 2.7}"),),
    "a tension without its unit": (("tension_limit: 28 lb", "tension_limit: 28"),),
    "a tension without its blank": (("tension_limit: 28 lb", "tension_limit: 28lb"),),
    "a handle in capitals": (("by: a-handle", "by: Anna_B"),),
    "names that nobody can say": (
        ("name: Lapwing 20", "name: \u2800"),
        ("maker: Saltmarsh Works", "maker: ⁂"),
    ),
    "names that are no text": (("name: Lapwing 20", "name: 10"), ("maker: Saltmarsh Works", "maker: true")),
    "a string beyond the counts": (("mains: 6\ncrosses: 5", "mains: 6\ncrosses: 4"),),
    "a wall of missing strings": (("mains: 6\ncrosses: 5", "mains: 6\ncrosses: 20"),),
    "a left walk that lacks a pass": (
        _left("m1 m2 m3 c1 c2 c3 c4 m3+c5 m1"),
        ("R8, L8, R4, L4", "R8, R4"),
        ("9-10:", "R9-R10:"),
    ),
    "a free hole": ((WALK, "m1 m2 m3 c1 . c3 c4 m3+c5 m2 m1"),),
    "mains in disorder": ((WALK, "m1 m3 m2 c1 c2 c3 c4 m3+c5 m1 m2"),),
    "two mains in one hole": (
        (WALK, "m1 m2+m3 c1 c2 c3 c4 c5 m2+m3 m1"),
        ("2.7: [8]", "2.7: [4]"),
        ("9-10:", "8-9:"),
    ),
    "places that do not grow": (_places(3.5, "unknown", 3.5),),
    "places out of order": (_places(3.5, 200, 17),),
    "places beyond the throat": (_places(3.5, 10.5, 500),),
    "holes too near": (_places(3.5, 5.5),),
    "holes far apart": (_places(3.5, 10.5, 17.7, 75),),
    "measured places": (_places(3.5, 10.5, 17.7, 60, 104, 148, 190, 234, 278, 320),),
    "a measured pitch": (_places(*["unknown"] * 8, 327.7, 335.8),),
    "a hole off its string": ((WALK, "m1 c1 c2 c3 c4 m2 m3 m3+c5 m2 m1"),),
    "tie-offs twice and undrilled": (("R8, L8, R4, L4", "R8, R8, R11, L4"), ("m2 m1\n", "m2 m1 x\n")),
    "one piece of string": (("pieces: 2", "pieces: 1"),),
    "an unknown part": (("bore 2.7: barrel-27", "bore 2.7: barrel-72"),),
    "an unknown strip": (("part: lapwing-crown", "part: qqqq"),),
    "a set in a hole": (("9-10: twin-21", "9-10: lapwing-set"),),
    "a single as a strip": (("part: lapwing-crown", "part: barrel-21"),),
    "a twin of three holes": (("9-10: twin-21", "R4-R6: twin-21"),),
    "a twin over the throat": (("9-10: twin-21", "R10-L10: twin-21"),),
    "a twin over no hole": (("m2 m1\n", "m2 x m1\n"),),
    "a strip over another": (
        (
            CROWN,
            f"{CROWN}\n  - {SIDE}\n  - {BUMPER}",
        ),
    ),
    "a strip the wrong way round": (("[L2, R2]", "[R2, L2]"),),
    "a strip round the rim": (("[L2, R2], part: lapwing-crown", "[R1, L1], part: unknown"),),
    "a strip over nothing": (("m1 m2 m3", "x m1 m2 m3"), ("[L2, R2]", "[1, 1]")),
    "an exception that is the default": (("2.7: [8]", "2.1: [8]"),),
    "an exception for no hole": (("2.7: [8]", "2.7: [8], 3.1: []"),),
    "a part below a strip": (("9-10: twin-21", "R1: twin-21"),),
    "a line that is the default": (("9-10: twin-21", "9-10: barrel-21"),),
    "a line that is overruled": (("9-10:", "9: barrel-27\n  9-10:"),),
    "a line that sets back": (("9-10:", "8: barrel-21\n  9-10:"), ("2.7: [8]", "2.7: [7, 8]")),
    "a later number over a run": (("9-10: twin-21", "R9-R10: twin-21\n  9: barrel-27\n  L9-L10: twin-21"),),
    "sides that differ": (("9-10:", "R4-R5: unknown\n  9-10:"),),
    "sides that may differ": (("2.7: [8]", "2.7: [8, R4]"), _left("m1 m2 m3 c1 c2 c3 c4 m3+c5 m2 m1")),
    "a tight bore": (("2.7: [8]", "2.7: [8], 1.5: [R5]"),),
    "a rim of two depths": (("rim_depth_mm: 9.4", "rim_depth_mm: {default: 9.4, 19: [R4-R6], 0.3: [7]}"),),
    "no default": (("{default: 2.1, 2.7: [8]}", "{2.7: [8]}"),),
    "holes that are none": (("2.7: [8]", "2.7: [8, R99, 5-3, nine, R3-L5, true], b: [3], 3.1: 9"),),
    "lines that name nothing": (
        ("9-10:", "bore x: unknown\n  L3-4: unknown\n  defalt: twin-21\n  R10-L99:"),
    ),
    "a walk of other words": ((WALK, "m1 m2 m3c1 C2 m1+m2+m3 c1+c1 m0 m9+c1 ☃"),),
    "no walk": ((WALK, '" "'),),
    "a superellipse without exponent": (("outline: ellipse", "outline: superellipse"),),
    "a taper too many": (("outline: ellipse", "outline: ellipse, taper: 0.4"),),
    "no size": ((", inside_mm: [186, 244]", ""),),
    "points on a line": (
        (
            "{outline: ellipse, inside_mm: [186, 244]}",
            "{outline: points, points_mm: [[0, 1], [0, 2], [0, 3], [0, 4], [0, 5], [0, 6]]}",
        ),
    ),
    "a long teardrop": (
        (
            "{outline: ellipse, inside_mm: [186, 244]}",
            "{outline: teardrop, inside_mm: [186, 300], taper: 0.9}",
        ),
    ),
    "a longer teardrop": (
        ("{outline: ellipse, inside_mm: [186, 244]}", "{outline: teardrop, inside_mm: [186, 335], taper: 1}"),
    ),
    "a large squash head": (("badminton", "squash"), ("[186, 244]", "[220, 380]")),
    "a racket the wrong way round": (("[674, 206]", "[206, 674]"),),
    "a strip of loose words": (("[L2, R2]", "[L2, 3]"),),
    "places that do not match": (("stringing:", "places_mm: [1, unknown]\nstringing:"),),
    "people": (
        ("other-handle, on: 2026-10-12}", "b, on: 2031-02-28}, {by: b}, {by: a-handle}"),
        ("year: 2024", "year: 2028"),
    ),
    "names twice": (("year: 2024", "aliases: [LAPWING 2O, Làpwing-20, other]"),),
    "a newton too many": (("28 lb", "180 N"),),
    "nothing of the right kind": (
        ("format: 1", "format: 2"),
        ("name: Lapwing 20", 'name: "  "'),
        ("maker: Saltmarsh Works", "makr: Saltmarsh Works"),
        ("sport: badminton", "sport: badmington"),
        ("year: 2024", "year: 1800"),
        ("[186, 244]", "[0, 1000.5, 3]"),
        ("[674, 206]", "[674, unknown]"),
        ("rim_depth_mm: 9.4", "rim_depth_mm: deep"),
        ("mains: 6\ncrosses: 5", "mains: 6.5\ncrosses: 61"),
        ("{mains: 7.0, crosses: 50}", "{mains: 0, cross: 2}"),
        ("{pieces: 2, tie_offs: [R8, L8, R4, L4]}", "{pieces: 3, first_cross: left, tie_offs: [8, R4-R5]}"),
        ("default: barrel-21", "default: 21"),
        ("- {name: crown strip", "- {nam: crown strip"),
        ("tension_limit: 28 lb", "tension_limit: 28lb"),
        ("on: 2026-10-04", "on: 2026-02-30"),
        ("[{by: other-handle, on: 2026-10-12}]", "{by: Other Handle}"),
    ),
    "too many and too few": (
        ("year: 2024", f"aliases: [{', '.join(['a'] * 21)}]\nvariant_of: {'a' * 61}"),
        ("[186, 244]", "[186]"),
        ("by: a-handle", f"by: {'a' * 41}"),
        ("name: Lapwing 20", f"name: {'ä' * 81}"),
    ),
    "nothing where something must be": (
        ("name: Lapwing 20", "name: null"),
        ("head: {outline: ellipse, inside_mm: [186, 244]}", "head: []"),
        ("bore_mm: {default: 2.1, 2.7: [8]}", "bore_mm: null"),
        ("confirmed:", "note: true\nconfirmed:"),
        ("strips:", "left: 3\nstrips:"),
    ),
}
