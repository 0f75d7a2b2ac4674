"""The address by which this service is reached from outside, for what carries it: the card's code.

A request says by its Host header which address it came to, and anybody may write anything there. So
whoever runs the service says its address; without that word a Host is taken where it is a host.
"""

import re
from urllib.parse import urlsplit

from flask import Request

from ..named_types import Environment
from .problems import Refused
from .settings import value_of

# The environment variable that says it, such as https://rings.example.org/
SETTING = "RINGWRIGHT_ADDRESS"
_HOST = re.compile(
    r"(?:[A-Za-z0-9](?:[A-Za-z0-9.-]{0,251}[A-Za-z0-9])?|\[[0-9A-Fa-f:.]{2,45}\])(?::[0-9]{1,5})?"
)


class BadAddress(Exception):
    """The setting is no address: better no start than cards whose code opens nothing."""


def read_address(environ: Environment | None = None) -> str | None:
    """The address with a slash at its end, None where none is said. Raises BadAddress."""
    said: str = value_of(SETTING, environ)
    if not said:
        return None
    parts = urlsplit(said)
    plain = not parts.query and not parts.fragment and parts.path.replace("/", "").isascii()
    if parts.scheme not in ("http", "https") or not _HOST.fullmatch(parts.netloc) or not plain:
        raise BadAddress(
            "%s: %r is no address such as https://rings.example.org/" % (SETTING, said)
        )
    return said if said.endswith("/") else said + "/"


def address_of(request: Request, own: str | None) -> str:
    """Where the app of this service is. own: as read_address gives it. Raises Refused."""
    if own:
        return own
    if not _HOST.fullmatch(request.host):
        raise Refused("bad-request", "the Host header names no host", path=("Host",))
    return request.url_root
