"""Calculation "drawing": a part of the job as a drawing, worked out from the figures of the
tooling.
"""

from collections import OrderedDict

from ..catalogue.inputs import Chooser, listed
from ..catalogue.inputs_drawing import DRAWING
from ..catalogue.inputs_stock import SHOP
from ..catalogue.inputs_tools import LATHE
from ..making import route, route_tube, tool_list, tooling
from ..making.part_sizes import Size, limited
from ..making.route_rows import changed
from ..problems import Fault, InputProblem
from ..records import plain
from ..ring import sizing
from ..walk import rings
from ..walk.finished import GROOVE_CLASS
from . import catalogue, words
from .job import Job
from .paper import Title
from .plain import entity_list
from .svg import svg

FIELDS = (
    tooling.FIELDS
    + listed((LATHE, SHOP), "machine", "bar_form", "bar_sizes")
    + tuple(DRAWING.values())
)


def settled(values):
    """The Job of checked values of FIELDS. Raises InputProblem where they cannot be worked
    together.
    """
    design, tools, _ = tooling.settle_tooling(values)
    return job_of(design, tools, values)


def job_of(design, tools, values):
    """The Job of a Design and its Tooling; values: of the inputs DRAWING, absent ones take their
    default.
    """
    take = Chooser(values, DRAWING)
    system = take("dimensions")
    part = take("part")
    own = {}
    if part == catalogue.OPERATION:
        own = rings.sizes_of(design, values, take("drawn_ring"))
    listing = tool_list.tools(design, tools)
    sizes = OrderedDict()
    materials = OrderedDict()
    for tool in listing:
        sizes[tool.tool] = OrderedDict([(size.name, _own(size, own)) for size in tool.sizes])
        materials[tool.tool] = tool.material
    title = Title(
        job=values.get("job_name") or "",
        owner=values.get("owner") or "",
        date=values.get("date") or "",
        title="",
        material="",
        measures="inches" if system == words.INCH else "mm",
        number="",
        texture="",
    )
    # What is there already is as it is; what is to be cut has limits. The piston's grade is common
    # practice, no source.
    worked = {}
    for name, size, tolerance in (
        ("groove_width", design.groove_width, GROOVE_CLASS),
        ("piston_diameter", design.piston_diameter, "h8"),
    ):
        if values.get(name) is None:
            size = limited(name, "", size, tolerance)
            if size.lower is not None:
                worked[name] = size
    operations = OrderedDict()
    for row in route.operations(design, tools, values):
        operation = changed(row, [_own(size, own) for size in row.sizes])
        operations[operation.key] = operation
        for size in operation.sizes:
            if size.lower is not None and size.name not in worked:
                worked[size.name] = size
    return Job(
        design=design,
        tooling=tools,
        acts=sizing.behaviour(design),
        system=system,
        paper=take("paper"),
        title=title,
        sizes=sizes,
        materials=materials,
        worked=worked,
        operations=operations,
        operation=take("operation"),
        bar=route_tube.bar_of(design, values),
    )


def _own(size, own):
    """A Size as it is for one ring that was measured. own: as rings.sizes_of tells it."""
    step = own.get(size.name)
    if step is None:
        return size
    return Size(
        name=size.name,
        label=size.label,
        value=step.value,
        unit=size.unit,
        lower=step.lower,
        upper=step.upper,
        reading=size.reading,
    )


def sheets_of(job, part):
    """The Sheets of a part. Raises InputProblem when this kind of ring does not have it."""
    if not catalogue.PARTS[part].serves(job):
        names = [entry.key for entry in catalogue.parts_of(job)]
        raise InputProblem(
            [
                Fault(
                    ("part",),
                    "conflict",
                    "a %s ring set this way has no %s" % (job.design.duty.ring_type, part),
                    "use one of: " + ", ".join(names),
                )
            ]
        )
    if part == catalogue.OPERATION and job.operation not in job.operations:
        raise InputProblem(
            [
                Fault(
                    ("operation",),
                    "conflict",
                    "the route card of this ring has no operation %s" % job.operation,
                    "use one of: " + ", ".join(job.operations),
                )
            ]
        )
    return catalogue.sheets(job, part)


def calculate(values):
    """The drawing of one part: "sheets" with their SVG, and "parts", the list of all that can be
    drawn.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    job = settled(values)
    part = Chooser(values, DRAWING)("part")
    sheets = []
    for sheet in sheets_of(job, part):
        row = OrderedDict(
            (
                ("sheet", sheet.number),
                ("sheets", sheet.count),
                ("title", sheet.title),
                ("about", sheet.about),
                ("paper", sheet.paper),
                ("width", plain(sheet.width)),
                ("height", plain(sheet.height)),
                ("scale", sheet.scale),
                ("svg", svg(sheet)),
            )
        )
        if values.get("geometry"):
            row["views"] = plain(entity_list(sheet))
        sheets.append(row)
    return OrderedDict(
        (
            ("figures", OrderedDict()),
            ("findings", []),
            ("chosen", []),
            ("cautions", []),
            ("part", part),
            ("sheets", sheets),
            (
                "parts",
                [
                    OrderedDict(
                        (("part", entry.key), ("title", entry.title), ("group", entry.group))
                    )
                    for entry in catalogue.parts_of(job)
                ],
            ),
        )
    )
