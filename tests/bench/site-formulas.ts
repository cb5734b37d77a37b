/** A yard's basin as plain spreadsheet formulas: the equations of SITEDESIGN as printed in its reference, in US units. */
import {
  LARGEST_FLOOR_SHARE,
  LEAST_DESIGN_INCHES_PER_HOUR,
  LEAST_FLOOR_SQUARE_FEET,
  LONGEST_EMPTY_HOURS,
  SHALLOWEST_USUAL_PONDING_INCHES,
} from "../../functions/basin/design-limits.ts";
import { DESIGN_STORM_INCHES } from "../../functions/rainfall/likely-rain.ts";

/** Contributing area, tested rate, reduction factor, ponding, media, side slope and drain hours stand in A to G of a row. */
export type TypedSite = readonly [number, number, number, number, number, number, number];

/** Under every finished floor. */
export const MULCH_INCHES = 3;

/** Where the one storm depth of all yards stands. */
const STORM = "Program!$A$1";

const TYPED = ["area drained", "tested", "factor", "ponding", "media", "slope", "drain hours"] as const;

/** Keeps a limit that is met to the last digit on the passing side. */
const HAIR = "*1.000000001";
const LEAST_WIDTH = `SQRT(${LEAST_FLOOR_SQUARE_FEET}/(PI()/4*2))`;

const rim = (feet: string) => `PI()/4*(2*[width]+2*[slope]*${feet})*([width]+2*[slope]*${feet})`;
const volume = (feet: string) => `([Floor area]*${feet}+PI()/4*3*[width]*[slope]*${feet}^2+PI()/3*[slope]^2*${feet}^3)`;
/** What the floor takes of the storm at this ponding less what comes to it, and how that grows with the ponding. */
const surplus = (feet: string) => `(${volume(feet)}+[water in media]-[Runoff]-${STORM}/12*${rim(feet)})`;
const growth = (feet: string) =>
  `([Floor area]+PI()/4*6*[width]*[slope]*${feet}+PI()*[slope]^2*${feet}^2-${STORM}/12*PI()/4*(6*[slope]*[width]+8*[slope]^2*${feet}))`;

/** On the least floor, the ponding that just holds the storm, closer with each step: from inches to under a billionth of one. */
const STEPS = 8;
const steps = Array.from({ length: STEPS }, (_, step): readonly [string, string] => {
  const before = step === 0 ? "([ponding]/12)" : `[needed ${step}]`;
  return [`needed ${step + 1}`, `=${before}-${surplus(before)}/${growth(before)}`];
});

/** Beside what is typed; a name in brackets stands for the cell of its column in the same row. */
const COLUMNS: readonly (readonly [name: string, formula: string])[] = [
  ["Design rate", "=[tested]/[factor]"],
  ["Runoff", `=0.95*[area drained]*${STORM}/12`],
  ["Rule-of-thumb area", "=[area drained]*0.1"],
  ["held on each area, ft", `=([ponding]+0.25*[media]-${STORM})/12`],
  ["square term", "=PI()/4*2*[held on each area, ft]"],
  ["linear term", `=PI()/4*3*[slope]*[ponding]/12*([ponding]/12-2*${STORM}/12)`],
  ["short of", `=[Runoff]-PI()/4*4*([slope]*[ponding]/12)^2*([ponding]/36-${STORM}/12)`],
  ["least floor holds it", `=${LEAST_WIDTH}*([square term]*${LEAST_WIDTH}+[linear term])>=[short of]`],
  [
    "width",
    `=IF([held on each area, ft]<=0,NA(),IF([least floor holds it],${LEAST_WIDTH},(SQRT([linear term]^2+4*[square term]*[short of])-[linear term])/(2*[square term])))`,
  ],
  ["Floor area", "=PI()/4*2*[width]^2"],
  ["water in media", "=0.25*[media]/12*[Floor area]"],
  ["shallowest", `=MIN([ponding],${SHALLOWEST_USUAL_PONDING_INCHES})`],
  ["left at the shallowest", `=${surplus("([shallowest]/12)")}`],
  ...steps,
  [
    "Ponding depth used",
    `=IF(ISNA([width]),[ponding],IF([least floor holds it],IF([left at the shallowest]>=0,[shallowest],12*[needed ${STEPS}]),[ponding]))`,
  ],
  ["Rim area", `=${rim("([Ponding depth used]/12)")}`],
  ["ponding volume", `=${volume("([Ponding depth used]/12)")}`],
  ["Water held", "=[ponding volume]+[water in media]"],
  ["Drawdown", "=([Ponding depth used]+0.25*[media])/[Design rate]"],
  ["Dig volume in place", `=([ponding volume]+[Rim area]*${MULCH_INCHES}/12+[Floor area]*[media]/12)/27`],
  [
    "Status",
    `=IF(ISNA([width]),"no area holds it",IF(${STORM}${HAIR}<${DESIGN_STORM_INCHES.least},"storm too small",IF(${STORM}>${DESIGN_STORM_INCHES.most}${HAIR},"storm too large",IF([Ponding depth used]>[Design rate]*[drain hours]${HAIR},"drains too slowly",IF([Drawdown]>${LONGEST_EMPTY_HOURS}${HAIR},"empties too slowly",IF([Design rate]${HAIR}<${LEAST_DESIGN_INCHES_PER_HOUR},"soil too slow",IF([Floor area]>${LARGEST_FLOOR_SHARE}*[area drained]${HAIR},"floor too large","fits")))))))`,
  ],
];

const NAMES: readonly string[] = [...TYPED, ...COLUMNS.map(([name]) => name)];

/** Where each quantity that SITEDESIGN answers stands, in its order. */
export function columnsOf(labels: readonly string[]): readonly number[] {
  return labels.map((label) => placeOf(label));
}

/** Rows of the sheet Yards. */
export function siteRows(sites: readonly TypedSite[]): (number | string)[][] {
  const formulas = COLUMNS.map(([, formula]) => formula.replaceAll(/\[([^\]]+)\]/g, (_, name: string) => `${letters(placeOf(name))}#`));
  return sites.map((site, row) => [...site, ...formulas.map((formula) => formula.replaceAll("#", String(row + 1)))]);
}

function placeOf(name: string): number {
  const place = NAMES.indexOf(name);
  if (place < 0) throw new Error(`The sheet of yards has no column "${name}".`);
  return place;
}

function letters(place: number): string {
  return place < 26 ? String.fromCharCode(65 + place) : letters(Math.floor(place / 26) - 1) + letters(place % 26);
}
