import { PublishedDocument } from "./source.ts";

export const osha1926SubpartP = new PublishedDocument(
  "US Code of Federal Regulations, title 29, part 1926, subpart P",
  "current text",
  "from memory",
);
