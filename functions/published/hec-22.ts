import { PublishedDocument } from "./source.ts";

export const hec22 = new PublishedDocument(
  "Federal Highway Administration, Urban Drainage Design Manual, Hydraulic Engineering Circular 22",
  "2nd ed., 2001",
  "from memory",
);
