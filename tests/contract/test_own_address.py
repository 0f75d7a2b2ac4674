"""What the card's code opens is the service's own address, whatever a Host header says."""

import pytest
import zxingcpp

from contract.test_bad_inputs import check_problem
from export.test_pdf import poppler, rendered
from ringwright.api import create_app
from ringwright.api.own_address import SETTING, BadAddress, read_address

CARD = "/v1/route.pdf?bore=80"


def opened(client, tmp_path, host):
    """The address in the code of a card that was asked for under that host."""
    answer = client.get(CARD, headers={"Host": host})
    assert answer.status_code == 200
    picture = rendered(answer.data, tmp_path, 150)[0]
    return zxingcpp.read_barcodes(picture)[0].text.partition("#")[0]


@poppler
def test_the_address_that_was_said_goes_first(tmp_path, monkeypatch):
    monkeypatch.setenv(SETTING, "https://rings.example.org")
    client = create_app().test_client()
    assert opened(client, tmp_path, "elsewhere.example.com") == "https://rings.example.org/"
    assert opened(client, tmp_path, 'x"><b>') == "https://rings.example.org/"


@poppler
def test_without_a_word_the_host_is_taken(client, tmp_path):
    for host in ("ringwright.local:8443", "192.168.1.20", "[fe80::1]:8000"):
        assert opened(client, tmp_path, host) == "http://%s/" % host


@pytest.mark.parametrize(
    "host", ["a b", 'x"><b>', "x/../y", "x?y", "x#y", "user@host", "x:999999", "-x", "x" * 300]
)
def test_a_host_that_is_none_is_refused(client, host):
    problem = check_problem(client.get(CARD, headers={"Host": host}), 400)
    assert problem["code"] == "bad-request"


@pytest.mark.parametrize("said", ["rings.example.org", "ftp://x/", "https://", "https://x/?y", "x"])
def test_an_address_that_is_none_stops_the_start(said):
    with pytest.raises(BadAddress, match=SETTING):
        read_address({SETTING: said})


def test_nothing_said_is_none():
    assert read_address({}) is None
    assert read_address({SETTING: "http://192.168.1.2:8000/"}) == "http://192.168.1.2:8000/"
