"""The plain-http page that leads a phone to the secure address, and the two files it needs.

It holds nothing of the service: whoever is on the network may read it, and all it hands out is the
authority's certificate, which is public. That certificate comes over plain http, so the page asks
for its fingerprint to be compared with the one in the terminal.
"""

import json
import os
import plistlib
import uuid
from collections.abc import Sequence
from pathlib import Path

import segno
from cryptography import x509
from cryptography.hazmat.primitives import serialization
from flask import Flask, Response, render_template, request

from . import addresses, authority

SETTING = "RINGWRIGHT_WELCOME"
_HERE = Path(__file__).parent
_POLICY = (
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; "
    "connect-src https:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
# A profile that comes again under the same name replaces the one that is there.
_NAMESPACE = uuid.UUID("1d8bd9a6-6d3f-4a55-8c4f-0d8f0d2c9a51")


def app_from_environment() -> Flask:
    """The welcome page of the settings that `python -m ringwright.phone` hands its server."""
    settings = json.loads(os.environ[SETTING])
    return make_app(
        Path(settings["authority"]),
        settings["port"],
        settings["welcome_port"],
        settings.get("addresses"),
    )


def make_app(
    authority_path: Path, port: int, welcome_port: int, reached: Sequence[str] | None = None
) -> Flask:
    """The application.

    authority_path: PEM file. port, welcome_port: of https and of this page. reached: the addresses
    of this machine, None to look each time.
    """
    certificate = x509.load_pem_x509_certificate(authority_path.read_bytes())
    mark = authority.fingerprint(certificate)
    app = Flask(__name__, template_folder=str(_HERE), static_folder=None)

    @app.after_request
    def closed(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = _POLICY
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["Cache-Control"] = "no-store"
        return response

    @app.get("/")
    def page() -> str:
        host = host_of(request.host, reached or addresses.found())
        here = "http://%s:%d/" % (host, welcome_port)
        return render_template(
            "welcome.html",
            secure="https://%s:%d/" % (host, port),
            named="https://%s:%d/" % (addresses.OWN_NAME, port),
            here=here,
            code=segno.make(here, error="m").svg_data_uri(scale=5, dark="#000", light="#fff"),
            fingerprint=mark,
            until=certificate.not_valid_after_utc.date().isoformat(),
            system=system_of(request.headers.get("User-Agent", "")),
        )

    @app.get("/welcome.css")
    def sheet() -> Response:
        return Response((_HERE / "welcome.css").read_bytes(), mimetype="text/css")

    @app.get("/welcome.js")
    def script() -> Response:
        return Response((_HERE / "welcome.js").read_bytes(), mimetype="text/javascript")

    @app.get("/ringwright.crt")
    def for_android() -> Response:
        content = certificate.public_bytes(serialization.Encoding.DER)
        return _download(content, "application/x-x509-ca-cert", "ringwright.crt")

    @app.get("/ringwright.mobileconfig")
    def for_iphone() -> Response:
        content = profile(certificate)
        return _download(content, "application/x-apple-aspen-config", "ringwright.mobileconfig")

    return app


def host_of(asked: str, reached: Sequence[str]) -> str:
    """By which host the phone goes on: the one it came by if the certificate is for it."""
    host = asked.rsplit(":", 1)[0].strip("[]").lower()
    if host in reached or host in addresses.names():
        return host
    return reached[0] if reached else "localhost"


def system_of(agent: str) -> str:
    """ "iphone", "android" or "other", by what a browser says of itself."""
    if "iPhone" in agent or "iPad" in agent:
        return "iphone"
    return "android" if "Android" in agent else "other"


def profile(certificate: x509.Certificate) -> bytes:
    """The certificate as a configuration profile, which is how an iPhone takes one."""
    mark = authority.fingerprint(certificate)
    content = {
        "PayloadType": "com.apple.security.root",
        "PayloadIdentifier": "ringwright.authority.certificate",
        "PayloadUUID": str(uuid.uuid5(_NAMESPACE, "certificate " + mark)).upper(),
        "PayloadVersion": 1,
        "PayloadDisplayName": "Ringwright on the local network",
        "PayloadCertificateFileName": "ringwright.cer",
        "PayloadContent": certificate.public_bytes(serialization.Encoding.DER),
    }
    return plistlib.dumps(
        {
            "PayloadType": "Configuration",
            "PayloadIdentifier": "ringwright.authority",
            "PayloadUUID": str(uuid.uuid5(_NAMESPACE, "profile " + mark)).upper(),
            "PayloadVersion": 1,
            "PayloadDisplayName": "Ringwright on the local network",
            "PayloadDescription": "Lets this phone trust the Ringwright of the workshop. It can "
            "vouch for private addresses and local names only.",
            "PayloadContent": [content],
        }
    )


def _download(content: bytes, media_type: str, name: str) -> Response:
    response = Response(content, content_type=media_type)
    response.headers["Content-Disposition"] = 'attachment; filename="%s"' % name
    return response
