"""Every word that a user of the app sees, gathered into one list that can be read in one sitting.

RINGWRIGHT_WORDS=words.txt tests/run tests/client/test_word_list.py writes it there. Plain language
(ISO 24495-1) is judged by a reader; what a machine can see of it is held here.
"""

import os
import re

from client.conftest import PHONE, Sheet
from client.screens import SCREENS, stands

# Longer ones are hard to follow at a bench; common practice of plain writing.
LONGEST_SENTENCE = 45
NAME = re.compile(r"\b[a-z]+(?:_[a-z0-9]+)+\b")

GATHER = """() => {
    document.querySelectorAll('details').forEach(e => { e.open = true });
    const seen = new Set();
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
        for (const name of ['aria-label', 'placeholder', 'title']) {
            if (node.getAttribute(name)) seen.add(node.getAttribute(name));
        }
        if (!/^(P|LI|TH|TD|DT|DD|H1|H2|H3|LABEL|LEGEND|BUTTON|OPTION|SUMMARY|A|CAPTION)$/
            .test(node.tagName)) continue;
        if (node.querySelector('p, li, tr, button, dl')) continue;
        const text = node.textContent.replace(/\\s+/g, ' ').trim();
        if (/[a-z]{2}/i.test(text)) seen.add(text);
    }
    return [...seen];
}"""


def _words_of(sheet):
    found = {}
    for screen in SCREENS:
        sheet.go(screen).page.wait_for_selector(stands(screen))
        sheet.still()
        sheet.page.evaluate(
            "document.querySelectorAll('.choice-row[aria-expanded=false]').forEach(e => e.click())"
        )
        sheet.still()
        for text in sheet.page.evaluate(GATHER):
            found.setdefault(text, screen)
    return found


def test_all_words_of_the_app_in_one_list(browser, served, tmp_path):
    found = {}
    for ring_type in ("Double-turn", "Plain"):
        context = browser.new_context(viewport=PHONE)
        sheet = Sheet(context.new_page(), served).open().ready()
        sheet.page.get_by_label(ring_type, exact=True).check()
        sheet.ready()
        found.update({text: at for text, at in _words_of(sheet).items() if text not in found})
        context.close()
    target = os.environ.get("RINGWRIGHT_WORDS") or str(tmp_path / "words.txt")
    with open(target, "w", encoding="utf-8") as file:
        for screen in SCREENS:
            mine = sorted(text for text, at in found.items() if at == screen)
            file.write("%s\n\n%s\n\n" % (screen.upper(), "\n".join(mine)))
    assert len(found) > 500
    names = {text for text in found if NAME.search(text)}
    assert names == set()
    long = {
        sentence
        for text in found
        for sentence in re.split(r"(?<=[.!?:;])\s+", text)
        if len(sentence.split()) > LONGEST_SENTENCE
    }
    assert long == set()
