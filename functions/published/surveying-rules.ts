import { PublishedDocument } from "./source.ts";

/** A surveyor's page with a worked example of Simpson's rule. */
export const simpsonsRulePage = new PublishedDocument(
  "Calculation of areas in surveying, Simpson's rule, a surveying web page",
  "December 2017",
  "read",
);

/** A review book's worked example of the trapezoidal rule. */
export const besavillaSurveying = new PublishedDocument("Besavilla, Surveying, areas of irregular boundaries", "page 5-177", "read");
