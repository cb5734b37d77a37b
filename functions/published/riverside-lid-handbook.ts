import { PublishedDocument } from "./source.ts";

/** The document and its appendix were read as a listing; the numbers of the example are from memory. */
export const riversideLidHandbook = new PublishedDocument(
  "Riverside County (California), Design Handbook for Low Impact Development Best Management Practices",
  "September 2011",
  "from memory",
);
