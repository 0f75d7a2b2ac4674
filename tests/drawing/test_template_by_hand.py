"""The template round the blank: every strip, cut, mark and letter at its place, worked by hand."""

import math
import string
from functools import cache
from types import SimpleNamespace

import pytest
from reportlab.pdfbase.pdfmetrics import stringWidth
from shapely.geometry import Polygon, box

from drawing.by_hand import across, lean, length, lines, rectangle, ring_of
from drawing.views import JOBS, settled_of
from ringwright.core.drawing import catalogue, template
from ringwright.core.drawing.entities import Line, Text, moved

# One strip that goes all round, some that fill a sheet or more, one on a narrow sheet; degrees
# every 90, 60 and 30.
MORE = {
    "tiny": {"bore": 14.0, "ring_type": "plain", "dimensions": "inch"},
    "half": {"bore": 28.0, "ring_type": "plain", "end_cut": "angled-60"},
    "large": {"bore": 600.0, "dimensions": "inch"},
    "broad": {"bore": 230.0, "ring_type": "plain", "paper": "Letter", "end_cut": "square"},
    "long bridge": {"bore": 95.0, "bridge_length": 60.0, "paper": "screen"},
    "narrow": {"bore": 300.0, "paper": "screen", "ring_type": "plain"},
}
NAMES = [*JOBS, *MORE]
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4), "screen": (130.0, None)}
BESIDE, BELOW, HEAD = 9.0, 17.5, 28.0


settled = settled_of(MORE)


def pages_of(name):
    return catalogue.sheets(settled(name), "template")


def strips_of(name):
    return [one for page in pages_of(name) for one in page.views if one.name != "rules"]


@cache
def pieces(name):
    """(start, end) of each strip, along the outside from the middle of the bridge or saw cut."""
    job = settled(name)
    around = math.pi * job.design.blank.rough_outside
    margins = 6.0 if job.paper == "screen" else 30.0
    # A tab and 8 mm to spare beside it; whole millimetres, and no longer than once round.
    piece = min(math.floor(PAPERS[job.paper][0] - margins - BESIDE - 8.0), around)
    count = math.ceil(around / piece - 1e-9)
    cuts = [(at - 0.5) * piece for at in range(count)] + [around - piece / 2]
    return list(zip(cuts, cuts[1:], strict=False))


def unrolled(strip):
    """What is on a strip, where it lies along the outside: nought is the middle of the bridge."""
    shapes = [moved(one, 1.0, -strip.x, -strip.y) for one in strip.entities]
    return SimpleNamespace(name=strip.name, shapes=shapes)


def joined(at):
    """Letters of joins: A to Z, then AA, AB ..."""
    names = [*string.ascii_uppercase]
    names += [one + other for one in names for other in names]
    return names[at]


def saws(job):
    d = job.design
    kerf, long = d.allowances.gap_kerf, d.blank.length
    if d.duty.turns == 1:
        out = lean(d, long)
        return [
            [
                (-(out + kerf) / 2, 0.0),
                ((kerf - out) / 2, 0.0),
                ((out + kerf) / 2, long),
                ((out - kerf) / 2, long),
            ]
        ]
    half, band, out = job.tooling.bridge_length / 2, d.blank.band_width, lean(d, d.blank.band_width)
    low = [(-half - kerf, band), (-half, band), (out - half, 0.0), (out - half - kerf, 0.0)]
    return [low, [(-x, long - y) for x, y in low]]


def ticks(start, end, around):
    """(place, degrees) of each ten degrees that lies on a strip."""
    first, last = math.ceil(36 * start / around - 1e-9), math.floor(36 * end / around + 1e-9)
    return [(at * around / 36, at * 10 % 360) for at in range(first, last + 1)]


def numbered(around):
    """Every how many degrees there is room for a number, letters of 2.5 mm, 1.5 mm apart."""
    wide = stringWidth("330\u00b0", "Helvetica", 2.5 / 0.716) + 1.5
    return next((each for each in (30, 60) if around * each / 360 > wide), 90)


@pytest.mark.parametrize("name", NAMES)
def test_strips_go_round_once_and_carry_slit_and_cuts(name):
    job = settled(name)
    d, strips = job.design, strips_of(name)
    around, long, band = math.pi * d.blank.rough_outside, d.blank.length, d.blank.band_width
    assert len(strips) == len(pieces(name))
    sawn = 0.0
    for at, (strip, (start, end)) in enumerate(zip(strips, pieces(name), strict=True)):
        assert (strip.name, strip.title, strip.scale) == ("strip-%d" % (at + 1), "", 1.0)
        last = at == len(strips) - 1
        layers = {"edge": [ring_of(rectangle(start, 0.0, end if last else end + BESIDE, long))]}
        if not last:
            layers["thin"] = [[(end, 0.0), (end, long)]]
        marks = []
        for place, angle in ticks(start, end, around):
            far = -2.2 if angle % numbered(around) == 0 else -1.2
            marks.append([(place, 0.0), (place, far)])
        layers["rule"] = marks
        if d.duty.turns == 2:
            half, high = job.tooling.bridge_length / 2, band + d.allowances.slit
            # The slit, all round but for the bridge.
            slit = [
                [(max(a, start), y), (min(b, end), y)]
                for a, b in ((start, -half), (half, end))
                for y in (band, high)
                if max(a, start) < min(b, end)
            ]
            slit += [[(x, band), (x, high)] for x in (-half, half) if start <= x <= end]
            if slit:
                layers["outline"] = slit
        cut = [Polygon(each).intersection(box(start, -1.0, end, long + 1.0)) for each in saws(job)]
        cut = [each for each in cut if each.area > 1e-9]
        sawn += sum(each.area for each in cut)
        if cut:
            layers["cut"] = [list(each.exterior.coords) for each in cut]
        lines(unrolled(strip), **layers)
    assert sawn == pytest.approx(sum(Polygon(each).area for each in saws(job)))


@pytest.mark.parametrize("name", NAMES)
def test_strips_carry_their_letters_and_degrees(name):
    job = settled(name)
    d, strips = job.design, strips_of(name)
    around, level = math.pi * d.blank.rough_outside, d.blank.length + 1.5
    for at, (strip, (start, end)) in enumerate(zip(strips, pieces(name), strict=True)):
        wanted = []
        if at < len(strips) - 1:
            # On the tab, and the same letter at the beginning of what is pasted on it.
            wanted.append((end + 4.5, level, 3.5, joined(at), True))
        if at:
            wanted.append((start + 4.0, level, 3.5, joined(at - 1), True))
        else:
            wanted.append((0.0, level, 2.5, "bridge" if d.duty.turns == 2 else "saw cut", True))
        for place, angle in ticks(start, end, around):
            if angle % numbered(around) == 0 and start + 3.0 <= place <= end - 3.0:
                wanted.append((place, -2.2 - 1.0 - 2.5, 2.5, "%d\u00b0" % angle, False))
        found = [one for one in unrolled(strip).shapes if type(one) is Text]
        assert {(one.layer, one.align, one.turn) for one in found} == {("text", "middle", 0)}
        found = sorted((one.text, one.x, one.y, one.size, one.bold) for one in found)
        wanted = sorted((text, x, y, size, bold) for x, y, size, text, bold in wanted)
        assert found == [
            (text, pytest.approx(x, abs=1e-7), pytest.approx(y), *rest)
            for text, x, y, *rest in wanted
        ]


@pytest.mark.parametrize("name", NAMES)
def test_strips_stand_below_one_another_and_fill_their_sheets(name):
    job = settled(name)
    d = job.design
    step = d.blank.length + BELOW
    rows = pieces(name)
    placed = 0
    for number, page in enumerate(pages_of(name), 1):
        rules, *strips = page.views
        assert (page.number, page.count, page.part) == (number, len(pages_of(name)), "template")
        wide, high = PAPERS[job.paper]
        framed = high is not None
        assert page.width == wide and page.scale == (1.0 if framed else None)
        left = 20.0 if framed else 3.0
        letters = [one for one in page.frame if type(one) is Text and one.x == left + 3.0]
        told = " ".join(one.text for one in letters)
        assert told == " ".join(said(job))
        # Above the notes: title block and border, or the margin; 4 mm between.
        pitch = 2.5 * 1.6 if framed else 3.5 * 1.6
        bottom = (48.0 if framed else 3.0) + len(letters) * pitch + 4.0
        if framed:
            top = high - 10.0
            room = max(1, math.floor((top - bottom - HEAD) / step))
            assert len(strips) == min(room, len(rows) - placed)
            assert page.height == high
        else:
            # As long as it has to be.
            assert len(pages_of(name)) == 1
            top = bottom + HEAD + len(rows) * step
            assert page.height == pytest.approx(top + 3.5 * 2.2 + 3.0)
        assert (rules.name, rules.x, rules.y) == ("rules", left + 6.0, pytest.approx(top - 10.0))
        for at, strip in enumerate(strips):
            start, _ = rows[placed + at]
            assert strip.x + start == pytest.approx(left + 4.0)
            assert strip.y + d.blank.length == pytest.approx(top - HEAD - 6.0 - at * step)
            if room_kept(framed, step, top, bottom):
                assert strip.y - 5.7 > bottom
        placed += len(strips)
    assert placed == len(rows)


def room_kept(framed, step, top, bottom):
    return not framed or HEAD + step <= top - bottom


def said(job):
    d = job.design
    around = math.pi * d.blank.rough_outside
    notes = [
        "Print at actual size, not fitted to the page; if either rule measures wrong, do not "
        "use it.",
        "Cut along the outer edges, join the pieces tab under letter, and wrap round %s: it is %s "
        "long and the ends butt. Paper 0.1 mm thick leaves them 0.3 mm apart."
        % (across(d.blank.rough_outside, job), length(around, job, 1)),
    ]
    if d.duty.turns == 2:
        notes.append(
            "Degrees are counted from the middle of the bridge, as the rotary table turns."
        )
    return notes


@pytest.mark.parametrize("name", ["double", "screen"])
def test_rules_are_told_with_bold_letters_above_them(name):
    rules = pages_of(name)[0].views[0]
    assert (rules.title, rules.scale) == ("", 1.0)
    shapes = unrolled(rules).shapes
    for one in shapes:
        if type(one) is Text:
            level = 0.0 if one.text == "100 mm" else -11.0
            assert (one.align, one.turn, one.bold, one.size) == ("middle", 0, True, 3.5)
            assert one.y == pytest.approx(level + 3.5)
        else:
            assert type(one) is Line and one.layer == "rule"


def test_what_of_a_cut_lies_on_a_strip_is_what_shapely_cuts_off():
    """Corners on the edge of the strip and next to it, and what is left with three of them."""
    leaning = [(0.0, 0.0), (2.0, 0.0), (8.0, 6.0), (6.0, 6.0)]
    upright = rectangle(0.0, 0.0, 2.0, 3.0)
    for corners in (leaning, leaning[::-1], upright, upright[::-1]):
        for left in (-4.0, 0.0, 0.005, 1.995, 2.0, 2.004, 6.0, 6.004, 7.99):
            for right in (0.005, 1.0, 1.996, 2.0, 2.006, 6.0, 6.006, 8.0, 9.0):
                wanted = Polygon(corners).intersection(box(left, -1.0, right, 7.0))
                if right <= left:
                    continue
                found = template._between(corners, left, right)
                if wanted.area == 0.0:
                    assert not found or Polygon(found).area < 1e-12
                else:
                    assert Polygon(found).symmetric_difference(wanted).area < 1e-12
    # One edge on that of the strip is nothing to saw along.
    assert template._between(upright, -4.0, 0.0) == [] == template._between(upright, 2.0, 4.0)


def test_numbers_stand_three_millimetres_from_the_edge_and_clear_of_each_other():
    def told(start, end, around):
        found = template._degrees(start, end, around)
        return [one.text.strip("\u00b0") for one in found if type(one) is Text]

    # A degree a millimetre: exactly 3 mm are enough, a hundredth less is not.
    assert told(-33.0, 123.0, 360.0) == ["330", "0", "30", "60", "90", "120"]
    assert told(-32.99, 122.99, 360.0) == ["0", "30", "60", "90"]
    # Widths 556, 556, 556 and 400 of a face whose capitals are 716 high; 1.5 mm beside them.
    room = 2.068 * 2.5 / 0.716 + 1.5
    for step, coarser in ((30, 60), (60, 90)):
        enough = room * 360.0 / step
        for share, each in ((1.001, step), (0.999, coarser)):
            found = told(0.0, share * enough, share * enough)
            assert found == [str(at) for at in range(each, 360, each)]


def blank_of(job, **sizes):
    """A job whose blank is of those sizes, whatever ring it is for."""
    d = job.design
    return job._replace(design=d._replace(blank=d.blank._replace(**sizes)))


def test_a_last_strip_is_as_short_as_it_has_to_be():
    """163 mm of strip on A4: half a millimetre more than two of them is a third strip."""
    job = settled("broad")._replace(paper="A4")
    for more, count in ((0.5, 3), (0.02, 3), (0.0, 2)):
        work = blank_of(job, rough_outside=(2 * 163.0 + more) / math.pi)
        (page,) = template.sheets(work, work.title)
        edges = [one.entities[0].points for one in page.views[1:]]
        long = [max(x for x, _ in each) - min(x for x, _ in each) for each in edges]
        assert len(long) == count and long[-1] == pytest.approx(more or 163.0)


def test_a_broad_strip_has_a_sheet_of_its_own():
    """A4 less border, block, notes and rules leaves some 172 mm: for one strip of 100 mm."""
    work = blank_of(settled("broad")._replace(paper="A4"), length=100.0)
    assert [len(page.views) for page in template.sheets(work, work.title)] == [2] * len(
        pieces("broad")
    )
