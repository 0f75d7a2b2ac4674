"""Text for the letters that every PDF reader has, without carrying a font of our own.

They cover the languages of western Europe. Other letters lose their accents, and what is left over
becomes a question mark: a title block that cannot show a name is no reason to fail.
"""

import unicodedata

ENCODING = "cp1252"
_NEAR = {"\u0142": "l", "\u0141": "L", "\u0111": "d", "\u0110": "D", "\u2044": "/", "\u2212": "-"}


def printable(text):
    """The text with nothing in it that the standard PDF letters lack."""
    if text.isprintable() and _has(text):
        return text
    return "".join(_letter(letter) for letter in text)


def _letter(letter):
    if not letter.isprintable():
        return " "
    for form in (letter, _NEAR.get(letter, ""), _plain(letter)):
        if form and _has(form):
            return form
    return "?"


def _plain(letter):
    parts = unicodedata.normalize("NFKD", letter)
    return "".join(part for part in parts if not unicodedata.combining(part))


def _has(text):
    try:
        text.encode(ENCODING)
    except UnicodeEncodeError:
        return False
    return True
