"""Judge mutated files of the demo book for so many seconds: `python -m tests.fuzz --seconds 60`."""

from __future__ import annotations

import argparse
import sys
import time
from pathlib import Path

from tests.fuzz.judge import judged


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--seed", type=int, default=time.time_ns() // 1_000_000, help="where to begin")
    parser.add_argument("--keep", type=Path, metavar="DIR", help="write files that make it stumble there")
    args = parser.parse_args()
    end = time.monotonic() + args.seconds
    seed, faults = args.seed, 0
    while time.monotonic() < end:
        fault = judged(seed)
        seed += 1
        if fault is None:
            continue
        faults += 1
        sys.stdout.write(f"seed {fault.seed}, {fault.file}: {fault.words}\n")
        if args.keep:
            args.keep.mkdir(parents=True, exist_ok=True)
            (args.keep / f"{fault.seed}-{Path(fault.file).name}").write_bytes(fault.source)
    sys.stdout.write(f"{seed - args.seed:,} files from seed {args.seed}, {faults} made it stumble\n")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
