"""A small book on disk for the tests of the hosts."""

from __future__ import annotations

import shutil
from pathlib import Path

from rimbook.hosts.workshop import Workshop
from rimbook.site.publish import publish
from rimbook.site.settings import Settings
from tests.site.sample import plain

ROOT = Path(__file__).parents[2]
SLUGS = ("plover-76", "bittern-78", "bittern-78-2025", "weir-72")


def book(folder: Path, slugs: tuple[str, ...] = SLUGS) -> Path:
    """Some maps of the demo book with all its parts, below a folder."""
    frames = folder / "frames"
    shutil.copytree(ROOT / "frames" / "parts", frames / "parts")
    (frames / "maps").mkdir()
    for slug in slugs:
        shutil.copy(ROOT / "frames" / "maps" / f"{slug}.yaml", frames / "maps")
    for file in (frames / "parts").glob("*.yaml"):
        file.write_text(_without_other_frames(file.read_text("utf-8"), slugs), "utf-8")
    return frames


def _without_other_frames(text: str, slugs: tuple[str, ...]) -> str:
    """Sets of maps that are left out name no frame."""
    kept = [
        line for line in text.splitlines() if "frames:" not in line or any(slug in line for slug in slugs)
    ]
    return "\n".join(kept) + "\n"


def workshop(folder: Path, frames: Path) -> tuple[Workshop, list[str]]:
    """A workshop with its cache below a folder, and what it tells."""
    told: list[str] = []
    return Workshop(frames, folder / "cache", told.append), told


def site_of(shop: Workshop) -> dict[str, bytes]:
    """Everything a workshop's book publishes, by path."""
    return {each.file: plain(each) for each in publish(shop.source(), Settings())}
