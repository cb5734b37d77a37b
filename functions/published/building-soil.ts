import { PublishedDocument } from "./source.ts";

/** The equation's printed form and its example could not be opened; the two standard rates were read elsewhere. */
export const buildingSoil = new PublishedDocument(
  "Stenn and others, Building Soil: Guidelines and Resources for Implementing Soil Quality and Depth BMP T5.13",
  "2016",
  "from memory",
);
