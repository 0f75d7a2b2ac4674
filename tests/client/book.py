"""What tests of the job book share: jobs in files and links, and the store read past the app."""

import base64
import json
import zlib


def packed(value, raw=None):
    """What a link carries: deflated JSON in base64url (RFC 1951, RFC 4648 section 5)."""
    data = json.dumps(value).encode() if raw is None else raw
    squeezer = zlib.compressobj(9, zlib.DEFLATED, -15)
    squeezed = squeezer.compress(data) + squeezer.flush()
    return base64.urlsafe_b64encode(squeezed).decode().rstrip("=")


def written(tmp_path, value):
    path = tmp_path / "jobs.json"
    path.write_text(value if isinstance(value, str) else json.dumps(value), encoding="utf-8")
    return path


def bring_in(sheet, path):
    sheet.go("book")
    sheet.page.get_by_label("Job file to bring in").set_input_files(path)
    sheet.page.locator("main .status").wait_for()
    return sheet.page.locator("main .status").inner_text()


def kept_jobs(page):
    """Everything in the store, read past the app."""
    return page.evaluate(
        """() => new Promise((resolve, reject) => {
            const opened = indexedDB.open('ringwright-book');
            opened.onerror = () => reject(opened.error);
            opened.onsuccess = () => {
                const got = opened.result.transaction('jobs').objectStore('jobs').getAll();
                got.onsuccess = () => { opened.result.close(); resolve(got.result); };
            };
        })"""
    )


def put(page, kept):
    page.evaluate(
        """kept => new Promise((resolve, reject) => {
            const opened = indexedDB.open('ringwright-book');
            opened.onerror = () => reject(opened.error);
            opened.onsuccess = () => {
                const change = opened.result.transaction('jobs', 'readwrite');
                change.objectStore('jobs').put(kept);
                change.oncomplete = () => { opened.result.close(); resolve(); };
            };
        })""",
        kept,
    )
