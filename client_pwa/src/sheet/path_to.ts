/** Where an object stands in a tree, and what stands there in another. */

/** Where in a tree that very object stands. */
export function pathTo(tree: unknown, wanted: object): string[] | undefined {
  if (tree === wanted) return [];
  if (typeof tree !== "object" || tree === null) return undefined;
  for (const [key, branch] of Object.entries(tree)) {
    const rest = pathTo(branch, wanted);
    if (rest) return [key, ...rest];
  }
  return undefined;
}

export const at = (tree: unknown, path: readonly string[]): unknown => path.reduce<unknown>((branch, key) => (branch as Record<string, unknown> | undefined)?.[key], tree);
