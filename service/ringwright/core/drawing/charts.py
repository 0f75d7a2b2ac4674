"""Charts: the sections that serve, the free shape against the bore, steam temperature against
pressure.
"""

import math

from ..properties import steam
from ..ring import section
from ..wording import MM_PER_INCH, MPA_PER_PSI, decimal
from . import curve, words
from .axes import Axes
from .entities import ADJACENT, CENTRE, HIDDEN, LIMIT, OUTLINE
from .paper import PAPERS
from .ring_views import free_line

_POINTS = 24


def _size(job, count=1):
    """(width, height) of each of `count` charts on one sheet of that paper [mm]."""
    if not PAPERS[job.paper].framed:
        return 66.0, 56.0
    return 108.0, (110.0, 58.0, 32.0)[count - 1]


def window(job):
    """(views, notes, about): stress over thickness, and the thicknesses that serve over pressure
    and width.
    """
    d = job.design
    views = [_shares(job), _over_pressure(job)]
    if d.duty.turns == 2:
        views.append(_over_width(job))
    notes = [
        "100 %% is what the iron may carry: in the bore for years %s, once in fitting %s."
        % (
            words.stress(
                section.PERMANENT_WATCH * d.duty.ring_material.bending_strength, job.system
            ),
            words.stress(section.ONCE_WATCH * d.duty.ring_material.bending_strength, job.system),
        ),
        "Shaded: sections that serve on both counts. The ringed point is the ring of this job.",
    ]
    return (
        views,
        notes,
        "Charts of the sections that neither break in fitting nor tire in the bore, with this "
        "ring marked.",
    )


def _shares(job):
    d = job.design
    task = section.task_of(d, d.spring.wall_pressure, d.section.width)
    unit, scale = _length(job)
    thin, thick = 0.55 * d.section.thickness, 1.6 * d.section.thickness
    wide, high = _size(job, 2 if d.duty.turns == 1 else 3)
    axes = Axes(
        "stress",
        "Stress against thickness",
        wide,
        high,
        (thin / scale, thick / scale, "radial thickness [%s]" % unit),
        (0.0, 200.0, "share of what it may carry [%]"),
    )
    sizes = [thin + (thick - thin) * i / _POINTS for i in range(_POINTS + 1)]
    bore = [(a / scale, 100.0 * section.closed_share(task, a)) for a in sizes]
    once = [(a / scale, 100.0 * section.once_share(task, a)) for a in sizes]
    low, high_edge = _edges(task, thin, thick)
    if low < high_edge:
        axes.region(
            [
                (low / scale, 0.0),
                (high_edge / scale, 0.0),
                (high_edge / scale, 200.0),
                (low / scale, 200.0),
            ]
        )
    axes.curve(LIMIT, [(thin / scale, 100.0), (thick / scale, 100.0)])
    axes.curve(OUTLINE, bore)
    axes.curve(HIDDEN, once)
    mine = d.section.thickness / scale
    axes.curve(CENTRE, [(mine, 0.0), (mine, 200.0)])
    shares = (
        100.0 * section.closed_share(task, d.section.thickness),
        100.0 * section.once_share(task, d.section.thickness),
    )
    for share in shares:
        if share <= 200.0:
            axes.point(mine, share)
    axes.label(*(_visible(bore, 0.12) + ("In the bore",)))
    axes.label(
        *(
            _visible(once, 0.88)
            + ("Fitting it" if d.duty.turns == 1 else "Fitting it, turning it through",)
        )
    )
    axes.label(mine, 14.0, "This ring: %s" % words.length(d.section.thickness, job.system))
    return axes.view


def _over_pressure(job):
    d = job.design
    unit, scale = _length(job)
    per = MPA_PER_PSI if job.system == words.INCH else 1.0
    top = max(0.1, 1.6 * d.spring.wall_pressure)
    pressures = [top * (0.04 + 0.96 * i / _POINTS) for i in range(_POINTS + 1)]
    thin, thick = d.duty.bore / section.THINNEST_RATIO, d.duty.bore / section.THICKEST_RATIO
    edges = [_edges(section.task_of(d, p, d.section.width), thin, thick) for p in pressures]
    up = max(1.5 * d.section.thickness, min(1.15 * max([edge[1] for edge in edges]), thick))
    wide, high = _size(job, 2 if d.duty.turns == 1 else 3)
    name = "wall pressure [%s]" % ("psi" if job.system == words.INCH else "N/mm2")
    axes = Axes(
        "pressure",
        "Thickness that serves, over pressure",
        wide,
        high,
        (0.0, top / per, name),
        (0.0, up / scale, "radial thickness [%s]" % unit),
    )
    low = [(p / per, min(edge[0], up) / scale) for p, edge in zip(pressures, edges)]
    highs = [(p / per, min(edge[1], up) / scale) for p, edge in zip(pressures, edges)]
    _between(axes, low, highs)
    axes.curve(OUTLINE, low)
    axes.curve(HIDDEN, highs)
    axes.point(d.spring.wall_pressure / per, d.section.thickness / scale)
    axes.label(d.spring.wall_pressure / per, d.section.thickness / scale, "This ring")
    axes.label(*(highs[-3] + ("Thicker breaks in fitting",)))
    axes.label(*(low[-3] + ("Thinner tires in the bore",)))
    return axes.view


def _over_width(job):
    d = job.design
    unit, scale = _length(job)
    top = 2.2 * d.section.width
    widths = [top * (0.12 + 0.88 * i / _POINTS) for i in range(_POINTS + 1)]
    thin, thick = d.duty.bore / section.THINNEST_RATIO, d.duty.bore / section.THICKEST_RATIO
    edges = [_edges(section.task_of(d, d.spring.wall_pressure, w), thin, thick) for w in widths]
    up = max(1.5 * d.section.thickness, min(1.15 * max([edge[1] for edge in edges]), thick))
    wide, high = _size(job, 3)
    axes = Axes(
        "width",
        "Thickness that serves, over width",
        wide,
        high,
        (0.0, top / scale, "ring width [%s]" % unit),
        (0.0, up / scale, "radial thickness [%s]" % unit),
    )
    low = [(w / scale, min(edge[0], up) / scale) for w, edge in zip(widths, edges)]
    highs = [(w / scale, min(edge[1], up) / scale) for w, edge in zip(widths, edges)]
    _between(axes, low, highs)
    axes.curve(OUTLINE, low)
    axes.curve(HIDDEN, highs)
    axes.point(d.section.width / scale, d.section.thickness / scale)
    axes.label(d.section.width / scale, d.section.thickness / scale, "This ring")
    return axes.view


def _between(axes, low, highs):
    """Shades between two curves where the second is the higher."""
    lower = [one for one, other in zip(low, highs) if other[1] > one[1]]
    upper = [other for one, other in zip(low, highs) if other[1] > one[1]]
    if len(lower) > 1:
        axes.region(lower + list(reversed(upper)))


def _visible(pairs, share):
    """The pair at about that share of the way along the part of a curve below 200 %."""
    shown = [pair for pair in pairs if pair[1] <= 195.0]
    if not shown:
        return pairs[0][0], 195.0
    return shown[min(len(shown) - 1, int(share * len(shown)))]


def _edges(task, thin, thick):
    """(thinnest, thickest) section that serves, within those sizes [mm]."""
    return (
        _where_whole(lambda a: section.closed_share(task, a), thin, thick),
        _where_whole(lambda a: section.once_share(task, a), thin, thick),
    )


def _where_whole(share, low, high):
    """The size at which a share is 1, or the end nearest to it where it is not 1 between them.

    Both shares are nearly powers of the size, so their logarithms are nearly a straight line.
    """
    x1, x2 = math.log(low), math.log(high)
    y1, y2 = math.log(share(low)), math.log(share(high))
    if y1 * y2 > 0.0:
        return low if abs(y1) < abs(y2) else high
    for _ in range(12):
        x = x1 - y1 * (x2 - x1) / (y2 - y1)
        y = math.log(share(math.exp(x)))
        if abs(y) < 1e-3:
            break
        if y * y2 < 0.0:
            x1, y1 = x2, y2
        else:
            # The Illinois rule: the end that stays counts for half, so that it does not stay long.
            y1 = 0.5 * y1
        x2, y2 = x, y
    return math.exp(x)


def free_shape(job):
    """(views, notes, about): how far the free ring stands outside the bore, round the
    circumference.
    """
    d = job.design
    line = free_line(job)
    unit, scale = _length(job)
    outer = curve.beside(line, 0.5 * d.section.thickness)
    pairs = []
    for x, y in outer:
        # From the gap, which is at the top, clockwise.
        angle = math.degrees(math.atan2(x, y))
        pairs.append((angle % 360.0, (math.sqrt(x * x + y * y) - 0.5 * d.duty.bore) / scale))
    pairs.sort()
    most = max([pair[1] for pair in pairs])
    least = min(0.0, min([pair[1] for pair in pairs]))
    wide, high = _size(job)
    axes = Axes(
        "departure",
        "Free ring beyond the bore",
        wide,
        high,
        (
            0.0,
            360.0,
            "angle from the top of the ring, its gap there [deg]"
            if PAPERS[job.paper].framed
            else "angle from the gap [deg]",
        ),
        (1.15 * least, 1.2 * most, "outside, beyond the bore [%s]" % unit),
    )
    axes.curve(OUTLINE, pairs)
    axes.curve(ADJACENT, [(0.0, 0.0), (360.0, 0.0)])
    axes.label(180.0, 0.0, "Bore")
    text = "Free ring" if d.duty.turns == 1 else "Free ring, front turn"
    axes.label(*(pairs[len(pairs) * 3 // 4] + (text,)))
    notes = [
        "Measured from the middle of the box that just holds the ring; the slope is the same for "
        "any centre near it."
    ]
    return [axes.view], notes, "How far the free ring stands beyond the bore, all round."


def steam_temperature(job):
    """(views, notes, about): temperature of saturated steam against gauge pressure, with this
    engine's.
    """
    d = job.design
    inch = job.system == words.INCH
    top = max(1.0, 1.35 * d.duty.steam_pressure)
    per = MPA_PER_PSI if inch else 0.1
    wide, high = _size(job)

    def shown(celsius):
        return celsius * 1.8 + 32.0 if inch else celsius

    pairs = []
    for i in range(_POINTS + 1):
        # Closer steps where the curve is steep.
        p = top * (i / _POINTS) * (i / _POINTS)
        pairs.append((p / per, shown(steam.saturation_temperature(p))))
    highest = max(pairs[-1][1], shown(d.duty.temperature))
    unit = "\u00b0F" if inch else "\u00b0C"
    axes = Axes(
        "steam",
        "Saturated steam",
        wide,
        high,
        (0.0, top / per, "gauge pressure [%s]" % ("psi" if inch else "bar")),
        (shown(80.0), highest + 0.06 * (highest - shown(80.0)), "temperature [%s]" % unit),
    )
    axes.curve(OUTLINE, pairs)
    here = d.duty.steam_pressure / per
    axes.curve(CENTRE, [(here, shown(80.0)), (here, highest)])
    axes.point(here, shown(d.duty.temperature))
    axes.label(
        here,
        shown(d.duty.temperature),
        "This engine: %s %s, %s %s"
        % (
            decimal(here, 0 if inch else 1),
            "psi" if inch else "bar",
            decimal(shown(d.duty.temperature), 0),
            unit,
        ),
    )
    if d.duty.temperature > d.duty.saturation + 0.5:
        axes.label(
            here,
            shown(d.duty.saturation),
            "Saturated: %s %s" % (decimal(shown(d.duty.saturation), 0), unit),
        )
    return (
        [axes.view],
        ["IAPWS-IF97, saturation line; atmosphere at sea level."],
        "Steam temperature against pressure, with this engine marked.",
    )


def _length(job):
    """(unit, mm in it) of lengths on the axes."""
    return ("in", MM_PER_INCH) if job.system == words.INCH else ("mm", 1.0)
