"""Which code gives the answers: a fingerprint of the package, so that a cache is never stale.

The same request gives the same answer until the code changes, so an entity tag is made from this
fingerprint and the address, before anything is worked out.
"""

import hashlib
from pathlib import Path

from flask import Request

import ringwright


def _fingerprint() -> str:
    digest = hashlib.sha256()
    root = Path(ringwright.__file__).parent
    for path in sorted(root.rglob("*.py")):
        digest.update(path.relative_to(root).as_posix().encode())
        digest.update(path.read_bytes())
    return digest.hexdigest()


# Read once, when the service starts: no request reads a file.
FINGERPRINT = _fingerprint()
_BASE = hashlib.sha256(FINGERPRINT.encode())


def tag_of(request: Request) -> str:
    """The entity tag of what this address answers."""
    digest = _BASE.copy()
    digest.update(request.path.encode())
    digest.update(b"?")
    digest.update(request.query_string)
    return digest.hexdigest()[:32]
