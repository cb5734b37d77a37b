import { PublishedDocument } from "./source.ts";

export const hawkins2002 = new PublishedDocument(
  "Hawkins, Jiang, Woodward, Hjelmfelt and Van Mullem, Runoff Curve Number Method: Examination of the Initial Abstraction Ratio",
  "2002",
  "from memory",
);
