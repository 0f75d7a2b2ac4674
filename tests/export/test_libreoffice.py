"""The files for a spreadsheet, opened by one: LibreOffice, where it is installed."""

import shutil
import subprocess
import xml.etree.ElementTree as ElementTree

import pytest

PROGRAM = shutil.which("soffice") or shutil.which("libreoffice")
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"


def _opened(folder, data):
    """Rows of the sheet that LibreOffice makes of a file, each cell as (kind, what it holds)."""
    path = folder / "ring.csv"
    path.write_bytes(data)
    done = subprocess.run(
        [
            *(PROGRAM, "--headless", "-env:UserInstallation=" + (folder / "own").as_uri()),
            # As its window asks on opening: comma, double quote, UTF-8, from the first line.
            "--infilter=Text - txt - csv (StarCalc):44,34,76,1",
            *("--convert-to", "fods", "--outdir", folder, path),
        ],
        capture_output=True,
        text=True,
        timeout=180,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    rows = []
    for row in ElementTree.parse(path.with_suffix(".fods")).iter(TABLE + "table-row"):
        cells = []
        for cell in row.iter(TABLE + "table-cell"):
            kind = cell.get(OFFICE + "value-type")
            text = "".join(cell.itertext()).strip()
            again = int(cell.get(TABLE + "number-columns-repeated", "1"))
            held = float(cell.get(OFFICE + "value")) if kind == "float" else text
            cells += [(kind, held)] * min(again, 20)
        rows.append(cells)
    return rows


@pytest.mark.slow
@pytest.mark.skipif(PROGRAM is None, reason="no LibreOffice here")
@pytest.mark.parametrize("units", ["metric", "inch"])
def test_every_figure_is_a_number_in_its_cell(client, tmp_path, units):
    asked = "?bore=3+1/8+in&steam_pressure=120+psi&units=" + units
    told = client.get("/v1/sizing" + asked).get_json()["figures"]
    heads, *rows = _opened(tmp_path, client.get("/v1/sizing.csv" + asked).data)
    at = {name: place for place, (_, name) in enumerate(heads)}
    assert list(at)[0] == "name"
    found = {row[at["name"]][1]: row for row in rows if row and row[0][1] in told}
    assert set(found) == set(told)
    for name, figure in told.items():
        kind, value = found[name][at["value"]]
        assert kind == "float", name
        # A cell keeps fifteen digits.
        assert value == pytest.approx(figure["value"], rel=1e-14), name
        # The unit of a pure number is 1, and a number in its cell.
        unit = found[name][at["unit"]][1]
        assert (unit if isinstance(unit, str) else "%d" % unit) == figure["unit"], name
