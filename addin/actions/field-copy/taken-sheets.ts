/** The sheets that a copy for the field takes along and brings back, and how a row of each is known again. */
import { asBuiltSheet } from "../../records/as-built.ts";
import { digDaysSheet } from "../../records/dig-days.ts";
import { estimateLinesSheet } from "../../records/estimate-lines.ts";
import { followUpsSheet } from "../../records/follow-ups.ts";
import { holeTestsSheet } from "../../records/hole-tests.ts";
import { plantingSheet } from "../../records/planting.ts";
import { plantsSheet } from "../../records/plants.ts";
import { pricesSheet } from "../../records/prices.ts";
import { programSheet } from "../../records/program.ts";
import { rulesSheet } from "../../records/rules.ts";
import type { KeyOf, Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import { surfacesSheet } from "../../records/surfaces.ts";
import { visitsSheet } from "../../records/visits.ts";

export interface TakenSheet<S extends Sheet = Sheet> {
  readonly sheet: S;
  /** The columns whose cells say which thing a row is about. A row in which one of them is typed over is another row. */
  readonly knownBy: readonly KeyOf<S>[];
  /**
   * What both sides do with a row. "cells" of one row may come from both sides. A row of a record of what was said or done
   * stays "whole": two of them add up, and are never mixed. There is "one" row of a thing and never two.
   */
  readonly rowsAre: "cells" | "whole" | "one";
}

const taken = <S extends Sheet>(each: TakenSheet<S>): TakenSheet => each as unknown as TakenSheet;

export const sitesTaken = taken<typeof sitesSheet>({ sheet: sitesSheet, knownBy: ["siteId"], rowsAre: "one" });

/** Their rows belong to yards, and only those of the chosen ones are taken. */
export const sheetsOfTakenYards: readonly TakenSheet[] = [
  sitesTaken,
  taken<typeof surfacesSheet>({ sheet: surfacesSheet, knownBy: ["siteId", "surface"], rowsAre: "cells" }),
  taken<typeof visitsSheet>({ sheet: visitsSheet, knownBy: ["siteId", "date", "step"], rowsAre: "whole" }),
  taken<typeof holeTestsSheet>({ sheet: holeTestsSheet, knownBy: ["siteId", "hole", "date"], rowsAre: "cells" }),
  taken<typeof plantingSheet>({
    sheet: plantingSheet,
    knownBy: ["siteId", "plant", "zone", "alongLength", "acrossWidth"],
    rowsAre: "cells",
  }),
  taken<typeof estimateLinesSheet>({ sheet: estimateLinesSheet, knownBy: ["siteId", "group", "item", "kind"], rowsAre: "cells" }),
  taken<typeof digDaysSheet>({ sheet: digDaysSheet, knownBy: ["siteId", "date", "entry", "who", "item"], rowsAre: "whole" }),
  taken<typeof asBuiltSheet>({ sheet: asBuiltSheet, knownBy: ["siteId", "date"], rowsAre: "cells" }),
  taken<typeof followUpsSheet>({ sheet: followUpsSheet, knownBy: ["siteId", "kind", "due"], rowsAre: "cells" }),
];

/** What every yard is computed with: taken whole. */
export const sheetsOfTakenProgram: readonly TakenSheet[] = [
  taken<typeof rulesSheet>({ sheet: rulesSheet, knownBy: ["rule", "comparison", "ifNotMet"], rowsAre: "one" }),
  taken<typeof pricesSheet>({ sheet: pricesSheet, knownBy: ["item"], rowsAre: "one" }),
  taken<typeof plantsSheet>({ sheet: plantsSheet, knownBy: ["scientificName"], rowsAre: "one" }),
];

/** Taken along as they are, and left as they are at home: two lists stand side by side there, and formulas know their cells. */
export const settingsTaken = taken<typeof programSheet>({ sheet: programSheet, knownBy: ["setting"], rowsAre: "one" });

export const sheetsBroughtBack: readonly TakenSheet[] = [...sheetsOfTakenYards, ...sheetsOfTakenProgram];
export const sheetsTaken: readonly TakenSheet[] = [...sheetsBroughtBack, settingsTaken];
