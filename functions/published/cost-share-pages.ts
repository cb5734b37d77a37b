import { PublishedDocument } from "./source.ts";

/** A sum per area with a cap and a smallest garden. */
export const perAreaProgramPage = new PublishedDocument(
  "District of Columbia Department of Energy and Environment, rain garden rebate page",
  "as printed online",
  "read",
);

/** A percent of the cost with a cap. */
export const percentProgramPage = new PublishedDocument(
  "Seine-Rat Roseau Watershed District (Manitoba), rain garden program page",
  "as printed online",
  "read",
);
