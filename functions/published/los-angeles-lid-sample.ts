import { PublishedDocument } from "./source.ts";

export const losAngelesLidSample = new PublishedDocument(
  "City of Los Angeles, low impact development sample calculation sheet",
  "as printed online",
  "read",
);
