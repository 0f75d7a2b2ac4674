"""Jobs that come and go, by file, link, code and paper: nothing from outside is trusted."""

import base64
import json
import zlib

import pytest

from client.book import bring_in, kept_jobs, packed, written
from client.conftest import Sheet


def test_file_out_and_in_again_gives_the_same_job(sheet, tmp_path):
    page = sheet.page
    sheet.enter("Bore", "101,6 mm").ready().kept().go("book")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="File of Launch engine Marigold").click()
    saved = json.loads(waiting.value.path().read_text(encoding="utf-8"))
    assert saved["format"] == "ringwright-job"
    assert saved["jobs"][0]["inputs"]["bore"] == "101,6 mm"
    assert "One job was brought in" in bring_in(sheet, written(tmp_path, saved))
    jobs = kept_jobs(page)
    assert len(jobs) == 2
    assert jobs[0]["job"]["inputs"] == jobs[1]["job"]["inputs"] == saved["jobs"][0]["inputs"]


def test_link_carries_the_whole_job_and_overwrites_nothing(sheet, context, served):
    page = sheet.page
    sheet.enter("Bore", "63 mm").ready().kept().go("book")
    page.get_by_role("button", name="Link or code for Launch engine Marigold").click()
    link = page.get_by_label("Link", exact=True).input_value()
    assert page.get_by_role("img", name="Code with the link to this job").count() == 1
    asked = []
    other = context.new_page()
    other.on("request", lambda request: asked.append(request.url))
    opened = Sheet(other, served)
    other.goto(link)
    opened.ready()
    assert other.get_by_label("Bore", exact=True).input_value() == "63"
    assert all("#" not in url and len(url) < 200 for url in asked)
    # Not in the book until it is kept.
    assert len(kept_jobs(other)) == 1
    other.get_by_role("button", name="Keep it").click()
    opened.until("document.querySelector('.banner-note') === null")
    opened.kept()
    other.wait_for_timeout(300)
    assert len(kept_jobs(other)) == 2


def test_job_of_the_first_format_is_brought_up_to_date(sheet, tmp_path):
    old = {
        "format": "ringwright-job",
        "version": 1,
        "jobs": [
            {
                "id": "old-one",
                "name": "Pump engine",
                "created": 1,
                "changed": 2,
                "inputs": {"bore": {"number": "2 3/4", "unit": "in"}, "ring_type": "plain"},
            }
        ],
    }
    assert "One job was brought in" in bring_in(sheet, written(tmp_path, old))
    sheet.page.get_by_role("button", name="Pump engine").first.click()
    sheet.ready()
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "2 3/4"
    assert sheet.page.get_by_label("Plain", exact=True).is_checked()


def test_job_of_a_newer_format_is_refused_in_words(sheet, tmp_path):
    newer = {"format": "ringwright-job", "version": 99, "jobs": [{"name": "X", "inputs": {}}]}
    assert "newer version of this app" in bring_in(sheet, written(tmp_path, newer))
    assert len(kept_jobs(sheet.page)) == 1


HOSTILE_FILES = [
    "not json at all",
    "[]",
    '{"format":"ringwright-job","version":3,"jobs":7}',
    {"format": "ringwright-job", "version": 3, "jobs": [None, 3, "x", []]},
    {
        "format": "ringwright-job",
        "version": 3,
        "jobs": [{"name": "x", "inputs": {"__proto__": "y", "constructor": {"a": "b"}}}],
    },
    '{"format":"ringwright-job","version":3,"jobs":[{"name":"p","inputs":{"__proto__":"3"}}]}',
    {"format": "ringwright-job", "version": 3, "jobs": [{"name": "n" * 5000, "inputs": {}}]},
    {
        "format": "ringwright-job",
        "version": 3,
        "jobs": [{"name": "deep", "inputs": {"bars": [[[[[["x"]]]]]]}}],
    },
    {
        "format": "ringwright-job",
        "version": 3,
        "jobs": [{"name": "many", "inputs": {"bars": ["1"] * 5000}}],
    },
]


@pytest.mark.parametrize("content", HOSTILE_FILES)
def test_hostile_file_changes_nothing_and_is_answered_in_words(sheet, tmp_path, content):
    before = kept_jobs(sheet.page)
    words = bring_in(sheet, written(tmp_path, content))
    assert words
    assert kept_jobs(sheet.page) == before
    assert sheet.page.evaluate("Object.prototype.y === undefined")


def test_markup_in_a_job_is_text_and_never_runs(sheet, tmp_path):
    bad = '<img src=x onerror="window.hit=1"><script>window.hit=1</script>'
    job = {"name": bad, "notes": bad, "inputs": {"bore": "80 mm", "ring_type": bad}}
    bring_in(sheet, written(tmp_path, {"format": "ringwright-job", "version": 3, "jobs": [job]}))
    page = sheet.page
    page.locator(".job-open-button").first.click()
    page.locator("main .status-fault").wait_for()
    assert page.locator(".head-names b").inner_text() == bad
    assert page.evaluate("window.hit === undefined")
    assert page.locator("main img, main script").count() == 0


HOSTILE_LINKS = [
    "",
    "%00%ff",
    "AAAA",
    packed(None, raw=b"not json"),
    packed({"format": "something-else", "job": {}}),
    packed({"format": "ringwright-job", "version": 3, "job": {"name": 4}}),
    packed(None, raw=b" " * 30_000_000),
    packed({"format": "ringwright-job", "version": 3})[:-9],
]


@pytest.mark.parametrize("in_link", HOSTILE_LINKS, ids=range(len(HOSTILE_LINKS)))
def test_hostile_link_is_shown_as_damaged_and_the_book_stays(sheet, context, served, in_link):
    before = kept_jobs(sheet.page)
    other = context.new_page()
    opened = Sheet(other, served)
    other.goto(served + "/#ring/s/" + in_link)
    other.locator(".damaged").wait_for()
    assert "Damaged" in other.locator(".damaged").inner_text()
    assert kept_jobs(other) == before
    assert opened.complaints == []


def test_damaged_link_leaves_the_open_sheet_where_it_was(sheet):
    page = sheet.page
    sheet.enter("Bore", "87 mm").ready().kept()
    page.evaluate("location.hash = '#ring/s/nonsense'")
    page.locator(".damaged").wait_for()
    assert "Marigold" in page.locator(".head-names b").inner_text()
    sheet.go("ring").ready()
    assert page.get_by_label("Bore", exact=True).input_value() == "87"
    sheet.enter("Bore", "88 mm").ready().kept()
    page.reload()
    sheet.ready()
    assert page.get_by_label("Bore", exact=True).input_value() == "88"


def test_file_of_which_nothing_came_in_says_why_first(sheet, tmp_path):
    bad = {"format": "ringwright-job", "version": 3, "jobs": [{"name": "Odd", "inputs": 5}]}
    words = bring_in(sheet, written(tmp_path, bad))
    assert "0 jobs" not in words
    assert words.index("Odd") < words.index("Nothing was brought in")


@pytest.mark.parametrize("origin", ["https://rings.example/app/", "file:///sdcard/ringwright.html"])
def test_job_is_taken_from_a_pasted_link_of_any_origin(sheet, origin):
    in_link = packed(
        {
            "format": "ringwright-job",
            "version": 3,
            "job": {"name": "Roller", "inputs": {"bore": "6 in"}},
        }
    )
    page = sheet.page
    sheet.go("book")
    page.get_by_text("Take in a job from somebody").click()
    page.get_by_label("Link or text").fill(
        "Have a look at this: %s#ring/s/%s thanks" % (origin, in_link)
    )
    page.get_by_role("button", name="Take it in").click()
    page.get_by_text('"Roller" is in the book, and open.').wait_for()
    sheet.go("ring").ready()
    assert page.get_by_label("Bore", exact=True).input_value() == "6"
    sheet.kept()
    assert len(kept_jobs(page)) == 2


def test_text_of_a_job_file_can_be_pasted_and_nonsense_is_refused(sheet):
    page = sheet.page
    sheet.go("book")
    page.get_by_text("Take in a job from somebody").click()
    page.get_by_label("Link or text").fill("hello")
    page.get_by_role("button", name="Take it in").click()
    page.get_by_text("There is no job in this.").wait_for()
    text = json.dumps(
        {
            "format": "ringwright-job",
            "version": 3,
            "jobs": [{"name": "Pump", "inputs": {"bore": "70 mm"}}],
        }
    )
    page.get_by_label("Link or text").fill(text)
    page.get_by_role("button", name="Take it in").click()
    page.get_by_text('"Pump" is in the book, and open.').wait_for()


def test_link_carries_what_the_job_takes_from_the_shop(sheet, context, served):
    """Else the figures would be others where it is opened."""
    page = sheet.page
    page.evaluate(
        "localStorage.setItem('ringwright-shop', JSON.stringify({ format: 'ringwright-shop',"
        " version: 1, inputs: { end_kerf: '0.7 mm', bars: [{ length: '300 mm' }] } }))"
    )
    page.reload()
    sheet.ready().go("book")
    page.get_by_role("button", name="Link or code for Launch engine Marigold").click()
    link = page.get_by_label("Link", exact=True).input_value()
    in_link = link.split("/s/")[1]
    raw = base64.urlsafe_b64decode(in_link + "=" * (-len(in_link) % 4))
    job = json.loads(zlib.decompress(raw, -15))["job"]
    assert job["inputs"]["end_kerf"] == "0.7 mm"
    assert "bars" not in job["inputs"]


def test_code_is_read_by_the_camera_where_the_browser_can(context, served):
    page = context.new_page()
    in_link = packed(
        {"format": "ringwright-job", "version": 3, "job": {"name": "Hoist", "inputs": {}}}
    )
    page.add_init_script(
        """globalThis.BarcodeDetector = class { async detect() {
            return [{ rawValue: 'https://elsewhere.example/#ring/s/%s' }]; } };
        const made = document.createElement('canvas');
        navigator.mediaDevices ??= {};
        navigator.mediaDevices.getUserMedia = async () => {
            made.getContext('2d').fillRect(0, 0, 9, 9);
            window.stream = made.captureStream(5);
            return window.stream;
        };"""
        % in_link
    )
    sheet = Sheet(page, served).open().ready()
    sheet.go("book")
    page.get_by_text("Take in a job from somebody").click()
    page.get_by_role("button", name="Read a code with the camera").click()
    page.get_by_text('"Hoist" is in the book, and open.').wait_for()
    # The camera is let go.
    assert page.evaluate("window.stream.getTracks().every(t => t.readyState === 'ended')")


def test_a_route_card_on_paper_brings_its_job_in(sheet, client, tmp_path):
    card = client.get(
        "/v1/route.pdf", query_string={"bore": "4 1/8 in", "job_name": "Winch é, from paper"}
    )
    path = tmp_path / "route.pdf"
    path.write_bytes(card.data)
    assert "One job was brought in" in bring_in(sheet, path)
    sheet.page.get_by_role("button", name="Winch é, from paper").first.click()
    sheet.ready()
    assert sheet.page.get_by_label("Bore", exact=True).input_value() == "4 1/8"
    scan = tmp_path / "scan.pdf"
    scan.write_bytes(b"%PDF-1.4\n%\xe2\xe3\n%%EOF\n")
    assert "This PDF holds no job" in bring_in(sheet, scan)
