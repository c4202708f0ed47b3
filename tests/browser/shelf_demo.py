"""The demo club as somebody would type it on the page of a shelf, and what the page says."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page, expect

from rimbook.book.model import Club
from tests.site.sample import demo_book

PAGE = "my-shelf/index.html"
CLUB_PAGE = "clubs/weir-lane/shelf/index.html"
PRICES = [
    {"part": "alder-bumper", "count": 1, "price": 480, "seller": "Tidewater"},
    {"part": "alder-bumper", "count": 1, "price": 520, "seller": "Quay"},
    {"part": "plover-set", "count": 1, "price": 1450, "seller": ""},
]


def demo_club() -> Club:
    return demo_book().clubs["weir-lane"]


def demo_shelf() -> dict[str, Any]:
    """What the page keeps on the device once the club's frames and terms are typed."""
    club = demo_club()
    assert club.shelf
    return {
        "format": 1,
        "frames": [
            {
                "slug": each.frame,
                "name": demo_book().frames[each.frame].name,
                "count": each.count,
                "restrings": each.restrings_per_year,
            }
            for each in club.frames
        ],
        "terms": {
            "lead": club.shelf.lead_time_weeks,
            "review": club.shelf.review_weeks,
            "service": club.shelf.service_level,
            "shares": dict(club.shelf.shares),
        },
        "used": [],
        "counted": False,
        "club": club.name,
    }


def demo_shop(sold: list[dict[str, Any]] | None = None) -> dict[str, Any]:
    """What the page of prices keeps once the club's stock is typed there."""
    club = demo_club()
    assert club.shelf
    stock = [{"part": part, "count": count, "price": None} for part, count in club.shelf.stock.items()]
    return {"format": 1, "list": {"currency": "EUR", "sold": sold or [], "shelf": stock}}


def opened(page: Page, top: str, shelf: Any = None, shop: Any = None, hash_: str = "") -> Page:
    """The page, with what is kept on the device where it is given, when the plan is told."""
    page.goto(f"{top}/parts/index.html")
    for name, value in (("shelf", shelf), ("shop", shop)):
        if value is not None:
            page.evaluate(
                "([name, value]) => localStorage.setItem(`rimbook.${name}`, JSON.stringify(value))",
                [name, value],
            )
    page.goto(f"{top}/{PAGE}{hash_}")
    settled(page)
    return page


def settled(page: Page) -> None:
    """Wait until the book is loaded and the plan is on the page."""
    expect(page.locator(".rb-my-shelf-told")).not_to_have_text("Loading the book …")
    expect(page.locator("#order > div")).not_to_be_empty()


def unfolded(page: Page) -> None:
    """Open what is folded away."""
    page.evaluate("document.querySelectorAll('.rb-my-shelf details').forEach((each) => (each.open = true))")


def kept(page: Page) -> Any:
    return page.evaluate("JSON.parse(localStorage.getItem('rimbook.shelf'))")


def texts(page: Page, selector: str) -> list[str]:
    """The words of each element, whether it is seen or not."""
    found: list[str] = page.evaluate(
        "(selector) => [...document.querySelectorAll(selector)].map((each) => each.textContent)", selector
    )
    return [" ".join(each.split()) for each in found]


def rows(page: Page, section: str) -> list[list[str]]:
    """The cells of each row of the tables in a section."""
    found: list[list[str]] = page.evaluate(
        """(section) => [...document.querySelectorAll(`${section} tbody tr`)].map((row) =>
          [...row.cells].map((cell) => cell.textContent.replace(/\\s+/g, " ").trim()))""",
        section,
    )
    return found
