"""A TypeScript client typed from the specification alone: a misspelt name does not compile."""

import json
import subprocess

import pytest

pytestmark = pytest.mark.waits

USE = """
import createClient from "openapi-fetch";
import type { paths } from "./api";

const client = createClient<paths>({ baseUrl: "http://127.0.0.1" });

export async function use(): Promise<number> {
  const { data, error } = await client.POST("/v1/sizing", {
    params: { query: { units: "inch" } },
    body: { bore: "3 1/8 in", ring_type: "plain" },
  });
  if (!data) throw new Error(error?.title);
  // Only a whole answer tells what was chosen; one of picked figures has no more than was asked.
  if (!("chosen" in data)) return data.figures.free_gap?.value ?? 0;
  const gap: number = data.figures.free_gap.value;
  const maybe: number | undefined = data.figures.former_ratio?.value;
  if (data.findings.some((finding) => finding.check === "wound-on")) return maybe ?? 0;
  const job = await client.GET("/v1/job", { params: { query: { bore: "80 mm" } } });
  const whole = job.data && "chosen" in job.data ? job.data : undefined;
  const sticks: number | undefined = whole?.stock.sets[0]?.sticks;
  const asked = { params: { query: { bore: 80 } }, parseAs: "text" } as const;
  const table = await client.GET("/v1/sizing.csv", asked);
  const text: string | undefined = table.data;
  const many = await client.POST("/v1/many", {
    params: { query: { figures: "free_gap" } },
    body: [{ calculation: "sizing", inputs: { bore: "80 mm" } }],
  });
  const picked: number | undefined = many.data?.[0]?.status;
  return gap + (sticks ?? 0) + (text?.length ?? 0) + (picked ?? 0);
}
"""
WRONG = {
    'return data.figures.free_gap?.value ?? 0;': 'return data.figures.free_gap.value;',
    'if (!("chosen" in data))': 'if (!data.chosen)',
    "figures.free_gap.value": "figures.free_gapp.value",
    '"wound-on"': '"wound-up"',
    "stock.sets[0]": "stock.setz[0]",
    "?.sticks": "?.stick",
    "bore: \"3 1/8 in\"": "boar: \"3 1/8 in\"",
    'ring_type: "plain"': 'ring_type: "plane"',
    'calculation: "sizing"': 'calculations: "sizing"',
    "[0]?.status": "[0]?.state",
    '"/v1/sizing.csv"': '"/v1/seizing.csv"',
}  # fmt: skip

OPTIONS = {
    "noEmit": True,
    "strict": True,
    "noUncheckedIndexedAccess": True,
    "skipLibCheck": True,
    "target": "es2022",
    "module": "esnext",
    "moduleResolution": "bundler",
    "lib": ["es2023", "dom"],
    "types": [],
}


@pytest.fixture(scope="module")
def folder(root, tmp_path_factory):
    """A folder with the types of the specification."""
    made = tmp_path_factory.mktemp("typescript")
    modules = root / "client_pwa" / "node_modules"
    (made / "node_modules").symlink_to(modules)
    done = subprocess.run(
        ["npx", "openapi-typescript", root / "openapi" / "openapi.json", "-o", made / "api.ts"],
        cwd=root / "client_pwa",
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return made


@pytest.mark.slow
def test_names_are_checked_by_types(root, folder):
    programs = {"right": USE}
    for place, (right, wrong) in enumerate(WRONG.items()):
        assert right in USE
        programs["wrong_%d" % place] = USE.replace(right, wrong)
    for name, text in programs.items():
        (folder / (name + ".ts")).write_text(text, encoding="utf-8")
    settings = {"compilerOptions": OPTIONS, "files": [name + ".ts" for name in programs]}
    (folder / "tsconfig.json").write_text(json.dumps(settings), encoding="utf-8")
    done = subprocess.run(
        ["npx", "tsc", "-p", folder],
        cwd=root / "client_pwa",
        capture_output=True,
        text=True,
        check=False,
    )
    said = done.stdout
    assert done.returncode == 2
    assert "right.ts" not in said and "api.ts" not in said, said
    missed = [name for name in programs if name != "right" and name + ".ts(" not in said]
    assert missed == [], said
