"""The letters of the route card: black on white, to be read at arm's length."""

from reportlab.lib.enums import TA_CENTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph

from . import faces

# 10 point letters have capitals of 2.5 mm, the least of ISO 3098 for a shop.
BODY = ParagraphStyle("body", fontName=faces.STANDARD, fontSize=10, leading=12)
CELL = ParagraphStyle("cell", parent=BODY, leading=11.5)
SIZE = ParagraphStyle(
    "size", parent=BODY, fontName=faces.STANDARD_BOLD, fontSize=11.5, leading=13.5
)
HEADING = ParagraphStyle(
    "heading", parent=BODY, fontName=faces.STANDARD_BOLD, fontSize=13, leading=15
)
TITLE = ParagraphStyle("title", parent=HEADING, fontSize=18, leading=22)
SMALL = ParagraphStyle("small", parent=BODY, fontSize=8.5, leading=10.5)
CENTRED = ParagraphStyle("centred", parent=SMALL, alignment=TA_CENTER)


def paragraph(text, style=BODY):
    """Text in letters that this page has. text: as it is read, without marks."""
    return Paragraph(faces.marked(text, style.fontName == faces.STANDARD_BOLD), style)
