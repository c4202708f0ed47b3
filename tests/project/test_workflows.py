"""What the forge runs, held against programs that read such files for a living."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
WORKFLOWS = sorted((ROOT / ".github" / "workflows").glob("*.yml"))
FORMS = sorted((ROOT / ".github" / "ISSUE_TEMPLATE").glob("*.yml"))


def _run(program: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    beside = Path(sys.executable).parent / program
    return subprocess.run([beside, *arguments], cwd=ROOT, capture_output=True, text=True, check=False)


def _schema(name: str, *files: Path) -> subprocess.CompletedProcess[str]:
    return _run("check-jsonschema", "--builtin-schema", f"vendor.{name}", *map(str, files))


def test_an_auditor_of_workflows_finds_nothing() -> None:
    """zizmor, in its strictest persona: rights, secrets, pins, text of strangers in commands."""
    done = _run("zizmor", "--offline", "--no-progress", "--persona", "auditor", ".github")
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_auditor_is_awake(tmp_path: Path) -> None:
    bad = tmp_path / ".github" / "workflows" / "bad.yml"
    bad.parent.mkdir(parents=True)
    bad.write_text(
        "on: pull_request_target\njobs:\n  a:\n    runs-on: ubuntu-24.04\n    steps:\n"
        "      - uses: actions/checkout@v4\n      - run: echo ${{ github.event.pull_request.title }}\n"
    )
    done = _run("zizmor", "--offline", "--no-progress", str(bad))
    assert done.returncode != 0
    assert "template-injection" in done.stdout


def test_workflows_are_what_the_forge_understands() -> None:
    done = _schema("github-workflows", *WORKFLOWS)
    assert done.returncode == 0, done.stdout + done.stderr


def test_forms_are_what_the_forge_understands() -> None:
    forms = [file for file in FORMS if file.stem != "config"]
    done = _schema("github-issue-forms", *forms)
    assert forms
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("file", WORKFLOWS, ids=lambda file: file.stem)
def test_every_action_is_pinned_and_its_version_named(file: Path) -> None:
    uses = re.findall(r"uses: (.*)", file.read_text("utf-8"))
    assert uses
    for each in uses:
        assert re.fullmatch(r"[\w-]+/[\w-]+@[0-9a-f]{40} # v\d+\.\d+\.\d+", each), each


@pytest.mark.parametrize("file", WORKFLOWS, ids=lambda file: file.stem)
def test_no_workflow_gives_a_stranger_a_right_or_a_secret(file: Path) -> None:
    text = file.read_text("utf-8")
    assert "pull_request_target" not in text
    assert "secrets." not in text
    if "pull_request:" in text:
        assert ": write" not in text


def test_the_editor_finds_the_schemas() -> None:
    settings = json.loads((ROOT / ".vscode" / "settings.json").read_text("utf-8"))
    for schema, pattern in settings["yaml.schemas"].items():
        assert (ROOT / schema).is_file(), schema
        assert list(ROOT.glob(pattern)), pattern
