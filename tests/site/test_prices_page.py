"""The page of prices as it is written, and the data that it is given."""

from __future__ import annotations

import json
import re

from lxml import html

from rimbook.site.pages import Asset, Page
from rimbook.site.prices_data import PRICES_FILE, prices_data
from rimbook.site.scripts import script_tag
from tests.site.sample import demo_book, demo_site


def test_the_page_stands_without_its_script() -> None:
    page = demo_site()["prices/index.html"]
    assert isinstance(page, Page)
    tree = html.fromstring(f"<main>{page.body}</main>")
    (host,) = tree.xpath("//*[@data-rb-prices]")
    assert host.get("data-rb-root") == "../"
    assert "needs JavaScript" in host.text_content()
    assert host.xpath(".//a/@href") == ["../parts/index.html"]


def test_the_page_loads_its_own_script_and_a_purchase_has_one_too() -> None:
    assert script_tag("prices", "../") == '<script defer src="../assets/scripts/prices.js"></script>'
    for name in ("prices", "buy_worker"):
        assert isinstance(demo_site()[f"assets/scripts/{name}.js"], Asset)


def test_the_data_are_one_script() -> None:
    file = demo_site()[PRICES_FILE]
    assert isinstance(file, Asset)
    written = re.fullmatch(r'rimbook\.put\("prices",(.*)\);\n', file.data.decode())
    assert written
    assert json.loads(written[1]) == prices_data(demo_book().parts)


def test_the_invented_list_has_every_pack_and_a_sensible_price() -> None:
    """The larger the pack the cheaper a piece, and a set costs less than what it holds, bought singly."""
    parts = demo_book().parts
    sold = prices_data(parts)["example"]["sold"]
    assert [(row["part"], row["count"]) for row in sold] == [
        (part.id, count) for part in parts.values() for count in part.packs
    ]
    each = {(row["part"], row["count"]): row["price"] / row["count"] for row in sold}
    for (part, count), price in each.items():
        assert 0 < price < 100_00
        smaller = [own for (other, n), own in each.items() if other == part and n < count]
        assert all(price < own for own in smaller)


def test_no_page_of_the_book_holds_a_price_of_the_list() -> None:
    """A price is never published with a map: only the page of prices knows even the invented ones."""
    sellers = {row["seller"] for row in prices_data(demo_book().parts)["example"]["sold"]}
    for path, each in demo_site().items():
        if path == PRICES_FILE or not path.endswith((".json", ".csv", ".html", ".js")):
            continue
        text = each.body if isinstance(each, Page) else each.data.decode()
        assert not any(seller in text for seller in sellers), path
