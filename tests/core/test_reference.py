"""The reference lists: every method and source, none forgotten, none double."""

import importlib
import re
from pathlib import Path

import ringwright.core
from ringwright.core import calculations, reference
from ringwright.core.sources import SOURCES

CORE = Path(ringwright.core.__file__).parent


def modules_with_methods():
    names = [
        ".".join(path.relative_to(CORE).with_suffix("").parts)
        for path in sorted(CORE.rglob("*.py"))
        if path.name != "__init__.py"
    ]
    modules = [importlib.import_module("ringwright.core." + name) for name in names]
    return [module for module in modules if hasattr(module, "METHODS")]


def test_every_module_with_methods_is_listed():
    missing = {module.__name__ for module in modules_with_methods()} - {
        module.__name__ for module in reference.modules()
    }
    assert not missing, "add to MODULES in reference.py"


def test_method_keys_are_unique_and_kebab_case():
    keys = [method.key for module in reference.modules() for method in module.METHODS]
    assert len(set(keys)) == len(keys)
    for key in keys:
        assert key == key.lower()
        assert key.replace("-", "").replace("2", "").isalnum()


def test_every_method_is_complete_and_its_sources_exist():
    known = {source.key for source in SOURCES}
    for module in reference.modules():
        for method in module.METHODS:
            assert method.title and method.formula and method.validity, method.key
            assert method.sources, method.key
            assert set(method.sources) <= known, method.key


def test_source_keys_are_unique_and_each_says_how_far_it_was_checked():
    keys = [source.key for source in SOURCES]
    assert len(set(keys)) == len(keys)
    for source in SOURCES:
        assert source.basis in ("read", "run", "memory", "practice", "derived"), source.key
        assert source.title and source.where, source.key


def test_the_listing_shows_formula_range_and_basis():
    listing = calculations.run("methods", {})
    by_key = {row["key"]: row for row in listing["methods"]}
    boiling = by_key["saturation-temperature"]
    assert boiling["basis"] == ["read"]
    assert boiling["sources"][0]["title"].startswith("IAPWS-IF97")
    assert "n10" in boiling["formula"]
    assert len(listing["methods"]) == len(by_key)
    assert len(listing["sources"]) == len(SOURCES)


def test_the_materials_are_listed_with_where_each_figure_is_from():
    listing = calculations.run("materials", {})
    iron = listing["materials"][0]
    assert iron["key"] == "grey-iron"
    assert iron["properties"]["modulus"]["basis"] == "read"


def test_no_more_methods_lean_on_memory_than_the_readme_says():
    """What could not be read stays marked; a new method brings a source that was."""
    unread = {source.key for source in SOURCES if source.basis == "memory"}
    methods = [method for module in reference.modules() for method in module.METHODS]
    assert {method.key for method in methods if unread & set(method.sources)} == {
        "bar-size",
        "expected-relief",
        "material-property",
        "mean-expansion",
        "slit",
        "soaked-ring",
    }
    readme = (CORE.parents[2] / "README.md").read_text(encoding="utf-8")
    said = re.search("six of some ([0-9]+) lean on memory", readme)
    assert abs(int(said[1]) - len(methods)) < 10
