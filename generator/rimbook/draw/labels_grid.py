"""A sheet of labels as a grid: where each of them lies."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

from rimbook.book.model import LabelSheet
from rimbook.draw.paper import PAPERS, Paper

LEAST_WIDTH_MM, LEAST_HEIGHT_MM = 35.0, 18.0
"""On a smaller label a name and four sizes find no room."""
MOST_LABELS = 400


@dataclass(frozen=True, slots=True)
class Cell:
    """Where one label lies, in mm from the upper left corner of the sheet."""

    left_mm: float
    top_mm: float
    width_mm: float
    height_mm: float


def cells(grid: LabelSheet) -> tuple[Cell, ...]:
    """All labels of one sheet, row by row. Raises ValueError where the grid does not go on the paper."""
    paper, count = PAPERS[grid.paper], grid.rows * grid.columns
    if grid.rows < 1 or grid.columns < 1 or count > MOST_LABELS:
        raise ValueError(
            f"A grid of {grid.rows} rows and {grid.columns} columns is not possible; expected 1 to "
            f"{MOST_LABELS} labels a sheet."
        )
    sizes = (*grid.margins_mm, *grid.gap_mm)
    if not all(isfinite(size) and size >= 0 for size in sizes):
        raise ValueError("A margin or a gap of a label grid is 0 mm or more.")
    top, right, bottom, left = grid.margins_mm
    across, down = grid.gap_mm
    width = (paper.width_mm - left - right - across * (grid.columns - 1)) / grid.columns
    height = (paper.height_mm - top - bottom - down * (grid.rows - 1)) / grid.rows
    if width < LEAST_WIDTH_MM or height < LEAST_HEIGHT_MM:
        raise ValueError(
            f"Labels of {max(width, 0):.1f} × {max(height, 0):.1f} mm are too small; expected at least "
            f"{LEAST_WIDTH_MM:g} × {LEAST_HEIGHT_MM:g} mm. {_fewer(grid, paper)}"
        )
    return tuple(
        Cell(left + column * (width + across), top + row * (height + down), width, height)
        for row in range(grid.rows)
        for column in range(grid.columns)
    )


def _fewer(grid: LabelSheet, paper: Paper) -> str:
    """The most rows and columns that work with these margins."""
    top, right, bottom, left = grid.margins_mm
    across, down = grid.gap_mm
    columns = int((paper.width_mm - left - right + across) / (LEAST_WIDTH_MM + across))
    rows = int((paper.height_mm - top - bottom + down) / (LEAST_HEIGHT_MM + down))
    if columns < 1 or rows < 1:
        return f"These margins leave no room on {paper.words}."
    return f"On {paper.words} at most {rows} rows and {columns} columns work with these margins."
