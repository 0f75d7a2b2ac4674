"""Requests that must be refused: (name, request, status, code, path of the field at fault).

A request is a dict: path, and body (bytes as they are, anything else as JSON), query, content_type,
accept, method, encoding. The path expected is that of one of the `errors` entries; an empty one
means the request as a whole.
"""

SIZING = "/v1/sizing"


def _post(body, **more):
    return {"method": "POST", "path": SIZING, "body": body, **more}


def _get(query, **more):
    return {"method": "GET", "path": SIZING, "query": query, **more}


# Text that is no length, or not one of ours.
LENGTHS = [
    ("3 1/8", "unit-missing"),
    ("", "measure"),
    (" ", "measure"),
    ("mm", "measure"),
    ("eighty mm", "measure"),
    ("abc", "measure"),
    ("80 mmm", "unit-unknown"),
    ("80 Mm", "unit-capitals"),
    ("80 IN", "range"),
    ("80 furlong", "unit-unknown"),
    ("80 psi", "unit-unknown"),
    ("80 kg", "unit-unknown"),
    ("80 degC", "unit-unknown"),
    ("80\tmm", "unit-unknown"),
    ("80 mm\n", "unit-unknown"),
    ("80 mm;", "unit-unknown"),
    ("80 mm 3", "unit-unknown"),
    ("80 mm + 3 mm", "unit-unknown"),
    ("80 000 mm", "measure-two"),
    ("8 0 mm", "measure-two"),
    ("--80 mm", "measure"),
    ("80-- mm", "unit-unknown"),
    ("3 1/0 in", "measure-two"),
    ("1/0 in", "unit-unknown"),
    ("3 1/8/2 in", "unit-unknown"),
    ("3.5 1/8 in", "measure-two"),
    ("3 1 / 8 in", "measure-two"),
    ("1,000 mm", "decimal-comma"),
    ("0,5", "range"),
    ("80.5.5 mm", "decimal-marks"),
    ("80e mm", "unit-unknown"),
    ("1e400 mm", "number-range"),
    ("1e1e1 mm", "unit-unknown"),
    ("0x50 mm", "unit-unknown"),
    ("1_000 mm", "unit-unknown"),
    ("NaN mm", "measure"),
    ("inf mm", "measure"),
    ("Infinity", "measure"),
    ("mm^9^9^9", "measure"),
    ("80 mm^9^9^9", "unit-unknown"),
    ("80 mm**99999999", "unit-unknown"),
    ("80 mm*mm/mm", "unit-unknown"),
    ("80 (mm)", "unit-unknown"),
    ("80 __import__('os')", "unit-unknown"),
    ("${80} mm", "measure"),
    ("'; DROP TABLE rings; --", "measure"),
    ("<script>80 mm</script>", "measure"),
    ("../../etc/passwd", "measure"),
    ("%s%n mm", "measure"),
    ("\u0668\u0660 mm", "measure"),
    ("8\u0660 mm", "unit-unknown"),
    ("\uff18\uff10 mm", "measure"),
    ("80\u200b mm", "unit-unknown"),
    ("\u202e80 mm", "measure"),
    ("80 \U0001f600", "unit-unknown"),
    ("80 mm\u0000", "unit-unknown"),
    ("9" * 47 + "mm", "measure-long"),
    ("1" * 5000 + " mm", "measure-long"),
    ("8" + " " * 5000 + "mm", "measure-long"),
    ("-" * 5000, "measure-long"),
]

# JSON values that are no length.
NOT_LENGTHS = [
    ("true", True, "number"),
    ("false", False, "number"),
    ("list", [80], "number"),
    ("empty list", [], "number"),
    ("object", {"value": 80, "unit": "mm"}, "number"),
    ("empty object", {}, "number"),
    ("null", None, "null"),
    ("huge whole number", 10**400, "number"),
    ("large whole number", 2**60, "number"),
    ("huge negative number", -(10**400), "number"),
    ("zero", 0, "range"),
    ("minus zero", -0.0, "range"),
    ("negative", -80, "range"),
    ("tiny", 1e-20, "range"),
    ("denormal", 5e-324, "number"),
    ("below the range", 9.999, "range"),
    ("above the range", 900.001, "range"),
    ("far above", 1e300, "range"),
    ("text below the range", "1/8 in", "range"),
    ("text above the range", "40 in", "range"),
    ("negative text", "-80 mm", "range"),
    ("deep list", [[[[[[[[80]]]]]]]], "number"),
]

# Bodies that are not strict JSON, byte for byte.
BODIES = [
    ("empty", b""),
    ("blank", b"   "),
    ("open brace", b"{"),
    ("trailing comma", b'{"bore": 80,}'),
    ("single quotes", b"{'bore': 80}"),
    ("no quotes", b"{bore: 80}"),
    ("comment", b'{"bore": 80} // mm'),
    ("two values", b'{"bore": 80}{"bore": 90}'),
    ("form", b"bore=80"),
    ("xml", b"<bore>80</bore>"),
    ("NaN", b'{"bore": NaN}'),
    ("Infinity", b'{"bore": Infinity}'),
    ("minus Infinity", b'{"bore": -Infinity}'),
    ("leading zero", b'{"bore": 080}'),
    ("leading plus", b'{"bore": +80}'),
    ("bare point", b'{"bore": .5}'),
    ("hexadecimal", b'{"bore": 0x50}'),
    ("5000 digits", b'{"bore": ' + b"9" * 5000 + b"}"),
    ("not UTF-8", b'{"bore": "\xff\xfe"}'),
    ("Latin-1", '{"bore": "80 \u00b5m"}'.encode("latin-1")),
    ("UTF-16", '{"bore": 80}'.encode("utf-16")),
    ("byte order mark", b"\xef\xbb\xbf" + b'{"bore": 80}'),
    ("control character", b'{"bore": "80\x01mm"}'),
    ("half a surrogate pair", b'{"bore": "\\ud800"}'),
    ("half a surrogate pair as a name", b'{"\\udfff": 80}'),
    ("deep list", b"[" * 100_000),
    ("deep list, closed", b"[" * 50_000 + b"]" * 50_000),
    ("deep object", b'{"a":' * 50_000 + b"1" + b"}" * 50_000),
    ("zip bomb look-alike", b"\x1f\x8b\x08\x00" * 100),
]
# Strict JSON, but not an object.
NOT_OBJECTS = [
    ("null", b"null"),
    ("true", b"true"),
    ("number", b"80"),
    ("text", b'"80 mm"'),
    ("list", b'[{"bore": 80}]'),
    ("empty list", b"[]"),
]

# Other inputs of sizing: field, value, code.
OTHERS = [
    ("rings", 2.5, "whole-number"),
    ("rings", 0, "range"),
    ("rings", -1, "range"),
    ("rings", 10**9, "range"),
    ("rings", True, "number"),
    ("rings", [], "number"),
    ("modulus", "1e-99 kPa", "number"),
    ("rings", None, "null"),
    ("steam_pressure", None, "null"),
    ("ring_type", None, "null"),
    ("ring_type", "triple", "choice"),
    ("ring_type", "Plain", "choice"),
    ("ring_type", "", "choice"),
    ("ring_type", 1, "choice"),
    ("ring_type", [], "choice"),
    ("ring_type", {}, "choice"),
    ("ring_type", True, "choice"),
    ("ring_material", "unobtainium", "choice"),
    ("ring_material", "grey iron", "choice"),
    ("end_cut", "45", "choice"),
    ("end_cut", 45, "choice"),
    ("setting", "Bound", "choice"),
    ("steam_pressure", "120", "range"),
    ("steam_pressure", "120 lbs", "unit-unknown"),
    ("steam_pressure", "8 atm", "unit-unknown"),
    ("steam_pressure", "0 psi abs", "range"),
    ("steam_pressure", 1200, "range"),
    ("steam_pressure", "-20 psi", "range"),
    ("wall_pressure", "20 psi abs", "unit-unknown"),
    ("steam_temperature", "350 \u2103", "unit-unknown"),
    ("steam_temperature", "350 degf", "unit-capitals"),
    ("steam_temperature", "4000 degC", "range"),
    ("steam_temperature", "-500 degC", "range"),
    ("shop_temperature", "0 K", "range"),
    ("relief", 1.5, "range"),
    ("relief", -0.5, "range"),
    ("relief", "200 %", "range"),
    ("relief", "ninety %", "measure"),
    ("relief", "90", "range"),
    ("modulus", "110", "range"),
    ("modulus", 0, "range"),
    ("radial_thickness", "0 mm", "range"),
    ("radial_thickness", "1e9 mm", "range"),
    ("former_ratio", "1.02 mm", "unit-unknown"),
    ("former_ratio", 0.5, "range"),
]

# Names that sizing does not have.
UNKNOWN = [
    "Bore",
    "BORE",
    "bore ",
    "",
    "diameter",
    "__proto__",
    "__class__",
    "units",
    "bore.value",
    "a" * 80,
    "\u0000",
    "\u202e",
    "/~",
]

# Queries: text, status, code, path.
QUERIES = [
    ("", 422, "required", ["bore"]),
    ("bore=", 422, "measure", ["bore"]),
    ("bore", 422, "measure", ["bore"]),
    ("bore=80&bore=90", 422, "given-twice", ["bore"]),
    ("bore=abc", 422, "measure", ["bore"]),
    ("bore=NaN", 422, "measure", ["bore"]),
    ("bore=Infinity", 422, "measure", ["bore"]),
    ("bore=1e999", 422, "number", ["bore"]),
    ("bore=1e9999", 422, "number-range", ["bore"]),
    ("bore=" + "9" * 40, 422, "number-range", ["bore"]),
    ("bore=80%20mm^9^9^9", 422, "unit-unknown", ["bore"]),
    ("bore=%00", 422, "measure", ["bore"]),
    ("bore=%ff%fe", 422, "measure", ["bore"]),
    ("bore=%D9%A8%D9%A0", 422, "measure", ["bore"]),
    ("bore=80&rings=two", 422, "measure", ["rings"]),
    ("bore=80&rings=2.5", 422, "whole-number", ["rings"]),
    ("bore=80&ring_type=", 422, "choice", ["ring_type"]),
    ("bore=80&ring_type=none", 422, "choice", ["ring_type"]),
    ("bore=80&nothing=1", 422, "unknown-field", ["nothing"]),
    ("bore=80&units=cubits", 422, "choice", ["units"]),
    ("bore=80&units=", 422, "choice", ["units"]),
    ("bore=80&working=yes", 422, "flag", ["working"]),
    ("bore=80&working=1", 422, "flag", ["working"]),
    ("bore=80&working=True", 422, "flag", ["working"]),
    ("bore=" + "8" * 7000, 414, "query-too-long", []),
]


def _cases():
    for text, code in LENGTHS:
        yield "bore text %r" % text[:30], _post({"bore": text}), 422, code, ["bore"]
    for name, value, code in NOT_LENGTHS:
        yield "bore %s" % name, _post({"bore": value}), 422, code, ["bore"]
    yield "bore 1e400", _post(b'{"bore": 1e400}'), 422, "number", ["bore"]
    for name, body in BODIES:
        yield "body %s" % name, _post(body), 400, "malformed-json", []
    yield (
        "body with a name twice",
        _post(b'{"bore": 80, "bore": 90}'),
        400,
        "malformed-json",
        ["bore"],
    )
    for name, body in NOT_OBJECTS:
        yield "body is %s" % name, _post(body), 422, "type", []
    for field, value, code in OTHERS:
        name = "%s %r" % (field, value)
        yield name, _post({"bore": 80, field: value}), 422, code, [field]
    for name in UNKNOWN:
        shown = "".join(letter if letter.isprintable() else "?" for letter in name)
        yield (
            "unknown name %r" % name[:20],
            _post({"bore": 80, name: 1}),
            422,
            "unknown-field",
            [shown],
        )
    for query, status, code, path in QUERIES:
        yield "query %r" % query[:40], _get(query), status, code, path
    for content_type in (
        None,
        "text/plain",
        "text/json",
        "application/x-www-form-urlencoded",
        "multipart/form-data",
        "application/xml",
        "application/json; charset=utf-16",
        "application/json; charset=latin-1",
        "application/jsonp",
        "json",
        "*/*",
    ):
        yield (
            "content type %s" % content_type,
            _post({"bore": 80}, content_type=content_type),
            415,
            "unsupported-media-type",
            ["Content-Type"],
        )
    for encoding in ("gzip", "br", "deflate", "x"):
        yield (
            "content encoding %s" % encoding,
            _post({"bore": 80}, encoding=encoding),
            415,
            "unsupported-media-type",
            ["Content-Type"],
        )
    for accept in ("text/html", "text/csv", "application/xml", "image/*", "application/json;q=0"):
        yield "accept %s" % accept, _get("bore=80", accept=accept), 406, "not-acceptable", []
        yield (
            "post accept %s" % accept,
            _post({"bore": 80}, accept=accept),
            406,
            "not-acceptable",
            [],
        )
    for path in (
        "/v1",
        "/v1/",
        "/v1/nothing",
        "/v1/drawings/boiler.svg",
        "/v2/sizing",
        "/v1//sizing",
        "/v1/sizing/x",
        "/v1/Sizing",
        "/v1/../openapi.json",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/index.php",
        "/v1/sizing%00",
    ):
        yield "address %s" % path, {"method": "GET", "path": path}, 404, "not-found", []
    for method in ("PUT", "PATCH", "DELETE", "TRACE", "PROPFIND"):
        yield (
            "method %s" % method,
            {"method": method, "path": SIZING},
            405,
            "method-not-allowed",
            [],
        )
    yield (
        "POST to a list",
        {"method": "POST", "path": "/v1/materials", "body": {}},
        405,
        "method-not-allowed",
        [],
    )
    only_posted = {"method": "GET", "path": "/v1/stock"}
    yield "GET of what is only posted", only_posted, 405, "method-not-allowed", []
    to_nothing = {"method": "POST", "path": "/v1/nothing", "body": {}}
    yield "POST to nothing", to_nothing, 404, "not-found", []
    listed = {"method": "GET", "path": "/v1/route", "query": "bore=80&spindle_speeds=100"}
    yield "a list in an address", listed, 422, "unknown-field", ["spindle_speeds"]
    option = _post({"bore": 80, "units": "inch"})
    yield "an option among the inputs", option, 422, "unknown-field", ["units"]
    long = b'{"bore": "' + b"8" * 10_000_000 + b'"}'
    yield "a body of 10 MB", _post(long), 413, "body-too-large", []
    yield (
        "options of a POST",
        _post({"bore": 80}, query="units=metric&units=inch"),
        422,
        "given-twice",
        ["units"],
    )
    yield (
        "an unknown option of a POST",
        _post({"bore": 80}, query="bore=80"),
        422,
        "unknown-field",
        ["bore"],
    )
    yield (
        "two targets",
        _post({"bore": 80, "wall_pressure": 0.05, "free_gap": 8}),
        422,
        "one-of",
        ["free_gap"],
    )
    yield "no bore", _post({}), 422, "required", ["bore"]


CASES = list(_cases())
