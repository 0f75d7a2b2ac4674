"""Requests made from the specification by a tool that knows nothing else of the service.

Bounded and steady: so many examples for each operation, the same every time. Good and bad ones: no
failure of ours, no answer that the specification does not tell of, nothing bad taken for good.
With `--hypothesis-profile long`, by hand, more than 20 000 requests over every address.
"""

import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, settings
from schemathesis.checks import not_a_server_error
from schemathesis.config import SchemathesisConfig
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    negative_data_rejection,
    response_headers_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from ringwright.api import create_app, pick
from ringwright.core.calculations import CALCULATIONS

CHECKS = (
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
    negative_data_rejection,
)
APP = create_app()
# Left out: the specification's own examples, which are run elsewhere (test_specification.py), and
# its walk along every limit of every input, which tests/fuzz takes at every address. Both are made
# while pytest reads the file, for minutes, and by every worker that runs tests.
CONFIG = SchemathesisConfig.from_dict(
    {
        "phases": {"examples": {"enabled": False}, "coverage": {"enabled": False}},
        # Something bad may be refused for its length as well, but never by failing.
        "checks": {
            "negative_data_rejection": {
                "expected-statuses": [400, 404, 405, 406, 413, 414, 415, 422]
            }
        },
    }
)
LONG = settings.get_current_profile_name() == "long"
EXAMPLES = 250 if LONG else 20
# Every POST, and of the GET addresses and the files, which read the same inputs by the same code,
# some of each kind: all of them would take a quarter of an hour.
WHOLE = schemathesis.openapi.from_wsgi("/openapi.json", APP, config=CONFIG)
SCHEMA = (
    WHOLE
    if LONG
    else WHOLE.exclude(
        method="GET", path_regex="^/v1/(?!sizing$|stock|bars|materials|methods|problems|drawings/)"
    ).exclude(path_regex="(?<!/sizing)\\.csv$|drawings.*pdf$")
)


@SCHEMA.hook("map_query")
def _figures_that_there_are(context, query):
    # A name made up is refused: tests/contract/test_pick.py has those.
    if not query or "figures" not in query:
        return query
    name = context.operation.path.removeprefix("/v1/").partition(".")[0]
    if name not in CALCULATIONS:
        return {name: value for name, value in query.items() if name != "figures"} or None
    names = pick.names_of(CALCULATIONS[name].answer)
    return {**query, "figures": ",".join(names[: 1 + len(query["figures"]) % 3])}


@pytest.mark.slow
@SCHEMA.parametrize()
@settings(
    max_examples=EXAMPLES,
    phases=(Phase.explicit, Phase.generate),
    suppress_health_check=list(HealthCheck),
)
def test_what_the_specification_tells(case):
    # Many jobs are answered one by one: what is wrong with one is told in its place, under a 200.
    one_by_one = case.operation.path == "/v1/many"
    case.call_and_validate(
        checks=[each for each in CHECKS if not (one_by_one and each is negative_data_rejection)]
    )
