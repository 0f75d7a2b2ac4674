"""What a stranger writes as a name stays text in every file: no element, no link, no formula."""

import csv
import io
import xml.etree.ElementTree as ElementTree

import ezdxf
import ezdxf.recover
import pypdf
import pytest

NAMES = {
    "script": "<script>alert(1)</script>",
    "picture": '<img src="http://example.com/x"/>',
    "quotes": "\"'><svg onload=alert(1)>",
    "entity": "&lt;b&gt; &#x41; &xxe;",
    "lines": "a\n  0\nSECTION\r\n  2\nENTITIES",
    "codes": "%%u{\\fArial;} \\P %<\\AcVar>%",
}


def fetched(client, path, name):
    answer = client.get("/v1/" + path, query_string={"bore": "80", "job_name": name})
    assert answer.status_code == 200, answer.data[:300]
    return answer


def shown(text):
    """A text as paper shows it, spaces apart."""
    return "".join(letter for letter in text if letter.isprintable()).replace(" ", "")


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_in_a_drawing_to_look_at(client, name):
    drawn = ElementTree.fromstring(fetched(client, "drawings/pot.svg", name).data)
    plain = ElementTree.fromstring(fetched(client, "drawings/pot.svg", "Marigold").data)
    assert {each.tag for each in drawn.iter()} == {each.tag for each in plain.iter()}
    marks = {mark for each in drawn.iter() for mark in each.attrib}
    assert marks == {mark for each in plain.iter() for mark in each.attrib}
    assert shown(name) in {shown(each.text or "") for each in drawn.iter()}


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_in_a_drawing_for_other_programs(client, name):
    data = fetched(client, "drawings/pot.dxf", name).data
    plain = fetched(client, "drawings/pot.dxf", "Marigold").data
    assert data.count(b"\nSECTION") == plain.count(b"\nSECTION")
    document, audit = ezdxf.recover.read(io.BytesIO(data))
    assert not audit.has_errors
    assert len(document.modelspace()) == len(ezdxf.recover.read(io.BytesIO(plain))[0].modelspace())


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
@pytest.mark.parametrize("path", ["route.pdf", "drawings/pot.pdf"])
def test_on_paper(client, path, name):
    pages = pypdf.PdfReader(io.BytesIO(fetched(client, path, name).data)).pages
    text = "".join(page.extract_text() for page in pages)
    assert shown(name)[:20] in shown(text)
    # Nothing to press, nothing that is fetched.
    for page in pages:
        assert "/Annots" not in page
        assert "/AA" not in page


@pytest.mark.parametrize("name", ["=1+1", "+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1"])
def test_in_a_spreadsheet(client, name):
    one = {"outside_diameter": 80, "inside_diameter": 60, "part_length": 5, "count": 2}
    answer = client.post("/v1/stock.csv?list=sets", json={"sets": [{"name": name, **one}]})
    rows = list(csv.DictReader(io.StringIO(answer.data.decode("utf-8-sig"))))
    assert rows[0]["name"] == "'" + name


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_in_what_the_answer_is_called(client, name):
    headers = fetched(client, "route.pdf", name).headers
    assert headers["Content-Disposition"] == 'inline; filename="route.pdf"'
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert "default-src 'none'" in headers["Content-Security-Policy"]
