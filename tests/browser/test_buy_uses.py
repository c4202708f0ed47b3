"""Which piece goes where: the best parts first, by another way as well, and what lacks lacks last."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from random import Random
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Browser, Page
from scipy.optimize import linear_sum_assignment

from tests.browser.buy_cases import need
from tests.browser.small_site import look_inside
from tests.watch import watched_page

DEAR = 1000


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"buy_uses": ["deal"]})
        yield page
    assert faults == []


def deal(page: Page, needs: list[dict[str, Any]], supply: dict[str, int]) -> Any:
    return page.evaluate("(all) => inside.deal(...all)", [needs, supply])


def cost(needs: list[dict[str, Any]], uses: list[dict[str, Any]]) -> int:
    places = {(each["id"], part): at for each in needs for at, part in enumerate(each["parts"])}
    return sum(places[use["need"], use["part"]] * use["count"] for use in uses)


def test_the_places_on_the_lists_add_up_to_the_least(inside: Page) -> None:
    """Against the assignment of single pieces by scipy."""
    random = Random(7)
    seen = 0
    for _ in range(120):
        parts = [f"p{i}" for i in range(random.randint(1, 6))]
        supply = {part: random.randint(0, 8) for part in parts}
        needs = [
            need(f"n{i}", random.randint(0, 5), *random.sample(parts, random.randint(1, len(parts))))
            for i in range(random.randint(1, 5))
        ]
        places = [each for each in needs for _ in range(each["count"])]
        pieces = [part for part, count in supply.items() for _ in range(count)]
        if not places or not pieces:
            continue
        table = np.array(
            [
                [each["parts"].index(part) if part in each["parts"] else DEAR for part in pieces]
                for each in places
            ]
        )
        rows, columns = linear_sum_assignment(table)
        found = deal(inside, needs, supply)
        met = int((table[rows, columns] < DEAR).sum())
        assert sum(use["count"] for use in found["uses"]) == met
        used: Counter[str] = Counter()
        for use in found["uses"]:
            used[use["part"]] += use["count"]
        assert found["left"] == {part: count - used[part] for part, count in supply.items()}
        if met == len(places):
            seen += 1
            assert cost(needs, found["uses"]) == int(table[rows, columns].sum())
    assert seen > 30


def test_what_comes_first_lacks_last(inside: Page) -> None:
    needs = [need("pressing", 2, "a"), need("other", 2, "a", "b")]
    found = deal(inside, needs, {"a": 2, "b": 1})
    assert found["uses"] == [
        {"need": "pressing", "part": "a", "count": 2},
        {"need": "other", "part": "b", "count": 1},
    ]
    assert found["left"] == {"a": 0, "b": 0}


def test_a_need_gives_way_where_another_has_no_choice(inside: Page) -> None:
    needs = [need("choosy", 1, "a", "b"), need("bound", 1, "a")]
    found = deal(inside, needs, {"a": 1, "b": 1})
    assert {use["need"]: use["part"] for use in found["uses"]} == {"choosy": "b", "bound": "a"}
