"""The route card as a PDF: operations with sizes, a place for what was measured, drawings and
cautions.
"""

import io
from xml.sax.saxutils import escape

from reportlab.lib.enums import TA_CENTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    BaseDocTemplate,
    Frame,
    KeepTogether,
    PageTemplate,
    Paragraph,
    Spacer,
    Table,
    TableStyle,
)

from ..core.drawing.paper import PAPERS
from . import values
from .pdf_flowables import Picture, QrCode
from .pdf_text import printable

# Operation -> the part whose drawing stands beside it.
DRAWINGS = {
    "face-blank": "blank",
    "slit": "rotary-table",
    "turn-through": "ring-turned-through",
    "put-on-former": "former",
    "put-on-former-bound": "former",
    "spread": "spacer",
    "measure-free-gap": "ring-free",
    "face-step": "pot",
    "face-sides": "pot",
    "clamp": "closing-ring",
    "turn-finish": "clamp-mandrel",
    "inspect": "ring-closed",
    "fit": "cylinder-section",
    "fit-double": "cylinder-section",
}
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
MARGIN = 12 * mm
# 10 point letters have capitals of 2.5 mm, 12 point of 3.
BODY = ParagraphStyle("body", fontName="Helvetica", fontSize=10, leading=12.5)
CELL = ParagraphStyle("cell", parent=BODY, leading=12)
SIZE = ParagraphStyle("size", parent=BODY, fontName="Helvetica-Bold", fontSize=11.5, leading=13.5)
HEADING = ParagraphStyle("heading", parent=BODY, fontName="Helvetica-Bold", fontSize=13, leading=16)
TITLE = ParagraphStyle("title", parent=HEADING, fontSize=18, leading=22)
SMALL = ParagraphStyle("small", parent=BODY, fontSize=8.5, leading=10.5)
CENTRED = ParagraphStyle("centred", parent=SMALL, alignment=TA_CENTER)
_MOST_COLUMNS = 4


def route_pdf(worked, drawn, heading, paper, system, link):
    """The bytes of the route card.

    worked: dict with the plain answers of "sizing", "tooling" and "route" for one job. drawn:
    function of a part's key giving its sheet for a card, None where the ring has no such part.
    heading: dict with "job", "owner", "date", "kind", "material", "bore", "rings". paper: key of
    the core's PAPERS. system: metric or inch. link: address that opens the job in the app, None
    where it is too long for a code.
    """
    sheet = PAPERS[paper]
    wide = sheet.width * mm - 2 * MARGIN
    card = worked["route"]
    story = _head(worked["sizing"], heading, system, link, wide)
    story += _cautions(card["cautions"], wide)
    story += _findings(_not_good(worked), wide)
    said = set()
    for operation in card["operations"]:
        story.append(_operation(operation, drawn, heading["rings"], system, wide, said))
    out = io.BytesIO()
    document = BaseDocTemplate(
        out,
        pagesize=(sheet.width * mm, sheet.height * mm),
        leftMargin=MARGIN,
        rightMargin=MARGIN,
        title=printable("Route card: %s" % (heading["job"] or heading["kind"])),
        author=printable(heading["owner"]),
        creator="Ringwright",
        invariant=1,
    )
    frame = Frame(
        MARGIN, 15 * mm, wide, sheet.height * mm - 27 * mm, leftPadding=0, rightPadding=0,
        topPadding=0, bottomPadding=0,
    )  # fmt: skip
    document.addPageTemplates([PageTemplate("card", [frame])])
    document.build(story, canvasmaker=_numbered(printable(heading["job"] or heading["kind"])))
    return out.getvalue()


def _not_good(worked):
    """Findings of all the answers that are not good, each once."""
    found = {}
    for name in ("sizing", "tooling", "route"):
        for one in worked[name]["findings"]:
            if one["outcome"] != "good":
                found.setdefault((one["check"], one["why"]), one)
    return list(found.values())


def _p(text, style=BODY):
    return Paragraph(escape(printable(text)), style)


def _head(sizing, heading, system, link, wide):
    """Title, the ring in figures, and the code that opens the job."""
    lines = [_p("Route card", TITLE)]
    for text in (heading["job"], heading["owner"]):
        if text:
            lines.append(_p(text, HEADING))
    lines.append(
        _p(
            "%s. %s. Bore %s."
            % (heading["kind"], heading["material"], values.shown(heading["bore"], "mm", system))
        )
    )
    facts = []
    for name, label in HEAD_FIGURES:
        figure = sizing["figures"].get(name)
        if figure:
            facts.append(
                [_p(label, CELL), _p(values.shown(figure["value"], figure["unit"], system), SIZE)]
            )
    half = (len(facts) + 1) // 2
    rows = [
        facts[i] + (facts[i + half] if i + half < len(facts) else ["", ""]) for i in range(half)
    ]
    code_size = 40 * mm
    column = (wide - code_size - 4 * mm) / 4
    lines.append(Spacer(1, 2 * mm))
    lines.append(Table(rows, colWidths=[column * 1.15, column * 0.85] * 2, style=_PLAIN))
    lines.append(
        _p(
            "Date: %s     Made by: ________________     Machine: ________________"
            % (heading["date"] or "____________"),
            BODY,
        )
    )
    code = [_p("This job is too long for a code.", CENTRED)]
    if link:
        code = [QrCode(link, code_size - 4 * mm), _p("Opens this job in the app", CENTRED)]
    head = Table([[lines, code]], colWidths=[wide - code_size, code_size], style=_PLAIN)
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


def _boxed(flowables, wide):
    style = TableStyle(
        [
            ("BOX", (0, 0), (-1, -1), 1.2, "black"),
            ("LEFTPADDING", (0, 0), (-1, -1), 3 * mm),
            ("RIGHTPADDING", (0, 0), (-1, -1), 3 * mm),
            ("TOPPADDING", (0, 0), (-1, -1), 2 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2 * mm),
        ]
    )
    return Table([[flowables]], colWidths=[wide], style=style)


def _cautions(cautions, wide):
    seen = {}
    for caution in cautions:
        seen.setdefault(caution["key"], caution["text"])
    return [
        _boxed([_p("Take care", HEADING)] + [_p(text, SMALL) for text in seen.values()], wide),
        Spacer(1, 3 * mm),
    ]


def _findings(findings, wide):
    """What the checks did not find good: stop before watch, each with its remedy."""
    if not findings:
        return []
    lines = [_p("Before you start", HEADING)]
    for outcome, word in (("stop", "STOP"), ("watch", "Watch")):
        for one in findings:
            if one["outcome"] == outcome:
                lines.append(
                    Paragraph(
                        "<b>%s:</b> %s. %s."
                        % (
                            word,
                            escape(printable(one["why"].rstrip("."))),
                            escape(printable(one["remedy"].rstrip("."))),
                        ),
                        SMALL,
                    )
                )
    return [_boxed(lines, wide), Spacer(1, 3 * mm)]


def _operation(operation, drawn, rings, system, wide, said):
    """One operation, kept on one page. said: keys of the cautions that earlier ones gave in
    full.
    """
    columns = min(rings, _MOST_COLUMNS) if operation["each_ring"] else 1
    sheet = drawn(DRAWINGS[operation["key"]]) if operation["key"] in DRAWINGS else None
    picture = Picture(sheet) if sheet else None
    room = wide - picture.width - 4 * mm if picture else wide
    left = [_p(operation["text"])]
    facts = _facts(operation, system)
    if facts:
        left.append(Spacer(1, 1 * mm))
        left.append(Paragraph(facts, BODY))
    if operation["sizes"]:
        left.append(Spacer(1, 1.5 * mm))
        left.append(
            _sizes(operation["sizes"], min(columns, 2) if picture else columns, system, room)
        )
    if operation["check"]:
        left.append(Spacer(1, 1 * mm))
        left.append(Paragraph("<b>Check:</b> %s" % escape(printable(operation["check"])), BODY))
    left += _operation_cautions(operation["cautions"], said)
    head = Table(
        [
            [
                _p(str(operation["number"]), HEADING),
                _p(operation["title"], HEADING),
                _p("done", SMALL),
                "",
            ]
        ],
        colWidths=[10 * mm, wide - 28 * mm, 11 * mm, 7 * mm],
        style=TableStyle(
            [
                ("LINEABOVE", (0, 0), (-1, 0), 1.2, "black"),
                ("BOX", (3, 0), (3, 0), 0.8, "black"),
                ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 1 * mm),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 1 * mm),
            ]
        ),
    )
    if picture:
        body = Table([[left, picture]], colWidths=[room + 4 * mm, picture.width], style=_PLAIN)
    else:
        body = Table([[left]], colWidths=[wide], style=_PLAIN)
    return KeepTogether([head, body, Spacer(1, 3 * mm)])


def _operation_cautions(cautions, said):
    """Each caution in full where it first comes up, and by its name from then on."""
    lines = []
    again = []
    for caution in cautions:
        if caution["key"] in said:
            again.append(caution["key"].replace("-", " "))
        else:
            said.add(caution["key"])
            lines.append(
                Paragraph("<b>Caution:</b> %s" % escape(printable(caution["text"])), SMALL)
            )
    if again:
        lines.append(Paragraph("<b>Caution, as before:</b> %s." % ", ".join(again), SMALL))
    return lines


def _facts(operation, system):
    """Tool, speed, feed and time in one line of text with marks."""
    parts = []
    if operation.get("tool"):
        parts.append("<b>Tool:</b> %s" % escape(printable(operation["tool"])))
    if operation.get("speed"):
        speed = values.shown(operation["speed"]["value"], operation["speed"]["unit"], system)
        surface = operation.get("surface_speed")
        more = " (%s)" % values.shown(surface["value"], surface["unit"], system) if surface else ""
        parts.append("<b>Speed:</b> %s%s" % (speed, more))
    if operation.get("feed"):
        feed = operation["feed"]
        per = " a %s" % operation["feed_per"] if operation.get("feed_per") else ""
        parts.append("<b>Feed:</b> %s%s" % (values.shown(feed["value"], feed["unit"], system), per))
    if operation.get("time"):
        parts.append("<b>About</b> %s" % values.shown(operation["time"]["value"], "min", system, 0))
    return ". ".join(parts)


def _sizes(sizes, columns, system, room):
    """The sizes to make, their limits, and boxes for what was measured."""
    measured = ["Measured" if columns == 1 else "Ring %d" % (i + 1) for i in range(columns)]
    rows = [[_p(text, SMALL) for text in ("Size", "Make it", *measured)]]
    for size in sizes:
        rows.append([_p(size["label"], CELL), _make(size, system)] + [""] * columns)
    make = 31 * mm
    box = min(24 * mm, max(13 * mm, (room - make - 24 * mm) / columns))
    style = TableStyle(
        [
            ("GRID", (2, 1), (-1, -1), 0.8, "black"),
            ("LINEBELOW", (0, 0), (1, -1), 0.4, "grey"),
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("LEFTPADDING", (0, 0), (1, -1), 0),
            ("LEFTPADDING", (2, 0), (-1, 0), 0.8 * mm),
            ("RIGHTPADDING", (0, 0), (-1, -1), 1 * mm),
            ("TOPPADDING", (0, 0), (-1, -1), 0.8 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 0.8 * mm),
        ]
    )
    return Table(rows, colWidths=[room - make - box * columns, make] + [box] * columns, style=style)


def _make(size, system):
    if "limits" not in size:
        return _p(values.shown(size["value"], size["unit"], system), SIZE)
    low, high = size["limits"]["lower"]["value"], size["limits"]["upper"]["value"]
    upper, lower, unit = values.limits(low, high, system)
    return Paragraph("%s %s<br/>%s" % (upper, unit, lower), SIZE)


def _numbered(title):
    """A canvas class that writes "page 2 of 7" when it knows how many there are."""

    class Numbered(Canvas):
        def __init__(self, *given, **named):
            super().__init__(*given, **named)
            self._pages = []

        def showPage(self):  # noqa: N802 - the name that the library calls
            self._pages.append(dict(self.__dict__))
            self._startPage()

        def save(self):
            for number, page in enumerate(self._pages, 1):
                self.__dict__.update(page)
                self.setFont("Helvetica", 8.5)
                self.drawString(MARGIN, 9 * mm, title[:90])
                self.drawRightString(
                    self._pagesize[0] - MARGIN, 9 * mm, "page %d of %d" % (number, len(self._pages))
                )
                super().showPage()
            super().save()

    return Numbered
