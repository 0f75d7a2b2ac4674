/** What the page is told when it asks the service worker whether all is kept. */
export interface FilesReply {
  /** Files that are gone and could not be fetched again. */
  missing: number;
}
