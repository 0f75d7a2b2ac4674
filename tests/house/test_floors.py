"""The floors of the app, as client_pwa/README.md has them: no import up, and none in a circle."""

import graphlib
import os
import re
from pathlib import Path

CLIENT = Path(__file__).parents[2] / "client_pwa"
SOURCE = CLIENT / "src"
# From lowest to highest, as the table has them.
FLOORS = re.findall(r"^\| `(\w+)/` \|", (CLIENT / "README.md").read_text(encoding="utf-8"), re.M)
# Types count as well: who needs a type from above cannot be understood without what is above.
IMPORT = re.compile(r"""\b(?:from|import)\s*\(?\s*["'](\.[^"']+)["']""")


def imports():
    """Every file of the app, tests left out, with the files of the app that it uses."""
    found = {}
    for path in sorted(SOURCE.rglob("*.ts*")):
        name = path.relative_to(SOURCE).as_posix()
        if ".test." not in name:
            used = IMPORT.findall(path.read_text(encoding="utf-8"))
            found[name] = {resolved(name, each) for each in used}
    return found


def resolved(name, used):
    # What follows a question mark tells the build how to bring it in.
    used = used.split("?")[0]
    target = os.path.normpath(os.path.join(os.path.dirname(name), used)).replace(os.sep, "/")
    for end in ("", ".ts", ".tsx"):
        if (SOURCE / (target + end)).is_file():
            return target + end
    raise AssertionError("%s imports %s, which is not there" % (name, used))


def floor(name):
    return FLOORS.index(name.split("/")[0])


def test_every_folder_is_a_floor_of_the_table():
    folders = {path.name for path in SOURCE.iterdir() if path.is_dir() and any(path.rglob("*.*"))}
    assert folders == {*FLOORS, "styles"}
    assert {path.name for path in SOURCE.iterdir() if path.is_file()} == {"main.tsx"}


def test_nothing_imports_from_a_floor_above_its_own():
    files = imports()
    assert len(files) > 80
    up = [
        "%s -> %s" % (name, used)
        for name, uses in files.items()
        if name != "main.tsx"
        for used in uses
        if used.startswith("styles/") or floor(used) > floor(name)
    ]
    assert up == []


def test_no_files_use_one_another_in_a_circle():
    # Raises CycleError, which names the files of the circle.
    graphlib.TopologicalSorter(imports()).prepare()


def test_screens_do_not_use_one_another():
    """What two screens share belongs on a floor below both."""
    across = [
        "%s -> %s" % (name, used)
        for name, uses in imports().items()
        for used in uses
        if name.startswith("screens/") and used.startswith("screens/")
        # The second folder: screens/ring/... ; what lies in screens/ itself is nobody's own.
        if used.count("/") > 1 and used.split("/")[1] != name.split("/")[1]
    ]
    assert across == []
