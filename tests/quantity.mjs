// The app's reader of quantities under Node: a line of JSON [kind, text, unit] in, a line of JSON out.
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath, pathToFileURL } from "node:url";

const app = join(dirname(fileURLToPath(import.meta.url)), "..", "client_pwa");
const { build } = await import(pathToFileURL(createRequire(join(app, "package.json")).resolve("vite")).href);
const built = await build({
  root: app,
  configFile: false,
  logLevel: "silent",
  publicDir: false,
  build: { write: false, minify: false, target: "es2022", lib: { entry: "src/units/parse.ts", formats: ["es"], fileName: "parse" } },
});
const code = [built].flat()[0].output[0].code;
const { parseQuantity } = await import("data:text/javascript;base64," + Buffer.from(code).toString("base64"));

for await (const line of createInterface({ input: process.stdin })) {
  const [kind, text, unit] = JSON.parse(line);
  const parsed = parseQuantity(kind, text, unit);
  console.log(JSON.stringify(parsed.ok ? parsed.reading.value : [parsed.code, parsed.message, parsed.remedy]));
}
