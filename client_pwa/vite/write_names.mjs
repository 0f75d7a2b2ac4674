// Writes src/engine/names.ts. Vite reads the TypeScript: an older Node cannot.
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const { module } = await runnerImport(fileURLToPath(new URL("./names.ts", import.meta.url)), { configFile: false });
await module.writeNames();
