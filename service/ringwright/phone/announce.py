"""The name and the service on the local network, by multicast DNS (RFC 6762, RFC 6763)."""

import socket

from zeroconf import NonUniqueNameException, ServiceInfo, Zeroconf

from .addresses import OWN_NAME

_KIND = "_https._tcp.local."


class Announcement:
    """Answers for ringwright.local until it is closed."""

    def __init__(self, reached: list[str], port: int) -> None:
        """reached: IPv4 addresses as texts. port: of the https service. Raises OSError where the
        network takes no multicast."""
        self._answering = Zeroconf(interfaces=reached)
        self._service = ServiceInfo(
            _KIND,
            "Ringwright." + _KIND,
            port=port,
            server=OWN_NAME + ".",
            addresses=[socket.inet_aton(address) for address in reached],
            properties={"path": "/"},
        )
        try:
            self._answering.register_service(self._service)
        except NonUniqueNameException as error:
            self._answering.close()
            raise OSError("another machine here is already called " + OWN_NAME) from error

    def close(self) -> None:
        """Says good-bye to the network and stops."""
        self._answering.unregister_service(self._service)
        self._answering.close()
