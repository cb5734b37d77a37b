import { PublishedDocument } from "./source.ts";

export const wisconsinExtensionPages = new PublishedDocument(
  "University of Wisconsin Extension, rain garden web pages",
  "as printed online",
  "read",
);
