import { PublishedDocument } from "./source.ts";

/** Prints the simple method's runoff coefficient, 0.05 + 0.9 I (Schueler 1987). */
export const newHampshireEnvWq1504 = new PublishedDocument(
  "New Hampshire Code of Administrative Rules, Env-Wq 1504.10",
  "as printed online",
  "read",
);
