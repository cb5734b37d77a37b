/** A yard's basin as plain spreadsheet formulas: the equations of SITEDESIGN as printed in its reference, in US units. */

/** Contributing area, tested rate, reduction factor, ponding, media, side slope and drain hours stand in A to G of a row. */
export type TypedSite = readonly [number, number, number, number, number, number, number];

/** Under every finished floor. */
export const MULCH_INCHES = 3;

/** Where the one storm depth of all yards stands. */
const STORM = "Program!$A$1";

/** In H and on; `#` stands for the number of the row. */
const COLUMNS: readonly (readonly [name: string, formula: string])[] = [
  ["Design rate", "=B#/C#"],
  ["Ponding depth used", "=D#"],
  ["Runoff", `=0.95*A#*${STORM}/12`],
  ["Rule-of-thumb area", "=A#*0.1"],
  ["held on each area, ft", `=(I#+0.25*E#-${STORM})/12`],
  ["square term", "=PI()/4*2*L#"],
  ["linear term", `=PI()/4*3*F#*I#/12*(I#/12-2*${STORM}/12)`],
  ["short of", `=J#-PI()/4*4*(F#*I#/12)^2*(I#/36-${STORM}/12)`],
  ["width", "=IF(L#<=0,NA(),IF(O#<=0,0,(SQRT(N#^2+4*M#*O#)-N#)/(2*M#)))"],
  ["Floor area", "=PI()/4*2*P#^2"],
  ["Rim area", "=PI()/4*(2*P#+2*F#*I#/12)*(P#+2*F#*I#/12)"],
  ["ponding volume", "=Q#*I#/12+PI()/4*3*P#*F#*(I#/12)^2+PI()/3*F#^2*(I#/12)^3"],
  ["Water held", "=S#+0.25*E#/12*Q#"],
  ["Drawdown", "=(I#+0.25*E#)/H#"],
  ["Dig volume in place", `=(S#+R#*${MULCH_INCHES}/12+Q#*E#/12)/27`],
  ["Status", '=IF(ISNA(P#),"no area holds it",IF(I#<=H#*G#*1.000000001,"fits","drains too slowly"))'],
];

const TYPED_COLUMNS = 7;

/** Where each quantity that SITEDESIGN answers stands, in its order. */
export function columnsOf(labels: readonly string[]): readonly number[] {
  return labels.map((label) => TYPED_COLUMNS + COLUMNS.findIndex(([name]) => name === label));
}

/** Rows of the sheet Yards. */
export function siteRows(sites: readonly TypedSite[]): (number | string)[][] {
  return sites.map((site, row) => [...site, ...COLUMNS.map(([, formula]) => formula.replaceAll("#", String(row + 1)))]);
}
