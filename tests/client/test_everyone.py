"""For everyone: axe on every screen in every theme, the keyboard alone, large text, narrow screens.

The rules are those of WCAG 2.2 levels A and AA as axe-core (npm) checks them.
"""

import pytest

from client.conftest import DESK, PHONE, Sheet
from client.screens import BESIDE, HEAD, SCREENS, STAGES, declared, stands
from conftest import ROOT

AXE = ROOT / "client_pwa" / "node_modules" / "axe-core" / "axe.min.js"
THEMES = ["light", "dark", "sunlight"]
TARGETS = (
    "button, summary, select, input:not([type=file]), .strip a, .head a, .beside a, .status a, "
    "h2 .guide-link, .guide-find a"
)
SMALL = """selector => [...document.querySelectorAll(selector)]
    .map(e => e.closest('label') ?? e)
    .filter(e => e.checkVisibility())
    .filter(e => !e.closest('.unseen') && !e.classList.contains('unseen'))
    .map(e => [e.getBoundingClientRect(), e.outerHTML.slice(0, 110)])
    .filter(([box]) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
    .map(([box, html]) => `${Math.round(box.width)} x ${Math.round(box.height)} ${html}`)
"""
UNDER_ITS_BOX = """() => [...document.querySelectorAll('.entry')].flatMap(entry => {
    const label = entry.querySelector('.entry-words label');
    const box = entry.querySelector('.entry-line, select');
    if (!label || !box || !label.checkVisibility()) return [];
    const range = document.createRange();
    range.selectNodeContents(label);
    const [words, at] = [range.getBoundingClientRect(), box.getBoundingClientRect()];
    const beside = words.bottom > at.top && words.top < at.bottom && words.left < at.left;
    return beside && words.right > at.left + 0.5 ? [label.textContent] : [];
})"""
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# What a theme can change; all else is the same in each, and is asked in the first.
OF_THEMES = ["color-contrast", "link-in-text-block", "scrollable-region-focusable", "target-size"]
TEXT_SIZES = ("106.25%", "140%")
OUT_OF_ITS_CARD = (
    "[...document.querySelectorAll('.card > table')]"
    ".filter(e => e.scrollWidth > e.parentElement.clientWidth - 2 * parseFloat("
    "getComputedStyle(e.parentElement).paddingLeft) + 1)"
    ".map(e => `${e.scrollWidth} ${e.parentElement.ariaLabel}`)"
)


def _themed(browser, served, theme, size=PHONE):
    context = browser.new_context(viewport=size, bypass_csp=True)
    context.add_init_script(
        "localStorage.setItem('ringwright-settings', JSON.stringify({theme: '%s'}))" % theme
    )
    return context, Sheet(context.new_page(), served).open().ready()


def _each(sheet):
    """Every screen in turn, once it is drawn: in one page, for a new one takes seconds to begin."""
    for screen in SCREENS:
        sheet.go(screen).page.wait_for_selector(stands(screen))
        sheet.still()
        yield screen


def _faults(page, only=TAGS):
    """What axe finds by rules of those tags, or by rules of those names."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    return page.evaluate(
        "tags => axe.run({ runOnly: tags, exclude: [] }).then(result => result.violations.map("
        "each => [each.id, each.help, "
        "each.nodes.slice(0, 3).map(node => node.html.slice(0, 160))]))",
        only,
    )


def _cut(page):
    """Entries whose number does not fit its box."""
    return page.evaluate(
        "[...document.querySelectorAll('input.entry-number')]"
        ".filter(e => e.scrollWidth > e.clientWidth).map(e => `${e.id} ${e.value}`)"
    )


BROKEN_IN_TWO = """() => {
    const found = [];
    const texts = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
        const text = texts.currentNode;
        if (!text.parentElement.checkVisibility() || text.parentElement.closest('svg')) continue;
        for (const match of text.data.matchAll(/\\d[\\d.\u202f]*/g)) {
            const range = document.createRange();
            range.setStart(text, match.index);
            range.setEnd(text, match.index + match[0].length);
            const lines = [...range.getClientRects()].filter(box => box.width > 0);
            if (new Set(lines.map(box => Math.round(box.top))).size > 1)
                found.push(`${match[0]} in ${text.parentElement.outerHTML.slice(0, 80)}`);
        }
    }
    return found;
}"""


def _broken(page, sizes):
    """Figures that begin on one line and end on another, with letters of those sizes."""
    found = []
    for size in sizes:
        page.evaluate("size => { document.documentElement.style.fontSize = size }", size)
        found += page.evaluate(BROKEN_IN_TWO)
    page.evaluate("document.documentElement.style.fontSize = ''")
    return found


@pytest.fixture(scope="module", params=THEMES)
def walked(request, browser, served):
    """Theme, and what is wrong by kind and screen: one walk, for each takes half a minute."""
    theme = request.param
    context, sheet = _themed(browser, served, theme)
    page = sheet.page
    found = {"faults": {}, "small": {}, "cut": {}, "under": {}, "out": {}, "broken": {}}
    for screen in _each(sheet):
        found["small"][screen] = page.evaluate(SMALL, TARGETS)
        found["cut"][screen] = _cut(page)
        # What is folded away is looked at as well.
        page.evaluate("document.querySelectorAll('details').forEach(e => { e.open = true })")
        sheet.still()
        found["under"][screen] = page.evaluate(UNDER_ITS_BOX)
        found["out"][screen] = page.evaluate(OUT_OF_ITS_CARD)
        found["faults"][screen] = _faults(page, TAGS if theme == THEMES[0] else OF_THEMES)
        # Of the themes this has the largest letters.
        found["broken"][screen] = _broken(page, TEXT_SIZES) if theme == "sunlight" else []
        if theme == THEMES[0]:
            page.set_viewport_size(DESK)
            page.wait_for_timeout(100)
            found["cut"]["%s on a desk" % screen] = _cut(page)
            page.set_viewport_size(PHONE)
    context.close()
    for rows in found.values():
        assert set(SCREENS) <= set(rows)
    return theme, {
        kind: {screen: wrong for screen, wrong in rows.items() if wrong}
        for kind, rows in found.items()
    }


def test_no_screen_is_left_out_here(sheet):
    assert declared() == set(SCREENS)
    links = "[...document.querySelectorAll('%s')].map(e => e.hash.split('/')[1])"
    assert sheet.page.evaluate(links % ".strip a") == list(STAGES)
    assert sheet.page.evaluate(links % ".beside a") == list(BESIDE)
    assert sheet.page.evaluate(links % ".head a") == list(HEAD)


def test_axe_finds_nothing_on_any_screen(walked):
    assert walked[1]["faults"] == {}, walked


def test_no_word_runs_under_the_box_beside_it(walked):
    assert walked[1]["under"] == {}, walked


def test_no_entered_number_is_cut_short(walked):
    """A diameter of which the last digit is hidden is another diameter."""
    assert walked[1]["cut"] == {}, walked


def test_no_table_runs_out_of_its_card(walked):
    assert walked[1]["out"] == {}, walked


def test_no_figure_is_broken_in_two(walked):
    """0.12 in one line and 8 in the next is another gap than 0.128."""
    assert walked[1]["broken"] == {}, walked


def test_every_target_is_large_enough_for_a_glove(walked):
    assert walked[1]["small"] == {}, walked


@pytest.mark.parametrize("theme", THEMES)
def test_axe_finds_nothing_on_a_figures_working_a_fault_and_a_code(browser, served, theme):
    context, sheet = _themed(browser, served, theme, DESK)
    page = sheet.page
    page.locator("[data-figure=free_gap]").first.click()
    page.get_by_text("How it is worked").wait_for()
    page.locator(".formula").wait_for()
    assert _faults(page) == []
    page.keyboard.press("Escape")
    sheet.enter("Bore", "eighty")
    page.locator(".fault").first.wait_for()
    assert _faults(page) == []
    sheet.enter("Bore", "80").kept().go("book")
    page.get_by_role("button", name="Link or code for Launch engine Marigold").click()
    page.get_by_label("Link", exact=True).wait_for()
    assert _faults(page) == []
    context.close()


def test_keyboard_alone_reaches_and_works_everything(sheet):
    page = sheet.page
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent").strip() == "Skip to the sheet"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"
    # From there the first entry is one step away.
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.id") == "in-bore"
    page.keyboard.press("Control+A")
    page.keyboard.type("90 mm")
    page.keyboard.press("Enter")
    sheet.ready()
    sheet.until("document.querySelector('[data-figure=inside_diameter] b')")
    # A figure opens by the keyboard, closes by Escape, and gives the focus back.
    page.locator("[data-figure=free_gap]").first.focus()
    page.keyboard.press("Enter")
    page.get_by_role("dialog").wait_for()
    page.keyboard.press("Escape")
    assert page.evaluate("document.activeElement.dataset.figure") == "free_gap"
    # Every control has a visible focus: an outline or a border of its own.
    page.locator(".strip a").first.focus()
    page.keyboard.press("Tab")
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") != "none"


# Words that begin on one line and end on another, that run over the edge of their card, and hints
# in a box that have no room there.
TORN = """() => {
    const found = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
        const text = texts.currentNode;
        const near = text.parentElement;
        if (!near.checkVisibility() || near.closest('svg, math, option, .unseen')) continue;
        const card = near.closest('.formula') ? null : near.closest('.tile, .card, .operation');
        const edge = card && card.getBoundingClientRect().left + card.clientLeft + card.clientWidth;
        for (const match of text.data.matchAll(/[\\p{L}\\d][\\p{L}\\d.\u202f]*/gu)) {
            const range = document.createRange();
            range.setStart(text, match.index);
            range.setEnd(text, match.index + match[0].length);
            const lines = [...range.getClientRects()].filter(box => box.width > 0);
            const torn = new Set(lines.map(box => Math.round(box.top))).size > 1;
            if (torn || card && lines.some(box => box.right > edge - 3))
                found.push(`${match[0]} in ${near.outerHTML.slice(0, 90)}`);
        }
    }
    for (const box of document.querySelectorAll('input[placeholder], textarea[placeholder]')) {
        if (!box.checkVisibility()) continue;
        const [style, held] = [getComputedStyle(box), getComputedStyle(box, '::placeholder')];
        const pen = document.createElement('canvas').getContext('2d');
        pen.font = held.font;
        const words = box.matches('textarea') ? box.placeholder.split(' ') : [box.placeholder];
        const wide = Math.max(...words.map(each => pen.measureText(each).width));
        const sides = parseFloat(style.paddingLeft) + parseFloat(style.paddingRight);
        const room = box.clientWidth - sides;
        if (wide > room + 0.5) found.push(`${box.placeholder} in ${box.outerHTML.slice(0, 90)}`);
    }
    return found;
}"""
OFF = """() => document.documentElement.scrollWidth <= document.documentElement.clientWidth ? []
    : [...document.querySelectorAll('main *, header *')]
        .filter(e => e.getBoundingClientRect().right > innerWidth + 1).slice(0, 5)
        .map(e => e.outerHTML.slice(0, 120))"""
SIDEWAYS = {"width": PHONE["height"], "height": PHONE["width"]}


@pytest.fixture(scope="module", params=["light", "sunlight"])
def doubled(request, browser, served):
    """What runs off and what is torn at twice the text, by screen; upright and on its side."""
    context, sheet = _themed(browser, served, request.param)
    page = sheet.page
    page.add_style_tag(content="html { font-size: 212.5% }")
    found = {"off": {}, "torn": {}, "broken": {}}

    def look(where):
        for name, size in (("upright", PHONE), ("sideways", SIDEWAYS)):
            page.set_viewport_size(size)
            page.wait_for_timeout(100)
            found["off"]["%s, %s" % (where, name)] = page.evaluate(OFF)
            found["torn"]["%s, %s" % (where, name)] = page.evaluate(TORN)
            found["broken"]["%s, %s" % (where, name)] = page.evaluate(BROKEN_IN_TWO)
        page.set_viewport_size(PHONE)

    for screen in _each(sheet):
        page.evaluate("document.querySelectorAll('details').forEach(e => { e.open = true })")
        sheet.still()
        look(screen)
    # Each operation has its own words.
    skip = sheet.go("work").page.get_by_role("button", name="Skip")
    page.locator("main .work").wait_for()
    while skip.is_enabled():
        skip.click()
        look(page.locator("main .work-head p").inner_text())
    context.close()
    assert len(found["torn"]) > 2 * (len(SCREENS) + 15)
    return {
        kind: {where: wrong for where, wrong in rows.items() if wrong}
        for kind, rows in found.items()
    }


def test_nothing_runs_off_a_narrow_screen_at_twice_the_text(doubled):
    assert doubled["off"] == {}


def test_no_word_is_torn_and_no_hint_cut_at_twice_the_text(doubled):
    """Neither a word of the page nor what stands grey in a box until something is entered."""
    assert doubled["torn"] == {}


def test_no_figure_is_broken_in_two_at_twice_the_text(doubled):
    assert doubled["broken"] == {}


def test_motion_is_left_out_for_those_who_ask(browser, served):
    context = browser.new_context(viewport=PHONE, reduced_motion="reduce")
    sheet = Sheet(context.new_page(), served).open().ready()
    moving = sheet.page.evaluate(
        "[...document.querySelectorAll('*')].filter(e => getComputedStyle(e).transitionDuration"
        " !== '0s' || getComputedStyle(e).animationName !== 'none').length"
    )
    assert moving == 0
    context.close()


def test_large_keypad_types_fractions(browser, served):
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
    sheet = Sheet(context.new_page(), served).open().ready()
    page = sheet.page
    page.get_by_label("Bore", exact=True).tap()
    pad = page.get_by_role("group", name="Keypad for Bore")
    pad.wait_for()
    # All of the old entry is marked when it is tapped.
    pad.get_by_role("button", name="Rub out one").tap()
    pad.get_by_role("button", name="4", exact=True).tap()
    pad.get_by_role("button", name="3/8", exact=True).tap()
    assert page.get_by_label("Bore", exact=True).input_value() == "4 3/8"
    pad.get_by_role("button", name="Done").tap()
    sheet.ready().kept()
    assert page.get_by_text("= 111.125 mm").count() == 1
    context.close()
