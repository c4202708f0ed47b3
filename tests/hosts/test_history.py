"""What changed lately: told from git, kept between builds, and never a reason for a build to fail."""

from __future__ import annotations

import subprocess
from datetime import date
from pathlib import Path

import pytest

from rimbook.hosts import history as told_by
from rimbook.hosts.history import history
from rimbook.hosts.workshop import Workshop
from rimbook.site.history_page import History, Step
from rimbook.site.pages import Page
from rimbook.site.publish import publish
from rimbook.site.settings import Settings
from tests.book.rules.small_book import MAP, PARTS, changed

BY = {"GIT_AUTHOR_NAME": "A", "GIT_AUTHOR_EMAIL": "a@example.org", "GIT_COMMITTER_NAME": "A"}
BY |= {"GIT_COMMITTER_EMAIL": "a@example.org", "GIT_CONFIG_GLOBAL": "", "GIT_CONFIG_NOSYSTEM": "1"}


def git(folder: Path, *arguments: str, on: str = "2026-11-01") -> None:
    days = {"GIT_AUTHOR_DATE": f"{on}T12:00:00Z", "GIT_COMMITTER_DATE": f"{on}T12:00:00Z"}
    env = {"PATH": "/usr/bin:/bin:/usr/local/bin", "HOME": str(folder), **BY, **days}
    subprocess.run(["git", "-C", folder, *arguments], check=True, capture_output=True, env=env)


def save(folder: Path, on: str, **files: str | None) -> None:
    """A commit in which these maps and parts are as given; None takes one out."""
    for name, text in files.items():
        path = folder / "frames" / f"{name.replace('__', '/').replace('_', '-')}.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        if text is None:
            path.unlink()
        else:
            path.write_text(text, "utf-8")
    git(folder, "add", "--all")
    git(folder, "commit", "--quiet", "--message", f"by a@example.org on {on}", on=on)


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    folder = tmp_path / "repository"
    folder.mkdir()
    git(folder, "init", "--quiet")
    save(folder, "2026-09-01", maps__lapwing_20=MAP, parts__common=PARTS)
    save(folder, "2026-09-05", maps__lapwing_20=changed(MAP, ("28 lb", "26 lb")))
    return folder


def steps(found: History) -> list[tuple[str, list[str]]]:
    return [(step.on.isoformat(), [each.text for each in step.told]) for step in found.steps]


def test_each_commit_is_told_on_its_day_the_newest_first(repository: Path, tmp_path: Path) -> None:
    found = history(repository / "frames", tmp_path / "kept")
    assert [on for on, _ in steps(found)] == ["2026-09-05", "2026-09-01"]
    assert steps(found)[0][1] == ["Tension limit 28 lb → 26 lb."]
    assert "Lapwing 20 by Saltmarsh Works is new: 20 holes, 6 × 5." in steps(found)[1][1]
    assert not found.cut


def test_what_does_not_touch_the_maps_is_not_told(repository: Path, tmp_path: Path) -> None:
    (repository / "README.md").write_text("Read me.")
    save(repository, "2026-09-06")
    save(repository, "2026-09-07", maps__lapwing_20=changed(MAP, ("28 lb", "26 lb")) + "# A remark.\n")
    assert [on for on, _ in steps(history(repository / "frames", tmp_path / "kept"))] == [
        "2026-09-05",
        "2026-09-01",
    ]


def test_a_new_name_is_no_loss_where_the_book_says_so(repository: Path, tmp_path: Path) -> None:
    moved = "format: 1\nframes: {lapwing-20: lapwing-twenty}\n"
    parts = PARTS.replace("[lapwing-20]", "[lapwing-twenty]")
    new = changed(MAP, ("28 lb", "26 lb"))
    save(
        repository,
        "2026-09-08",
        maps__lapwing_20=None,
        maps__lapwing_twenty=new,
        moved=moved,
        parts__common=parts,
    )
    first = history(repository / "frames", tmp_path / "kept").steps[0]
    assert first.told[0].text.startswith("The page of Lapwing 20 moved from lapwing-20 to lapwing-twenty")
    assert first.told[0].breaking


def test_a_map_that_could_not_be_read_is_taken_neither_for_gone_nor_for_new(
    repository: Path, tmp_path: Path
) -> None:
    save(repository, "2026-09-09", maps__lapwing_20="format: [")
    save(repository, "2026-09-10", maps__lapwing_20=MAP)
    assert [on for on, _ in steps(history(repository / "frames", tmp_path / "kept"))] == [
        "2026-09-05",
        "2026-09-01",
    ]


def test_what_was_made_once_is_kept_and_a_damaged_piece_is_made_anew(
    repository: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept = tmp_path / "kept"
    first = history(repository / "frames", kept)
    made: list[object] = []
    usual = told_by._made

    def noted(book: Path, commit: told_by.Commit) -> Step:
        made.append(commit)
        return usual(book, commit)

    monkeypatch.setattr(told_by, "_made", noted)
    assert history(repository / "frames", kept) == first
    assert made == []
    min(kept.iterdir()).write_text("damaged")
    assert history(repository / "frames", kept) == first
    assert len(made) == 1


def test_a_folder_that_cannot_be_written_stops_nothing(repository: Path, tmp_path: Path) -> None:
    (tmp_path / "kept").write_text("a file is in the way")
    assert len(history(repository / "frames", tmp_path / "kept").steps) == 2


def test_the_number_of_steps_and_of_maps_is_bounded(
    repository: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(told_by, "MOST_STEPS", 1)
    monkeypatch.setattr(told_by, "MOST_MAPS", 0)
    found = history(repository / "frames", tmp_path / "kept")
    assert found.cut
    assert [(step.told, step.more) for step in found.steps] == [((), 1)]


def test_of_a_shallow_copy_the_oldest_state_is_not_taken_for_new(repository: Path, tmp_path: Path) -> None:
    git(tmp_path, "clone", "--quiet", "--depth", "1", repository.as_uri(), "copy")
    found = history(tmp_path / "copy" / "frames", tmp_path / "kept")
    assert found.steps == ()
    assert "Only the newest state" in found.why_not


@pytest.mark.parametrize("with_git", [True, False])
def test_without_a_history_the_page_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, with_git: bool
) -> None:
    if not with_git:
        monkeypatch.setenv("PATH", str(tmp_path))
    (tmp_path / "frames").mkdir()
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    found = history(tmp_path / "frames", tmp_path / "kept")
    assert found.steps == ()
    assert "not at hand" in found.why_not


def test_a_link_in_the_history_leads_nowhere(repository: Path, tmp_path: Path) -> None:
    (tmp_path / "secret.yaml").write_text(MAP, "utf-8")
    (repository / "frames" / "maps" / "linked.yaml").symlink_to("../../../secret.yaml")
    save(repository, "2026-09-11")
    assert steps(history(repository / "frames", tmp_path / "kept"))[0][0] == "2026-09-05"


def test_the_page_names_day_and_frame_and_nobody(repository: Path, tmp_path: Path) -> None:
    shop = Workshop(repository / "frames", tmp_path / "cache", lambda words: None)
    pages = {each.path: each for each in publish(shop.source(), Settings()) if isinstance(each, Page)}
    body = pages["changes/"].body
    assert '<time datetime="2026-09-05">5 September 2026</time>' in body
    assert (
        '<a href="../frames/lapwing-20/index.html">Lapwing 20 (2024)</a>: Tension limit 28 lb → 26 lb.'
        in body
    )
    assert "example.org" not in body
    assert date(2026, 9, 5).isoformat() in body
