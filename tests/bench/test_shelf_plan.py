"""The plan of a shelf: demand by place, drawers, sets, stock, what is lacking; and its promise, played."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest

from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.bench.shelf_compare import SERVICES, compared, curve
from rimbook.bench.shelf_files import read_prices, read_used
from rimbook.bench.shelf_levels import Load, Spare, lasts, least_units, levels, short_a_year
from rimbook.bench.shelf_packs import packs_for
from rimbook.bench.shelf_plan import ShelfPlan, plan, stocked
from rimbook.bench.shelf_poisson import at_most, enough, exactly
from rimbook.bench.shelf_terms import ASSUMED_SHARES, Terms, terms_of
from rimbook.bench.shelf_update import Used, learn
from rimbook.book.model import Book, Club, ClubFrame, Shelf
from tests.bench.shelf_seasons import seasons
from tests.site.sample import demo_book

ALL = dict.fromkeys(ASSUMED_SHARES, 0.5)
TERMS = Terms(3, 4, 0.95, ALL)


@cache
def answers() -> Answers:
    return Answers(index_parts(demo_book().parts))


def club(*frames: ClubFrame, stock: dict[str, int] | None = None) -> Club:
    return Club("test", "Test", frames, shelf=Shelf(3, 4, 0.95, ALL, stock or {}))


def planned(one: Club, terms: Terms = TERMS, book: Book | None = None) -> ShelfPlan:
    book = book or demo_book()
    return plan(
        one, book.frames, Answers(index_parts(book.parts)) if book is not demo_book() else answers(), terms
    )


def test_all_that_a_kind_is_asked_for_is_dealt_out() -> None:
    """Half of 40 restrings renew one single: 20 a year over all its places, whatever their drawers."""
    shelf = planned(club(ClubFrame("plover-76", 9, 40)))
    for kind in ("single", "wide", "twin-even", "strip"):
        asked = [
            each
            for drawer in shelf.drawers
            for each in drawer.filled.asked
            if demo_book().parts[each.part].kind == kind
        ]
        assert sum(each.a_year for each in asked) == pytest.approx(20)
    assert shelf.unplanned == ()


def test_a_frame_counts_once_however_many_there_are() -> None:
    """The restrings are those of all rackets together."""
    one, many = (planned(club(ClubFrame("plover-76", count, 40))) for count in (1, 30))
    assert one == many


def test_a_set_is_enough_when_each_of_its_parts_is() -> None:
    load = Load({"side": 4.0, "throat": 2.0}, {"side": 2, "throat": 1})
    for units in range(6):
        product = at_most(2 * units, 0.8) * at_most(units, 0.4)
        assert lasts(units, load, 0.2) == pytest.approx(product, rel=1e-12)
    least = least_units(load, 0.2, 0.95)
    assert lasts(least - 1, load, 0.2) < 0.95 <= lasts(least, load, 0.2)
    loose = replace(load, loose={"side": 1, "throat": 2})
    assert lasts(0, loose, 0.2) == pytest.approx(at_most(1, 0.8) * at_most(2, 0.4), rel=1e-12)


def test_a_part_that_comes_only_in_a_set_is_kept_as_the_set() -> None:
    shelf = planned(club(ClubFrame("plover-76", 1, 40)))
    (drawer,) = [each for each in shelf.drawers if each.item == "plover-set"]
    assert drawer.filled.load.a_year == {"plover-crown": 20.0}
    assert drawer.filled.load.a_unit == {"plover-crown": 1}


def test_spares_are_used_up_first_and_what_they_lack_is_taken_out_of_the_drawer() -> None:
    load = Load({"own": 2.0}, {"own": 1}, spares=((Spare(1, 3.0),),))
    expected = sum(
        exactly(rest, 2.0) * exactly(there, 3.0)
        for rest in range(40)
        for there in range(40)
        if rest + max(0, there - 1) <= 4
    )
    assert lasts(4, load, 1.0) == pytest.approx(expected, rel=1e-12)
    assert least_units(load, 1.0, 0.95) < least_units(Load({"own": 5.0}, {"own": 1}), 1.0, 0.95)


def test_of_two_spares_that_which_serves_fewer_places_comes_first_at_them() -> None:
    """By Hall's theorem: of all places, and of those that one serves alone, the greater lack."""
    load = Load({"own": 0.5}, {"own": 1}, spares=((Spare(2, 3.0), Spare(1, 1.0)),))
    expected = sum(
        exactly(rest, 0.5) * exactly(both, 3.0) * exactly(wide_alone, 1.0)
        for rest in range(30)
        for both in range(30)
        for wide_alone in range(30)
        if rest + max(0, wide_alone - 1, wide_alone + both - 3) <= 2
    )
    assert lasts(2, load, 1.0) == pytest.approx(expected, rel=1e-12)


def test_spares_for_the_same_places_count_together() -> None:
    """With pieces of a second substitute the drawer lasts longer, and none of them is left uncounted."""
    frames = (ClubFrame("plover-76", 1, 40), ClubFrame("pipit-76", 1, 40), ClubFrame("whimbrel-72", 1, 40))

    def held(stock: dict[str, int]) -> ShelfPlan:
        return planned(club(*frames, stock=stock))

    def chances(shelf: ShelfPlan) -> dict[str, float]:
        covered = shelf.terms.cover_years
        return {each.item: lasts(each.stock.units, each.stock.load, covered) for each in shelf.drawers}

    one, two = held({"barrel-20": 2}), held({"barrel-20": 2, "barrel-21-low": 2})
    before, after = chances(one), chances(two)
    assert all(after[item] >= before[item] for item in before)
    assert any(after[item] > before[item] for item in before)
    assert two.idle == {}


def test_what_a_frame_lacks_is_named_and_never_guessed() -> None:
    shelf = planned(club(ClubFrame("pipit-76", 1, 40), ClubFrame("gimlet-64")))
    told = {(each.frame, each.why): each for each in shelf.unplanned}
    assert set(told) == {("pipit-76", "part unknown"), ("gimlet-64", "restrings unknown")}
    holes = told["pipit-76", "part unknown"].holes
    frame = demo_book().frames["pipit-76"]
    assert {hole.address for hole in frame.drilled if hole.part is None} <= set(holes)
    kept = {address for drawer in shelf.drawers for each in drawer.filled.asked for address in each.holes}
    assert kept.isdisjoint(holes)


def test_an_unknown_bore_cannot_be_planned() -> None:
    book = demo_book()
    frame = book.frames["plover-76"]
    blind = replace(frame, holes=tuple(replace(hole, bore_mm=None) for hole in frame.holes))
    shelf = planned(club(ClubFrame("plover-76", 1, 40)), book=replace(book, frames={"plover-76": blind}))
    assert shelf.drawers == ()
    assert {each.why for each in shelf.unplanned} == {"bore unknown"}
    assert {address for each in shelf.unplanned for address in each.holes} == {
        hole.address for hole in frame.drilled
    }


def test_a_part_that_nobody_sells_is_named() -> None:
    book = demo_book()
    parts = {name: replace(part, packs=()) for name, part in book.parts.items()}
    shelf = planned(club(ClubFrame("plover-76", 1, 40)), book=replace(book, parts=parts))
    assert shelf.drawers == ()
    assert {each.why for each in shelf.unplanned} == {"not sold"}


def test_no_restrings_need_no_shelf() -> None:
    shelf = planned(club(ClubFrame("plover-76", 1, 0)))
    assert shelf.drawers
    assert all(drawer.levels.up_to == 0 and drawer.order is None for drawer in shelf.drawers)
    assert all(drawer.levels.short_a_year == 0 for drawer in shelf.drawers)


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"service": 0.0}, "between 0 and 1"),
        ({"service": 1.0}, "between 0 and 1"),
        ({"service": math.nan}, "between 0 and 1"),
        ({"shares": {"single": 1.01}}, "from 0 to 1"),
        ({"shares": {"single": -0.01}}, "from 0 to 1"),
        ({"lead_weeks": -1.0}, "from 0 to 520"),
        ({"review_weeks": math.inf}, "from 0 to 520"),
    ],
)
def test_terms_that_cannot_be(changes: dict[str, object], told: str) -> None:
    with pytest.raises(ValueError, match=told):
        replace(TERMS, **changes)  # type: ignore[arg-type]


def test_what_the_file_leaves_out_is_assumed_and_said_to_be() -> None:
    found = terms_of(Club("test", "Test", (), shelf=Shelf(service_level=0.9, shares={"strip": 0.2})))
    assert found.assumed == {"lead_time_weeks", "review_weeks", "single", "wide", "twin-even", "twin-uneven"}
    assert (found.service, found.shares["strip"]) == (0.9, 0.2)


def test_an_order_fills_up_and_only_urgent_ones_cannot_wait() -> None:
    for stock in range(6):
        (drawer,) = [
            each
            for each in planned(club(ClubFrame("plover-76", 1, 40), stock={"plover-set": stock})).drawers
            if each.item == "plover-set"
        ]
        lacking = drawer.levels.up_to - stock
        assert (drawer.order.units if drawer.order else 0) == max(0, lacking)
        assert bool(drawer.order and drawer.order.urgent) == (stock < drawer.levels.reorder)
        if drawer.order:
            assert drawer.order.before < TERMS.service <= drawer.order.after


def test_pooling_never_needs_more_drawers_and_obeys_the_closed_form() -> None:
    shelf = planned(demo_book().clubs["weir-lane"])
    found = compared(shelf, demo_book().parts)
    assert found.pooled.drawers <= found.by_part.drawers <= found.by_frame.drawers
    for drawer in shelf.drawers:
        if demo_book().parts[drawer.item].kind != "set":
            asked = sum(each.a_year for each in drawer.filled.asked)
            assert drawer.levels.up_to == enough(asked * 7 / 52, 0.95)
    units = [step.pooled.units for step in curve(shelf, demo_book().parts)]
    assert units == sorted(units)
    assert len(units) == len(SERVICES)


def test_what_is_short_a_year_is_the_limit_of_short_reviews() -> None:
    often = Terms(3, 0.001, 0.95, ALL)
    always = Terms(3, 0, 0.95, ALL)
    assert short_a_year(2, 20.0, often) == pytest.approx(short_a_year(2, 20.0, always), rel=1e-3)
    assert short_a_year(0, 20.0, always) == 20.0
    assert short_a_year(0, 20.0, often) == pytest.approx(20.0)


def test_packs() -> None:
    assert packs_for(47, [1, 25, 100]) == ((25, 1), (1, 22))
    assert packs_for(47, [25, 100]) == ((25, 2),)
    assert packs_for(47, [1, 25, 100], {1: 0.5, 25: 6.0, 100: 20.0}) == ((25, 2),)
    assert packs_for(47, [1, 25], {1: 0.1, 25: 6.0}) == ((1, 47),)
    assert packs_for(0, [1]) == ()
    assert packs_for(1_000_003, [1, 100])[0] == (100, 10_000)
    with pytest.raises(ValueError, match="no pack"):
        packs_for(3, [])


def test_a_season_of_counting_moves_rates_and_levels() -> None:
    parts = demo_book().parts
    shelf = planned(club(ClubFrame("plover-76", 1, 40)))
    filled, learned, unknown = learn(
        shelf.drawers, [Used("plover-crown", 41, 1.0), Used("no-such", 1, 1.0)], TERMS
    )
    (one,) = learned
    assert (one.prior.mean, one.posterior.mean) == (20.0, (20 + 41) / 2)
    assert one.new == levels(Load({"plover-crown": 30.5}, {"plover-crown": 1}), TERMS)
    assert one.new.up_to > one.old.up_to
    assert [each.part for each in unknown] == ["no-such"]
    after = stocked(shelf, filled, {}, parts)
    assert sum(each.a_year for drawer in after.drawers for each in drawer.filled.asked) == pytest.approx(
        sum(drawer.a_year for drawer in after.drawers)
    )


def test_files_of_a_shop_are_read_row_by_row() -> None:
    prices, faults = read_prices(
        "kind;part;count;price;currency;seller\r\nsold;barrel-20;25;6,50;EUR;a\r\nsold;barrel-20;1;x;EUR;a\r\n"
        "shelf;barrel-20;7;;;\r\nsold;barrel-20;0;1;EUR;\r\nsold;Bad Id;1;1;EUR;\r\n"
        "sold;barrel-20;1;1;USD;\r\nshort\r\n"
    )
    assert prices.packs == {"barrel-20": {25: 6.5}}
    assert prices.unit("barrel-20") == pytest.approx(0.26)
    assert prices.shelf == {"barrel-20": 7}
    assert [fault.row for fault in faults] == [3, 5, 6, 7, 8]
    used, faults = read_used("part,count,weeks\nbarrel-20,4,26\nbarrel-20,-1,\nbarrel-20,1,0\n")
    assert used == (Used("barrel-20", 4, 0.5),)
    assert [fault.row for fault in faults] == [3, 4]
    assert "lacks count" in read_used("part\n")[1][0].message


def test_the_promise_is_kept_over_a_thousand_seasons() -> None:
    """Within four standard errors of the chance that is shown, and so of the service level at least."""
    one = demo_book().clubs["weir-lane"]
    shelf = planned(one, terms_of(one))
    counted = seasons(one, shelf, demo_book().parts, count=1000, seed=20270301)
    for drawer in shelf.drawers:
        found = counted[drawer.item]
        assert abs(found.share - drawer.levels.chance) <= 4 * found.error + 1e-9, drawer.item
        assert found.share >= shelf.terms.service - 4 * found.error, drawer.item
