import { PublishedDocument } from "./source.ts";

export const ilri16 = new PublishedDocument(
  "International Institute for Land Reclamation and Improvement, Drainage Principles and Applications, Publication 16",
  "2nd ed., 1994",
  "from memory",
);
