"""Setting views out on a sheet: the largest scale of the series at which all of them stand
clear.
"""

from . import style
from .entities import TEXT, PlacedView, Sheet, Text, moved
from .paper import PAPERS, block_height, border, note_letters, note_lines, title_block

# Scales of ISO 5455, as two open lists have them.
SCALES = (50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01)
# On a screen nobody lays a rule: steps of about a quarter, so that the picture fills the width.
_STEPS = (1.0, 0.8, 0.63, 0.5, 0.4, 0.315, 0.25, 0.2, 0.16, 0.125)
SCREEN_SCALES = tuple([ten * step for ten in (100.0, 10.0, 1.0, 0.1) for step in _STEPS])
FULL_SIZE = (1.0,)

_BETWEEN = 8.0
# How many steps below the sheet's scale a second view may be.
_STEPS_BELOW = 3
# Shares of their target size that details may be drawn at, where a sheet is crowded.
_DETAIL_SHARES = (1.0, 0.75, 0.55, 0.4)


def room(paper_name, notes):
    """(left, bottom, width, height) free for views on a sheet of that paper with those notes
    [mm].
    """
    paper = PAPERS[paper_name]
    wide = paper.width - paper.left - paper.others
    lines = note_lines(notes, paper)
    bottom = paper.others + block_height(paper) + _notes_height(lines, paper)
    head = 0.0 if paper.framed else style.LETTERS * 2.2
    return paper.left, bottom, wide, paper.height - paper.others - head - bottom


def composed(part, title, about, views, notes, paper_name, full_size=False):
    """The Sheet of a part: the largest scale of the series at which all its views fit.

    title: a paper.Title. about: a sentence that says what is drawn, for those who cannot see it.
    views: list of View. notes: list of sentences set below. paper_name: a key of PAPERS. full_size:
    for charts, which have no scale.
    """
    paper = PAPERS[paper_name]
    framed = paper.framed
    left, bottom, wide, high = room(paper_name, notes)
    margin = 8.0 if framed else 0.0
    scales = FULL_SIZE if full_size else SCALES if framed else SCREEN_SCALES
    scale, rows = _set_out(views, wide - margin, high - margin, paper, scales)
    if not framed:
        high = _height(rows) + 4.0
    views = _placed(rows, left, bottom, wide, high)
    return sheet_of(
        part, title, about, views, notes, paper_name, None if full_size else scale, high
    )


def sheet_of(part, title, about, views, notes, paper_name, scale, high, number=1, count=1):
    """The Sheet round views that are placed already.

    views: list of PlacedView. scale: to state, None where there is none. high: of the room for
    views [mm], which settles how long a screen's sheet is. number, count: which sheet of how many.
    """
    paper = PAPERS[paper_name]
    lines = note_lines(notes, paper)
    letters = note_letters(paper)
    below = paper.others + block_height(paper)
    height = paper.height
    if paper.framed:
        frame = border(paper) + title_block(paper, title, scale, number, count)
    else:
        head = style.LETTERS * 2.2
        height = below + _notes_height(lines, paper) + high + head + paper.others
        words = title.title if count == 1 else "%s %d/%d" % (title.title, number, count)
        top = height - paper.others - style.LETTERS
        frame = [Text(TEXT, paper.left, top, style.LETTERS, words, "start", 0, True)]
    at = below + _notes_height(lines, paper) - letters * 1.6
    for line in lines:
        frame.append(Text(TEXT, paper.left + 3.0, at, letters, line, "start", 0, False))
        at -= letters * 1.6
    shown = scale if paper.framed else None
    return Sheet(
        part=part,
        title=title.title,
        about=about,
        paper=paper_name,
        width=paper.width,
        height=height,
        scale=shown,
        number=number,
        count=count,
        views=views,
        frame=frame,
    )


def _notes_height(lines, paper):
    return len(lines) * note_letters(paper) * 1.6 + (4.0 if lines else 0.0)


def _set_out(views, wide, high, paper, scales):
    """(scale of the main views, rows of (view, Drawn)): the largest scale at which all stand
    clear.
    """
    best = None
    for share in _DETAIL_SHARES:
        setting = _tried(views, wide, high, paper, share, scales)
        if setting[2]:
            return setting[0], setting[1]
        best = setting
    return best[0], best[1]


def _tried(views, wide, high, paper, share, scales):
    """(scale, rows, whether they fit) with details at a share of their target size."""
    details = {}
    for view in views:
        if view.target is not None:
            details[view.name] = _detail(view, wide, paper, share)
    main = [view for view in views if view.target is None]
    tallest = high if paper.framed else paper.tallest
    # A screen's sheet grows downwards: there nothing need give way.
    second = [view for view in main if view.second and paper.framed]
    first = [view for view in main if view not in second]
    best = None
    # Details alone have scales of their own, whatever the sheet's.
    for place, scale in enumerate(scales if main else FULL_SIZE):
        if scale != scales[-1] and not _may_fit(first, scale, wide, tallest, paper.labels):
            continue
        drawn = [(view, details.get(view.name) or _at(view, scale, wide, paper)) for view in views]
        for other in scales[place : place + 1 + _STEPS_BELOW] if second else (scale,):
            if other != scale:
                drawn = [
                    (view, _at(view, other, wide, paper, True) if view in second else one)
                    for view, one in drawn
                ]
            for rows in _arrangements(drawn):
                best = (scale if main else rows[0][0][1].scale, rows, False)
                if _width(rows) <= wide and (_height(rows) <= high or not paper.framed):
                    return best[0], rows, True
    return best


def _at(view, scale, wide, paper, own=False):
    """A view at a scale; own: not the sheet's, so that it is stated where scales are."""
    return view.drawn(scale, paper.labels, wide, own and paper.framed)


def _detail(view, wide, paper, share):
    """A detail at the largest scale that keeps within its target size and the sheet."""
    extent = max(view.size())
    for scale in SCALES if paper.framed else SCREEN_SCALES:
        if extent * scale <= view.target * share:
            drawn = _at(view, scale, wide, paper, True)
            if drawn.box[2] - drawn.box[0] <= wide:
                return drawn
    return _at(view, SCALES[-1], wide, paper, True)


def _may_fit(views, scale, wide, high, labels):
    """Whether it is worth drawing the views at a scale: shape and labels alone must fit."""
    for view in views:
        across, up = view.size()
        if across * scale + view.beside(labels) > wide or up * scale > high:
            return False
    return True


def _arrangements(drawn):
    """The views in order, in rows: side by side first, then all ways to begin a new row."""
    count = len(drawn)
    ways = []
    for code in range(2 ** (count - 1)):
        rows = [[drawn[0]]]
        for i in range(1, count):
            if code & (1 << (i - 1)):
                rows.append([drawn[i]])
            else:
                rows[-1].append(drawn[i])
        ways.append(rows)
    return ways


def _row_size(row):
    wide = _BETWEEN * (len(row) - 1)
    high = 0.0
    for _, one in row:
        wide += one.box[2] - one.box[0]
        high = max(high, one.box[3] - one.box[1])
    return wide, high


def _width(rows):
    widest = 0.0
    for row in rows:
        widest = max(widest, _row_size(row)[0])
    return widest


def _height(rows):
    total = _BETWEEN * (len(rows) - 1)
    for row in rows:
        total += _row_size(row)[1]
    return total


def _placed(rows, left, bottom, wide, high):
    """PlacedViews with the rows spread evenly over the room."""
    spare = high - _height(rows)
    step = spare / (len(rows) + 1)
    views = []
    at = bottom + high - step
    for row in rows:
        across, up = _row_size(row)
        gap = (wide - across) / (len(row) + 1)
        x = left + gap
        for view, one in row:
            width = one.box[2] - one.box[0]
            height = one.box[3] - one.box[1]
            dx = x - one.box[0]
            dy = at - 0.5 * (up - height) - one.box[3]
            entities = [moved(entity, 1.0, dx, dy) for entity in one.entities]
            corners = (one.box[0] + dx, one.box[1] + dy, one.box[2] + dx, one.box[3] + dy)
            views.append(
                PlacedView(
                    name=view.name,
                    title=view.title,
                    scale=one.scale,
                    x=dx,
                    y=dy,
                    entities=entities,
                    box=corners,
                )
            )
            x += width + gap + _BETWEEN
        at -= up + step + _BETWEEN
    return views
