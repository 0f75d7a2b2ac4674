"""The route card as a PDF: operations with sizes, a place for what was measured, drawings and
cautions.
"""

import io
from collections.abc import Callable, Container, Iterable, Mapping, Sequence

from reportlab.lib.units import mm
from reportlab.platypus import (
    BaseDocTemplate,
    Flowable,
    Frame,
    KeepTogether,
    PageTemplate,
    Spacer,
    TableStyle,
)

from ..core.drawing.entities import Sheet
from ..named_types import Document
from . import card_sizes, faces, values
from .card_style import BODY, CELL, CENTRED, HEADING, SIZE, SMALL, TITLE, Laid, Marked, paragraph
from .numbered_pages import numbered
from .pdf_flowables import Picture, QrCode

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
# Drawings of a card have capitals of 3.5 mm; so printed, they are as large as those of the text.
PICTURE_SCALE = 0.7
# Beside a picture the words need at least this; on a narrower card the picture stands below.
_LEAST_ROOM = 62 * mm


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
        story += [paragraph(_IN_THE_BOXES, SMALL), Spacer(1, 2 * mm)]
    said = set()
    tools = {size["name"] for tool in worked["tooling"]["tools"] for size in tool["sizes"]}
    own = card_sizes.own_sizes(card.get("rings", ()))
    for operation in card["operations"]:
        story.append(_operation(operation, tools, own, drawn, heading["rings"], system, wide, said))
    if heading["rings"] > card_sizes.MOST_ON_THE_CARD:
        story += card_sizes.sheet_of_rings(
            card["operations"], tools, own, heading["rings"], system, wide
        )
    signs = [paragraph(one["text"]) for one in card.get("signs", ())]
    if signs:
        story += [KeepTogether([paragraph("Signs", HEADING), Spacer(1, 1 * mm), *signs])]
    out = io.BytesIO()
    document = BaseDocTemplate(
        out,
        pagesize=(width, height),
        leftMargin=MARGIN,
        rightMargin=MARGIN,
        title=faces.clean("%s: %s" % (title, heading["job"] or heading["kind"])),
        author=faces.clean(heading["owner"]),
        creator="Ringwright",
        invariant=1,
    )
    frame = Frame(
        MARGIN, 14 * mm, wide, height - 24 * mm, leftPadding=0, rightPadding=0,
        topPadding=0, bottomPadding=0,
    )  # fmt: skip
    document.addPageTemplates([PageTemplate("card", [frame])])
    document.build(
        story, canvasmaker=numbered(faces.clean(heading["job"] or heading["kind"]), carried, MARGIN)
    )
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
) -> list[Flowable]:
    """Title, the ring in figures, and the code that opens the job."""
    lines = [paragraph(title, TITLE)]
    for text in (heading["job"], heading["owner"]):
        if text:
            lines.append(paragraph(text, HEADING))
    lines.append(
        paragraph(
            "%s. %s. Bore %s."
            % (heading["kind"], heading["material"], values.shown(heading["bore"], "mm", system))
        )
    )
    facts = []
    for name, label in HEAD_FIGURES:
        figure = sizing["figures"].get(name)
        if figure:
            facts.append(
                [
                    paragraph(label, CELL),
                    paragraph(values.shown(figure["value"], figure["unit"], system), SIZE),
                ]
            )
    half = (len(facts) + 1) // 2
    rows = [
        facts[i] + (facts[i + half] if i + half < len(facts) else ["", ""]) for i in range(half)
    ]
    code_size = 40 * mm
    column = (wide - code_size - 4 * mm) / 4
    lines.append(Spacer(1, 2 * mm))
    lines.append(Laid(rows, colWidths=[column * 1.15, column * 0.85] * 2, style=_PLAIN))
    lines.append(
        paragraph(
            "Date: %s     Made by: ________________     Machine: ________________"
            % (heading["date"] or "____________"),
            BODY,
        )
    )
    code = [paragraph("This job is too long for a code.", CENTRED)]
    if link:
        code = [QrCode(link, code_size - 4 * mm), paragraph("Opens this job in the app", CENTRED)]
    head = Laid([[lines, code]], colWidths=[wide - code_size, code_size], style=_PLAIN)
    return [head, Spacer(1, 3 * mm)]


_PLAIN = TableStyle(
    [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 2 * mm),
        ("TOPPADDING", (0, 0), (-1, -1), 0.6 * mm),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0.6 * mm),
    ]
)


def _boxed(flowables: list[Flowable], wide: float) -> Laid:
    style = TableStyle(
        [
            ("BOX", (0, 0), (-1, -1), 1.2, "black"),
            ("LEFTPADDING", (0, 0), (-1, -1), 3 * mm),
            ("RIGHTPADDING", (0, 0), (-1, -1), 3 * mm),
            ("TOPPADDING", (0, 0), (-1, -1), 2 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2 * mm),
        ]
    )
    return Laid([[flowables]], colWidths=[wide], style=style)


def _cautions(cautions: Iterable[Document], wide: float) -> list[Flowable]:
    seen = {}
    for caution in cautions:
        seen.setdefault(caution["key"], caution["text"])
    texts = [paragraph(text, SMALL) for text in seen.values()]
    return [
        _boxed([paragraph("Take care", HEADING), *texts], wide),
        Spacer(1, 3 * mm),
    ]


def _findings(findings: Sequence[Document], wide: float) -> list[Flowable]:
    """What the checks did not find good: stop before watch, each with its remedy."""
    if not findings:
        return []
    lines = [paragraph("Before you start", HEADING)]
    for outcome, word in (("stop", "STOP"), ("watch", "Watch")):
        for one in findings:
            if one["outcome"] == outcome:
                lines.append(
                    Marked(
                        "<b>%s:</b> %s. %s."
                        % (
                            word,
                            faces.marked(one["why"].rstrip(".")),
                            faces.marked(one["remedy"].rstrip(".")),
                        ),
                        SMALL,
                    )
                )
    return [_boxed(lines, wide), Spacer(1, 3 * mm)]


def _operation(
    operation: Document,
    tools: Container[str],
    own: card_sizes.OwnSizes,
    drawn: Drawn,
    rings: int,
    system: str,
    wide: float,
    said: set[str],
) -> KeepTogether:
    """One operation, kept on one page. tools: names of the sizes of tools. own: as of
    card_sizes.own_sizes. said: keys of the cautions that earlier ones gave in full.
    """
    sheet = drawn(operation["key"])
    words = [paragraph(operation["text"])]
    boxed = []
    told = []
    for size in operation["sizes"]:
        (boxed if card_sizes.has_box(operation, size, tools) else told).append(size)
    facts = _facts(operation, system)
    if told:
        lines = [card_sizes.in_line(size, system) for size in told]
        facts += "%s<b>Sizes:</b> %s" % (". " if facts else "", "; ".join(lines))
    if facts:
        words.append(Spacer(1, 0.4 * mm))
        words.append(Marked(facts, BODY))
    if operation["check"]:
        words.append(Spacer(1, 0.4 * mm))
        words.append(Marked("<b>Check:</b> %s" % faces.marked(operation["check"]), BODY))
    words += _operation_cautions(operation["cautions"], said)
    count = rings if operation["each_ring"] else 1

    def sizes(room: float) -> list[Flowable]:
        if not boxed:
            return []
        table = card_sizes.sizes(operation["key"], boxed, own, count, system, room)
        return [table, Spacer(1, 1 * mm)]

    head = Laid(
        [
            [
                paragraph(str(operation["number"]), HEADING),
                paragraph(operation["title"], HEADING),
                paragraph("done", SMALL),
                "",
            ]
        ],
        colWidths=[10 * mm, wide - 27 * mm, 11 * mm, 6 * mm],
        style=TableStyle(
            [
                ("LINEABOVE", (0, 0), (-1, 0), 1.2, "black"),
                ("BOX", (3, 0), (3, 0), 0.8, "black"),
                ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 0.6 * mm),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 0.6 * mm),
            ]
        ),
    )
    return KeepTogether([head, *_lowest(words, sizes, sheet, wide), Spacer(1, 1.5 * mm)])


def _lowest(
    words: list[Flowable],
    sizes: Callable[[float], list[Flowable]],
    sheet: Sheet | None,
    wide: float,
) -> list[Flowable]:
    """Words, sizes and picture of an operation in the arrangement that takes least height.

    words: flowables. sizes: function of a width giving flowables. sheet: None where there is no
    picture.
    """
    if sheet is None:
        return [_column(words, wide), *sizes(wide)]
    arrangements = []
    for columns in (1, 2):
        picture = Picture(sheet, PICTURE_SCALE, columns)
        room = wide - picture.width - 4 * mm
        if room >= _LEAST_ROOM:
            arrangements.append([_beside(words, picture, room), *sizes(wide)])
        if room >= card_sizes.least_width():
            arrangements.append([_beside(words + sizes(room), picture, room)])
        # On a narrow card a picture may have to be smaller still.
        below = Picture(sheet, PICTURE_SCALE * min(1.0, wide / (picture.width + 2 * mm)), columns)
        arrangements.append([_column(words, wide), _column([below], wide), *sizes(wide)])
    return min(arrangements, key=lambda rows: sum(row.wrap(wide, 1e6)[1] for row in rows))


def _column(flowables: list[Flowable], wide: float) -> Laid:
    return Laid([[flowables]], colWidths=[wide], style=_PLAIN)


def _beside(flowables: list[Flowable], picture: Picture, room: float) -> Laid:
    return Laid([[flowables, picture]], colWidths=[room + 4 * mm, picture.width], style=_PLAIN)


def _operation_cautions(cautions: Iterable[Document], said: set[str]) -> list[Flowable]:
    """Each caution in full where it first comes up, and by its name from then on."""
    lines = []
    again = []
    for caution in cautions:
        if caution["key"] in said:
            again.append(caution["key"].replace("-", " "))
        else:
            said.add(caution["key"])
            lines.append(Marked("<b>Caution:</b> %s" % faces.marked(caution["text"]), SMALL))
    if again:
        lines.append(Marked("<b>Caution, as before:</b> %s." % ", ".join(again), SMALL))
    return lines


def _facts(operation: Document, system: str) -> str:
    """How it is held, tool, speed, feed, passes and time in one line of text with marks."""
    parts = []
    for name, label in (("hold", "Hold"), ("tool", "Tool")):
        if operation.get(name):
            parts.append("<b>%s:</b> %s" % (label, faces.marked(operation[name].rstrip("."))))
    if operation.get("speed"):
        speed = values.shown(operation["speed"]["value"], operation["speed"]["unit"], system)
        surface = operation.get("surface_speed")
        more = " (%s)" % values.shown(surface["value"], surface["unit"], system) if surface else ""
        parts.append("<b>Speed:</b> %s%s" % (speed, more))
    if operation.get("feed"):
        feed = operation["feed"]
        per = " a %s" % operation["feed_per"] if operation.get("feed_per") else ""
        parts.append("<b>Feed:</b> %s%s" % (values.shown(feed["value"], feed["unit"], system), per))
    if (operation.get("passes") or 1) > 1:
        parts.append("<b>Passes:</b> %d" % operation["passes"])
    if operation.get("time"):
        parts.append("<b>About</b> %s" % values.shown(operation["time"]["value"], "min", system, 0))
    return ". ".join(parts)
