import { PublishedDocument } from "./source.ts";

/** The boundaries of clay, clay loam, loam, loamy sand and sand were read; the other lines are from memory. */
export const soilSurveyManual = new PublishedDocument("USDA, Soil Survey Manual, Agriculture Handbook 18", "2017", "from memory");

/** Says on which side of a class boundary a point of the line belongs: above it or to its right. */
export const benhamAhrensNettleton2009 = new PublishedDocument(
  "Benham, Ahrens and Nettleton, Clarification of Soil Texture Class Boundaries, USDA Natural Resources Conservation Service",
  "2009",
  "read",
);

/** The twelve classes of fine earth, from coarse to fine. */
export const TEXTURE_CLASSES = [
  "sand",
  "loamy sand",
  "sandy loam",
  "loam",
  "silt loam",
  "silt",
  "sandy clay loam",
  "clay loam",
  "silty clay loam",
  "sandy clay",
  "silty clay",
  "clay",
] as const;

export type TextureClass = (typeof TEXTURE_CLASSES)[number];

/** The classes that the tables of Rawls and others print: none has a row for silt. */
export type TabledTexture = Exclude<TextureClass, "silt">;

/** Prints a worked point of the triangle. */
export const idahoOnePlan = new PublishedDocument("Idaho OnePlan, soil texture triangle", "as printed online", "read");
