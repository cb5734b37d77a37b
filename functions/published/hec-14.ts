import { PublishedDocument } from "./source.ts";

/** Equation 10.4 was read as quoted in full on an engineer's page; the design examples are from memory. */
export const hec14 = new PublishedDocument(
  "FHWA, Hydraulic Design of Energy Dissipators for Culverts and Channels, HEC-14",
  "3rd ed., 2006",
  "read",
);
