// What the compiler does not see: promises that nobody waits for, objects that end up as "[object Object]", what is
// never used. Layout is left to the hand that wrote it.
import tseslint from "typescript-eslint";

export default tseslint.config(
  { ignores: ["node_modules", "src/engine/names.ts", "**/*.mjs", "eslint.config.js"] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { project: ["./tsconfig.json", "./tsconfig.worker.json"], tsconfigRootDir: import.meta.dirname } },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      // What is taken out of a record by naming it is called _so.
      "@typescript-eslint/no-unused-vars": ["error", { varsIgnorePattern: "^_", argsIgnorePattern: "^_", destructuredArrayIgnorePattern: "^_" }],
      // Properties of components are declared as methods; none of them uses `this`.
      "@typescript-eslint/unbound-method": "off",
    },
  },
  // A matcher of the test library has no type of its own.
  { files: ["**/*.test.ts"], rules: { "@typescript-eslint/no-unsafe-assignment": "off" } },
);
