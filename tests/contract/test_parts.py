"""What the service and the app are made of: locked, listed with licences, built alike each time."""

import base64
import csv
import filecmp
import hashlib
import io
import json
import os
import re
import shutil
import subprocess
import zipfile

import pytest

pytestmark = pytest.mark.waits

# What anybody may use, pass on and change; of a library under the LGPL that holds for the library.
FREE = {
    "0BSD", "Apache-2.0", "BSD", "BSD-2-Clause", "BSD-3-Clause", "CC0-1.0", "ISC",
    "LGPL-2.1-or-later", "MIT", "MIT-0", "MIT-CMU", "MPL-2.0", "OFL-1.1", "PSF-2.0", "ZPL-2.1",
    "Zlib",
}  # fmt: skip


def normal(name):
    """The name of a package as registries compare it."""
    return re.sub("[-_.]+", "-", name).lower() if not name.startswith("@") else name


@pytest.fixture(scope="module")
def listed(root):
    """purl kind -> {name: version} of the list of parts."""
    document = json.loads((root / "docker" / "parts.cdx.json").read_text(encoding="utf-8"))
    assert (document["bomFormat"], document["specVersion"]) == ("CycloneDX", "1.6")
    found = {"pypi": {}, "npm": {}}
    for part in document["components"]:
        kind = re.match("pkg:([a-z]+)/", part["purl"])[1]
        assert part["licenses"]
        assert part["purl"].endswith("@" + part["version"])
        found[kind][normal(part["name"])] = part["version"]
    refs = {part["bom-ref"] for part in document["components"]}
    assert len(refs) == len(document["components"])
    for entry in document["dependencies"]:
        assert {entry["ref"], *entry["dependsOn"]} <= refs
    return found


def test_every_locked_package_is_listed(root, listed):
    lock = (root / "docker" / "requirements.lock").read_text(encoding="utf-8")
    pins = re.findall(r"^([a-z0-9.-]+)==([^ \\]+)( ;[^\\]*)?", lock, re.M)
    # A marker says that it is for other machines or Pythons than the list was made on.
    here = {normal(name): version for name, version, marker in pins if not marker}
    assert here.items() <= listed["pypi"].items(), "docker/parts --keep lists them anew"
    assert set(listed["pypi"]) <= {normal(name) for name, _, _ in pins}


def test_every_package_of_the_app_is_listed(root, listed):
    lock = json.loads((root / "client_pwa" / "package-lock.json").read_text(encoding="utf-8"))
    there = {
        path.rpartition("node_modules/")[2].lower(): entry["version"]
        for path, entry in lock["packages"].items()
        if path and not entry.get("dev") and not entry.get("devOptional") and not entry.get("peer")
    }
    assert there == listed["npm"], "docker/parts --keep lists them anew"


def test_every_licence_is_written_down_and_free(root, listed):
    rows = re.findall(
        r"^\| (\S+) \| (\S+) \| ([^|]+) \| (service|app) \|$",
        (root / "docker" / "LICENCES.md").read_text(encoding="utf-8"),
        re.M,
    )
    named = {normal(name): version for name, version, _, _ in rows}
    assert named == {**listed["pypi"], **listed["npm"]}
    for name, _, licence, _ in rows:
        for one in re.split(r" AND | OR |[()]", licence):
            assert not one.strip() or one.strip() in FREE, (name, licence)


def test_no_package_of_the_app_runs_a_program_when_it_is_installed(root):
    """One that comes with the renderer of /docs would report the installation to its makers."""
    settings = (root / "client_pwa" / ".npmrc").read_text(encoding="utf-8")
    assert "\nignore-scripts=true\n" in settings


def test_what_the_build_brings_for_the_pages_is_listed(root, listed):
    """It is handed to browsers, so its licence goes with it."""
    plugin = (root / "client_pwa" / "vite" / "renderer_plugin.ts").read_text(encoding="utf-8")
    (package,) = set(re.findall("node_modules/([a-z-]+)", plugin))
    assert package in listed["npm"]
    assert "LICENSE" in plugin and "NOTICE" in plugin


# --- the installation from the lock ---


def wheel(folder, name="trifle"):
    """A wheel of one empty module; returns its SHA-256."""
    files = {
        name + ".py": b"",
        name + "-1.0.dist-info/METADATA": (
            "Metadata-Version: 2.1\nName: %s\nVersion: 1.0\n" % name
        ).encode(),
        name
        + "-1.0.dist-info/WHEEL": b"Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    record = io.StringIO()
    rows = csv.writer(record, lineterminator="\n")
    for path, content in files.items():
        digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
        rows.writerow([path, "sha256=" + digest, len(content)])
    files[name + "-1.0.dist-info/RECORD"] = record.getvalue().encode()
    path = folder / (name + "-1.0-py3-none-any.whl")
    with zipfile.ZipFile(path, "w") as archive:
        for each, content in files.items():
            archive.writestr(each, content)
    return hashlib.sha256(path.read_bytes()).hexdigest()


@pytest.fixture(scope="module")
def wheels(tmp_path_factory):
    folder = tmp_path_factory.mktemp("wheels")
    return folder, wheel(folder)


def installed(root, tmp_path, wheels, lock, **more):
    """service/environment in a copy with that lock, and no other packages than `wheels`."""
    copy = tmp_path / "copy"
    for name in ("service/environment", "service/find_python", "pyproject.toml"):
        (copy / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(root / name, copy / name)
    (copy / "docker").mkdir()
    (copy / "docker" / "requirements.lock").write_text(lock)
    (copy / "service" / "ringwright").mkdir()
    (copy / "service" / "ringwright" / "__init__.py").write_text('__version__ = "0"\n')
    kept = {key: value for key, value in os.environ.items() if not key.startswith("PIP_")}
    kept.update(PIP_NO_INDEX="1", PIP_FIND_LINKS=str(wheels[0]), PIP_CONFIG_FILE=os.devnull, **more)
    done = subprocess.run(
        ["service/environment"],
        cwd=copy,
        env=kept,
        capture_output=True,
        text=True,
        timeout=100,
        check=False,
    )
    return copy, done


def imported(copy, name):
    # Isolated: a PYTHONPATH of who runs the tests does not count.
    command = [copy / ".venv" / "bin" / "python", "-I", "-c", "import " + name]
    return subprocess.run(command, cwd="/", capture_output=True, check=False).returncode == 0


def test_what_is_installed_is_what_the_lock_names(root, tmp_path, wheels):
    lock = "trifle==1.0 --hash=sha256:%s\n" % wheels[1]
    copy, done = installed(root, tmp_path, wheels, lock)
    assert done.returncode == 0, done.stderr
    assert imported(copy, "trifle")
    assert imported(copy, "ringwright")
    # A second start finds it all there.
    again = subprocess.run(
        ["service/environment"], cwd=copy, capture_output=True, text=True, check=True
    )
    assert again.stdout == ""


def test_a_package_that_is_another_is_never_taken(root, tmp_path, wheels):
    copy, done = installed(root, tmp_path, wheels, "trifle==1.0 --hash=sha256:%s\n" % ("0" * 64))
    assert done.returncode == 1
    assert "Nothing is taken in its place" in done.stderr
    assert "unchecked" not in done.stderr
    assert not imported(copy, "trifle")
    assert not imported(copy, "ringwright")


@pytest.mark.parametrize("strict", [False, True])
def test_a_lock_that_does_not_fit_is_told(root, tmp_path, wheels, strict):
    lock = "trinket==2.0 --hash=sha256:%s\n" % wheels[1]
    more = {"RINGWRIGHT_LOCKED": "1"} if strict else {}
    _, done = installed(root, tmp_path, wheels, lock, **more)
    # Here nothing else is to be had either; what counts is what was said and tried.
    assert done.returncode != 0
    assert "trinket" in done.stderr
    assert ("unchecked" in done.stderr) != strict
    assert ("RINGWRIGHT_LOCKED" in done.stderr) == strict


# --- the build of the app ---


@pytest.mark.slow
def test_the_app_is_built_alike_in_two_places(root, tmp_path):
    if not (root / ".git").exists():
        pytest.skip("this is no clone")
    names = subprocess.run(
        ["git", "ls-files", "client_pwa", "service", "openapi", "pyproject.toml"],
        cwd=root, capture_output=True, text=True, check=True,
    ).stdout.splitlines()  # fmt: skip
    # The one place is here, where tests/run has built it.
    copy = tmp_path / "another-place"
    for name in names:
        if (root / name).is_file():
            (copy / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(root / name, copy / name)
    (copy / "client_pwa" / "node_modules").symlink_to(root / "client_pwa" / "node_modules")
    subprocess.run(
        ["npm", "run", "--silent", "build"],
        cwd=copy / "client_pwa",
        check=True,
        capture_output=True,
    )
    built = [place / "service" / "ringwright" / "app" for place in (root, copy)]
    found = [
        sorted(path.relative_to(app) for path in app.rglob("*") if path.is_file()) for app in built
    ]
    assert found[0] == found[1]
    assert len(found[0]) > 20
    same, other, failed = filecmp.cmpfiles(*built, [str(path) for path in found[0]], shallow=False)
    assert (other, failed) == ([], [])
    assert len(same) == len(found[0])
