"""What no file of the project may hold."""

from __future__ import annotations

import re
import tomllib

import pytest

from tests.project.tree import text, texts, tracked

# In two halves, so that this file does not hold what it looks for.
REGISTRIES = tuple(
    "".join(halves)
    for halves in (
        ("pypi", ".org"),
        ("python", "hosted.org"),
        ("registry.npm", "js.org"),
        ("registry.yarn", "pkg.com"),
        ("deb.", "debian.org"),
        ("jsde", "livr.net"),
        ("un", "pkg.com"),
    )
)
MACHINE_PATH = re.compile(r"(?<![\w.:/*-])/(?:tmp|work|root|home|Users)/\w")
PIN = re.compile(r"([A-Za-z0-9._-]+)==[^ ;]+(?: ; [^\\]+)?(?: \\\n    --hash=sha256:[0-9a-f]{64})+\n")
REQUIREMENTS = ("requirements.txt", "requirements-dev.txt")


def test_no_file_names_a_package_registry() -> None:
    found = [(str(path), host) for path, held in texts().items() for host in REGISTRIES if host in held]
    assert found == []


def test_no_file_names_a_path_of_one_machine() -> None:
    found = [(str(path), match[0]) for path, held in texts().items() for match in MACHINE_PATH.finditer(held)]
    assert found == []


@pytest.mark.parametrize(
    "line", ["open('" + "/tmp/" + "a')", "cd " + "/home/" + "someone", "(/" + "work/main)"]
)
def test_a_path_of_one_machine_is_found(line: str) -> None:
    assert MACHINE_PATH.search(line)


def test_every_text_has_plain_line_endings() -> None:
    assert [str(path) for path, held in texts().items() if "\r" in held] == []


@pytest.mark.parametrize("name", REQUIREMENTS)
def test_requirements_are_pinned_and_hashed(name: str) -> None:
    lines = "".join(line for line in text(name).splitlines(keepends=True) if not line.startswith("#"))
    assert PIN.sub("", lines) == ""
    assert "://" not in lines


def test_requirements_hold_what_the_project_asks_for() -> None:
    project = tomllib.loads(text("pyproject.toml"))
    groups = project["dependency-groups"]
    run = [*project["project"]["dependencies"], *project["project"]["optional-dependencies"]["site"]]
    wanted = {
        "requirements.txt": run + groups["build"],
        "requirements-dev.txt": run + groups["build"] + groups["dev"],
    }
    for name, asked in wanted.items():
        pinned = {match[1].lower() for match in PIN.finditer(text(name))}
        missing = {re.split(r"[^A-Za-z0-9._-]", one)[0].lower() for one in asked} - pinned
        assert missing == set(), f"{name}: run `make requirements`"


def test_both_requirements_agree() -> None:
    pins = [{match[0] for match in PIN.finditer(text(name))} for name in REQUIREMENTS]
    assert pins[0] <= pins[1]


def test_workflow_actions_are_pinned_by_commit() -> None:
    workflows = [path for path in tracked() if path.parts[:2] == (".github", "workflows")]
    uses = [line.strip() for path in workflows for line in text(path).splitlines() if "uses:" in line]
    assert uses
    assert [line for line in uses if not re.search(r"@[0-9a-f]{40} # v\d", line)] == []


def test_the_package_carries_no_cache() -> None:
    assert [str(path) for path in tracked() if "__pycache__" in path.parts or path.suffix == ".pyc"] == []
