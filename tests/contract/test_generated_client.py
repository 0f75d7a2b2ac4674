"""A client made by a generator that knows only the specification, against the service itself."""

import importlib
import subprocess
import sys

import pytest

PACKAGE = "made_client"
# The generator asks to be told which kinds of content are files.
SETTINGS = """
project_name_override: made
post_hooks: []
content_type_overrides:
  image/svg+xml: application/octet-stream
  image/vnd.dxf: application/octet-stream
  application/pdf: application/octet-stream
  text/csv: application/octet-stream
"""


@pytest.fixture(scope="module")
def made(root, tmp_path_factory):
    """The generated package, imported."""
    folder = tmp_path_factory.mktemp("client")
    settings = folder / "settings.yaml"
    settings.write_text(SETTINGS)
    done = subprocess.run(
        [
            *(sys.executable, "-m", "openapi_python_client", "generate", "--meta", "none"),
            *("--path", root / "openapi" / "openapi.json", "--config", settings),
            *("--output-path", folder / PACKAGE, "--fail-on-warning"),
        ],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    sys.path.insert(0, str(folder))
    yield importlib.import_module(PACKAGE)
    sys.path.remove(str(folder))


@pytest.fixture
def connection(made, server):
    """A connection of the generated client to the running service."""
    with made.Client(base_url=server) as opened:
        yield opened


def part(name):
    """A module of the generated package."""
    return importlib.import_module("%s.%s" % (PACKAGE, name))


@pytest.mark.slow
def test_it_sizes_a_ring(connection, app):
    models = part("models")
    request = models.SizingRequest(bore="3 1/8 in", rings=3, steam_pressure="120 psi")
    answer = part("api.calculations.work_sizing").sync(
        client=connection, body=request, units=models.WorkSizingUnits.INCH, working=True
    )
    assert isinstance(answer, models.Answer)
    direct = app.test_client().post(
        "/v1/sizing?units=inch&working=true",
        json={"bore": "3 1/8 in", "rings": 3, "steam_pressure": "120 psi"},
    )
    assert answer.to_dict() == direct.get_json()
    figure = answer.figures["free_gap"]
    assert figure.unit == "in"
    assert figure.working[0].symbol


@pytest.mark.slow
def test_it_fetches_the_same_by_address(connection):
    response = part("api.calculations.get_sizing").sync_detailed(client=connection, bore=80.0)
    assert response.status_code == 200
    assert response.headers["etag"]
    posted = part("api.calculations.work_sizing").sync(
        client=connection, body=part("models").SizingRequest(bore=80.0)
    )
    assert response.parsed.to_dict() == posted.to_dict()


@pytest.mark.slow
def test_it_reads_a_problem(connection):
    problem = part("api.calculations.get_sizing").sync(client=connection, bore="80 cubits")
    assert isinstance(problem, part("models").Problem)
    assert problem.code == part("models").ProblemCode.INVALID_INPUT
    assert problem.errors[0].path == ["bore"]


@pytest.mark.slow
def test_it_lists_the_materials(connection):
    listed = part("api.calculations.list_materials").sync(client=connection)
    assert listed["materials"][0]["key"]


@pytest.mark.slow
def test_it_fetches_a_drawing(connection):
    drawn = part("api.files.file_drawing_svg").sync(
        client=connection, part=part("models").FileDrawingSvgPart.FORMER, bore="80 mm"
    )
    assert drawn.payload.read().startswith(b"<svg")
