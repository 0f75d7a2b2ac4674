"""Every screen of the app in the order of its strips, each with what stands there once it is drawn.

One list for all browsers and tests; tests/client/test_everyone.py holds the app to it.
"""

import re

from conftest import ROOT

STAGES = {
    "survey": ".two",
    "ring": ".plate",
    "tools": ".tool",
    "stock": ".plate",
    "route": ".operation",
    "check": ".wall path",
    "run": ".two",
}
BESIDE = {
    "fitting": ".operation",
    "groove": ".card",
    "pack": ".card",
    "valve": ".card",
    "expander": ".card",
    "soak": ".card",
    "thumb": ".card",
    "unheated": ".wall path",
    "tables": ".card",
    "guide": ".card",
    "shop": ".card",
    "compare": ".card",
    "cut": ".card",
}
# Reached from a stage, with the screen to itself.
ALONE = {"work": ".work", "label": ".box-label"}
# By the head of the page.
HEAD = {"book": ".jobs", "settings": "[data-ready]"}
SCREENS = {**STAGES, **BESIDE, **ALONE, **HEAD}


def stands(screen):
    """A selector that finds something once that screen is drawn."""
    return '.app[data-screen="%s"] main %s' % (screen, SCREENS[screen])


def declared():
    """The keys of all screens, as the app's own source declares them."""
    source = ROOT / "client_pwa" / "src"
    frame = (source / "shell" / "App.tsx").read_text(encoding="utf-8")
    others = re.search(r"OTHERS.*? = \{\n(.*?)\n\};", frame, re.S)[1]
    listed = (source / "shell" / "screens.ts").read_text(encoding="utf-8")
    return {*re.findall(r'\{ key: "(\w+)"', listed), *re.findall(r"^  (\w+): \{", others, re.M)}
