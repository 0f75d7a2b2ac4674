"""The route card as a PDF: operations with sizes, a place for what was measured, drawings and
cautions.
"""

import io
from collections.abc import Callable, Container, Iterable, Mapping, Sequence

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ..core.drawing import words
from ..core.drawing.entities import Sheet
from ..named_types import Document
from . import card_sizes, faces, job_in_pdf, values
from .page_ink import Ink
from .page_layout import ALL, Block, Cell, Pad, Pages, Row, Rule, Space, Stack
from .page_pictures import Picture, QrCode
from .page_text import CELL, CENTRED, HEADING, SIZE, SMALL, TITLE, Bold, Text

# From the key of an operation its picture for a card, None where it has none.
Drawn = Callable[[str], Sheet | None]

# What the head of the card says of the ring, where the answer has it.
HEAD_FIGURES = (
    ("radial_thickness", "Radial thickness"),
    ("ring_width", "Width"),
    ("closed_gap", "Gap in the bore"),
    ("free_gap", "Free gap"),
    ("wall_pressure", "Wall pressure"),
    ("groove_width", "Groove width"),
    ("groove_depth", "Groove depth"),
    ("piston_diameter", "Piston"),
)
# What a card can be printed on [mm]; the last two are half of the first two, for a pocket.
CARDS = {
    "A4": (210.0, 297.0),
    "Letter": (215.9, 279.4),
    "A5": (148.0, 210.0),
    "half-letter": (139.7, 215.9),
}
_IN_THE_BOXES = (
    "In the box of a ring: small, what that ring is to be made to, where it is not as for all; "
    "large, what was measured of it."
)
MARGIN = 10 * mm
_FOOT = 9 * mm
_ABOVE_FOOT = 14 * mm
_FOOT_LETTERS = 60
# Drawings of a card have capitals of 3.5 mm; so printed, they are as large as those of the text.
PICTURE_SCALE = 0.7
# Beside a picture the words need at least this; on a narrower card the picture stands below.
_LEAST_ROOM = 62 * mm
_PLAIN = Pad(right=2 * mm, above=0.6 * mm, below=0.6 * mm)
_BOXED = Pad(left=3 * mm, right=3 * mm, above=2 * mm, below=2 * mm)


def route_pdf(
    worked: Mapping[str, Document],
    drawn: Drawn,
    heading: Document,
    paper: str,
    system: str,
    link: str | None,
    carried: Document,
    title: str = "Route card",
) -> bytes:
    """The bytes of the route card.

    worked: dict with the plain answers of "sizing", "tooling" and "route" for one job. drawn:
    function of an operation's key giving its picture for a card, None where it has none.
    heading: dict with "job", "owner", "date", "kind", "material", "bore", "rings". paper: key of
    CARDS. system: metric or inch. link: address that opens the job in the app, None
    where it is too long for a code. carried: the job of that link, which the file holds as well.
    title: what the card is called; signs that it has stand after its operations.
    """
    width, height = (side * mm for side in CARDS[paper])
    wide = width - 2 * MARGIN
    card = worked["route"]
    story = _head(worked["sizing"], title, heading, system, link, wide)
    story += _cautions(card["cautions"], wide)
    story += _findings(_not_good(worked), wide)
    if card.get("rings"):
        story += [Text(_IN_THE_BOXES, SMALL), Space(2 * mm)]
    said: set[str] = set()
    tools = {size["name"] for tool in worked["tooling"]["tools"] for size in tool["sizes"]}
    own = card_sizes.own_sizes(card.get("rings", ()))
    for operation in card["operations"]:
        story.append(_operation(operation, tools, own, drawn, heading["rings"], system, wide, said))
    if heading["rings"] > card_sizes.MOST_ON_THE_CARD:
        story += card_sizes.sheet_of_rings(
            card["operations"], tools, own, heading["rings"], system, wide
        )
    signs = [Text(one["text"]) for one in card.get("signs", ())]
    if signs:
        story.append(Stack([Text("Signs", HEADING), Space(1 * mm), *signs]))
    out = io.BytesIO()
    named = heading["job"] or heading["kind"]
    canvas = Canvas(out, pagesize=(width, height), pageCompression=1, invariant=1)
    canvas.setTitle(faces.clean("%s: %s" % (title, named)))
    canvas.setAuthor(faces.clean(heading["owner"]))
    canvas.setCreator("Ringwright")
    job_in_pdf.attach(canvas, carried)
    ink = Ink(canvas)
    pages = Pages(story, wide, height - MARGIN - _ABOVE_FOOT).pages
    for number, page in enumerate(pages, 1):
        for block, down in page:
            block.draw(ink, MARGIN, height - MARGIN - down, wide)
        ink.add(ink.text(MARGIN, _FOOT, faces.clean(named)[:_FOOT_LETTERS], SMALL.size))
        count = "page %d of %d" % (number, len(pages))
        ink.add(ink.text(width - MARGIN, _FOOT, count, SMALL.size, "end"))
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _not_good(worked: Mapping[str, Document]) -> list[Document]:
    """Findings of all the answers that are not good, each once."""
    found = {}
    for name in ("sizing", "tooling", "route"):
        for one in worked[name]["findings"]:
            if one["outcome"] != "good":
                found.setdefault((one["check"], one["why"]), one)
    return list(found.values())


def _head(
    sizing: Document, title: str, heading: Document, system: str, link: str | None, wide: float
) -> list[Block]:
    """Title, the ring in figures, and the code that opens the job."""
    lines: list[Block] = [Text(title, TITLE)]
    lines += [Text(text, HEADING) for text in (heading["job"], heading["owner"]) if text]
    bore = values.shown(heading["bore"], "mm", system, words.GAUGED)
    lines.append(Text("%s. %s. Bore %s." % (heading["kind"], heading["material"], bore)))
    facts = []
    for name, label in HEAD_FIGURES:
        figure = sizing["figures"].get(name)
        if figure:
            shown = values.shown(figure["value"], figure["unit"], system)
            facts.append([_cell(Text(label, CELL)), _cell(Text(shown, SIZE))])
    half = (len(facts) + 1) // 2
    code_size = 40 * mm
    column = (wide - code_size - 4 * mm) / 4
    lines.append(Space(2 * mm))
    for i in range(half):
        cells = facts[i] + (facts[i + half] if i + half < len(facts) else [])
        lines.append(Row(([column * 1.15, column * 0.85] * 2)[: len(cells)], cells))
    lines.append(
        Text(
            "Date: %s     Made by: ________________     Machine: ________________"
            % (heading["date"] or "____________")
        )
    )
    code: list[Block] = [Text("This job is too long for a code.", CENTRED)]
    if link:
        code = [QrCode(link, code_size - 4 * mm), Text("Opens this job in the app", CENTRED)]
    return [Row([wide - code_size, code_size], [_cell(*lines), _cell(*code)]), Space(3 * mm)]


def _cell(*blocks: Block) -> Cell:
    return Cell(blocks=blocks, pad=_PLAIN)


def _boxed(blocks: Sequence[Block], wide: float) -> list[Block]:
    cell = Cell(blocks=blocks, pad=_BOXED, rules=(Rule(ALL, 1.2),))
    return [Row([wide], [cell]), Space(3 * mm)]


def _cautions(cautions: Iterable[Document], wide: float) -> list[Block]:
    seen: dict[str, str] = {}
    for caution in cautions:
        seen.setdefault(caution["key"], caution["text"])
    texts = [Text(text, SMALL) for text in seen.values()]
    return _boxed([Text("Take care", HEADING), *texts], wide)


def _findings(findings: Sequence[Document], wide: float) -> list[Block]:
    """What the checks did not find good: stop before watch, each with its remedy."""
    lines = []
    for outcome, word in (("stop", "STOP:"), ("watch", "Watch:")):
        for one in findings:
            if one["outcome"] == outcome:
                said = " %s. %s." % (one["why"].rstrip("."), one["remedy"].rstrip("."))
                lines.append(Text([Bold(word), said], SMALL))
    return _boxed([Text("Before you start", HEADING), *lines], wide) if lines else []


def _operation(
    operation: Document,
    tools: Container[str],
    own: card_sizes.OwnSizes,
    drawn: Drawn,
    rings: int,
    system: str,
    wide: float,
    said: set[str],
) -> Stack:
    """One operation, kept on one page. tools: names of the sizes of tools. own: as of
    card_sizes.own_sizes. said: keys of the cautions that earlier ones gave in full.
    """
    words: list[Block] = [Text(operation["text"])]
    boxed = []
    told = []
    for size in operation["sizes"]:
        (boxed if card_sizes.has_box(operation, size, tools) else told).append(size)
    facts = _facts(operation, system)
    if told:
        lines = [card_sizes.in_line(size, system) for size in told]
        facts.append([Bold("Sizes:"), " ", *_joined(lines, "; ")])
    if facts:
        words += [Space(0.4 * mm), Text(_joined(facts, ". "))]
    if operation["check"]:
        words += [Space(0.4 * mm), Text([Bold("Check:"), " " + operation["check"]])]
    words += _operation_cautions(operation["cautions"], said)
    count = rings if operation["each_ring"] else 1

    def sizes(room: float) -> list[Block]:
        if not boxed:
            return []
        table = card_sizes.sizes(operation["key"], boxed, own, count, system, room)
        return [table, Space(1 * mm)]

    number, title = Text(str(operation["number"]), HEADING), Text(operation["title"], HEADING)
    over, box = Rule("t", 1.2), Rule(ALL, 0.8)
    head = Row(
        [10 * mm, wide - 27 * mm, 11 * mm, 6 * mm],
        [
            Cell(blocks=blocks, pad=_PLAIN, middle=True, rules=rules)
            for blocks, rules in (
                ([number], (over,)),
                ([title], (over,)),
                ([Text("done", SMALL)], (over,)),
                ([], (over, box)),
            )
        ],
    )
    lowest = _lowest(words, sizes, drawn(operation["key"]), wide)
    return Stack([head, *lowest, Space(1.5 * mm)])


def _joined(texts: Iterable[Sequence[str]], between: str) -> list[str]:
    """Parts of texts as parts of one."""
    found: list[str] = []
    for parts in texts:
        found += [between, *parts] if found else parts
    return found


def _lowest(
    words: Sequence[Block],
    sizes: Callable[[float], list[Block]],
    sheet: Sheet | None,
    wide: float,
) -> list[Block]:
    """Words, sizes and picture of an operation in the arrangement that takes least height; of two
    alike the first.

    sizes: function of a width giving blocks. sheet: None where there is no picture.
    """
    plain: list[Block] = [Row([wide], [_cell(*words)])]
    below = sizes(wide)
    if sheet is None:
        return plain + below
    arrangements: list[list[Block]] = []
    for columns in range(1, min(2, len(sheet.views)) + 1):
        picture = Picture(sheet, PICTURE_SCALE, columns)
        room = wide - picture.wide - 4 * mm
        if room >= card_sizes.least_width():
            arrangements.append([_beside([*words, *sizes(room)], picture, room)])
        if room >= _LEAST_ROOM:
            arrangements.append([_beside(words, picture, room), *below])
        # On a narrow card a picture may have to be smaller still.
        smaller = PICTURE_SCALE * min(1.0, wide / (picture.wide + 2 * mm))
        alone = Row([wide], [_cell(Picture(sheet, smaller, columns))])
        arrangements.append([*plain, alone, *below])
    return min(arrangements, key=lambda blocks: round(Stack(blocks).height(wide), 3))


def _beside(blocks: Sequence[Block], picture: Picture, room: float) -> Row:
    return Row([room + 4 * mm, picture.wide], [_cell(*blocks), _cell(picture)])


def _operation_cautions(cautions: Iterable[Document], said: set[str]) -> list[Block]:
    """Each caution in full where it first comes up, and by its name from then on."""
    lines: list[Block] = []
    again = []
    for caution in cautions:
        if caution["key"] in said:
            again.append(caution["key"].replace("-", " "))
        else:
            said.add(caution["key"])
            lines.append(Text([Bold("Caution:"), " " + caution["text"]], SMALL))
    if again:
        lines.append(Text([Bold("Caution, as before:"), " %s." % ", ".join(again)], SMALL))
    return lines


def _facts(operation: Document, system: str) -> list[list[str]]:
    """How it is held, tool, speed, feed, passes and time, each as parts of a line of text."""
    found = []
    for name, label in (("hold", "Hold:"), ("tool", "Tool:")):
        if operation.get(name):
            found.append([Bold(label), " " + operation[name].rstrip(".")])
    if operation.get("speed"):
        speed = values.shown(operation["speed"]["value"], operation["speed"]["unit"], system)
        surface = operation.get("surface_speed")
        more = " (%s)" % values.shown(surface["value"], surface["unit"], system) if surface else ""
        found.append([Bold("Speed:"), " %s%s" % (speed, more)])
    if operation.get("feed"):
        feed = values.shown(operation["feed"]["value"], operation["feed"]["unit"], system)
        per = " a %s" % operation["feed_per"] if operation.get("feed_per") else ""
        found.append([Bold("Feed:"), " %s%s" % (feed, per)])
    if (operation.get("passes") or 1) > 1:
        found.append([Bold("Passes:"), " %d" % operation["passes"]])
    if operation.get("time"):
        time = values.shown(operation["time"]["value"], "min", system, 0)
        found.append([Bold("About"), " " + time])
    return found
