"""Parts and sets, names, variants and dates."""

from __future__ import annotations

import pytest

from rimbook.book.rules.look_alike import folded, forms
from tests.book.rules.small_book import MAP, changed, found, loaded, map_with, parts_with, said


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        (
            "flange_mm: 4.2",
            "flange_mm: 2.0",
            "barrel-21 has a flange of 2 mm on a barrel of 2.05 mm; it would slip through the bore.",
        ),
        (
            "bore_mm: 1.3\n",
            "bore_mm: 2.05\n",
            "barrel-21 has an opening of 2.05 mm in a barrel of 2.05 mm.",
        ),
        (
            "pitch_mm: 7.0",
            "pitch_mm: 1.5",
            "twin-21 has posts of 2.05 mm only 1.5 mm apart; they would overlap.",
        ),
    ],
)
def test_sizes_that_cannot_be(old: str, new: str, message: str) -> None:
    assert said("part-sizes", parts_with((old, new))) == [message]


@pytest.mark.parametrize(
    ("kind", "message"),
    [
        ("twin-uneven, length_mm: 9", "twin-21 is an uneven twin and has 2 lengths, not 1."),
        (
            "twin-uneven, length_mm: [9, 9]",
            "twin-21 is an uneven twin, but both posts have the same length.",
        ),
        ("twin-even, length_mm: [9, 12]", "twin-21 is an even twin and has 1 length, not 2."),
        ("twin-even, posts: 2", "twin-21 is an even twin; posts belongs to a strip."),
        ("twin-even, contains: {barrel-21: 4}", "twin-21 is an even twin; contains belongs to a set."),
    ],
)
def test_keys_that_do_not_suit_the_kind(kind: str, message: str) -> None:
    assert said("part-keys-suit-kind", parts_with(("kind: twin-even", f"kind: {kind}"))) == [message]


def test_a_set_has_no_size() -> None:
    assert said("part-keys-suit-kind", parts_with(("kind: set", "kind: set\n    flange_mm: 4"))) == [
        "lapwing-set is a set; flange_mm belongs to other kinds."
    ]


def test_a_set_holds_something_and_no_set() -> None:
    contents = "{barrel-21: 10, barrel-27: 2, twin-21: 2, lapwing-crown: 1}"
    assert said("set-contents", parts_with((contents, "{}"))) == ["The set lapwing-set contains nothing."]
    assert said("set-contents", parts_with((contents, "{lapwing-set: 1}"))) == [
        "The set lapwing-set contains the set lapwing-set."
    ]


def test_a_set_lacks_each_part_by_its_number_a_strip_and_a_twin_counting_once() -> None:
    contents = "{barrel-21: 10, barrel-27: 2, twin-21: 2, lapwing-crown: 1}"
    (message,) = said("set-holds-enough", parts_with((contents, "{barrel-21: 9, barrel-27: 4}")))
    assert message == (
        "The set lapwing-set does not fill lapwing-20: "
        "it lacks 1 × barrel-21, 1 × lapwing-crown and 2 × twin-21."
    )


def test_unknown_and_misspelt_parts_of_a_frame_are_not_asked_of_a_set() -> None:
    assert said("set-holds-enough", map_with(("default: barrel-21", "default: unknown"))) == []
    assert said("set-holds-enough", map_with(("default: barrel-21", "default: barel-21"))) == []


@pytest.mark.parametrize(
    ("name", "other"),
    [
        ("Lapwing 20", "lapwing 20"),
        ("Lapwing 20", "LAPWING-20"),
        ("Lapwing 20", "Lарwing 20"),  # with Cyrillic а and р
        ("Lapwing 10", "Lapwing 1O"),
        ("Lapwing Ö", "Lapwing O"),
    ],
)
def test_names_that_look_alike_fold_into_one(name: str, other: str) -> None:
    assert name != other
    assert folded(name) == folded(other)


# Single letters of Greek and Cyrillic and the Latin ones they are taken for: Unicode Technical Standard #39,
# confusables.txt. It gives l for letters that look like a capital I.
CONFUSABLE = dict(
    zip(
        "ͿΑΒΕΖΗΙΚΜΝΟΡΤΥΧαγινορσυϜϳϺЅІЈАВЕКМНОРСТУХЬагеорсухѕіјѡѴѵҮүһҽӀӏԁԌԛԜԝᴦꙇ",
        "JABEZHIKMNOPTYXayivopouFjMSIJABEKMHOPCTYXbareopcyxsijwVvYyheIidGqWwri",
        strict=True,
    )
)


@pytest.mark.parametrize(("letter", "latin"), CONFUSABLE.items(), ids=lambda each: f"U+{ord(each):04X}")
def test_a_letter_of_another_script_is_taken_for_what_it_looks_like(letter: str, latin: str) -> None:
    assert set(forms(f"Plover {letter} 76")) & set(forms(f"Plover {latin} 76"))


def test_a_greek_name_is_the_same_in_capitals() -> None:
    assert set(forms("ΝΗΣΟΣ")) & set(forms("νησος"))
    assert set(forms("ΝΕΟΝ 76")) & set(forms("NEON 76"))


@pytest.mark.parametrize(
    ("name", "scripts"),
    [
        ("Рlover 76", "Cyrillic and Latin"),
        ("Plοver", "Greek and Latin"),
        ("αв", "Cyrillic and Greek"),
        ("Plover Чайка", None),
        ("Plover 10 µm", None),
        ("Ünïcödé ﷺ 牛", None),
    ],
)
def test_a_word_of_several_scripts_is_told(name: str, scripts: str | None) -> None:
    book = map_with(("name: Lapwing 20", f"name: {name}"))
    told = said("mixed-scripts", book)
    assert told == (
        [] if scripts is None else [f"“{name.split()[0]}” has letters of several scripts: {scripts}."]
    )


@pytest.mark.parametrize(("name", "other"), [("Lapwing L", "Lapwing 1"), ("Lapwing 76", "Lapwing 76 S")])
def test_names_that_a_reader_tells_apart_stay_apart(name: str, other: str) -> None:
    assert folded(name) != folded(other)


def named(slug_year: int | None, *swaps: tuple[str, str]) -> list[tuple[str, str]]:
    year = f"year: {slug_year}" if slug_year else "note: no year"
    book = loaded(more_maps={"other-20": changed(MAP, ("year: 2024", year), *swaps)})
    return [(problem.severity, problem.message) for problem in found("same-name", book)]


def test_a_maker_tells_frames_of_one_name_apart_by_their_year() -> None:
    assert named(2025) == []
    assert named(None) == [("error", "“Lapwing 20” is already the name of lapwing-20.")]


def test_two_makers_may_share_a_name_but_it_is_told() -> None:
    assert named(2025, ("Saltmarsh Works", "Another Yard")) == [
        ("warning", "“Lapwing 20” is already the name of lapwing-20.")
    ]


def test_an_alias_counts_as_a_name() -> None:
    book = loaded(
        more_maps={
            "other-20": changed(MAP, ("name: Lapwing 20", "name: Other 20\naliases: [other-20, lapwing20]"))
        }
    )
    assert [(problem.severity, problem.line, problem.message) for problem in found("same-name", book)] == [
        ("note", 3, "“Other 20” goes by “other-20” twice."),
        ("error", 3, "“lapwing20” is already the name of lapwing-20, written “Lapwing 20”."),
    ]


def variants(**parents: str) -> list[str]:
    """What is said of maps that are variants of each other as told."""
    maps = {
        slug.replace("_", "-"): changed(MAP, ("Lapwing 20", slug), ("year: 2024", f"variant_of: {parent}"))
        for slug, parent in parents.items()
    }
    return said("variant-of", loaded(more_maps=maps))


def test_a_variant_of_a_known_frame_is_welcome() -> None:
    assert variants(second="lapwing-20", third="second") == []


def test_a_frame_is_no_variant_of_itself_nor_in_a_ring() -> None:
    assert variants(second="second") == ["second cannot be a variant of itself."]
    assert variants(second="third", third="second") == [
        "These frames are variants of each other in a ring: second, third, second.",
        "These frames are variants of each other in a ring: third, second, third.",
    ]
    assert variants(second="third", third="fourth", fourth="third")[0].startswith("These frames")


def test_a_variant_has_the_maker_of_its_sister() -> None:
    other = changed(
        MAP,
        ("Lapwing 20", "Other"),
        ("Saltmarsh Works", "Another Yard"),
        ("year: 2024", "variant_of: lapwing-20"),
    )
    assert said("variant-of", loaded(more_maps={"other": other})) == [
        "lapwing-20 is made by “Saltmarsh Works”, not by “Another Yard”."
    ]


@pytest.mark.parametrize(("day", "told"), [("2026-11-01", 0), ("2026-11-02", 0), ("2026-11-03", 1)])
def test_tomorrow_is_already_somewhere_but_the_day_after_is_not(day: str, told: int) -> None:
    assert len(said("no-future-dates", map_with(("2026-10-12", day)))) == told


def test_dates_of_parts_and_years_are_looked_at_too() -> None:
    measured = ("packs: [1, 25]", "packs: [1, 25]\n    measured: {by: a-handle, on: 2027-01-01}")
    (problem,) = found("no-future-dates", parts_with(measured))
    assert problem.place == "frames/parts/common.yaml:11:34"
    assert said("no-future-dates", map_with(("year: 2024", "year: 2028"))) == ["The year 2028 is far off."]
    assert said("no-future-dates", map_with(("year: 2024", "year: 2027"))) == []


def test_a_person_confirms_once() -> None:
    book = map_with(("on: 2026-10-12}]", "on: 2026-10-12}, {by: other-handle}]"))
    assert said("someone-else-confirmed", book) == ["other-handle confirmed this map already."]


@pytest.mark.parametrize("limit", ["28 lb", "12.5 kg", "120 N", "40 lb"])
def test_a_usual_tension_limit_is_left_alone(limit: str) -> None:
    assert said("tension-plausible", map_with(("28 lb", limit))) == []


def test_a_part_inside_a_set_alone_is_used() -> None:
    spare = "format: 1\nparts:\n  spare-pin: {name: Spare, kind: single, packs: [1]}\n"
    assert said("unused-part", loaded(more_parts=spare)) == [
        "spare-pin sits in no frame and comes in no set."
    ]
    with_set = f"{spare}  bag: {{name: Bag, kind: set, packs: [1], contains: {{spare-pin: 2}}}}\n"
    assert said("unused-part", loaded(more_parts=with_set)) == []
