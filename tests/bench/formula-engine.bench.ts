/** One storm depth changes, and 10,000 yards are designed again: by SITEDESIGN, and by HyperFormula 3.5.0 as formulas of a sheet. */
import { DetailedCellError, HyperFormula, type CellValue } from "hyperformula";
import { siteDesign } from "../../functions/worksheet/site-design.ts";
import { isCellError, type Cell } from "../../functions/worksheet/calling/cell.ts";
import { atLeast, interleaved, median, medianRatio, type BenchSection } from "./measure.ts";
import { columnsOf, MULCH_INCHES, siteRows, type TypedSite } from "./site-formulas.ts";

const YARDS = 10_000;
const ROUNDS = 15;
const WARM_UP = 5;

const sites = Array.from(
  { length: YARDS },
  (_, yard): TypedSite => [
    300 + (yard % 4000),
    0.2 + (yard % 50) * 0.05,
    2 + (yard % 2),
    3 + (yard % 6),
    yard % 13,
    yard % 4,
    24 + (yard % 3) * 12,
  ],
);
const column = (place: number): readonly (readonly Cell[])[] => sites.map((site) => [site[place]!]);
const columns = [0, 1, 2, 3, 4, 5, 6].map(column);

function designed(stormInches: number): readonly (readonly Cell[])[] {
  const [contributing, tested, factor, ponding, media, slope, drain] = columns;
  return siteDesign.evaluate([contributing, tested, factor, stormInches, null, ponding, media, MULCH_INCHES, slope, drain]);
}

/** The comparison is worth something only while both compute the same, to 9 digits, and refuse the same. */
function differ(engine: HyperFormula, sheet: number, stormInches: number): void {
  const labels = siteDesign.result.values.map(({ label }) => label);
  const places = columnsOf(labels);
  for (const [row, answers] of designed(stormInches).entries()) {
    for (const [place, ours] of answers.entries()) {
      const theirs = engine.getCellValue({ sheet, row, col: places[place]! });
      if (!isSame(ours, theirs))
        throw new Error(`Yard ${row + 1} differs in ${labels[place]}: ${JSON.stringify(ours)} is not ${JSON.stringify(theirs)}.`);
    }
  }
}

function isSame(ours: Cell, theirs: CellValue): boolean {
  if (isCellError(ours)) return theirs instanceof DetailedCellError;
  // Ours says why a yard does not fit; the formula says it in fewer words.
  if (typeof ours === "string") return typeof theirs === "string" && (ours === "fits") === (theirs === "fits");
  return typeof ours === "number" && typeof theirs === "number" && Math.abs(ours - theirs) <= 1e-9 * Math.abs(ours);
}

export const formulaEngine: BenchSection = {
  title: `One storm depth changed under ${YARDS} yards, beside a JavaScript formula engine`,
  async measure() {
    const engine = HyperFormula.buildFromSheets(
      { Program: [[1]], Yards: siteRows(sites) },
      { licenseKey: "gpl-v3", precisionRounding: 14 },
    );
    const [shared, yards] = [{ sheet: engine.getSheetId("Program")!, row: 0, col: 0 }, engine.getSheetId("Yards")!];
    let storm = 1;
    const recalculate = (): void => {
      storm = storm === 1 ? 1.25 : 1;
      engine.setCellContents(shared, storm);
    };
    for (const inches of [1.25, 1]) {
      engine.setCellContents(shared, inches);
      differ(engine, yards, inches);
    }
    const [ours = [], theirs = []] = await interleaved(
      [
        { name: "SITEDESIGN", run: () => designed(storm) },
        { name: "HyperFormula", run: recalculate },
      ],
      ROUNDS,
      WARM_UP,
    );
    engine.destroy();
    return {
      rows: [
        { name: "one call of SITEDESIGN", value: median(ours), unit: "ms" },
        atLeast(
          {
            name: "the same as formulas in HyperFormula 3.5.0 / SITEDESIGN",
            value: median(theirs),
            unit: "ms",
            ratio: medianRatio(theirs, ours),
          },
          200,
        ),
      ],
    };
  },
};
