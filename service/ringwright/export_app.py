"""The built app as a folder for a static host: its files as they are, and the headers they need.

usage: python -m ringwright.export_app FOLDER [PATH]

Headers go into the files that common hosts read: `_headers` (one block a path) and `.htaccess`
(Apache). Hosts read `_headers` in the root of a site alone, and its paths begin there: PATH says
where on the site the folder will stand, "/" where nothing is said. The policy is the service's own;
what it allows beyond that host's own files is the style sheet in the page.
"""

import shutil
import sys
from collections.abc import Mapping
from pathlib import Path

from .api import limits, static_app
from .api.static_app import Held

# A tag set by hand would be wrong after the next change; hosts make their own.
_ALWAYS = (
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Permissions-Policy", static_app.PERMISSIONS),
)
_ASK_AGAIN = ("Cache-Control", "no-cache")
_FOR_EVER = ("Cache-Control", "public, max-age=%d, immutable" % limits.FOREVER_SECONDS)
_TYPES = (("wasm", "application/wasm"), ("webmanifest", "application/manifest+json"))


def export(folder: str | Path, source: Path = static_app.FOLDER, under: str = "/") -> None:
    """Writes the app into a folder that is empty or not there.

    folder, source: paths. under: path on the site at which it will stand, as "/rings/". Raises
    FileNotFoundError where the app is not built, FileExistsError where the folder holds something.
    """
    held = static_app.read_app(source)
    if not held:
        raise FileNotFoundError("the app is not built: service/start builds it")
    folder = Path(folder)
    if folder.exists() and any(folder.iterdir()):
        raise FileExistsError("%s is not empty" % folder)
    shutil.copytree(source, folder, dirs_exist_ok=True)
    policy = ("Content-Security-Policy", held["index.html"].policy)
    (folder / "_headers").write_text(_header_blocks(held, policy, under), encoding="utf-8")
    (folder / ".htaccess").write_text(_apache(held, policy), encoding="utf-8")


def _header_blocks(held: Mapping[str, Held], policy: tuple[str, str], under: str) -> str:
    root = "/%s/" % under.strip("/") if under.strip("/") else "/"
    lines = [root + "*"]
    lines += ["  %s: %s" % header for header in (*_ALWAYS, policy)]
    for name, found in held.items():
        lines += [root + name, "  %s: %s" % (_FOR_EVER if found.for_ever else _ASK_AGAIN)]
    return "\n".join(lines) + "\n"


def _apache(held: Mapping[str, Held], policy: tuple[str, str]) -> str:
    lines = ["AddType %s .%s" % (media_type, ending) for ending, media_type in _TYPES]
    lines.append("<IfModule mod_headers.c>")
    lines += ['  Header set %s "%s"' % header for header in (*_ALWAYS, policy, _ASK_AGAIN)]
    for name, found in held.items():
        if found.for_ever:
            lines.append('  <Files "%s">' % Path(name).name)
            lines.append('    Header set %s "%s"' % _FOR_EVER)
            lines.append("  </Files>")
    lines.append("</IfModule>")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    if len(sys.argv) not in (2, 3):
        sys.exit(__doc__)
    try:
        export(sys.argv[1], under="".join(sys.argv[2:]))
    except OSError as error:
        sys.exit("service/export_app: %s" % error)
    print("Written to %s: put it on any host that serves https, under any path." % sys.argv[1])
