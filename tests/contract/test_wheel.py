"""The built wheel holds all it needs, and works where nothing of the project lies beside it."""

import json
import os
import subprocess
import sys
import venv
import zipfile

import pytest

pytestmark = pytest.mark.waits

CALL = """
import json, sys
from ringwright.api import create_app
client = create_app().test_client()
answer = client.post("/v1/sizing", json={"bore": "80 mm"})
spec = client.get("/openapi.json").get_json()
pages = [client.get("/docs/" + name).text for name in ("begin", "example", "changes")]
print(json.dumps([answer.get_json(), spec, pages, sys.modules["ringwright"].__file__]))
"""


@pytest.fixture(scope="module")
def wheel(root, tmp_path_factory):
    """The wheel, built from this tree."""
    folder = tmp_path_factory.mktemp("wheel")
    done = subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", folder, root],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return next(folder.glob("*.whl"))


@pytest.mark.slow
def test_it_holds_the_core_the_examples_and_the_built_app(wheel, root):
    held = set(zipfile.ZipFile(wheel).namelist())
    service = root / "service"
    for path in (service / "ringwright").rglob("*.py"):
        assert path.relative_to(service).as_posix() in held
    for path in (root / "openapi" / "examples").glob("*.json"):
        assert "ringwright/api/examples/" + path.name in held
    for name in ("begin.md", "worked_example.md", "CHANGELOG.md"):
        assert "ringwright/api/examples/" + name in held
    for path in (service / "ringwright" / "api" / "docs").iterdir():
        if path.is_file():
            assert path.relative_to(service).as_posix() in held
    for folder in ("app", "renderer"):
        built = [path for path in (service / "ringwright" / folder).rglob("*") if path.is_file()]
        assert len(built) > 5, "not built: service/build_app"
        for path in built:
            assert path.relative_to(service).as_posix() in held
    assert not [name for name in held if "node_modules" in name or name.startswith("tests")]


@pytest.mark.slow
def test_it_works_in_a_bare_environment(wheel, app, tmp_path):
    place = tmp_path / "bare"
    venv.create(place, with_pip=True)
    python = place / "bin" / "python"
    subprocess.run([python, "-m", "pip", "install", "-qq", wheel], check=True)
    clean = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    done = subprocess.run(
        [python, "-I", "-c", CALL],
        capture_output=True,
        text=True,
        check=True,
        cwd=tmp_path,
        env=clean,
    )
    answer, spec, pages, where = json.loads(done.stdout)
    assert where.startswith(str(place))
    client = app.test_client()
    assert answer == client.post("/v1/sizing", json={"bore": "80 mm"}).get_json()
    assert spec == client.get("/openapi.json").get_json()
    names = ("begin", "example", "changes")
    assert pages == [client.get("/docs/" + name).text for name in names]
