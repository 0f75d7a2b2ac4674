"""A certificate authority of this machine's own, for private addresses and local names only.

X.509 name constraints (RFC 5280, 4.2.1.10), marked critical, limit it: a certificate it signed for
any outside name or address is refused by whoever checks. So a phone that trusts it trusts it for
the workshop's network alone, whatever becomes of the key. Keys stay on this machine, readable by
their owner only. The certificate that the server shows is renewed long before it ends, and whenever
the machine's addresses change; the authority stays the same, so a phone is asked once.
"""

import datetime
import hashlib
import ipaddress
import os
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

# RFC 1918, RFC 3927, RFC 1122 for IPv4; RFC 4193, RFC 4291 for IPv6.
PRIVATE_NETWORKS = (
    "10.0.0.0/8",
    "172.16.0.0/12",
    "192.168.0.0/16",
    "169.254.0.0/16",
    "127.0.0.0/8",
    "fc00::/7",
    "fe80::/10",
    "::1/128",
)
# RFC 6762 (local), RFC 8375 (home.arpa), RFC 6761 (localhost), and "internal", which ICANN keeps
# free for private use. A constraint on a name holds for all names below it.
LOCAL_NAMES = ("local", "home.arpa", "internal", "localhost")

AUTHORITY_YEARS = 10
# Phones refuse a server's certificate that holds for more than 825 days; a month is plenty for one
# that renews itself.
SERVER_DAYS = 30
RENEW_BEFORE_DAYS = 10
# Clocks in a shed are seldom right.
BACKDATED = datetime.timedelta(days=2)
_DAYS_A_YEAR = 365.25
_OWNER_ONLY = 0o600
_FOLDER_OWNER_ONLY = 0o700

# The authority's private key: the library reads a file into one of many kinds of key, of which its
# signing takes some.
AuthorityKey = Any


# authority, certificate, key: PEM files; certificate: the server's, the authority's after it.
# fingerprint: SHA-256 of the authority, as a person compares it.
class Identity(NamedTuple):
    authority: Path
    certificate: Path
    key: Path
    fingerprint: str


class KeysOpenToOthers(Exception):
    """The folder of the keys can be read by somebody else, and cannot be closed."""


def folder() -> Path:
    """Where this machine's authority lives: RINGWRIGHT_KEYS, or the user's data folder."""
    named = os.environ.get("RINGWRIGHT_KEYS")
    if named:
        return Path(named)
    data = os.environ.get("XDG_DATA_HOME")
    return (Path(data) if data else Path.home() / ".local" / "share") / "ringwright" / "keys"


def identity(
    where: str | Path,
    names: Sequence[str],
    addresses: Sequence[str],
    now: datetime.datetime | None = None,
) -> Identity:
    """The Identity of this machine, made or renewed as needed.

    where: folder of the keys. names: local names, such as "workshop.local". addresses: texts of
    private IP addresses. now: aware datetime, for tests. Raises ValueError for a name or address
    that is not local, KeysOpenToOthers where the folder cannot be closed to others.
    """
    now = now or datetime.datetime.now(datetime.UTC)
    outside = [name for name in names if not is_local_name(name)]
    outside += [address for address in addresses if not is_private(address)]
    if outside:
        raise ValueError("not of a local network: " + ", ".join(outside))
    where = Path(where)
    where.mkdir(parents=True, exist_ok=True, mode=_FOLDER_OWNER_ONLY)
    _close(where)
    authority, authority_key = _authority(where, now)
    certificate, key = where / "server.pem", where / "server.key"
    if not _serves(certificate, key, authority, names, addresses, now):
        _make_server(certificate, key, authority, authority_key, names, addresses, now)
    return Identity(
        authority=where / "authority.pem",
        certificate=certificate,
        key=key,
        fingerprint=fingerprint(authority),
    )


def fingerprint(certificate: x509.Certificate) -> str:
    """SHA-256 of a certificate in groups of four letters, as phones show it."""
    digest = hashlib.sha256(certificate.public_bytes(serialization.Encoding.DER)).hexdigest()
    return " ".join(digest[i : i + 4].upper() for i in range(0, len(digest), 4))


def is_private(address: str) -> bool:
    """True for an IP address of a network that the authority may vouch for."""
    found = ipaddress.ip_address(address)
    return any(
        found.version == network.version and found in network
        for network in map(ipaddress.ip_network, PRIVATE_NETWORKS)
    )


def is_local_name(name: str) -> bool:
    """True for a name that the authority may vouch for."""
    return any(name == local or name.endswith("." + local) for local in LOCAL_NAMES)


def sign(
    authority: x509.Certificate,
    authority_key: AuthorityKey,
    key: ec.EllipticCurvePrivateKey,
    names: Iterable[str],
    addresses: Iterable[str],
    now: datetime.datetime,
) -> x509.Certificate:
    """A server's certificate, whatever it is for: whether it is believed is for the checker.

    authority: certificate. authority_key, key: private keys. names, addresses: texts.
    """
    alternatives: list[x509.GeneralName] = [x509.DNSName(name) for name in names]
    alternatives += [x509.IPAddress(ipaddress.ip_address(address)) for address in addresses]
    return (
        x509.CertificateBuilder()
        .subject_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Ringwright")]))
        .issuer_name(authority.subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - BACKDATED)
        .not_valid_after(now + datetime.timedelta(days=SERVER_DAYS))
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(x509.SubjectAlternativeName(alternatives), critical=False)
        .add_extension(_usage(digital_signature=True), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_public_key(authority_key.public_key()),
            critical=False,
        )
        .sign(authority_key, hashes.SHA256())
    )


def _authority(where: Path, now: datetime.datetime) -> tuple[x509.Certificate, AuthorityKey]:
    path, key_path = where / "authority.pem", where / "authority.key"
    if path.is_file() and key_path.is_file():
        certificate = x509.load_pem_x509_certificate(path.read_bytes())
        if certificate.not_valid_after_utc > now + datetime.timedelta(days=SERVER_DAYS):
            _close(key_path)
            return certificate, serialization.load_pem_private_key(key_path.read_bytes(), None)
    key = ec.generate_private_key(ec.SECP256R1())
    certificate = _make_authority(key, now)
    _write(key_path, _private(key))
    _write(path, certificate.public_bytes(serialization.Encoding.PEM))
    return certificate, key


def _make_authority(key: ec.EllipticCurvePrivateKey, now: datetime.datetime) -> x509.Certificate:
    name = "Ringwright on this local network, %s" % now.date().isoformat()
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])
    permitted: list[x509.GeneralName] = [x509.DNSName(local) for local in LOCAL_NAMES]
    permitted += [x509.IPAddress(ipaddress.ip_network(one)) for one in PRIVATE_NETWORKS]
    return (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - BACKDATED)
        .not_valid_after(now + datetime.timedelta(days=round(AUTHORITY_YEARS * _DAYS_A_YEAR)))
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(_usage(key_cert_sign=True, crl_sign=True), critical=True)
        .add_extension(x509.NameConstraints(permitted, None), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
        .sign(key, hashes.SHA256())
    )


def _usage(**allowed: bool) -> x509.KeyUsage:
    every = (
        "digital_signature",
        "content_commitment",
        "key_encipherment",
        "data_encipherment",
        "key_agreement",
        "key_cert_sign",
        "crl_sign",
        "encipher_only",
        "decipher_only",
    )
    return x509.KeyUsage(**{name: allowed.get(name, False) for name in every})


def _serves(
    path: Path,
    key_path: Path,
    authority: x509.Certificate,
    names: Iterable[str],
    addresses: Iterable[str],
    now: datetime.datetime,
) -> bool:
    """True when the certificate that is there will do: ours, in date, for all that is asked."""
    if not (path.is_file() and key_path.is_file()):
        return False
    try:
        found = x509.load_pem_x509_certificates(path.read_bytes())[0]
        found.verify_directly_issued_by(authority)
    except (ValueError, TypeError, InvalidSignature):
        # Damaged, or of an authority before this one: a new one is made.
        return False
    left = found.not_valid_after_utc - now
    if left < datetime.timedelta(days=RENEW_BEFORE_DAYS) or found.not_valid_before_utc > now:
        return False
    held = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    has = set(held.get_values_for_type(x509.DNSName))
    has |= {str(one) for one in held.get_values_for_type(x509.IPAddress)}
    return set(names) | set(addresses) <= has


def _make_server(
    path: Path,
    key_path: Path,
    authority: x509.Certificate,
    authority_key: AuthorityKey,
    names: Iterable[str],
    addresses: Iterable[str],
    now: datetime.datetime,
) -> None:
    key = ec.generate_private_key(ec.SECP256R1())
    certificate = sign(authority, authority_key, key, names, addresses, now)
    chain = certificate.public_bytes(serialization.Encoding.PEM)
    chain += authority.public_bytes(serialization.Encoding.PEM)
    # The server opens both afresh for each caller: the key first, so that the pair is never older
    # than a moment in which a caller has to try again.
    _write(key_path, _private(key))
    _write(path, chain)


def _private(key: ec.EllipticCurvePrivateKey) -> bytes:
    return key.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )


def _write(path: Path, content: bytes) -> None:
    """Puts a file in place at once, readable by its owner only from its first byte."""
    beside = path.with_suffix(path.suffix + ".new")
    beside.unlink(missing_ok=True)
    handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _OWNER_ONLY)
    with os.fdopen(handle, "wb") as out:
        out.write(content)
    os.replace(beside, path)


def _close(path: Path) -> None:
    """Takes everybody else's rights to a file or folder away."""
    if path.stat().st_mode & 0o077:
        try:
            path.chmod(_FOLDER_OWNER_ONLY if path.is_dir() else _OWNER_ONLY)
        except OSError as error:
            raise KeysOpenToOthers("others can read %s: close it to them" % path) from error
