"""Every page carries its Content-Security-Policy and holds nothing that it refuses.

That nothing fails under it in a browser is seen where every page is opened anyway: from a
server in test_access, from a folder in test_print. Both take any complaint for a fault.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from lxml import html
from playwright.sync_api import Browser, Page, expect

from rimbook.hosts.policy import META, POLICY, SCRIPT_FOLDER, offences, strict
from tests.watch import watched_page


def every_page(site: Path) -> list[Path]:
    found = sorted(site.rglob("*.html"))
    assert len(found) > 80
    return found


def test_every_page_begins_with_the_policy(built_site: Path, plain_site: Path) -> None:
    """The policy must come before anything it should rule, and right after the encoding."""
    for file in every_page(built_site) + every_page(plain_site):
        first, second, *_ = html.parse(file).getroot().findall("head/*")
        assert first.get("charset") == "utf-8", file
        assert (second.get("http-equiv"), second.get("content")) == ("Content-Security-Policy", POLICY), file


def test_no_page_holds_what_the_policy_refuses(built_site: Path, plain_site: Path) -> None:
    for file in every_page(built_site) + every_page(plain_site):
        tree = html.parse(file).getroot()
        assert tree.xpath("//@style | //style | //base | //*[@*[starts-with(name(), 'on')]]") == [], file
        assert set(tree.xpath("//script[not(@src)]/@type")) <= {"application/json"}, file
        assert not tree.xpath("//script[not(@src) and not(@type)]"), file
        assert offences(file.read_text("utf-8")) == [], file


def test_the_policy_allows_no_inline_script_no_eval_and_no_other_host() -> None:
    rules = dict(rule.split(" ", 1) for rule in POLICY.split("; "))
    assert rules["default-src"] == "'none'"
    allowed = {word for words in rules.values() for word in words.split()}
    assert allowed == {"'none'", "'self'", "data:", "blob:"}
    assert rules["script-src"] == rules["style-src"] == rules["connect-src"] == "'self'"
    # A photo to measure from is shown without leaving the device.
    assert [name for name, words in rules.items() if "blob:" in words] == ["img-src"]


def test_moved_scripts_are_one_file_for_the_same_text(built_site: Path) -> None:
    moved = [file.name for file in (built_site / SCRIPT_FOLDER).iterdir()]
    assert 0 < len(moved) < 12


@pytest.mark.parametrize("where", ["folder", "server"])
def test_the_palette_switches_and_is_remembered(
    page: Page, built_site: Path, site_url: str, where: str
) -> None:
    root = built_site.as_uri() if where == "folder" else site_url
    page.goto(f"{root}/frames/plover-76/index.html")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "default")
    page.locator("label[title='Switch to dark']").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    page.goto(f"{root}/regrommet.html")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    page.locator("label[title='Switch to light']").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "default")


@pytest.mark.parametrize(
    "inside",
    [
        "<p style='color: red'>red</p>",
        "<p onclick='alert(1)'>press</p>",
        "<script type='module'>1</script>",
        "<style>p { color: red }</style>",
    ],
)
def test_what_the_policy_refuses_is_named_and_would_be_seen(
    browser: Browser, tmp_path: Path, inside: str
) -> None:
    """The browser's complaint is what the tests above would catch, so it must really come."""
    head = f"<meta charset='utf-8'>{META}<link rel='icon' href='data:,'><title>A</title>"
    text = f"<!doctype html>{head}{inside}<p>A</p>"
    (tmp_path / "a.html").write_text(text, "utf-8")
    with watched_page(browser) as (page, faults):
        page.goto((tmp_path / "a.html").as_uri())
        page.locator("p").first.click()
    assert offences(text)
    assert "Content Security Policy" in faults[0]


def test_scripts_are_moved_in_order_and_run_again_from_files(browser: Browser, tmp_path: Path) -> None:
    body = "<script>window.seen = [1]</script><p>A</p><script>window.seen.push(2)</script>"
    text, files = strict(f"<!doctype html><meta charset='utf-8'><title>A</title>{body}", "../")
    assert offences(text) == []
    (tmp_path / "deep").mkdir()
    (tmp_path / "deep" / "a.html").write_text(text, "utf-8")
    for path, content in files.items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_bytes(content)
    with watched_page(browser) as (page, faults):
        page.goto((tmp_path / "deep" / "a.html").as_uri())
        seen = page.evaluate("window.seen")
    assert seen == [1, 2]
    assert faults == []


def test_data_blocks_stay_where_they_are() -> None:
    block = '<script id="config" type="application/json">{"a": 1}</script>'
    assert strict(block, "") == (block, {})
    assert offences(block) == []
