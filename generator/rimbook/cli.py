"""The program `rimbook`: find the command and run it."""

from __future__ import annotations

import sys
import traceback
from argparse import Action, ArgumentError, ArgumentParser, RawDescriptionHelpFormatter
from collections.abc import Sequence
from typing import Any

from rimbook.commands import EXIT_CODES, NOTHING_WRONG, OWN_FAULT, commands, did_you_mean


class Parser(ArgumentParser):
    """A parser that names the nearest choice where a word is none; its commands are of the same kind."""

    def _check_value(self, action: Action, value: Any) -> None:
        try:
            super()._check_value(action, value)
        except ArgumentError as error:
            near = did_you_mean(str(value), map(str, action.choices or ()))
            raise ArgumentError(action, f"{error.message}.{near}") from None


def parser() -> ArgumentParser:
    """The parser of all commands."""
    whole: ArgumentParser = Parser(
        prog="rimbook",
        description="An open book of racket frame grommet maps.",
        epilog=EXIT_CODES,
        formatter_class=RawDescriptionHelpFormatter,
    )
    subparsers = whole.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for command in commands():
        command.add(subparsers)
    return whole


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and hand back its exit code. A wrong call exits with code 2 as argparse does."""
    args = parser().parse_args(arguments)
    try:
        code = args.run(args)
        sys.stdout.flush()
        return int(code)
    except BrokenPipeError:
        # Whoever read the output has gone, as `head` does; nothing is left to say.
        sys.stderr.close()
        return NOTHING_WRONG
    except KeyboardInterrupt:
        return 130
    except Exception:
        traceback.print_exc()
        print("rimbook failed: this is its own fault. Please report the lines above.", file=sys.stderr)
        return OWN_FAULT
