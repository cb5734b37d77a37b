/** What is typed as `plainWords` reads it, as an expression: a spreadsheet's = ignores case, but no space. */
export function asWord(cells: string): string {
  return `TRIM(SUBSTITUTE(${cells},UNICHAR(160)," "))`;
}

/** A criterion of SUMIFS and its kin, which take no expression over a column. The word is within no other of its list. */
export function withSpaces(word: string): string {
  return `*${word}*`;
}

/** The same of each cell of a column. */
export function holds(cells: string, word: string): string {
  return `ISNUMBER(SEARCH("${word}",${cells}))`;
}
