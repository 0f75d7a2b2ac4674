"""By which addresses and names a phone on the same network finds this machine."""

import ipaddress
import re
import socket
from collections.abc import Iterable

import ifaddr

from .authority import is_private

# The name that is announced on the local network (RFC 6762), and what else the certificate is for.
OWN_NAME = "ringwright.local"
_HERE = ("127.0.0.1", "::1")
_NOT_IN_A_NAME = re.compile("[^a-z0-9-]+")


def found() -> list[str]:
    """Private addresses of this machine that others can reach, the likeliest first, as texts."""
    reached: list[str] = []
    for adapter in ifaddr.get_adapters():
        for ip in adapter.ips:
            # IPv6 comes with scope and flow; a link-local one needs its scope typed, so no phone
            # is sent there.
            if not isinstance(ip.ip, str):
                continue
            address = ipaddress.ip_address(ip.ip)
            if is_private(ip.ip) and not address.is_loopback and ip.ip not in reached:
                reached.append(ip.ip)
    return sorted(reached, key=_likeliest)


def _likeliest(address: str) -> tuple[int, str]:
    # Home and workshop routers hand out 192.168 and 10; 172.16 is often a container's inside,
    # 169.254 what a machine takes when nobody hands out any.
    order = ("192.168.", "10.", "172.", "169.254.")
    return [address.startswith(start) for start in order].index(True), address


def names() -> list[str]:
    """Local names of this machine: the announced one, its own below .local, and localhost."""
    host = _NOT_IN_A_NAME.sub("-", socket.gethostname().split(".")[0].lower()).strip("-")
    own = ["%s.local" % host] if host and host != "localhost" else []
    return [OWN_NAME, *own, "localhost"]


def in_certificate(reached: Iterable[str]) -> list[str]:
    """Every address that the certificate is for. reached: those of `found`."""
    return [*reached, *_HERE]
