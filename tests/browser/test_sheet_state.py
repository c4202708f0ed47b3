"""Marks, sweeps, sides, undoing, and two tabs: every way to change a sheet gives a new one."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.sheet_frames import small_frame
from tests.browser.small_site import look_inside
from tests.watch import watched_page

ORDER = [each["address"] for each in small_frame()["holes"]]
STATE = [
    "EMPTY",
    "mark",
    "again",
    "restIsSound",
    "sweep",
    "opposite",
    "mirror",
    "look",
    "work",
    "settle",
    "isBlank",
]


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {"sheet_state": STATE, "sheet_undo": ["begin", "step", "undo", "redo"], "sheet_merge": ["merge"]},
        )
        page.evaluate("(order) => { globalThis.order = order; }", ORDER)
        yield page
    assert faults == []


def run(page: Page, script: str, given: Any = None) -> Any:
    return page.evaluate(f"(given) => {{ const {{ EMPTY, mark }} = inside; {script} }}", given)


def mark(seen: str, turns: int = 0) -> dict[str, Any]:
    return {"seen": seen, "turns": turns}


def test_marking_gives_a_new_sheet_and_leaves_the_old_one(inside: Page) -> None:
    after, before = run(
        inside, "return [mark(EMPTY, ['R1', 'R2'], { seen: 'split', turns: 3 }).marks, EMPTY.marks];"
    )
    assert after == {"R1": mark("split"), "R2": mark("split")}
    assert before == {}


def test_turns_belong_to_a_groove_and_stay_sensible(inside: Page) -> None:
    turns = run(
        inside,
        """const turned = (turns) => mark(EMPTY, ['R1'], { seen: 'grooved', turns }).marks.R1.turns;
        return [0, 2, -1, 99, 1.5].map(turned);""",
    )
    assert turns == [0, 2, 0, 9, 0]


def test_a_mark_can_be_taken_away(inside: Page) -> None:
    assert (
        run(inside, "return mark(mark(EMPTY, ['R1'], { seen: 'low', turns: 0 }), ['R1'], null).marks;") == {}
    )


def test_the_same_as_last(inside: Page) -> None:
    script = """
      const one = mark(EMPTY, ['R4'], { seen: 'grooved', turns: 2 });
      const rest = inside.again(inside.restIsSound(one, ['R1', 'R4']), ['R1']).marks.R1;
      return [inside.again(one, ['L4', 'R5']).marks, inside.again(EMPTY, ['L4']).marks, rest];
    """
    after, none, rest = run(inside, script)
    assert rest == mark("grooved", 2)
    assert after == dict.fromkeys(("R4", "L4", "R5"), mark("grooved", 2))
    assert none == {}


def test_the_rest_is_sound(inside: Page) -> None:
    marks = run(
        inside, "return inside.restIsSound(mark(EMPTY, ['R3'], { seen: 'split', turns: 0 }), order).marks;"
    )
    assert marks == {address: mark("split" if address == "R3" else "sound") for address in ORDER}


@pytest.mark.parametrize(
    ("start", "end", "holes"),
    [
        ("R2", "R4", ["R2", "R3", "R4"]),
        ("R4", "R2", ["R4", "R3", "R2"]),
        ("R2", "L2", ["R2", "R1", "L1", "L2"]),
        ("L5", "R6", ["L5", "L6", "R6"]),
        ("R5", "R5", ["R5"]),
        ("R1", "L6", ["R1", "R2", "R3", "R4", "R5", "R6", "L6"]),
        ("R1", "R9", []),
    ],
)
def test_a_sweep_takes_the_shorter_way_round(inside: Page, start: str, end: str, holes: list[str]) -> None:
    assert run(inside, "return inside.sweep(order, ...given);", [start, end]) == holes


def test_one_side_is_copied_to_the_other(inside: Page) -> None:
    script = """
      const right = mark(EMPTY, ['R2', 'R5'], { seen: 'split', turns: 0 });
      const sheet = mark(right, ['L2', 'L4'], { seen: 'low', turns: 0 });
      const uneven = order.filter((address) => address !== 'L5');
      const { sheet: after, without } = inside.mirror(sheet, uneven, 'R');
      return [after.marks, without, inside.opposite(uneven, 'R5'), inside.opposite(uneven, 'L4')];
    """
    marks, without, none, other = run(inside, script)
    assert marks == {"R2": mark("split"), "R5": mark("split"), "L2": mark("split"), "L4": mark("low")}
    assert without == ["R5"]
    assert none is None
    assert other == "R4"


def test_frame_check_and_way_of_working(inside: Page) -> None:
    script = """
      const seen = inside.look(EMPTY, 'crack', 'none');
      const left = (minutes) => inside.work(seen, 'against the clock', minutes).minutes;
      const none = inside.work(seen, 'unhurried', 12).minutes;
      return [seen.checks, [12.4, -3, 9999, null, NaN].map(left), none, ...[EMPTY, seen].map(inside.isBlank)];
    """
    checks, minutes, none, blank, looked = run(inside, script)
    assert checks == {"crack": "none", "edge": "not looked", "crushed": "not looked"}
    assert minutes == [12, 0, 240, None, None]
    assert none is None
    assert blank
    assert not looked


def test_undo_and_redo(inside: Page) -> None:
    script = """
      const { begin, step, undo, redo } = inside;
      const one = step(begin(EMPTY), mark(EMPTY, ['R1'], { seen: 'low', turns: 0 }));
      const two = step(one, mark(one.now, ['R2'], { seen: 'low', turns: 0 }));
      const back = undo(undo(two));
      const other = step(undo(two), mark(one.now, ['R3'], { seen: 'low', turns: 0 }));
      const all = [two, back, redo(redo(back)), undo(back), redo(two), redo(other)];
      return all.map(({ now }) => Object.keys(now.marks));
    """
    two, back, again, further, no_redo, other = run(inside, script)
    assert two == again == no_redo == ["R1", "R2"]
    assert back == further == []
    assert other == ["R1", "R3"]


def test_undo_reaches_two_hundred_steps(inside: Page) -> None:
    script = """
      let history = inside.begin(EMPTY);
      for (let turns = 0; turns < 250; turns++) {
        history = inside.step(history, mark(EMPTY, ['R1'], { seen: 'grooved', turns: turns % 9 }));
      }
      let steps = -1;
      for (let last = null; history !== last; steps++) [last, history] = [history, inside.undo(history)];
      return steps;
    """
    assert run(inside, script) == 200


def test_two_tabs_lose_nothing(inside: Page) -> None:
    """What only one has changed is kept, hole by hole, whatever both do."""
    random = Random(2)
    kinds = [None, mark("sound"), mark("split"), mark("grooved", 1), mark("grooved", 2)]
    for _ in range(200):
        base, mine, theirs = ({a: random.choice(kinds) for a in ORDER} for _ in range(3))
        for address in ORDER:
            if random.random() < 0.6:
                mine[address] = base[address]
            if random.random() < 0.6:
                theirs[address] = base[address]
        given = [{a: m for a, m in marks.items() if m} for marks in (base, mine, theirs)]
        found = run(inside, "return inside.merge(...given.map((marks) => ({ ...EMPTY, marks })));", given)
        for address in ORDER:
            changed = mine[address] != base[address]
            kept = mine[address] if changed else theirs[address]
            assert found["sheet"]["marks"].get(address) == kept
        clashes = [a for a in ORDER if base[a] != mine[a] != theirs[a] != base[a]]
        assert sorted(each["address"] for each in found["clashes"]) == sorted(clashes)
        assert all(each["mine"] == mine[each["address"]] for each in found["clashes"])


@pytest.mark.parametrize(
    ("base", "mine", "theirs", "kept"),
    [
        ("not looked", "none", "not looked", "none"),
        ("not looked", "not looked", "found", "found"),
        ("not looked", "none", "found", "found"),
        ("found", "none", "found", "none"),
        ("found", "found", "none", "none"),
    ],
)
def test_of_two_checks_the_graver_stays(inside: Page, base: str, mine: str, theirs: str, kept: str) -> None:
    script = (
        "return inside.merge(...given.map((found) => inside.look(EMPTY, 'crack', found))).sheet.checks.crack;"
    )
    assert run(inside, script, [base, mine, theirs]) == kept


def test_a_doubt_that_one_tab_settles_is_settled(inside: Page) -> None:
    script = """
      const split = { seen: 'split', turns: 0 };
      const doubts = ['R1', 'R2'].map((from) => ({ mark: split, from, to: from, code: 'xx' }));
      const base = { ...EMPTY, doubts };
      const mine = inside.settle(base, doubts[0], ['R4']);
      const { sheet } = inside.merge(base, mine, { ...base, doubts: doubts.map((each) => ({ ...each })) });
      return [sheet.marks, sheet.doubts.map(({ from }) => from), inside.settle(base, doubts[1], []).marks];
    """
    marks, doubts, dropped = run(inside, script)
    assert marks == {"R4": mark("split")}
    assert doubts == ["R2"]
    assert dropped == {}
