"""The profile of a club's workshop that this service offers to phones: one file, read at start.

What lathes, saws and bars the members share is written once and taken over by a phone when asked.
"""

import orjson
from flask import Response, current_app
from flask_smorest import Blueprint

from ..named_types import Environment
from .answer_schemas import described, ref
from .problems import problem
from .settings import value_of

# The environment variable that names the file.
SETTING = "RINGWRIGHT_SHOP_PROFILE"
FORMAT = "ringwright-shop"
# Versions that phones of this release read.
VERSIONS = (1,)
# More than any workshop has to say of itself.
LARGEST = 300_000

blueprint = Blueprint("shop", __name__, description="The club's workshop.")


class BadProfile(Exception):
    """The file that the setting names cannot be offered."""


def read_profile(environ: Environment | None = None) -> bytes | None:
    """The profile as bytes, None where none is named. Raises BadProfile: better no start than a
    phone that takes over half a shop."""
    name: str = value_of(SETTING, environ)
    if not name:
        return None
    try:
        with open(name, "rb") as file:
            content = file.read(LARGEST + 1)
    except OSError as error:
        raise BadProfile("%s: %s cannot be read: %s" % (SETTING, name, error.strerror)) from None
    if len(content) > LARGEST:
        raise BadProfile("%s: %s is larger than %d bytes" % (SETTING, name, LARGEST))
    try:
        profile = orjson.loads(content)
    except ValueError as error:
        raise BadProfile("%s: %s is not JSON: %s" % (SETTING, name, error)) from None
    if not isinstance(profile, dict) or profile.get("format") != FORMAT:
        raise BadProfile(
            '%s: %s does not say "format": "%s". Save it from My shop in the app.'
            % (SETTING, name, FORMAT)
        )
    if profile.get("version") not in VERSIONS:
        raise BadProfile(
            "%s: %s is of version %r; this service offers version %d"
            % (SETTING, name, profile.get("version"), VERSIONS[-1])
        )
    return orjson.dumps(profile)


_PROFILE = {
    "type": "object",
    "description": "As My shop in the app saves it.",
    "properties": {
        "format": {"const": FORMAT},
        "version": {"type": "integer"},
        "name": {"type": "string", "description": "Workshop or club."},
        "lathes": {"type": "array", "items": ref("Anything")},
        "lathe": {"type": "integer", "description": "Which lathe is used, from 0."},
        "shelf": described("Anything", "Diameters on the shelf, by input."),
        "inputs": described("Anything", "Inputs that jobs take from the shop."),
    },
    "required": ["format", "version"],
}


@blueprint.route("/v1/shop")
@blueprint.doc(
    summary="The club's workshop, where this service offers one",
    operationId="shop_profile",
    responses={
        "200": {
            "description": "Lathes, saws, shelf, bars and prices.",
            "content": {"application/json": {"schema": _PROFILE}},
        },
        "404": {"$ref": "#/components/responses/Refused"},
    },
)
def shop_profile() -> Response:
    content = current_app.extensions["ringwright"]["shop"]
    if content is None:
        return problem("not-found", "this service offers no workshop of a club")
    response = Response(content, mimetype="application/json")
    response.headers["Cache-Control"] = "no-cache"
    return response
