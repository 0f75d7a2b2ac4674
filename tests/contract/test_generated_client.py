"""A client made by a generator that knows only the specification, against the service itself."""

import importlib
import subprocess
import sys
import zlib
from pathlib import Path

import pytest

from ringwright.core.calculations import CALCULATIONS

pytestmark = pytest.mark.waits

PACKAGE = "made_client"
# The generator asks to be told which kinds of content are text and which are bytes.
SETTINGS = """
project_name_override: made
post_hooks: []
content_type_overrides:
  image/svg+xml: text/plain
  image/vnd.dxf: text/plain
  application/pdf: application/octet-stream
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
        client=connection, body=request, units=models.Units.INCH, working=True
    )
    assert isinstance(answer, models.SizingAnswer)
    direct = app.test_client().post(
        "/v1/sizing?units=inch&working=true",
        json={"bore": "3 1/8 in", "rings": 3, "steam_pressure": "120 psi"},
    )
    assert answer.to_dict() == direct.get_json()
    figure = answer.figures.free_gap
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
@pytest.mark.parametrize("calculation", ["sizing", "job"])
def test_it_reads_the_figures_that_were_picked(connection, app, calculation):
    """An answer without what a whole one must have is of a type of its own."""
    request = getattr(part("models"), calculation.title() + "Request")(bore="3 1/8 in")
    answer = part("api.calculations.work_" + calculation).sync(
        client=connection, body=request, figures="free_gap,closed_gap"
    )
    assert isinstance(answer, part("models").PickedAnswer)
    assert answer.figures["free_gap"].value > answer.figures["closed_gap"].value
    direct = app.test_client().post(
        "/v1/%s?figures=free_gap,closed_gap" % calculation, json={"bore": "3 1/8 in"}
    )
    assert answer.to_dict() == direct.get_json()


@pytest.mark.slow
def test_it_reads_a_problem(connection):
    problem = part("api.calculations.get_sizing").sync(client=connection, bore="80 cubits")
    assert isinstance(problem, part("models").Problem)
    assert problem.code == part("models").ProblemCode.INVALID_INPUT
    assert problem.errors[0].path == ["bore"]


@pytest.mark.slow
def test_it_lists_the_materials(connection):
    listed = part("api.calculations.list_materials").sync(client=connection)
    assert listed.materials[0].key == "grey-iron"


@pytest.mark.slow
def test_it_reads_a_table(connection):
    body = part("models").StockRequest.from_dict(
        {"sets": [{"outside_diameter": 83, "inside_diameter": 74, "part_length": 8, "count": 3}]}
    )
    table = part("api.files.table_of_stock").sync(client=connection, body=body)
    assert table.splitlines()[0].lstrip("\ufeff").startswith("name,")


USE = """
from made_client import Client, models
from made_client.api.calculations import work_job, work_sizing

with Client(base_url="http://127.0.0.1") as client:
    answer = work_sizing.sync(client=client, body=models.SizingRequest(bore=80.0))
    assert isinstance(answer, models.SizingAnswer)
    gap: float = answer.figures.free_gap.value
    check: models.CheckName = answer.findings[0].check
    job = work_job.sync(client=client, body=models.JobRequest(bore=80.0))
    assert isinstance(job, models.JobAnswer)
    title: str = job.tooling.tools[0].title
    sticks: int = job.stock.sets[0].sticks
"""
WRONG = {
    "answer.figures.free_gap.value": ("answer.figures.free_gapp.value", "free_gapp"),
    "job.tooling.tools": ("job.tooling.tool", "tool"),
    "sets[0].sticks": ("sets[0].stick", "stick"),
    "SizingRequest(bore=80.0)": ("SizingRequest(boar=80.0)", "boar"),
}


def check_types(folder, text):
    """What mypy says of a program that uses the client."""
    (folder / PACKAGE / "py.typed").touch()
    # A file for each: two of one length written within a second look alike to mypy's cache.
    program = folder / ("program_%08x.py" % zlib.crc32(text.encode()))
    program.write_text(text)
    return subprocess.run(
        [sys.executable, "-m", "mypy", "--strict", "--follow-imports=silent", program],
        capture_output=True,
        text=True,
        check=False,
        cwd=folder,
    )


@pytest.mark.slow
def test_names_are_checked_by_types(made):
    """A misspelt figure, list, column or input is an error before the program runs."""
    folder = Path(made.__file__).parents[1]
    done = check_types(folder, USE)
    assert done.returncode == 0, done.stdout
    for right, (wrong, name) in WRONG.items():
        assert right in USE
        done = check_types(folder, USE.replace(right, wrong))
        assert done.returncode == 1 and '"%s"' % name in done.stdout, done.stdout


@pytest.mark.slow
def test_it_is_small(made):
    """Equal shapes are one class: an enumeration for each operation makes hundreds of them.

    Nineteen calculations made 149; each more brings its answer and its figures, shares the rest.
    """
    models = Path(made.__file__).parent / "models"
    classes = [
        line
        for path in models.glob("*.py")
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.startswith("class ")
    ]
    assert 60 < len(classes) < 8 * len(CALCULATIONS)


@pytest.mark.slow
def test_it_fetches_a_drawing(connection):
    drawn = part("api.files.file_drawing_svg").sync(
        client=connection, part=part("models").Part.FORMER, bore="80 mm"
    )
    assert drawn.startswith("<svg")


@pytest.mark.slow
def test_it_asks_for_many(connection, app):
    """Answers and problems stand in their places."""
    models = part("models")
    inputs = models.Anything.from_dict
    jobs = [
        models.ManyJob(calculation="sizing", inputs=inputs({"bore": bore}))
        for bore in ("3 1/8 in", "3 furlongs")
    ]
    first, second = part("api.calculations.work_many").sync(
        client=connection, body=jobs, figures="free_gap"
    )
    assert (first.status, second.status) == (200, 422)
    direct = app.test_client().post("/v1/sizing?figures=free_gap", json={"bore": "3 1/8 in"})
    assert first.answer.to_dict() == direct.get_json()
    gap = direct.get_json()["figures"]["free_gap"]
    assert first.answer["figures"]["free_gap"] == gap
    assert second.problem.errors[0].path == ["bore"]


@pytest.mark.slow
def test_it_posts_for_a_drawing(connection):
    request = part("models").ToolingRequest(bore="80 mm")
    drawn = part("api.files.work_drawing_svg").sync(
        client=connection, part=part("models").Part.FORMER, body=request
    )
    assert drawn.startswith("<svg")
