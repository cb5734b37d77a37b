import { largestOf, smallestOf } from "../extremes.ts";
import { takenInchesPerHour, WIDE_SPREAD_RATIO } from "../infiltration/design-rate.ts";
import { readingsWithWater } from "../infiltration/drop-rate.ts";
import { holeRateInchesPerHour } from "../infiltration/hole-rate.ts";
import { ilri16, riversideLidHandbook } from "../published/documents.ts";
import { commonPractice } from "../published/source.ts";
import { sustainableTechnologiesWiki } from "../published/sustainable-technologies-wiki.ts";
import { count, depth, listOf, minutes, rate, text, units, type ArgumentRule, type ResultValue } from "./calling/arguments.ts";
import { isCellError, type Cell, type CellError } from "./calling/cell.ts";
import { isBlank } from "./calling/reading.ts";
import { rowOf } from "./calling/results.ts";
import type { Speaker } from "./calling/speaker.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";
import { readingsFrom } from "./hole-readings.ts";
import { listsDiffer, readIn, rowsOfSite } from "./site-lists.ts";

type Table = readonly (readonly Cell[])[];

const holeSiteId = text("holeSiteIds", "Site ID of a hole");
const timeOf = minutes("minutes", "Time in minutes");
const waterOf = depth("waterDepths", "Water depth");
const diameterOf = depth("diameters", "Hole diameter").moreThan(0);

/** Blank where no hole of the yard has been read yet. */
const orBlank = (value: ResultValue<number>): ResultValue<number | ""> => value;

const riversideExample = riversideLidHandbook.place("appendix A, example");

export const siteRate = worksheetFunction({
  name: "SITERATE",
  summary: "The tested infiltration rate of each yard: a row a yard, from one list of all yards' hole tests.",
  arguments: [text("siteId", "Site ID"), listOf(holeSiteId), listOf(timeOf), listOf(waterOf), listOf(diameterOf), units],
  result: rowOf([count("Holes tested"), orBlank(rate("Tested rate")), orBlank(rate("Lowest rate")), orBlank(rate("Highest rate"))]),
  sources: [
    ilri16.chapter("12, inverted auger hole"),
    riversideExample,
    sustainableTechnologiesWiki.place('page "Percolation test", two readings within 10 percent'),
    commonPractice("The geometric mean of several tests"),
  ],
  cautions: [
    {
      when: ({ siteId, holeSiteIds, minutes: times, waterDepths, diameters }) => {
        const rates = ratesOf(siteId, holeSiteIds, times, waterDepths, diameters, "us");
        return !isCellError(rates) && rates.length > 1 && largestOf(rates) > WIDE_SPREAD_RATIO * smallestOf(rates);
      },
      says: `The highest tested rate is more than ${WIDE_SPREAD_RATIO} times the lowest: the yard may hold two soils. Test again between the holes, or take the lowest.`,
    },
  ],
  example: {
    arguments: [
      "Y-001",
      [["Y-002"], ["Y-001"]],
      [
        [0, 20],
        [0, 10],
      ],
      [
        [30, 20],
        [47.75, 46.25],
      ],
      [[6], [8]],
    ],
    result: [[1, 0.37, 0.37, 0.37]],
    within: 0.005,
    from: riversideExample,
  },
  equation: [
    "f of a hole = r / (2 dt) x ln[(2 H1 + r) / (2 H2 + r)]   (in/h; H water depth before and after and r = diameter / 2 in in, dt in h)",
    "tested rate = (f1 x f2 x ... x fn)^(1/n)   (in/h; geometric mean of the yard's holes, not reduced)",
  ],
  working: ({ siteId, holeSiteIds: ids, minutes: times, waterDepths: depths, diameters }, { system }) =>
    stepsOf(ratesOf(siteId, ids, times, depths, diameters, system), (rates) =>
      rates.map((value, place): WorkingStep => ({ label: `Hole ${place + 1}, infiltration rate`, value, kind: "rate" })),
    ),
  calculate({ siteId, holeSiteIds: ids, minutes: times, waterDepths: depths, diameters }, { system }) {
    const rates = ratesOf(siteId, ids, times, depths, diameters, system);
    if (isCellError(rates)) return rates;
    if (rates.length === 0) return [0, "", "", ""] as const;
    return [rates.length, takenInchesPerHour(rates, "geometric mean"), smallestOf(rates), largestOf(rates)] as const;
  },
});

/** The rates of one yard's holes, each from its own readings. A hole without readings has not been tested yet. */
function ratesOf(
  siteId: string,
  ids: Table,
  times: Table,
  depths: Table,
  diameters: Table,
  system: Speaker["system"],
): readonly number[] | CellError {
  const differ =
    listsDiffer("Site IDs of the holes", ids, "Times in minutes", times) ??
    listsDiffer("Site IDs of the holes", ids, "Water depths", depths) ??
    listsDiffer("Site IDs of the holes", ids, "Hole diameters", diameters);
  if (differ !== undefined) return differ;
  const rates: number[] = [];
  for (const [place, row] of rowsOfSite(ids, siteId).entries()) {
    const [timeCells, depthCells] = [times[row]!, depths[row]!];
    if ([...timeCells, ...depthCells].every(isBlank)) continue;
    const rate = rateOf(timeCells, depthCells, diameters[row]?.[0], system);
    if (isCellError(rate)) return { ...rate, sentence: rate.sentence === "" ? "" : `Hole ${place + 1}: ${rate.sentence}` };
    rates.push(rate);
  }
  return rates;
}

function rateOf(timeCells: readonly Cell[], depthCells: readonly Cell[], diameterCell: Cell | undefined, system: Speaker["system"]) {
  const across = readIn<number>(diameterOf.rule, diameterCell, system, "Hole diameter");
  if (isCellError(across)) return across;
  const read = (rule: ArgumentRule, cells: readonly Cell[]) =>
    cells.map((cell, place) => (isBlank(cell) ? null : readIn<number>(rule, cell, system, `${rule.label} ${place + 1}`)));
  const [minutesRead, waterDepths] = [read(timeOf.rule, timeCells), read(waterOf.rule, depthCells)];
  const fault = [...minutesRead, ...waterDepths].find(isCellError);
  if (fault !== undefined) return fault;
  const readings = readingsFrom({ minutes: minutesRead as (number | null)[], waterDepths: waterDepths as (number | null)[] });
  return isCellError(readings) ? readings : holeRateInchesPerHour(readingsWithWater(readings), across);
}
