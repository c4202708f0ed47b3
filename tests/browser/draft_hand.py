"""A hand on the drafting page: what a person does there, and what they see."""

from __future__ import annotations

import re
from io import StringIO
from typing import Any

from playwright.sync_api import Locator, Page, expect
from ruamel.yaml import YAML


def go(page: Page, address: str) -> None:
    """Load the page anew, also where only what is behind the # differs."""
    page.goto("about:blank")
    page.goto(address)


def rows(page: Page) -> Locator:
    return page.get_by_role("listbox", name="Holes along the walk")


def here(page: Page) -> Locator:
    return page.locator(".rb-draft-hole-row.is-here")


def yaml_text(page: Page) -> str:
    return page.locator(".rb-draft-yaml pre").inner_text()


def written(page: Page) -> Any:
    return YAML(typ="safe", pure=True).load(StringIO(yaml_text(page)))


def sum_of(page: Page) -> Locator:
    return page.locator(".rb-draft-words a")


def said(page: Page) -> Locator:
    return page.locator(".rb-draft-said:not(:empty)")


def begin(page: Page, address: str, **others: str) -> None:
    """A proposed walk to work on."""
    page.goto(address)
    typed = {
        "Name": "Dunlin 76",
        "Maker": "Saltmarsh Works",
        "Mains": "22",
        "Crosses": "21",
        "Width of the line of holes, mm": "186",
        "Height of the line of holes, mm": "244",
        "Holes counted": "76",
    }
    for label, text in {**typed, **others}.items():
        page.get_by_label(label, exact=True).fill(text)
    page.get_by_role("button", name="Propose a walk").click()
    expect(rows(page)).to_be_focused()


def press(page: Page, keys: str) -> None:
    for key in keys.split():
        page.keyboard.press(key)


def to(page: Page, number: int) -> None:
    """To a hole of the list, by keys."""
    page.keyboard.press("Home")
    for _ in range(number - 1):
        page.keyboard.press("ArrowDown")


def mark(page: Page, first: int, last: int) -> None:
    to(page, first)
    for _ in range(last - first):
        page.keyboard.press("Shift+ArrowDown")


def tab_to(page: Page, label: str) -> None:
    """With the tabulator only, as far as it takes."""
    name = re.compile(rf"^{re.escape(label)}")
    wanted = [page.get_by_label(name), page.get_by_role("button", name=name)]
    for _ in range(90):
        page.keyboard.press("Tab")
        if any(
            each.evaluate("one => one === document.activeElement") for one in wanted for each in one.all()
        ):
            return
    raise AssertionError(f"No way to {label}.")
