import { PublishedDocument } from "./source.ts";

export const utahRainPercentile = new PublishedDocument(
  "Utah Division of Water Quality, guidance on the 90th percentile storm",
  "2016",
  "read",
);
