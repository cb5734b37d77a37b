import { PublishedDocument } from "./source.ts";

/** Documents whose values stand where they are used; one with a table of values has a file of its own. */

/** The inputs of its examples were read in transcription, their answers are from memory. */
export const appliedHydrology = new PublishedDocument("Chow, Maidment and Mays, Applied Hydrology", "1988", "from memory");

/** The equation's printed form and its example could not be opened; the two standard rates were read elsewhere. */
export const buildingSoil = new PublishedDocument(
  "Stenn and others, Building Soil: Guidelines and Resources for Implementing Soil Quality and Depth BMP T5.13",
  "2016",
  "from memory",
);

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

/** Its heading was read; its method and its table of cities are from memory. */
export const epa841B09001 = new PublishedDocument(
  "US EPA, Technical Guidance on Implementing the Stormwater Runoff Requirements for Federal Projects, EPA 841-B-09-001",
  "December 2009",
  "from memory",
);

export const excelWorkday = new PublishedDocument("Microsoft, Excel function help, WORKDAY", "as printed online", "read");

export const handbookOfMathematicalFunctions = new PublishedDocument(
  "Abramowitz and Stegun, Handbook of Mathematical Functions",
  "1964",
  "from memory",
);

export const hawkins2002 = new PublishedDocument(
  "Hawkins, Jiang, Woodward, Hjelmfelt and Van Mullem, Runoff Curve Number Method: Examination of the Initial Abstraction Ratio",
  "2002",
  "from memory",
);

/** Equation 10.4 was read as quoted in full on an engineer's page; the design examples are from memory. */
export const hec14 = new PublishedDocument(
  "FHWA, Hydraulic Design of Energy Dissipators for Culverts and Channels, HEC-14",
  "3rd ed., 2006",
  "read",
);

export const hec22 = new PublishedDocument(
  "Federal Highway Administration, Urban Drainage Design Manual, Hydraulic Engineering Circular 22",
  "2nd ed., 2001",
  "from memory",
);

export const ilri16 = new PublishedDocument(
  "International Institute for Land Reclamation and Improvement, Drainage Principles and Applications, Publication 16",
  "2nd ed., 1994",
  "from memory",
);

export const losAngelesLidSample = new PublishedDocument(
  "City of Los Angeles, low impact development sample calculation sheet",
  "as printed online",
  "read",
);

export const nationalEngineeringHandbook630 = new PublishedDocument(
  "USDA Natural Resources Conservation Service, National Engineering Handbook, part 630",
  "chapter 10, 2004",
  "from memory",
);

/** Prints the simple method's runoff coefficient, 0.05 + 0.9 I (Schueler 1987). */
export const newHampshireEnvWq1504 = new PublishedDocument(
  "New Hampshire Code of Administrative Rules, Env-Wq 1504.10",
  "as printed online",
  "read",
);

export const nurserySpacingChart = new PublishedDocument("Nursery chart of plants for 100 sq ft by spacing", "as printed online", "read");

export const osha1926SubpartP = new PublishedDocument(
  "US Code of Federal Regulations, title 29, part 1926, subpart P",
  "current text",
  "from memory",
);

/** The document and its appendix were read as a listing; the numbers of the example are from memory. */
export const riversideLidHandbook = new PublishedDocument(
  "Riverside County (California), Design Handbook for Low Impact Development Best Management Practices",
  "September 2011",
  "from memory",
);

export const sdsuOpenChannelProblems = new PublishedDocument(
  "San Diego State University, CIVE 530, open-channel hydraulics, midterm solutions",
  "fall 2005",
  "read",
);

/** A surveyor's page with a worked example of Simpson's rule. */
export const simpsonsRulePage = new PublishedDocument(
  "Calculation of areas in surveying, Simpson's rule, a surveying web page",
  "December 2017",
  "read",
);

/** An examination question with its printed key: Simpson's rule over an even number of offsets, the last strip a trapezoid. */
export const surveyingExamination = new PublishedDocument(
  "A surveying examination in a public question bank, question 64713",
  "as printed online",
  "read",
);

/** Says what any vehicle may weigh on the interstate roads of the United States. */
export const fhwaVehicleWeights = new PublishedDocument(
  "FHWA, Questions and Answers About Vehicle Size and Weight, 23 CFR 658.17",
  "as printed online",
  "read",
);

/** A review book's worked example of the trapezoidal rule. */
export const besavillaSurveying = new PublishedDocument("Besavilla, Surveying, areas of irregular boundaries", "page 5-177", "read");

export const utahRainPercentile = new PublishedDocument(
  "Utah Division of Water Quality, guidance on the 90th percentile storm",
  "2016",
  "read",
);

export const wisconsinExtensionPages = new PublishedDocument(
  "University of Wisconsin Extension, rain garden web pages",
  "as printed online",
  "read",
);

/** A stored copy without a date; the count stands in K.S.A. 66-1804. */
export const kansasOneCall = new PublishedDocument("Kansas one-call center", "copy without a date", "read");
