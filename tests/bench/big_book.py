"""Books of any size for tests of scale: invented frames and parts, the same for the same seed."""

from __future__ import annotations

import random

from rimbook.book.model import (
    Address,
    Catalogue,
    Frame,
    Head,
    Hole,
    Measured,
    Part,
    PartKind,
    Pass,
    Side,
    Sport,
    Strip,
    Twin,
)

_SPORTS: tuple[Sport, ...] = ("badminton", "squash", "tennis", "racquetball")
_BORES = {
    "badminton": (2.0, 2.1, 2.2, 2.6, 2.7, 2.8),
    "squash": (2.7, 2.8, 2.9, 3.3, 3.4, 3.5),
    "tennis": (3.2, 3.3, 3.4, 4.0, 4.1, 4.2),
    "racquetball": (2.9, 3.0, 3.1, 3.5, 3.6, 3.7),
}
_KINDS: tuple[PartKind, ...] = ("single",) * 10 + ("wide",) * 4 + ("twin-even",) * 3 + ("strip",) * 3


def parts(count: int, seed: int = 1) -> Catalogue:
    """So many parts of all kinds and sizes."""
    chance = random.Random(seed)
    return {part.id: part for part in (_part(f"part-{number:04}", chance) for number in range(count))}


def frames(count: int, catalogue: Catalogue, seed: int = 2, holes: int = 76) -> list[Frame]:
    """So many frames with two bores, two rim depths in tenths of a mm, a strip and a twin each."""
    chance = random.Random(seed)
    by_kind = {kind: [part.id for part in catalogue.values() if part.kind == kind] for kind in set(_KINDS)}
    return [_frame(f"frame-{number:05}", chance, by_kind, holes) for number in range(count)]


def _part(name: str, chance: random.Random) -> Part:
    kind = chance.choice(_KINDS)
    bore = chance.choice(_BORES[chance.choice(_SPORTS)])
    barrel = round(bore - chance.choice((0.1, 0.05, 0.05, 0.0)), 2)
    return Part(
        name,
        name,
        kind,
        barrel_mm=barrel,
        bore_mm=round(barrel * chance.choice((0.60, 0.65, 0.70)), 1),
        length_mm=(chance.randrange(90, 145, 5) / 10,),
        flange_mm=round(barrel + 2.2, 2),
        pitch_mm=chance.randrange(60, 130) / 10 if kind == "twin-even" else None,
        tolerance_mm=0.05,
        posts=chance.randrange(6, 20, 2) if kind == "strip" else None,
        packs=chance.choice(((), (1,), (1, 25))),
        measured=Measured("a-handle", resolution_mm=chance.choice((0.02, 0.05))),
    )


def _frame(slug: str, chance: random.Random, by_kind: dict[PartKind, list[str]], holes: int) -> Frame:
    sport = chance.choice(_SPORTS)
    small, wide = sorted(chance.sample(_BORES[sport], 2))
    depth = chance.randrange(85, 130) / 10
    deeper = depth + chance.randrange(5, 25) / 10
    single, other = chance.choice(by_kind["single"]), chance.choice(by_kind["wide"])
    half = holes // 2
    placed = []
    for index in range(holes):
        side: Side = "R" if index < half else "L"
        number = index + 1 if index < half else holes - index
        shared = number in (9, 12, half - 8)
        in_twin = side == "R" and number in (half - 1, half - 2)
        placed.append(
            Hole(
                Address(side, number),
                (Pass("m", 1), Pass("c", 1)) if shared else (Pass("m", 1),),
                bore_mm=wide if shared else small,
                rim_depth_mm=deeper if number > half - 5 else depth,
                part=other if shared else single,
                strip=0 if side == "R" and number <= 8 else None,
                twin=0 if in_twin else None,
                tie_off=number == 12,
            )
        )
    strip = Strip("crown strip", tuple(Address("R", n) for n in range(1, 9)), chance.choice(by_kind["strip"]))
    twin = Twin((Address("R", half - 2), Address("R", half - 1)), chance.choice(by_kind["twin-even"]))
    return Frame(
        slug,
        slug,
        "Invented",
        sport,
        Head("ellipse", 186, 244),
        22,
        21,
        tuple(placed),
        (strip,),
        (twin,),
        measured=Measured("a-handle", resolution_mm=chance.choice((0.02, 0.05, 0.1))),
    )
