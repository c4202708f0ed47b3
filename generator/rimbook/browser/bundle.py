"""Modules made into one classic script for each kind of page.

From a folder on disk a browser refuses `<script type="module">`, so modules are joined here. Only what
the modules of this package need is understood; anything else is an error, never a script that fails later:

- imports stand at the beginning of a line, name what they want, and come from a module beside this one:
  `import { a, b } from "./words.js";`, or `import "./page.js";` for what a module does by itself;
- exports stand before `function`, `class` or `const`;
- nothing is renamed, no module imports itself by a detour, and no line of a template text begins like
  a comment;
- no name is taken out of something in brackets, as in `const { a } = (b)`: the program that makes scripts
  smaller puts that before what stands above it. Nor does `|` follow `(a ?? b)`: it would lose its brackets.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from rimbook.browser.smaller import smaller

PAGE_SCRIPTS = ("page", "frame", "finder", "board", "fits", "prices", "my_shelf", "tape", "draft", "moved")
"""The kinds of page script: any page, and those of a frame, the finder, the board, what fits, prices, a shelf
of one's own, a tape, the drafting page, and an old address."""

LATER_SCRIPTS = ("sheet",)
"""What a page loads besides, once somebody wants it: the bench sheet of a frame."""

WORKER_SCRIPTS = ("buy_worker", "offline_worker", "offline_farewell")
"""What runs beside the pages: the one that plans purchases, keeps the site, or says farewell to it."""


class CannotBundle(Exception):
    """A module that is more than this understands: its file, line, and what is expected."""


@dataclass(frozen=True, slots=True)
class Module:
    """A module taken apart: what it imports from where, in order, what it exports, and the rest."""

    imports: tuple[tuple[str, tuple[str, ...], int], ...]
    exports: tuple[str, ...]
    body: str


_IMPORT = re.compile(r'^import (?:\{([^}]*)\} from )?"\./([A-Za-z0-9_]+)\.js";[ \t]*\n?', re.MULTILINE)
_EXPORT = re.compile(
    r"^export (?=(?:(?:async )?function\*? ?|class |const )([A-Za-z_$][\w$]*)(?=[ (<]))", re.MULTILINE
)
_OTHER = re.compile(r"^[ \t]*(?:import|export)\b|\bimport\s*[.(]", re.MULTILINE)
_TAKEN_OUT = re.compile(
    r"\b(?:const|let|var)\s*(?:\{[^{}]*\}|\[[^\[\]]*\])\s*=\s*(?:/\*(?:(?!\*/).)*\*/\s*)?\(", re.DOTALL
)
_LOSES_BRACKETS = re.compile(r"\?\?(?:[^()]|\((?:[^()]|\([^()]*\))*\))*\)\s*\|(?!\|)")
_COMMENT = re.compile(r"/\*.*?\*/|//[^\n]*", re.DOTALL)
_COMMENT_LINES = re.compile(r"^[ \t]*(?:/\*(?:(?!\*/).)*\*/[ \t]*\n|//[^\n]*\n)", re.DOTALL | re.MULTILINE)
_NAME = re.compile(r"[A-Za-z_$][\w$]*")


def script_of(name: str) -> bytes:
    """A script of `PAGE_SCRIPTS`, `LATER_SCRIPTS` or `WORKER_SCRIPTS`.

    Load that of a page with `<script defer src=…>`.
    """
    return _scripts()[name]


@cache
def _scripts() -> dict[str, bytes]:
    """Every script of the site. They are made together: that takes as long as one alone."""
    sources = module_sources()
    return smaller({name: bundle(name, sources) for name in (*PAGE_SCRIPTS, *LATER_SCRIPTS, *WORKER_SCRIPTS)})


@cache
def stylesheet() -> bytes:
    """How what the scripts add looks: for every kind of page."""
    return (files(__package__) / "browser.css").read_bytes()


def module_sources() -> dict[str, str]:
    """The modules of this package: their source text by name, without `.js`."""
    return {
        file.name.removesuffix(".js"): file.read_text("utf-8")
        for file in files(__package__).iterdir()
        if file.name.endswith(".js")
    }


def bundle(entry: str, sources: Mapping[str, str]) -> str:
    """One script that runs a module after all that it imports, each once and in a scope of its own.

    `sources` maps names without `.js` to source text. The same sources give the same text.
    Raises CannotBundle.
    """
    modules: dict[str, Module] = {}
    for name in _in_order(entry, sources, modules, ()):
        _check_imports(name, modules)
    scopes = [_scope(name, modules[name]) for name in modules]
    return "\n".join(["(() => {", '"use strict";', *scopes, "})();", ""])


def _in_order(
    name: str, sources: Mapping[str, str], modules: dict[str, Module], above: tuple[str, ...]
) -> list[str]:
    """Read a module and first those that it imports."""
    if name in above:
        ring = " → ".join(f"{each}.js" for each in (*above[above.index(name) :], name))
        raise CannotBundle(f"{name}.js imports itself by a detour: {ring}.")
    if name in modules:
        return []
    if name not in sources:
        raise CannotBundle(f"{name}.js is no module here: expected one of {', '.join(sorted(sources))}.")
    module = _read(name, sources[name])
    found = []
    for source, _, line in module.imports:
        if source not in sources:
            raise CannotBundle(f"{name}.js:{line}: there is no module {source}.js.")
        found += _in_order(source, sources, modules, (*above, name))
    modules[name] = module
    return [*found, name]


def _read(name: str, source: str) -> Module:
    imports = []
    for match in _IMPORT.finditer(source):
        line = source.count("\n", 0, match.start()) + 1
        wanted = tuple(word.strip() for word in (match[1] or "").split(",") if word.strip())
        for word in wanted:
            if not _NAME.fullmatch(word):
                raise CannotBundle(f"{name}.js:{line}: “{word}” is imported; expected a plain name.")
        imports.append((match[2], wanted, line))
    exports = tuple(match[1] for match in _EXPORT.finditer(source))
    _refuse_others(name, source)
    body = _COMMENT_LINES.sub("", _EXPORT.sub("", _IMPORT.sub("", source)))
    return Module(tuple(imports), exports, body.strip("\n"))


def _refuse_others(name: str, source: str) -> None:
    """Stop at any import or export that was not understood."""
    blank = re.compile(r"[^\n]")
    bare = source
    for known in (_COMMENT, _IMPORT, _EXPORT):
        bare = known.sub(lambda match: blank.sub(" ", match[0]), bare)
    other = _OTHER.search(bare)
    if other:
        line = bare.count("\n", 0, other.end()) + 1
        written = source.split("\n")[line - 1].strip()
        raise CannotBundle(
            f"{name}.js:{line}: “{written}” is not understood; expected "
            '`import { name } from "./module.js";`, or `export` before function, class or const.'
        )
    taken = _TAKEN_OUT.search(source)
    if taken:
        line = source.count("\n", 0, taken.end()) + 1
        raise CannotBundle(
            f"{name}.js:{line}: a name is taken out of something in brackets; expected a constant for what "
            "is in them first."
        )
    loses = _LOSES_BRACKETS.search(bare)
    if loses:
        line = bare.count("\n", 0, loses.end()) + 1
        raise CannotBundle(
            f"{name}.js:{line}: “|” follows “(a ?? b)”, whose brackets get lost; expected “c | (a ?? b)”."
        )


def _check_imports(name: str, modules: Mapping[str, Module]) -> None:
    for source, wanted, line in modules[name].imports:
        for word in wanted:
            if word not in modules[source].exports:
                raise CannotBundle(f"{name}.js:{line}: {source}.js exports no {word}.")


def _scope(name: str, module: Module) -> str:
    lines = [
        f"const {{ {', '.join(wanted)} }} = ${source};" for source, wanted, _ in module.imports if wanted
    ]
    lines.append(module.body)
    if module.exports:
        lines.append(f"return {{ {', '.join(module.exports)} }};")
    return "\n".join([f"const ${name} = (() => {{", *lines, "})();"])
