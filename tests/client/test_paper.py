"""On paper: the route card and the tool sheet on A4 and Letter, drawings at their own scale."""

import re
import subprocess

import pytest

# ISO 216 and ANSI Y14.1, in points of 1/72 in.
PAPERS = {"A4": (595.3, 841.9), "Letter": (612.0, 792.0)}


def _printed(sheet, tmp_path, paper):
    path = tmp_path / "sheet.pdf"
    sheet.page.emulate_media(media="print")
    path.write_bytes(sheet.page.pdf(format=paper, prefer_css_page_size=True))
    return path


def _text(path):
    told = subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, check=True)
    return told.stdout.decode()


def _size(path):
    told = subprocess.run(["pdfinfo", path], capture_output=True, check=True).stdout.decode()
    width, height = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", told).groups()
    return float(width), float(height)


@pytest.mark.parametrize("paper", list(PAPERS))
def test_route_card_prints_with_everything_the_bench_needs(sheet, tmp_path, paper):
    sheet.go("route")
    sheet.page.locator(".operation").first.wait_for()
    operations = sheet.page.locator(".operation h2").all_inner_texts()
    cautions = sheet.page.locator(".cautions li").all_text_contents()
    path = _printed(sheet, tmp_path, paper)
    assert _size(path) == pytest.approx(PAPERS[paper], abs=1.0)
    text = " ".join(_text(path).split())
    assert "Route card" in text
    assert "Launch engine Marigold" in text
    assert "Measured" in text
    assert "Made by" in text
    for title in operations:
        assert title in text
    # Cautions that are folded on the screen stand on the paper.
    for caution in cautions:
        assert caution.split(".")[0][:40] in text
    # What is for fingers stays on the screen.
    for screen_only in (
        "Print the route card",
        "Survey Ring Tools",
        "Show 7 more",
        "Reference tables",
    ):
        assert screen_only not in text


@pytest.mark.parametrize("paper", list(PAPERS))
def test_tool_sheet_prints_each_tool_with_its_limits(sheet, tmp_path, paper):
    sheet.go("tools")
    sheet.page.locator(".tool").first.wait_for()
    tools = sheet.page.locator(".tool h2").all_inner_texts()
    limits = sheet.page.locator(".sizes-value small").all_inner_texts()
    assert limits
    path = _printed(sheet, tmp_path, paper)
    assert _size(path) == pytest.approx(PAPERS[paper], abs=1.0)
    text = " ".join(_text(path).split())
    for words in (*tools, *limits):
        assert words in text


def test_paper_is_black_on_white_in_every_theme(sheet):
    sheet.go("route")
    sheet.page.locator(".operation").first.wait_for()
    for theme in ("dark", "sunlight", "light"):
        sheet.page.evaluate("theme => { document.documentElement.dataset.theme = theme }", theme)
        sheet.page.emulate_media(media="print")
        colours = sheet.page.evaluate(
            "(() => { const s = getComputedStyle(document.querySelector('.operation'));"
            " return [s.backgroundColor, s.color] })()"
        )
        assert colours == ["rgb(255, 255, 255)", "rgb(0, 0, 0)"]
        sheet.page.emulate_media(media="screen")


@pytest.mark.parametrize("paper", list(PAPERS))
def test_template_prints_at_full_size(sheet, tmp_path, paper):
    """The ruler on the printed template is as long as it says, by a tape on the paper."""
    page = sheet.page
    sheet.go("route")
    page.get_by_text("Template to wrap round the blank, full size").click()
    button = page.get_by_role("button", name="Print on %s" % paper)
    button.wait_for()
    # The print dialog of the browser stays open until somebody answers it: here nobody would.
    page.evaluate("window.print = () => undefined")
    button.click()
    page.locator(".paper-page svg").first.wait_for(state="attached")
    page.emulate_media(media="print")
    drawn = page.evaluate(
        "(() => { const s = document.querySelector('.paper-page svg');"
        " return [s.getAttribute('width'), s.getBoundingClientRect().width] })()"
    )
    # CSS Values 4, 6.1: one inch is 96 px, and a printer's millimetre a millimetre.
    assert drawn[1] == pytest.approx(float(drawn[0].removesuffix("mm")) * 96 / 25.4, rel=1e-3)
    path = _printed(sheet, tmp_path, paper)
    assert _size(path) == pytest.approx(PAPERS[paper], abs=1.0)
    assert "Template" in _text(path)


def test_what_was_to_be_drawn_later_is_drawn_before_printing(sheet, tmp_path):
    page = sheet.page
    before = page.locator(".rows [data-figure=free_gap] b").text_content()
    # A phone too busy to come to its later tasks: from here on none of them runs.
    page.evaluate("window.setTimeout = () => 0")
    sheet.enter("Bore", "120 mm")
    page.wait_for_selector('html[data-drawing] .plate[data-state="ready"]')
    assert page.locator(".rows [data-figure=free_gap] b").text_content() == before
    _printed(sheet, tmp_path, "A4")
    now = page.locator(".rows [data-figure=free_gap] b").text_content()
    assert now == page.locator(".plate [data-figure=free_gap] b").text_content() != before


@pytest.mark.parametrize("screen", ["survey", "ring", "stock", "check", "run", "valve"])
def test_every_screen_prints_its_figures(sheet, tmp_path, screen):
    """A figure is a button on the screen; on paper it must not be left out with the buttons."""
    page = sheet.go(screen).page
    page.locator("main [data-figure]").first.wait_for()
    sheet.until("!document.querySelector('main .stale, [data-drawing]')")
    page.wait_for_timeout(300)
    figures = page.locator("main [data-figure] b").all_text_contents()
    assert len(figures) >= 4
    title = page.locator("main h1").inner_text()
    text = " ".join(_text(_printed(sheet, tmp_path, "A4")).split())
    assert title in text
    assert "Launch engine Marigold" in text
    missing = [each for each in figures if " ".join(each.split()) not in text]
    assert missing == []
    assert "Bring in a file" not in text
