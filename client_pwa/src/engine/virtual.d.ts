declare module "virtual:core-tables" {
  // Each field once; per calculation the numbers of its fields; groups of figures; label and group of each; sizes that are a tool's.
  const tables: [import("./tables").DeclaredField[], Record<string, number[]>, string[], Record<string, [string, number]>, string[]];
  export default tables;
}

declare module "virtual:core-files" {
  /** Addresses of the core's files: those that the first figures need, and the rest. */
  export const first: string;
  export const rest: string;
}

declare module "@micropython/micropython-webassembly-pyscript" {
  export interface MicroPython {
    FS: { mkdirTree(path: string): void; writeFile(path: string, text: string): void };
    globals: { get(name: string): unknown };
    runPython(code: string): unknown;
    _module: { _malloc(bytes: number): number };
  }
  export function loadMicroPython(options: {
    url?: string;
    heapsize?: number;
    pystack?: number;
  }): Promise<MicroPython>;
}
