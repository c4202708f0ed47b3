"""The commands, one a file: each module here has `add(subparsers)` and `run(args) -> int`."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace, _SubParsersAction
from collections.abc import Iterator
from importlib import import_module
from pkgutil import iter_modules
from typing import TYPE_CHECKING, Protocol, cast

if TYPE_CHECKING:
    Subparsers = _SubParsersAction[ArgumentParser]
else:
    Subparsers = _SubParsersAction


NOTHING_WRONG = 0
ERRORS_FOUND = 1
CALLED_WRONGLY = 2
OWN_FAULT = 3

EXIT_CODES = """\
exit codes:
  0  nothing is wrong (warnings and notes are allowed)
  1  there are errors in what people wrote
  2  the command was called wrongly
  3  rimbook itself failed: its own fault, not yours
"""


class Command(Protocol):
    """What a module of this package offers. `add` sets `run` as the default of its parser."""

    def add(self, subparsers: Subparsers) -> None: ...

    def run(self, args: Namespace) -> int: ...


def commands() -> Iterator[Command]:
    """Every command, by name."""
    for name in sorted(module.name for module in iter_modules(__path__)):
        yield cast(Command, import_module(f"{__name__}.{name}"))
