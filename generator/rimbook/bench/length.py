"""Whether a barrel reaches through the rim: short, flush or proud, and what to cut off.

Proud = length under the flange − rim depth along the hole, in mm. Common practice without a published
source: the barrel must reach the inside edge, or the string meets the frame; what stands far out is
cut after fitting. Assumes that the flange lies on the rim and that the end is cut square.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from rimbook.bench import given
from rimbook.bench.reasons import Missing
from rimbook.bench.thresholds import CLOSE_MM, DEFAULT, Thresholds

ReachWord = Literal["short", "flush", "proud", "trim"]


@dataclass(frozen=True, slots=True)
class Reach:
    """How far one post reaches: proud of the rim by so many mm (below zero: short by), and what to cut.

    `trim_mm` is 0 where nothing is cut. `engaged_mm` is what stays in the rim, and `holds` whether that
    is enough. All are None where a length is missing.
    """

    word: ReachWord | None = None
    proud_mm: float | None = None
    trim_mm: float | None = None
    engaged_mm: float | None = None
    holds: bool | None = None
    missing: tuple[Missing, ...] = ()


def reach(post_mm: float | None, depth_mm: float | None, thresholds: Thresholds = DEFAULT) -> Reach:
    """How a post of some length (mm under the flange) reaches through a rim of some depth (mm)."""
    missing: list[Missing] = []
    if depth_mm is None:
        missing.append("rim depth")
    if post_mm is None:
        missing.append("post length")
    if depth_mm is None or post_mm is None:
        return Reach(missing=tuple(missing))
    proud = given.length("post length", post_mm) - given.length("rim depth", depth_mm)
    engaged = min(post_mm, depth_mm)
    holds = engaged >= thresholds.hold_share * depth_mm - CLOSE_MM
    if proud < -thresholds.flush_within_mm - CLOSE_MM:
        word: ReachWord = "short"
    elif proud <= thresholds.flush_within_mm + CLOSE_MM:
        word = "flush"
    else:
        word = "proud" if proud <= thresholds.proud_up_to_mm + CLOSE_MM else "trim"
    trim = proud - thresholds.leave_proud_mm if word == "trim" else 0.0
    return Reach(word, proud, trim, engaged, holds)


def reaches(
    posts_mm: tuple[float, ...] | None,
    depths_mm: tuple[float | None, ...],
    thresholds: Thresholds = DEFAULT,
) -> tuple[Reach, ...]:
    """How each post of a part reaches, hole by hole.

    A single length serves every hole. Of two unequal posts the longer one goes into the deeper hole, as
    at a bridge; where a depth is missing nobody can tell which, so nothing is claimed.
    """
    if posts_mm is None or len(posts_mm) == 1:
        post = posts_mm[0] if posts_mm else None
        return tuple(reach(post, depth, thresholds) for depth in depths_mm)
    if len(posts_mm) != 2 or len(depths_mm) != 2:
        raise ValueError(f"{len(posts_mm)} posts cannot go into {len(depths_mm)} holes.")
    first, second = depths_mm
    if first is None or second is None:
        return Reach(missing=("rim depth",)), Reach(missing=("rim depth",))
    long, short = max(posts_mm), min(posts_mm)
    ordered = (long, short) if first >= second else (short, long)
    return reach(ordered[0], first, thresholds), reach(ordered[1], second, thresholds)
