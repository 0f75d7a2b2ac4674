"""A hand on a phone: every touch of it is counted."""


class Fingers:
    """Touches a page; `taps` says how often."""

    def __init__(self, page):
        self.page = page
        self.taps = 0

    def tap(self, where):
        where.tap()
        self.taps += 1

    def key(self, name):
        """One key of the app's own pad."""
        self.tap(self.page.locator(".pad").get_by_role("button", name=name, exact=True))

    def press(self, text):
        """A number, or a whole one and a fraction of an inch: "4 1/4"."""
        whole, _, fraction = text.partition(" ")
        for letter in whole:
            self.key("decimal point" if letter == "." else letter)
        if fraction:
            self.key(fraction)

    def enter(self, box, text):
        """Types a number into an entry by the pad."""
        self.tap(box)
        self.press(text)
        self.key("Done")

    def readings(self, rows):
        """Types readings in inches, cell by cell, the later ones as so many thou from the last."""
        texts = [text for row in rows for text in row]
        self.tap(self.page.locator(".grid-cell").first)
        self.press(texts[0])
        self.key("Next")
        for at, (last, text) in enumerate(zip(texts, texts[1:], strict=False), start=1):
            tenths = round((float(text) - float(last)) * 10_000)
            if tenths == 0:
                self.key("Same again: %s in" % last)
                continue
            less = "less " if tenths < 0 else "and "
            self.key("The last one %sso many thou" % less)
            self.press(("%g" % (abs(tenths) / 10)).lstrip("0"))
            self.key("Done" if at == len(texts) - 1 else "Next")
