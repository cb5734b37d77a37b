/** Spreadsheets take names of at most 31 characters, none of them one of these. */
const LONGEST_NAME = 31;
const NOT_IN_NAMES = /[[\]:*?/\\]/g;

/** The name, with a number behind it where a sheet has it already. */
export function freeSheetName(wanted: string, taken: readonly string[], ending = ""): string {
  for (let number = 1; ; number += 1) {
    const last = number === 1 ? ending : `${ending} ${number}`;
    const name = wanted.replace(NOT_IN_NAMES, "-").slice(0, LONGEST_NAME - last.length) + last;
    if (!taken.some((other) => other.toLowerCase() === name.toLowerCase())) return name;
  }
}
