import { PublishedDocument } from "./source.ts";

export const handbookOfMathematicalFunctions = new PublishedDocument(
  "Abramowitz and Stegun, Handbook of Mathematical Functions",
  "1964",
  "from memory",
);
