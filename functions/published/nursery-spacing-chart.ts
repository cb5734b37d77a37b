import { PublishedDocument } from "./source.ts";

export const nurserySpacingChart = new PublishedDocument("Nursery chart of plants for 100 sq ft by spacing", "as printed online", "read");
