"""On to a phone with no internet, as the README says: from a name that is not localhost, over the
authority of the workshop's machine. Welcome page, trust, the app kept, network gone, cold start.
"""

import plistlib
import shutil
import ssl
import subprocess

import pytest
import requests
import zxingcpp
from PIL import Image

from client.conftest import FLAGS, PHONE, Sheet
from client.firefox import Firefox
from phone.secure import NAME, Workshop, trust
from phone.test_authority import served, signed

OUTSIDE = "bank.example.org"


@pytest.fixture
def workshop(tmp_path):
    running = Workshop(tmp_path / "keys")
    yield running
    if running.process.poll() is None:
        running.stop()


def _chromium(playwright, chromium_path, home):
    rules = "MAP *.local 127.0.0.1, MAP %s 127.0.0.1" % OUTSIDE
    return playwright.chromium.launch_persistent_context(
        str(home / "profile"),
        executable_path=chromium_path,
        args=[*FLAGS, "--host-resolver-rules=" + rules],
        viewport=PHONE,
        env={"HOME": str(home)},
    )


def test_a_phone_takes_the_app_and_keeps_it(playwright, chromium_path, workshop, tmp_path):
    """Untrusted first: the page says so. Then trusted: secure, kept, and there with no network."""
    home = tmp_path / "phone"
    home.mkdir()
    before = _chromium(playwright, chromium_path, home)
    page = before.new_page()
    page.goto(workshop.welcome)
    page.get_by_text("does not trust the machine yet").wait_for()
    assert page.get_by_role("link", name="Open the app").get_attribute("href") == (
        workshop.secure + "/"
    )
    with page.expect_download() as taken:
        page.get_by_role("link", name="Download the certificate").click()
    certificate = tmp_path / "ringwright.crt"
    taken.value.save_as(certificate)
    shown = page.locator("#fingerprint").inner_text()
    before.close()

    # What the phone's settings do with the file, and the look at its fingerprint before.
    mark = subprocess.run(
        ["openssl", "x509", "-inform", "DER", "-in", str(certificate)]
        + ["-noout", "-fingerprint", "-sha256"],
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    ).stdout
    assert mark.strip().split("=")[1].replace(":", "") == shown.replace(" ", "")
    pem = tmp_path / "taken.pem"
    pem.write_text(ssl.DER_cert_to_PEM_cert(certificate.read_bytes()))
    trust(home, pem)

    first = _chromium(playwright, chromium_path, home)
    page = first.new_page()
    page.goto(workshop.welcome)
    page.get_by_text("This phone trusts the machine").wait_for()
    page.get_by_role("link", name="Open the app").click()
    sheet = Sheet(page, workshop.secure)
    page.wait_for_selector("main :is(.card, .plate, .jobs)")
    sheet.ready()
    assert page.url.startswith("https://%s:" % NAME)
    assert page.evaluate("isSecureContext")
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    sheet.go("settings")
    page.get_by_text("Ready for offline use").wait_for()
    sheet.go("ring").ready()
    sheet.enter("Bore", "3 5/8 in").ready().kept()
    gap = sheet.figure("free_gap")
    link = page.evaluate("location.hash")
    first.close()
    workshop.stop()

    again = _chromium(playwright, chromium_path, home)
    sheet = Sheet(again.new_page(), workshop.secure).open(link).ready()
    assert sheet.page.get_by_label("Bore", exact=True).first.input_value().startswith("3 5/8")
    assert sheet.figure("free_gap") == gap
    sheet.enter("Bore", "4 in").ready()
    assert sheet.figure("free_gap") != gap
    assert sheet.complaints == []
    again.close()


def test_chromium_refuses_an_outside_name_of_the_authority(
    playwright, chromium_path, workshop, tmp_path
):
    home = tmp_path / "phone"
    home.mkdir()
    trust(home, workshop.authority)
    leaf = tmp_path / "leaf"
    leaf.mkdir()
    with served(*signed(workshop.keys, leaf, [OUTSIDE], [])) as port:
        context = _chromium(playwright, chromium_path, home)
        page = context.new_page()
        # The same browser believes it for what it may vouch for.
        page.goto(workshop.secure + "/healthz")
        with pytest.raises(Exception, match="ERR_CERT"):
            page.goto("https://%s:%d/" % (OUTSIDE, port))
        context.close()


@pytest.mark.skipif(
    not (shutil.which("firefox-esr") or shutil.which("firefox")), reason="no Firefox here"
)
def test_firefox_keeps_the_app_and_refuses_an_outside_name(workshop, tmp_path):
    program = shutil.which("firefox-esr") or shutil.which("firefox")
    profile = tmp_path / "profile"
    profile.mkdir()
    for arguments in (
        ["-N", "--empty-password"],
        ["-A", "-t", "C,,", "-n", "workshop", "-i", str(workshop.authority)],
    ):
        subprocess.run(["certutil", "-d", "sql:%s" % profile, *arguments], check=True, timeout=60)
    leaf = tmp_path / "leaf"
    leaf.mkdir()
    names = {"network.dns.localDomains": "%s,%s" % (NAME, OUTSIDE)}
    with served(*signed(workshop.keys, leaf, [OUTSIDE], [])) as port:
        firefox = Firefox(program, profile, names)
        try:
            firefox.open(workshop.secure + "/")
            assert firefox.run("isSecureContext")
            firefox.until("navigator.serviceWorker.controller !== null")
            with pytest.raises(AssertionError, match="(?i)cert|SEC_ERROR"):
                firefox.ask(
                    "browsingContext.navigate",
                    context=firefox.page,
                    url="https://%s:%d/" % (OUTSIDE, port),
                    wait="complete",
                )
        finally:
            firefox.close()


def test_the_welcome_page_is_for_phones(browser, workshop, tmp_path):
    """Both systems' steps, a code that leads back to it, nothing wider than the screen."""
    for agent, name in (
        ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)", "Download the profile"),
        ("Mozilla/5.0 (Linux; Android 15; Pixel)", "Download the certificate"),
    ):
        context = browser.new_context(viewport=PHONE, user_agent=agent)
        page = context.new_page()
        page.goto("http://127.0.0.1:%d/" % workshop.welcome_port)
        assert page.get_by_role("link", name=name).is_visible()
        assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
        for words in ("To take it off again", "What is installed, and what it may do"):
            assert page.get_by_role("heading", name=words).is_visible()
        shot = tmp_path / "code.png"
        page.get_by_role("img").screenshot(path=str(shot))
        codes = [code.text for code in zxingcpp.read_barcodes(Image.open(shot))]
        assert codes == ["http://127.0.0.1:%d/" % workshop.welcome_port]
        context.close()


def test_the_profile_is_one_an_iphone_takes(workshop):
    """Apple, "Configuration Profile Reference", from memory: a Configuration with one payload of
    type com.apple.security.root that holds the certificate in DER."""
    answer = requests.get(
        "http://127.0.0.1:%d/ringwright.mobileconfig" % workshop.welcome_port, timeout=20
    )
    assert answer.headers["Content-Type"] == "application/x-apple-aspen-config"
    read = plistlib.loads(answer.content)
    assert read["PayloadType"] == "Configuration"
    inside = read["PayloadContent"][0]
    assert inside["PayloadType"] == "com.apple.security.root"
    der = inside["PayloadContent"]
    assert ssl.DER_cert_to_PEM_cert(der).split() == workshop.authority.read_text().split()
    assert read["PayloadUUID"] != inside["PayloadUUID"]
