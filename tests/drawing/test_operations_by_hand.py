"""Pictures of the operations on blank and ring, each worked here from the card's figures: what is
held, in what, which tool goes where."""

import math

import pytest
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

from drawing.pictures import (
    axis,
    both,
    circles,
    lines,
    metal,
    plain_outlines,
    same_arrows,
    same_lines,
    same_measures,
    same_shapes,
    tool,
    tool_size,
    tools,
)
from drawing.views import JOBS, ROUND, closed, cut_faces, settled_among, views
from ringwright.core.drawing import operation_views
from ringwright.core.drawing.entities import Arc, Fill, Hatch

CASES = {name: (name, {}) for name in JOBS}
CASES["forced"] = ("square", {"finishing": "forced-round"})
# So wide and so small that boxes, walls and tools do not follow the work.
CASES["large"] = ("double", {"bore": 260.0, "ring_width": 24.0})
CASES["inch band"] = ("band", {"bore": 300.0, "dimensions": "inch", "soak_temperature": 553.0})
# The views of each picture, by the part that it shows.
SHOWN = {
    "survey": "cylinder", "face-bar": "bar", "drill": "bar", "turn-rough": "bar",
    "bore-rough": "bar", "bore": "bar", "part-off": "bar", "face-blank": "blank-jaws",
    "hold-stick": "bar", "mark-out": "slit", "slit": "table", "slit-stick": "table",
    "saw-off": "bar", "saw-wedges": "bridge", "saw-ends": "slit", "saw-end": "cut",
    "saw-step": "cut", "deburr": "edges", "turn-through": "through", "put-on-former": "end",
    "put-on-former-bound": "end", "spread": "ring seats", "soak": "box", "take-off": "end",
    "turn-back": "end", "measure-free-gap": "end", "face-step": "pot", "face-sides": "pot",
    "clamp": "clamp-mandrel", "clamp-forced": "clamp-mandrel",
    "clamp-band": "closing-band clamp-mandrel", "turn-finish": "clamp-mandrel",
    "bore-clamped": "outer-clamp", "dress-ends": "end", "inspect": "section", "fit": "section",
    "fit-double": "section",
}  # fmt: skip


job = settled_among(CASES)


def picture(name, *keys):
    """The last View of the first of those operations that the card has, None where it has none."""
    for key in keys:
        if key in job(name).operations:
            return list(views(job(name), "operation " + key).values())[-1]
    return None


def size(name, key, figure):
    return next(one for one in job(name).operations[key].sizes if one.name == figure)


def mirrored(shape):
    return Polygon([(x, -y) for x, y in shape.exterior.coords])


def test_each_operation_shows_its_own_parts():
    seen = set()
    for name in CASES:
        for key in job(name).operations:
            found, notes, about = operation_views.picture(job(name), key)
            assert [view.name for view in found] == SHOWN[key].split(), key
            assert notes == [] and about.endswith("."), key
            # One view alone fills the sheet: it is no detail.
            assert len(found) > 1 or found[0].target is None
            seen.add(key)
    assert seen == set(SHOWN)


@pytest.mark.parametrize("name", CASES)
def test_sizes_of_pictures_are_printed_as_they_are(name):
    """To the last digit; limits never beyond what was reckoned; a sign where it is across the
    axis."""
    unit = 25.4 if job(name).system == "inch" else 1.0
    step = 1e-4 if job(name).system == "inch" else 1e-3
    seen = 0
    for key, row in job(name).operations.items():
        sizes = {one.name: one for one in row.sizes}
        for view in operation_views.picture(job(name), key)[0]:
            for one in view.measures:
                texts = [line.strip("()").lstrip(ROUND) for line in one.words.lines]
                card = sizes.get(one.name)
                if len(texts) == 2:
                    high, low = map(float, texts)
                    assert high <= card.upper / unit + 1e-9 < high + step + 1e-6
                    assert low >= card.lower / unit - 1e-9 > low - step - 1e-6
                else:
                    assert card is None or card.lower is None, (key, one.name)
                    half = 0.5 * 10.0 ** -len(texts[0].partition(".")[2])
                    assert abs(float(texts[0]) - one.value / unit) <= half * (1.0 + 1e-6)
                across = one.side in ("left", "right") and one.first[1] == -one.second[1] != 0.0
                if one.name and across and view.name != "cut":
                    assert ROUND in one.words.prefix + one.words.lines[0], (key, one.name)
                elif one.side in ("left", "right"):
                    assert not one.words.prefix, (key, one.name)
                seen += 1
    assert seen > 20


@pytest.mark.parametrize("name", CASES)
def test_arrows_are_not_hidden_in_tools(name):
    """Both are solid: the head stands clear, and most of the shaft."""
    for key in job(name).operations:
        for view in operation_views.picture(job(name), key)[0]:
            solid = unary_union(tools(view))
            for one in view.shapes:
                if type(one) is Fill and len(one.points) == 3:
                    assert Polygon(one.points).intersection(solid).area < 1e-9, key
            for line in lines(view, "thin"):
                shaft = LineString([line[:2], line[2:]])
                assert shaft.difference(solid).length > 0.6 * shaft.length, key


@pytest.mark.parametrize("name", CASES)
def test_the_blank_is_faced_in_soft_jaws(name):
    view = picture(name, "face-blank")
    if view is None:
        return
    d, bore = job(name).design, job(name).tooling.blank_jaws_bore / 2
    inner, long = d.blank.bored_inside / 2, d.blank.length
    assert same_shapes(tools(view), [tool("face", long, inner + 0.7 * (bore - inner), bore)])
    x = long + 2 * tool_size(bore)
    assert same_arrows(view, [((x, bore), (x, 0.7 * bore))])
    assert same_measures(view, [("", "blank_length", "bottom", 0.0, -bore, long, -bore)])


@pytest.mark.parametrize("name", CASES)
def test_the_ring_lies_on_its_former(name):
    view = picture(name, "put-on-former", "put-on-former-bound")
    if view is None:
        return
    d, radius = job(name).design, job(name).tooling.former_diameter / 2
    big, small = sorted(one.radius for one in view.shapes if type(one) is Arc)[::-1]
    assert (big, small) == pytest.approx((radius + d.blank.set_thickness, radius))
    assert circles(view, "adjacent") == [pytest.approx((0.0, 0.0, radius))]
    wanted = (ROUND, "former_diameter", "bottom", -radius, 0.0, radius, 0.0)
    assert same_measures(view, [wanted])


@pytest.mark.parametrize("name", CASES)
def test_the_ring_is_soaked_with_what_holds_it(name):
    d, t, view = job(name).design, job(name).tooling, picture(name, "soak")
    long, inside, held = d.blank.length, d.blank.bored_inside / 2, []
    if t.former_diameter is not None:
        inside = t.former_diameter / 2
        held = [box(0.0, 0.35 * inside, long, inside)]
    outer = inside + d.blank.set_thickness
    upper = [*held, box(0.0, inside, long, outer)]
    assert same_shapes(cut_faces(view), upper + [mirrored(one) for one in upper])
    # The ring is hatched the other way than its former.
    ways = [one.angle for one in view.shapes if type(one) is Hatch]
    assert ways == [45.0] * (2 * len(held)) + [135.0] * 2
    room, wall = 0.35 * outer, max(4.0, 0.08 * outer)
    shell = box(-room, -outer - room, long + room, outer + room)
    assert same_shapes(plain_outlines(view), [shell, shell.buffer(wall, join_style="mitre")])
    assert same_lines(lines(view, "centre"), [axis(-room, long + room)])
    # Heat comes from below, up to the box.
    low = -outer - room - wall
    places = [-room + share * (long + 2 * room) for share in (0.2, 0.5, 0.8)]
    arrows = [((x, low - 4 * wall), (x, low - wall)) for x in places]
    assert same_arrows(view, arrows)
    heat = size(name, "soak", "soak_temperature").value
    time = size(name, "soak", "soak_time").value
    degrees = "%.0f \u00b0C" % heat
    if job(name).system == "inch":
        degrees = "%.0f \u00b0F" % (9.0 * heat / 5.0 + 32.0)
    hours = "%.0f min" % (60.0 * time) if time < 2.0 else "%.1f h" % time
    told = "Ring at %s, held %s" % (degrees, hours)
    (label,) = view.labels
    assert (label.side, label.text, label.dot) == ("right", told, True)
    assert label.point == pytest.approx((long / 2, outer))
    assert not view.measures


@pytest.mark.parametrize("name", CASES)
def test_the_ring_is_faced_in_the_pot(name):
    d, view = job(name).design, picture(name, "face-step", "face-sides")
    bore, wide = job(name).tooling.pot_bore / 2, d.section.width
    # At the middle of its wall.
    assert same_shapes(tools(view), [tool("face", wide, bore - d.blank.set_thickness / 2, bore)])
    x = wide + 2 * tool_size(bore)
    assert same_arrows(view, [((x, bore), (x, 0.7 * bore))])
    wanted = [
        ("", "ring_width", "bottom", 0.0, -bore, wide, -bore),
        (ROUND, "pot_bore", "left", 0.0, -bore, 0.0, bore),
    ]
    assert same_measures(view, wanted) and not view.labels


def not_bored(name):
    """Radius inside of a ring on the mandrel, before it is bored."""
    d = job(name).design
    return d.blank.finish_outside / 2 - d.section.thickness - d.allowances.inside


def ring_of(name, view):
    """(bottom, top) of the face that stands from side to side of the ring: the ring's."""
    wide = job(name).design.section.width
    (ring,) = [
        one.bounds for one in cut_faces(view)
        if one.bounds[1] > 0.0 and one.bounds[0] == 0.0 and one.bounds[2] == wide
    ]  # fmt: skip
    return ring[1], ring[3]


@pytest.mark.parametrize("name", CASES)
def test_the_ring_is_closed_to_what_closes_it_and_gripped(name):
    view = picture(name, "clamp", "clamp-forced", "clamp-band")
    d, t, wide = job(name).design, job(name).tooling, job(name).design.section.width
    spigot, plate = t.clamp_mandrel_diameter / 2, t.end_plate_diameter / 2
    wanted = []
    if t.closing_ring_bore is None:
        closer = (d.blank.finish_outside + d.allowances.finishing) / 2
        broad = job(name).sizes["closing-band"]["closing_band_width"].value
        wall = max(0.3, 0.1 * d.blank.set_thickness)
    else:
        closer = t.closing_ring_bore / 2
        broad, wall = t.closing_ring_width, max(6.0, 0.2 * closer)
        wanted = [(ROUND, "closing_ring_bore", "left", 0.0, -closer, 0.0, closer)]
    around = box(wide / 2 - broad / 2, closer, wide / 2 + broad / 2, closer + wall)
    assert same_shapes(closed(view, "adjacent"), [around, mirrored(around)])
    # The ring bears on it, and neither the mandrel's shoulder nor the plate does.
    low, high = ring_of(name, view)
    assert (low, high) == pytest.approx((not_bored(name), closer))
    assert metal(view).intersection(both(around)).area < 1e-9
    assert plate < closer and spigot < low
    wanted += [
        (ROUND, "clamp_mandrel_diameter", "left", 0.0, -spigot, 0.0, spigot),
        (ROUND, "end_plate_diameter", "right", wide, -plate, wide, plate),
    ]
    assert same_measures(view, wanted)


@pytest.mark.parametrize("name", CASES)
def test_the_ring_is_turned_to_size_on_the_mandrel(name):
    view, wide = picture(name, "turn-finish"), job(name).design.section.width
    radius = size(name, "turn-finish", "finish_outside_diameter").value / 2
    assert ring_of(name, view) == pytest.approx((not_bored(name), radius))
    assert same_shapes(tools(view), [tool("turn", wide, radius, radius)])
    s = tool_size(radius)
    y = radius + 1.4 * s
    assert same_arrows(view, [((wide + 2.6 * s, y), (wide + s, y))])
    middle = wide / 2
    wanted = (ROUND, "finish_outside_diameter", "right", middle, -radius, middle, radius)
    assert same_measures(view, [wanted])


@pytest.mark.parametrize("name", CASES)
def test_the_ring_is_bored_in_its_clamp(name):
    view = picture(name, "bore-clamped")
    if view is None:
        return
    wide = job(name).design.section.width
    inner = size(name, "bore-clamped", "inside_diameter").value / 2
    assert same_shapes(tools(view), [tool("bore", wide / 2, inner, inner)])
    s = tool_size(inner)
    assert same_arrows(view, [((wide + 3 * s, inner / 2), (wide + s, inner / 2))])
    assert same_measures(view, [(ROUND, "inside_diameter", "left", 0.0, -inner, 0.0, inner)])
    # Bored so far that the ring is as thick as the tool leaves it.
    (upper,) = [one for one in closed(view, "adjacent") if one.bounds[1] > 0.0]
    assert upper.bounds[1] == pytest.approx(inner)


@pytest.mark.parametrize("name", CASES)
def test_the_gap_is_felt_where_the_ring_has_it(name):
    d, view = job(name).design, picture(name, "dress-ends")
    bore = d.duty.bore
    wall = bore / 2 + max(4.0, 0.1 * bore)
    assert circles(view, "adjacent") == [pytest.approx((0.0, 0.0, wall))]
    assert not view.measures
    (label,) = view.labels
    ends = [one for one in view.shapes if type(one) is Arc]
    inner, outer = sorted(one.radius for one in ends)
    # Between the ends of the front turn, on the neutral line.
    x, y = label.point
    opening = (360.0 - ends[0].end + ends[0].start) / 2
    assert math.degrees(math.atan2(y, x)) == pytest.approx(ends[0].start - opening)
    assert inner < math.hypot(x, y) < outer
    gap = size(name, "dress-ends", "closed_gap_reading")
    assert (label.name, label.value, label.unit) == ("closed_gap_reading", gap.value, "mm")
    unit, sign = (25.4, "in") if job(name).system == "inch" else (1.0, "mm")
    told = label.text.removeprefix("Feeler ").removesuffix(" " + sign).split(" to ")
    limits = [gap.value] if gap.lower is None else [gap.lower, gap.upper]
    for text, value in zip(told, limits, strict=True):
        half = 0.5 * 10.0 ** -len(text.partition(".")[2])
        assert abs(float(text) - value / unit) <= half * (1 + 1e-6)
