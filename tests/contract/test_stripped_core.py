"""What the app carries of the core means what the source says: by Python's own parser the same
syntax tree, but for the docstrings."""

import ast
import json
import subprocess

import pytest

STRIP = """
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
const [folder, ...paths] = process.argv.slice(1);
const ts = createRequire(folder + "/package.json")("typescript");
const source = readFileSync(folder + "/vite/strip_python.ts", "utf8");
const module = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 };
const made = ts.transpileModule(source, { compilerOptions: module }).outputText;
const { stripPython } = await import("data:text/javascript," + encodeURIComponent(made));
console.log(JSON.stringify(paths.map((path) => stripPython(readFileSync(path, "utf8")))));
"""


class Bare(ast.NodeTransformer):
    """Takes out docstrings; a block of nothing else holds a `pass`."""

    def generic_visit(self, node):
        super().generic_visit(node)
        body = getattr(node, "body", None)
        if isinstance(body, list):
            kept = [
                each
                for each in body
                if not (isinstance(each, ast.Expr) and isinstance(each.value, ast.Constant))
            ]
            node.body = kept or [ast.Pass()] if not isinstance(node, ast.Module) else kept
        return node


@pytest.mark.slow
def test_the_core_that_is_carried_means_what_its_source_says(root):
    paths = sorted((root / "service" / "ringwright" / "core").rglob("*.py"))
    command = ["node", "--input-type=module", "-e", STRIP, root / "client_pwa", *paths]
    done = subprocess.run(command, capture_output=True, encoding="utf-8", check=True)
    carried = json.loads(done.stdout)
    assert len(carried) == len(paths) > 150
    written = [path.read_text(encoding="utf-8") for path in paths]
    for path, text, source in zip(paths, carried, written, strict=True):
        assert ast.dump(ast.parse(text)) == ast.dump(Bare().visit(ast.parse(source))), path
