import { PublishedDocument } from "./source.ts";

/** Its heading was read; its method and its table of cities are from memory. */
export const epa841B09001 = new PublishedDocument(
  "US EPA, Technical Guidance on Implementing the Stormwater Runoff Requirements for Federal Projects, EPA 841-B-09-001",
  "December 2009",
  "from memory",
);
