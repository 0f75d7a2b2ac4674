"""Commands that people run and that machines run are the same ones."""

import os
import re
import tomllib

import pytest


def text(root, name):
    return (root / name).read_text(encoding="utf-8")


def test_hooks_and_workflow_call_what_people_call(root):
    entry = re.search(r"entry: (\S+)", text(root, ".pre-commit-config.yaml")).group(1)
    assert os.access(root / entry, os.X_OK)
    assert re.search(r"^%s$" % entry, text(root, "tests/run"), re.M)
    steps = re.findall(r"- run: (.+)", text(root, ".github/workflows/tests.yml"))
    assert steps[-1] == ".ci/run"
    assert os.access(root / ".ci/run", os.X_OK)
    assert "tests/run" in text(root, ".ci/run")


def test_every_check_is_in_it(root):
    style = text(root, "tests/style")
    for command in ("ruff check", "ruff format --check", "mypy", "npm --prefix client_pwa run"):
        assert re.search(r"^\S*%s" % re.escape(command), style, re.M), command
    assert '"npm", "test"' in text(root, "tests/contract/test_app_units.py")


def test_editors_and_the_formatter_agree(root):
    project = tomllib.loads(text(root, "pyproject.toml"))
    said = re.search(r"max_line_length = (\d+)", text(root, ".editorconfig")).group(1)
    assert int(said) == project["tool"]["ruff"]["line-length"]


@pytest.mark.parametrize("page", [".github/CONTRIBUTING.md", ".github/SECURITY.md"])
def test_what_the_pages_name_is_there(root, page):
    named = re.findall(r"`((?:service|tests|openapi|client_pwa)/[\w./]+)[^`]*`", text(root, page))
    assert named
    assert [name for name in named if not (root / name).exists()] == []


def test_every_threat_has_a_test_that_is_there(root):
    page = text(root, ".github/SECURITY.md")
    rows = re.findall(r"^\| [^|]+ \| [^|]+ \| (`tests/[^|]+) \|$", page, re.M)
    assert len(rows) > 12
    for row in rows:
        source = ""
        for name in re.findall("`([^`]+)`", row):
            if name.startswith("tests/"):
                source = text(root, name)
            else:
                assert "def %s(" % name in source, name
