/** What the first figures need: its files come first, everything else a moment later. */

export const FIRST_CALCULATIONS = ["sizing"] as const;
