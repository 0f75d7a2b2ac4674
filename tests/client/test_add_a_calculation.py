"""The page "To add a calculation" of DEVELOPERS.md, followed to the letter in a copy."""

import json
import os
import re
import shutil
import subprocess
import sys

import pytest

from client.conftest import PHONE, Sheet
from conftest import ROOT, Server

STEP = re.compile(r"`(new|in): ([^`,]+?)(?:, (before|after) ([^`]+?))?`\n+```\w+\n(.*?)```\n", re.S)
MOST_FILES = 5
# What a calculation that is declared by halves would fail.
TESTS = (
    "tests/core/test_catalogue.py",
    "tests/core/test_language.py",
    "tests/core/test_reference.py",
    "tests/core/test_rooms.py",
    "tests/contract/test_specification.py",
    "tests/contract/test_answers.py",
)


def steps():
    """(new or in, path, before or after, anchor, text) of each step of the page."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    page = text.partition("## To add a calculation\n")[2].partition("\n## ")[0]
    return STEP.findall(page)


def follow(folder):
    """Does what the page says."""
    for kind, path, where, anchor, text in steps():
        target = folder / path
        if kind == "new":
            assert not target.exists(), path
            target.write_text(text, encoding="utf-8")
            continue
        lines = target.read_text(encoding="utf-8").splitlines(keepends=True)
        place = next(at for at, line in enumerate(lines) if line.strip().startswith(anchor))
        if where == "before" and lines[place - 1].strip() == "(":
            place -= 1
        lines.insert(place if where == "before" else place + 1, text)
        target.write_text("".join(lines), encoding="utf-8")


@pytest.fixture(scope="module")
def copy(tmp_path_factory):
    """A copy of the project in which the page was followed."""
    folder = tmp_path_factory.mktemp("copy") / "ringwright"
    listed = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    for name in filter(None, listed.stdout.split("\0")):
        source = ROOT / name
        if source.is_file():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(source, folder / name)
    (folder / "client_pwa" / "node_modules").symlink_to(ROOT / "client_pwa" / "node_modules")
    follow(folder)
    run(folder, sys.executable, "-m", "ringwright.api.write_spec", "openapi/openapi.json")
    return folder


def run(folder, *command, **more):
    """Runs a command in the copy, with the copy's own service; fails with what it said."""
    done = subprocess.run(
        command,
        cwd=folder / more.get("within", "."),
        env={**os.environ, "PYTHONPATH": "%s:%s" % (folder / "service", folder / "tests")},
        capture_output=True,
        text=True,
        check=False,
        timeout=500,
    )
    assert done.returncode == 0, done.stdout[-5000:] + done.stderr[-3000:]
    return done.stdout


def test_the_page_touches_few_files():
    touched = [path for _, path, _, _, _ in steps()]
    assert len(set(touched)) == len(touched) <= MOST_FILES
    assert sum(path.startswith("service/ringwright/core/running/") for path in touched) == 1


@pytest.mark.slow
@pytest.mark.timeout(600)
def test_the_projects_own_tests_pass(copy):
    run(copy, sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *TESTS)


@pytest.mark.slow
def test_specification_service_and_spreadsheet_have_it(copy):
    said = run(
        copy,
        sys.executable,
        "-c",
        "import json\n"
        "from ringwright.api.app import create_app, specification\n"
        "app = create_app()\n"
        "client = app.test_client()\n"
        "print(json.dumps([specification(app)['components']['schemas']['RimSpeedFigures'],\n"
        "    client.get('/v1/rim-speed?working=true&rim_diameter=1000&wheel_speed=60').json,\n"
        "    client.get('/v1/rim-speed.csv?rim_diameter=1000&list=rim_speeds').get_data(True),\n"
        "    client.get('/v1/methods').get_json()['checks']]))",
    )
    told, answer, table, checks = json.loads(said)
    assert list(told["properties"]) == told["required"] == ["rim_speed"]
    figure = answer["figures"]["rim_speed"]
    # A metre goes round 3.1416 m a turn, and turns once a second.
    assert figure["value"] == pytest.approx(3.14159265, rel=1e-8) and figure["unit"] == "m/s"
    assert [put["symbol"] for put in figure["working"]] == ["D", "n"]
    assert [row["check"] for row in answer["findings"]] == ["rim-speed"]
    assert "rim-speed" in [row["check"] for row in checks]
    assert len(table.strip().splitlines()) == 4
    assert "rim_speed" in table.splitlines()[0]


@pytest.mark.slow
@pytest.mark.timeout(900)
def test_the_app_has_a_screen_of_it(copy, browser):
    run(copy, "npm", "run", "--silent", "build", within="client_pwa")
    running = Server(service=copy / "service")
    context = browser.new_context(viewport=PHONE)
    try:
        sheet = Sheet(context.new_page(), running.address).open().go("wheel")
        sheet.enter("Rim diameter", "1000").enter("Wheel speed", "60")
        sheet.until(
            "document.querySelector('[data-figure=\"rim_speed\"]')?.textContent.includes('3.14')"
        )
        assert sheet.page.get_by_text("Rim speed").first.is_visible()
        # What is good lies folded away.
        assert "The rim runs at 3.1 m/s." in sheet.page.locator("main").text_content()
        assert sheet.complaints == []
    finally:
        context.close()
        running.stop()
