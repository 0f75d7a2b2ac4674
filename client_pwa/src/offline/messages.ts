/** What page and service worker say to one another. */

export type ToServiceWorker =
  /** The person wants the version that waits. */
  | { kind: "use-new-version" }
  /** How many files are gone? Fetch them again. */
  | { kind: "look-for-files" }
  /** Figures stand. script: address of the page's own script, which tells the version. */
  | { kind: "started"; script: string }
  /** The version that did not start here shall be tried once more. */
  | { kind: "try-newest" };

/** What the page is told when it asks whether all is kept. */
export interface FilesReply {
  /** Files that are gone and could not be fetched again. */
  missing: number;
  /** The newest version did not start on this device, and this is the one before it. */
  before: boolean;
}
