"""Every setting of the service by an environment variable: declared here once, read where it is
used. A setting that is none of its kind stops the start: better none than a guess."""

import os
from typing import Any, NamedTuple

from ..named_types import Environment


# usual: taken where the environment says nothing; "" is nothing. least: of a whole number, None
# for other kinds. A usual of "on" or "off" makes a switch.
class Setting(NamedTuple):
    usual: str
    least: int | None
    meaning: str


SETTINGS = {
    "RINGWRIGHT_ADDRESS": Setting(
        usual="",
        least=None,
        meaning="address by which this service is reached, such as https://rings.example.org/",
    ),
    "RINGWRIGHT_CLOSE_AFTER": Setting(
        usual="0",
        least=0,
        meaning="how long a service that is told to end takes new requests, not ready any more [s]",
    ),
    "RINGWRIGHT_FONTS": Setting(
        usual="",
        least=None,
        meaning="folder with faces for signs of East Asia on paper, where the system has none",
    ),
    "RINGWRIGHT_HEAVY_AT_ONCE": Setting(
        usual="1",
        least=1,
        meaning="heavy calculations that a worker does at once",
    ),
    "RINGWRIGHT_HEAVY_PATIENCE": Setting(
        usual="10",
        least=1,
        meaning="longest that a caller waits for his turn [s]",
    ),
    "RINGWRIGHT_HEAVY_QUEUE": Setting(
        usual="3000",
        least=0,
        meaning="heavy work that a worker takes on beyond the first, by its cost [ms]",
    ),
    "RINGWRIGHT_METRICS": Setting(
        usual="off",
        least=None,
        meaning="on: counts and times of requests at /metrics",
    ),
    "RINGWRIGHT_PROXIES": Setting(
        usual="0",
        least=0,
        meaning="proxies in front whose X-Forwarded-For is believed when requests are counted",
    ),
    "RINGWRIGHT_RATE": Setting(
        usual="0",
        least=0,
        meaning="requests a minute of /v1/ that one network address may ask; 0 is no limit",
    ),
    "RINGWRIGHT_REQUEST_LOG": Setting(
        usual="off",
        least=None,
        meaning="on: a line of JSON for each request on standard output, without its figures",
    ),
    "RINGWRIGHT_SHOP_PROFILE": Setting(
        usual="",
        least=None,
        meaning="file of the club's workshop, as the app saves it",
    ),
}
# What is read beside the service itself: by its server, by the commands of the project, by the
# proxy in front. Each checks its own.
BESIDE = {
    "FORWARDED_ALLOW_IPS": Setting(
        usual="127.0.0.1,::1",
        least=None,
        meaning="server: proxies whose word on http or https is believed; * is all",
    ),
    "GUNICORN_CMD_ARGS": Setting(
        usual="",
        least=None,
        meaning="server: any of its own settings, over all others",
    ),
    "WEB_CONCURRENCY": Setting(
        usual="",
        least=None,
        meaning="server: workers; without it processors, at most 4",
    ),
    "FORCE_CODE": Setting(
        usual="",
        least=None,
        meaning="service/start --phone: 1 prints the code for a camera where no terminal is",
    ),
    "RINGWRIGHT_KEYS": Setting(
        usual="~/.local/share/ringwright/keys",
        least=None,
        meaning="service/start --phone: folder of the authority",
    ),
    "RINGWRIGHT_LOCKED": Setting(
        usual="",
        least=None,
        meaning="service/start: 1 stops it where the locked packages cannot be installed",
    ),
    "RINGWRIGHT_WELCOME": Setting(
        usual="",
        least=None,
        meaning="service/start --phone: handed by it to its own page; not to be set by hand",
    ),
    "XDG_DATA_HOME": Setting(
        usual="~/.local/share",
        least=None,
        meaning="service/start --phone: where RINGWRIGHT_KEYS says nothing",
    ),
    "RINGWRIGHT_DOMAIN": Setting(
        usual="",
        least=None,
        meaning="proxy, compose.yaml: name of this server, such as rings.example.org",
    ),
    "RINGWRIGHT_HTTP_PORT": Setting(
        usual="80",
        least=None,
        meaning="proxy: port for plain http",
    ),
    "RINGWRIGHT_HTTPS_PORT": Setting(
        usual="443",
        least=None,
        meaning="proxy: port for https",
    ),
    "RINGWRIGHT_METRICS_OUTSIDE": Setting(
        usual="off",
        least=None,
        meaning="proxy: on lets everybody read /metrics",
    ),
    "RINGWRIGHT_SERVICES": Setting(
        usual="service:8000",
        least=None,
        meaning="proxy: where the services are, parted by spaces",
    ),
}
_LARGEST = 10**6
_SWITCH = {"on": True, "off": False}


class BadSetting(Exception):
    """An environment variable that is none of its kind."""


def value_of(name: str, environ: Environment | None = None) -> Any:
    """What the environment says of a setting: an int, a bool, or text. Raises BadSetting."""
    setting = SETTINGS[name]
    text = (os.environ if environ is None else environ).get(name) or setting.usual
    if setting.least is not None:
        if not text.isascii() or not text.isdigit() or not setting.least <= int(text) <= _LARGEST:
            raise BadSetting(
                "%s: %r is not a whole number from %d on" % (name, text, setting.least)
            )
        return int(text)
    if setting.usual in _SWITCH:
        if text not in _SWITCH:
            raise BadSetting("%s: %r is neither on nor off" % (name, text))
        return _SWITCH[text]
    return text
