/**
 * Formulas over the rows of a column that are in use. A prepared range is mostly blank, and the embedded spreadsheet
 * compares every blank row with every other; down to the last row in use the answer is the same and comes at once.
 */
export class UsedRows {
  /** The column whose last filled cell is the last row in use. */
  constructor(private readonly column: string) {}

  /** The same rows of another column, for use inside `formula`. */
  of(column: string): string {
    // INDEX would answer with the cells as they were before the edit: it hands on a reference, which is not followed.
    return `FILTER(${column},${placesIn(column)}<=used)`;
  }

  /** 1, 2, 3 and so on down the rows in use, for use inside `formula`. */
  get places(): string {
    return `FILTER(${placesIn(this.column)},${placesIn(this.column)}<=used)`;
  }

  /** The formula with the number of rows in use at hand. */
  formula(expression: string): string {
    return `LET(used,MAX(1,(${this.column}<>"")*(${placesIn(this.column)})),${expression})`;
  }
}

/** By row numbers: the embedded spreadsheet refuses a SEQUENCE that would not fit below its cell. */
function placesIn(column: string): string {
  return `ROW(${column})-MIN(ROW(${column}))+1`;
}
