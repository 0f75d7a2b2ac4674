"""The authority can vouch for nothing outside: checked by OpenSSL, by Python's ssl over a real
connection, and (tests/client/test_phone.py) by two browsers. RFC 5280, 4.2.1.10."""

import datetime
import os
import shutil
import socket
import ssl
import stat
import subprocess
import threading
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest
import requests
from cryptography import x509
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtensionOID

from ringwright.phone import addresses, authority

INSIDE = (
    (["ringwright.local"], []),
    (["shed.home.arpa", "a.b.internal"], []),
    (["localhost"], ["127.0.0.1", "::1"]),
    ([], ["192.168.1.20"]),
    ([], ["10.0.0.7", "172.16.0.1", "172.31.255.254", "169.254.9.9"]),
    ([], ["fd00::2", "fe80::1"]),
)
OUTSIDE = (
    (["example.org"], []),
    (["ringwright.local.example.org"], []),
    (["notlocal"], []),
    (["xlocal"], []),
    (["ringwright.local", "example.org"], []),
    ([], ["192.0.2.1"]),
    ([], ["172.15.255.255"]),
    ([], ["172.32.0.0"]),
    ([], ["2001:db8::1"]),
    (["ringwright.local"], ["192.0.2.1"]),
)


@pytest.fixture(scope="module")
def keys(tmp_path_factory):
    where = tmp_path_factory.mktemp("keys")
    authority.identity(where, ["ringwright.local", "localhost"], ["127.0.0.1", "192.168.1.20"])
    return where


def signed(keys, folder, names, reached):
    """Files of a certificate that this authority's key signs for anything: its thief's."""
    ours = x509.load_pem_x509_certificate((keys / "authority.pem").read_bytes())
    key = serialization.load_pem_private_key((keys / "authority.key").read_bytes(), None)
    own = ec.generate_private_key(ec.SECP256R1())
    now = datetime.datetime.now(datetime.UTC)
    made = authority.sign(ours, key, own, names, reached, now)
    (folder / "leaf.pem").write_bytes(made.public_bytes(serialization.Encoding.PEM))
    (folder / "leaf.key").write_bytes(
        own.private_bytes(
            serialization.Encoding.PEM,
            serialization.PrivateFormat.PKCS8,
            serialization.NoEncryption(),
        )
    )
    return folder / "leaf.pem", folder / "leaf.key"


def by_openssl(keys, leaf):
    done = subprocess.run(
        ["openssl", "verify", "-x509_strict", "-CAfile", str(keys / "authority.pem"), str(leaf)],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    return done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(("names", "reached"), INSIDE)
def test_openssl_believes_it_inside(keys, tmp_path, names, reached):
    believed, said = by_openssl(keys, signed(keys, tmp_path, names, reached)[0])
    assert believed, said


@pytest.mark.parametrize(("names", "reached"), OUTSIDE)
def test_openssl_refuses_it_outside(keys, tmp_path, names, reached):
    believed, said = by_openssl(keys, signed(keys, tmp_path, names, reached)[0])
    assert not believed
    assert "permitted subtree violation" in said


@contextmanager
def served(leaf, key):
    """The port of a server with that certificate."""

    class Answer(BaseHTTPRequestHandler):
        def do_GET(self):  # noqa: N802 - the name that the library calls
            self.send_response(200)
            self.end_headers()
            self.wfile.write(b"ok")

        def log_message(self, *_):
            pass

    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(leaf, key)
    server = ThreadingHTTPServer(("127.0.0.1", 0), Answer)
    server.socket = context.wrap_socket(server.socket, server_side=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield server.server_address[1]
    server.shutdown()
    thread.join()
    server.server_close()


def reach(port, name, trusted):
    """Connects to the port as to `name`. Raises ssl.SSLError where it is not believed."""
    context = ssl.create_default_context(cafile=str(trusted))
    with (
        socket.create_connection(("127.0.0.1", port), timeout=10) as plain,
        context.wrap_socket(plain, server_hostname=name),
    ):
        return True


def test_python_refuses_an_outside_name_over_a_connection(keys, tmp_path):
    inside, outside = tmp_path / "in", tmp_path / "out"
    inside.mkdir()
    outside.mkdir()
    with served(*signed(keys, inside, ["ringwright.local"], [])) as port:
        assert reach(port, "ringwright.local", keys / "authority.pem")
    with (
        served(*signed(keys, outside, ["bank.example.org"], [])) as port,
        pytest.raises(ssl.SSLCertVerificationError, match="permitted subtree"),
    ):
        reach(port, "bank.example.org", keys / "authority.pem")


def test_the_constraint_is_critical_and_says_every_private_network(keys):
    """A checker that does not know the extension must refuse the authority altogether."""
    ours = x509.load_pem_x509_certificate((keys / "authority.pem").read_bytes())
    found = ours.extensions.get_extension_for_oid(ExtensionOID.NAME_CONSTRAINTS)
    assert found.critical
    assert found.value.excluded_subtrees is None
    kinds = {type(one) for one in found.value.permitted_subtrees}
    assert kinds == {x509.DNSName, x509.IPAddress}
    limits = ours.extensions.get_extension_for_class(x509.BasicConstraints)
    assert limits.critical and limits.value.ca and limits.value.path_length == 0


def test_it_does_not_sign_for_the_outside_itself(tmp_path):
    for names, reached in (["example.org"], []), ([], ["192.0.2.1"]), (["local.example.org"], []):
        with pytest.raises(ValueError, match="not of a local network"):
            authority.identity(tmp_path, names, reached)
    assert not list(tmp_path.iterdir())


def test_keys_are_their_owner_s_alone(tmp_path):
    where = tmp_path / "keys"
    before = os.umask(0)
    try:
        authority.identity(where, ["localhost"], ["127.0.0.1"])
    finally:
        os.umask(before)
    assert stat.S_IMODE(where.stat().st_mode) == 0o700
    for path in where.iterdir():
        assert stat.S_IMODE(path.stat().st_mode) == 0o600, path
    # Opened by a careless copy, it is closed again.
    where.chmod(0o755)
    (where / "authority.key").chmod(0o644)
    authority.identity(where, ["localhost"], ["127.0.0.1"])
    assert stat.S_IMODE(where.stat().st_mode) == 0o700
    assert stat.S_IMODE((where / "authority.key").stat().st_mode) == 0o600


def test_the_keys_are_never_in_the_project(root, monkeypatch):
    monkeypatch.delenv("RINGWRIGHT_KEYS", raising=False)
    assert root not in authority.folder().parents
    assert not list(root.glob("**/authority.key"))


def test_it_renews_the_certificate_and_keeps_the_authority(tmp_path):
    asked = (tmp_path, ["ringwright.local", "localhost"], ["192.168.1.20", "127.0.0.1"])
    start = datetime.datetime.now(datetime.UTC)

    def now(days):
        own = authority.identity(*asked, now=start + datetime.timedelta(days=days))
        chain = x509.load_pem_x509_certificates(own.certificate.read_bytes())
        assert len(chain) == 2
        return own.fingerprint, chain[0]

    first = now(0)
    assert now(5) == first
    assert now(19) == first
    mark, later = now(21)
    assert mark == first[0]
    assert later.serial_number != first[1].serial_number
    assert later.not_valid_after_utc > first[1].not_valid_after_utc
    # Ten years on a new authority is made, in time for the last certificate of the old one.
    assert now(3640)[0] != mark


def test_a_new_address_is_in_the_next_certificate(tmp_path):
    names = ["ringwright.local", "localhost"]
    first = authority.identity(tmp_path, names, ["192.168.1.20"])
    authority.identity(tmp_path, names, ["10.11.12.13"])
    leaf = x509.load_pem_x509_certificates(first.certificate.read_bytes())[0]
    held = leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    assert "10.11.12.13" in map(str, held.get_values_for_type(x509.IPAddress))


@pytest.mark.parametrize("damage", ["", "not a certificate", None])
def test_a_damaged_certificate_is_replaced(tmp_path, damage):
    own = authority.identity(tmp_path, ["localhost"], ["127.0.0.1"])
    if damage is None:
        own.key.unlink()
    else:
        own.certificate.write_text(damage)
    again = authority.identity(tmp_path, ["localhost"], ["127.0.0.1"])
    assert by_openssl(tmp_path, again.certificate)[0]
    assert again.fingerprint == own.fingerprint


def test_the_fingerprint_is_openssl_s(keys):
    path = keys / "authority.pem"
    said = subprocess.run(
        ["openssl", "x509", "-in", str(path), "-noout", "-fingerprint", "-sha256"],
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    ).stdout
    mark = authority.fingerprint(x509.load_pem_x509_certificate(path.read_bytes()))
    assert said.strip().split("=")[1].replace(":", "") == mark.replace(" ", "")


def test_phones_take_the_certificate(keys):
    """Apple, "Requirements for trusted certificates" (support page 103769, from memory): at most
    825 days, the name in SAN, serverAuth among the extended usages, SHA-2, 256 bits or more."""
    leaf = x509.load_pem_x509_certificates((keys / "server.pem").read_bytes())[0]
    assert (leaf.not_valid_after_utc - leaf.not_valid_before_utc).days <= 825
    usage = leaf.extensions.get_extension_for_class(x509.ExtendedKeyUsage).value
    assert x509.oid.ExtendedKeyUsageOID.SERVER_AUTH in usage
    assert leaf.signature_hash_algorithm.name == "sha256"
    assert leaf.public_key().key_size == 256


@pytest.mark.parametrize("address", ["10.1.2.3", "192.168.0.1", "fd12::1", "127.0.0.1"])
def test_private_addresses(address):
    assert authority.is_private(address)


@pytest.mark.parametrize("address", ["8.8.8.8", "192.0.2.2", "172.32.0.1", "2001:db8::1"])
def test_other_addresses_are_not_private(address):
    assert not authority.is_private(address)


def test_every_own_address_and_name_may_be_vouched_for():
    assert all(map(authority.is_private, addresses.found()))
    assert all(map(authority.is_local_name, addresses.names()))
    assert "ringwright.local" in addresses.names()


def test_openssl_is_there():
    assert shutil.which("openssl"), "tests/run installs it"


def test_the_service_answers_over_https(tmp_path):
    from phone.secure import Workshop

    running = Workshop(tmp_path / "keys")
    try:
        answer = requests.get(
            "https://localhost:%d/v1/sizing?bore=80" % running.port,
            verify=str(running.authority),
            timeout=20,
        )
        assert answer.json()["figures"]["free_gap"]["value"] > 0
        with pytest.raises(requests.exceptions.SSLError):
            requests.get("https://localhost:%d/healthz" % running.port, timeout=20)
    finally:
        said = running.stop()
    assert "\u2580" in said or "\u2584" in said, "no code for phones"
    mark = authority.fingerprint(x509.load_pem_x509_certificate(running.authority.read_bytes()))
    assert mark in said
