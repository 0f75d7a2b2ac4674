"""The parts that can be drawn, which rings have them, and the sheets of each."""

from collections import OrderedDict, namedtuple

from ..making.route_text import TEXT
from ..ring.heat_set import BAND
from ..ring.soak import can_be_set
from . import (
    blank_views,
    charts,
    gap_views,
    holding_views,
    operation_views,
    piston_views,
    ring_views,
    table_views,
    template,
    tool_views,
    words,
)
from .paper import TEXTURE, Title
from .setting import composed

RING = "ring"
BLANK = "blank"
TOOL = "tool"
ENGINE = "engine"
CHART = "chart"
OPERATION = "operation"

# key, title: of the part. group: one of the above. draw: function of a Job giving (views, notes,
# about); None for the template, which sets itself out. serves: function of a Job, True when it
# has that part.
Part = namedtuple("Part", ("key", "title", "group", "draw", "serves"))


def _any(job):
    return True


def _double(job):
    return job.design.duty.turns == 2


def _on_former(job):
    d = job.design
    return d.spring.former_diameter is not None and can_be_set(d.duty.ring_material.family)


def _in_closing_ring(job):
    return job.design.duty.finishing != BAND


def _banded(job):
    return job.design.duty.finishing == BAND


def _bored_clamped(job):
    return job.design.allowances.inside > 0.0


def _spread(job):
    d = job.design
    return d.spring.former_diameter is None and can_be_set(d.duty.ring_material.family)


# Blanks that are slit on their stick need neither.
def _in_jaws(job):
    return "blank-jaws" in job.sizes


def _on_mandrel(job):
    return "slitting-mandrel" in job.sizes


def _operation(job):
    return operation_views.picture(job, job.operation)


_TABLE = (
    Part("ring-closed", "Ring in its bore", RING, ring_views.closed, _any),
    Part("ring-free", "Ring, free", RING, ring_views.free, _any),
    Part("gaps", "Which gap is which", RING, gap_views.gaps, _any),
    Part("ring-turned-through", "Ring, turned through", RING, blank_views.turned_through, _double),
    Part("blank", "Blank", BLANK, blank_views.blank, _any),
    Part("template", "Template to wrap round the blank", BLANK, None, _any),
    Part("rotary-table", "Slitting on the rotary table", BLANK, table_views.rotary_table, _double),
    Part("blank-jaws", "Soft jaws for the blank", TOOL, holding_views.blank_jaws, _in_jaws),
    Part("slitting-mandrel", "Slitting mandrel", TOOL, holding_views.slitting_mandrel, _on_mandrel),
    Part("former", "Set former", TOOL, tool_views.former, _on_former),
    Part("spacer", "Spacer", TOOL, tool_views.spacer, _spread),
    Part("pot", "Facing pot", TOOL, tool_views.pot, _any),
    Part("closing-ring", "Closing ring", TOOL, tool_views.closing_ring, _in_closing_ring),
    Part("closing-band", "Closing band", TOOL, holding_views.closing_band, _banded),
    Part("clamp-mandrel", "Clamp mandrel", TOOL, tool_views.clamp_mandrel, _any),
    Part("end-plate", "End plate", TOOL, tool_views.end_plate, _any),
    Part("outer-clamp", "Outer clamp", TOOL, holding_views.outer_clamp, _bored_clamped),
    Part("bore-gauge", "Trial bore", TOOL, tool_views.trial_bore, _any),
    Part("piston", "Piston and grooves", ENGINE, piston_views.piston, _any),
    Part("cylinder-section", "Ring in its groove", ENGINE, piston_views.in_cylinder, _any),
    Part("section-window", "Sections that serve", CHART, charts.window, _any),
    Part("free-shape", "Free shape against the bore", CHART, charts.free_shape, _any),
    Part("steam-temperature", "Steam temperature", CHART, charts.steam_temperature, _any),
)
# What is made from its drawing, beside the tools.
_MADE = ("ring-closed", "blank", "piston")
_OPERATION = Part(OPERATION, "Operation of the route card", OPERATION, _operation, _any)
PARTS = OrderedDict([(entry.key, entry) for entry in _TABLE + (_OPERATION,)])


def parts_of(job):
    """The Parts that the ring of a Job has, in the order they are shown.

    The pictures of operations belong to the route card and are not among them.
    """
    return [part for part in _TABLE if part.serves(job)]


def sheets(job, key):
    """The Sheets of a part; more than one only for a template too long for its paper.

    job: a Job. key: of a Part that the Job's ring has.
    """
    part = PARTS[key]
    blank = job.title
    heading = TEXT[job.operation].title if part is _OPERATION else part.title
    title = Title(
        job=blank.job,
        owner=blank.owner,
        date=blank.date,
        title=heading,
        material=_material(job, part),
        measures=blank.measures,
        number="%s-%d"
        % (words.number(job.design.duty.bore, job.system), list(PARTS).index(key) + 1),
        texture=TEXTURE if part.group == TOOL or key in _MADE else "",
    )
    if part.draw is None:
        return template.sheets(job, title)
    views, notes, about = part.draw(job)
    return [composed(key, title, about, views, notes, job.paper, part.group == CHART)]


def _material(job, part):
    """What the part is made of, for the title block."""
    if part.group in (RING, BLANK):
        return job.design.duty.ring_material.title
    if part.key in job.materials:
        return job.materials[part.key]
    return job.design.duty.piston.title if part.key == "piston" else ""
