/** What the page without Excel keeps in the browser for when there is no connection. */
export interface OfflineFiles {
  /** Another content of any file is another version. */
  readonly version: string;
  /** The page itself, at its folder's address. */
  readonly page: string;
  readonly parts: readonly string[];
}
