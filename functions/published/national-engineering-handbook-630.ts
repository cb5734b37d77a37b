import { PublishedDocument } from "./source.ts";

export const nationalEngineeringHandbook630 = new PublishedDocument(
  "USDA Natural Resources Conservation Service, National Engineering Handbook, part 630",
  "chapter 10, 2004",
  "from memory",
);
