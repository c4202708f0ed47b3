"""What a tape says of itself: on which line it is true, how well its places are known, how to use it."""

from __future__ import annotations

from rimbook.book.model import Frame
from rimbook.draw.tape import Tape
from rimbook.draw.words import places_words
from rimbook.rim.trial import TRIAL_FRAMES, WORST_MM, WORST_ONE_IN_TWENTY_MM
from rimbook.rim.types import Rim

BAR_PLAY_MM = 0.2
"""So far off the bar may be: over a whole tape that makes less than 2 mm, at the throat less than 1 mm."""

CUT = (
    "Cut on a mat, with the blade or the scissors moving away from your hand. Never cut on the frame: "
    "a scratch in the rim is where a crack begins."
)
MEASURE = (
    f"Measure this bar with a steel rule before you cut. If it is off by more than {BAR_PLAY_MM:g} mm, print "
    "again at 100 %, also called actual size, never fitted to the page."
)


def title(frame: Frame) -> str:
    """The title of the sheets."""
    return f"{frame.name}: rim tape"


def line_words(tape: Tape) -> str:
    """On which line the tape is true, and how long it is."""
    length = f"{tape.length_mm:.1f} mm from end to end"
    if tape.outside_mm is None:
        return (
            f"True on the line of the holes, {length}. It lies inside the head. Round the outside the way is "
            "longer, and the marks would fall short: make a tape for it with the option --round."
        )
    return (
        f"True {tape.outside_mm:.1f} mm outside the line of the holes, {length}; the line itself is "
        f"{tape.line_mm:.1f} mm long. It goes round the outside. The rim is taken to be equally deep "
        "all round."
    )


def use_words(tape: Tape) -> tuple[str, ...]:
    """How to make and lay the tape, step by step."""
    where = "inside" if tape.outside_mm is None else "round the outside of"
    return (
        "Cut out the pieces along their outlines, tabs included.",
        "Glue each piece on the tab of the one before, edge on the line and half targets on whole ones.",
        "The scale along the edge then counts evenly over every join.",
        "Hold the frame face on, handle down: its right side has the holes R1, R2 and so on.",
        f"Lay the tape {where} the head, its marked edge towards you, “middle of head” on the head’s middle.",
        "Its two ends meet at the middle of the throat. Gaps or laps there tell how far off the outline is.",
    )


def doubt_words(rim: Rim) -> str:
    """How well the places are known, with the error to expect of those that are worked out."""
    if all(place.place == "measured" for place in rim.holes.values()):
        return f"{places_words(rim)}."
    return (
        f"{places_words(rim)}: marks with a broken line. In a trial on {TRIAL_FRAMES} made-up frames of "
        f"known spacing the worst hole was {WORST_MM:g} mm off in the middle case, and "
        f"{WORST_ONE_IN_TWENTY_MM:g} mm in one of twenty. Do not drill by this tape."
    )


def source_words(frame: Frame) -> str:
    """Who vouches for the map, and when."""
    if frame.measured is None:
        return "Nobody has said who measured this map."
    said = f"Measured by {frame.measured.by}"
    if frame.measured.on:
        said += f" on {frame.measured.on.isoformat()}"
    if frame.confirmed:
        said += ", confirmed by " + ", ".join(each.by for each in frame.confirmed)
    return f"{said}."


def bar_words(frame: Frame, measured_mm: float) -> tuple[str, ...]:
    """What to do with a printer that stays off, in pieces that are best not broken over lines."""
    if measured_mm == 100:
        return "Still off? Type what you measured: ", f"rimbook tape {frame.slug} --measured …"
    return (
        f"Made for a printer on which 100 mm came out as {measured_mm:g} mm. ",
        "This bar should now measure 100 mm.",
    )
