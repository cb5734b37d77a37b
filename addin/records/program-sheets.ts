import { asBuiltSheet } from "./as-built.ts";
import { changeLogSheet } from "./change-log.ts";
import { designSheet } from "./design.ts";
import { digDaysSheet } from "./dig-days.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import { followUpsSheet } from "./follow-ups.ts";
import { holeTestsSheet } from "./hole-tests.ts";
import { plantingSheet } from "./planting.ts";
import { plantsSheet } from "./plants.ts";
import { pricesSheet } from "./prices.ts";
import { programSheet } from "./program.ts";
import { rainRecordSheet } from "./rain-record.ts";
import { reportSheet } from "./report.ts";
import { reportYardsSheet } from "./report-yards.ts";
import { rulesSheet } from "./rules.ts";
import type { Sheet } from "./sheet.ts";
import { sitesSheet } from "./sites.ts";
import { surfacesSheet } from "./surfaces.ts";
import { visitsSheet } from "./visits.ts";

/** Every sheet of records, in the order of the tabs: the job from first call to yearly look, then what it rests on. */
export const recordSheets: readonly Sheet[] = [
  programSheet,
  sitesSheet,
  surfacesSheet,
  visitsSheet,
  holeTestsSheet,
  designSheet,
  plantingSheet,
  estimateLinesSheet,
  digDaysSheet,
  asBuiltSheet,
  followUpsSheet,
  reportSheet,
  reportYardsSheet,
  rulesSheet,
  pricesSheet,
  plantsSheet,
  rainRecordSheet,
  changeLogSheet,
];

/** Sheets that formulas fill from first column to last: nothing is typed there. */
export const computedSheets: readonly Sheet[] = recordSheets.filter(({ columns }) =>
  Object.values(columns).every(({ role }) => role === "result"),
);

/** Formulas find a setting by its cell, and rain and changes are read one after the other. */
export const sheetsKeptInOrder: readonly Sheet[] = recordSheets.filter(({ isKeptInOrder }) => isKeptInOrder === true);
