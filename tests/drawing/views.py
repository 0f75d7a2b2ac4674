"""Views of parts and operations in real millimetres, before they are set out, by shapely."""

from functools import cache

from shapely.geometry import Polygon

from ringwright.core.calculations import CALCULATIONS
from ringwright.core.drawing import catalogue, operation_views
from ringwright.core.drawing.drawing import settled
from ringwright.core.drawing.entities import Arc, Circle, Fill, Hatch, Line, Polyline
from ringwright.core.drawing.shapes import arc_points
from ringwright.core.fields import checked

# The sign of a diameter.
ROUND = "\u00d8"
JOBS = {
    "double": {"bore": 79.375, "steam_pressure": 0.83},
    "small": {"bore": 20.0, "ring_width": 1.7, "setting": "bound"},
    "stick": {"bore": 131.0, "slit_on_stick": True, "end_cut": "angled-60", "dimensions": "inch"},
    "plain": {"bore": 151.3, "ring_type": "plain", "end_cut": "stepped"},
    "band": {"bore": 61.7, "ring_type": "plain", "setting": "bound", "finishing": "band"},
    "screen": {"bore": 214.0, "setting": "sprung", "finishing": "band", "paper": "screen"},
    "square": {"bore": 47.0, "ring_type": "plain", "setting": "sprung", "end_cut": "square"},
}


def job_of(name, **more):
    fields = tuple(CALCULATIONS["drawing"].fields)
    return settled(checked(fields, {**JOBS.get(name, {}), **more}))


@cache
def settled_job(name):
    return job_of(name)


def settled_of(more):
    """As settled_job, for the names of JOBS and of `more`: name -> request."""
    return cache(lambda name: job_of(name, **more.get(name, {})))


def settled_among(cases):
    """As settled_job, for the names of `cases`: name -> (a name of JOBS, what is asked besides)."""
    return cache(lambda name: job_of(cases[name][0], **cases[name][1]))


def drawn(job):
    """(part or operation, View) of all that a job has drawn."""
    found = []
    for part in catalogue.parts_of(job):
        if part.draw is not None and part.group != catalogue.CHART:
            found += [(part.key, view) for view in part.draw(job)[0]]
    for key in job.operations:
        found += [("operation " + key, view) for view in operation_views.picture(job, key)[0]]
    return found


def views(job, part):
    """Name -> View of one part, or of an operation."""
    if part.startswith("operation "):
        rows = operation_views.picture(job, part.split()[1])[0]
    else:
        rows = catalogue.PARTS[part].draw(job)[0]
    return {view.name: view for view in rows}


def of_layer(view, layer):
    return [one for one in view.shapes if one.layer == layer]


def cut_faces(view):
    """Polygons that are hatched."""
    faces = [Polygon(one.loops[0], one.loops[1:]) for one in view.shapes if type(one) is Hatch]
    # Points that are one but for the last bit are no fault of a face.
    return [one if one.is_valid else one.simplify(1e-9) for one in faces]


def closed(view, layer):
    """Polygons of closed lines of a layer."""
    return [
        Polygon(one.points)
        for one in view.shapes
        if type(one) is Polyline and one.closed and one.layer == layer
    ]


def edges_along(view, axis):
    """All places along x (0) or y (1) where something drawn begins, bends or ends."""
    found = []
    for one in view.shapes:
        if type(one) is Circle:
            middle = (one.x, one.y)[axis]
            found += [middle - one.radius, middle, middle + one.radius]
        elif type(one) is Arc:
            points = arc_points(one.radius, one.start, one.end, one.x, one.y)
            found += [point[axis] for point in points]
            middle = (one.x, one.y)[axis]
            found += [middle - one.radius, middle + one.radius]
        elif type(one) is Line:
            found += [(one.x1, one.y1)[axis], (one.x2, one.y2)[axis]]
        elif type(one) in (Polyline, Fill):
            found += [point[axis] for point in one.points]
        elif type(one) is Hatch:
            found += [point[axis] for loop in one.loops for point in loop]
    return found
