"""Joins the lists of parts of service and app into one, and writes their licences down to be read.

usage: write_parts.py PYTHON.json APP.json JOINED.json LICENCES.md (docker/parts calls it)
"""

import json
import re
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[1]
# What a package's own metadata leave out, as its licence files say.
KNOWN = {"pymupdf-fonts": "OFL-1.1"}
_CLASSIFIER = "License :: OSI Approved :: "
_HEAD = """# Licences of all parts

Written by `docker/parts` from `docker/requirements.lock` and `client_pwa/package-lock.json`;
`docker/parts.cdx.json` lists the same for machines (CycloneDX). What only builds or tests is left
out.

| part | version | licence | in |
| --- | --- | --- | --- |
"""


def licence(component):
    """The licence of a component in words."""
    found = []
    for entry in component.get("licenses", ()):
        one = entry.get("expression") or entry["license"].get("id") or entry["license"]["name"]
        one = one.removeprefix(_CLASSIFIER).removesuffix(" License")
        # Said again as a mere family of licences by an old classifier.
        if not any(one == other or other.startswith(one + "-") for other in found):
            found.append(one)
    return " AND ".join(found) or KNOWN.get(component["name"], "")


def version():
    text = (ROOT / "service" / "ringwright" / "__init__.py").read_text(encoding="utf-8")
    return re.search(r'__version__ = "([^"]+)"', text)[1]


def main(python, app, joined, licences):
    lists = [
        (json.loads(Path(name).read_text()), where)
        for name, where in ((python, "service"), (app, "app"))
    ]
    parts, rows, whole = [], [], []
    for each, where in lists:
        for component in each["components"]:
            said = licence(component)
            if not said:
                sys.exit(
                    "%s says no licence: look it up and write it into KNOWN" % component["name"]
                )
            if not component.get("licenses"):
                component["licenses"] = [{"expression": said}]
            component["properties"] = [{"name": "ringwright:in", "value": where}]
            # Where it was found on this machine is nobody's concern.
            component.pop("externalReferences", None)
            component.pop("evidence", None)
            parts.append(component)
            rows.append((component["name"].lower(), component["version"], said, where))
        known = {component["bom-ref"] for component in each["components"]}
        whole += [
            {**entry, "dependsOn": [ref for ref in entry.get("dependsOn", ()) if ref in known]}
            for entry in each["dependencies"]
            if entry["ref"] in known
        ]
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    document = {
        "$schema": "http://cyclonedx.org/schema/bom-1.6.schema.json",
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {
            "component": {
                "type": "application",
                "bom-ref": "ringwright",
                "name": project["name"],
                "version": version(),
                "description": project["description"],
            }
        },
        "components": sorted(parts, key=lambda part: part["purl"]),
        "dependencies": sorted(whole, key=lambda entry: entry["ref"]),
    }
    Path(joined).write_text(
        json.dumps(document, indent=1, ensure_ascii=False) + "\n", encoding="utf-8"
    )
    table = "".join("| %s | %s | %s | %s |\n" % row for row in sorted(rows))
    Path(licences).write_text(_HEAD + table, encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
