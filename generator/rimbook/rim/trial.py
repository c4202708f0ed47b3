"""How far off worked-out hole places were in a trial: what a page or a tape says beside them.

200 made-up walks of known spacing, each laid by its walk alone and held against its known places.
"""

from __future__ import annotations

TRIAL_FRAMES = 200
WORST_MM = 3.4
"""How far off the worst hole of a frame was, at the median of the frames."""
WORST_ONE_IN_TWENTY_MM = 8.4
"""How far off it was in one frame of twenty."""
