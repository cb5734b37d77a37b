/** Names that a workbook gives to cells. The grid computes by them. */
import type { WriteOptions } from "hucre/xlsx";
import { fromFileSpelling, inFileSpelling } from "../../file/formula-spelling.ts";

type NamedRange = NonNullable<WriteOptions["namedRanges"]>[number];

/** A name as the grid keeps it; one of a single sheet says which. */
export interface GridName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly comment?: string;
  readonly localSheetId?: string;
}

const WHOLE_WORKBOOK = "AllDefaultWorkbook";

export function fileNames(names: readonly GridName[], sheetNames: ReadonlyMap<string, string>): readonly NamedRange[] {
  return names.flatMap(({ name, formulaOrRefString, comment, localSheetId }) => {
    const scope = localSheetId === undefined || localSheetId === WHOLE_WORKBOOK ? undefined : sheetNames.get(localSheetId);
    // The sheet of a name of one sheet is gone: so is the name.
    if (scope === undefined && localSheetId !== undefined && localSheetId !== WHOLE_WORKBOOK) return [];
    return [
      {
        name,
        range: inFileSpelling(formulaOrRefString),
        ...(comment === undefined || comment === "" ? {} : { comment }),
        ...(scope === undefined ? {} : { scope }),
      },
    ];
  });
}

/** Those that a spreadsheet makes for itself (print areas, filters) begin with "_xlnm." and are made again. */
export function gridNames(names: readonly NamedRange[], sheetIds: ReadonlyMap<string, string>): Record<string, GridName> {
  return Object.fromEntries(
    names
      .filter(({ name }) => !name.startsWith("_xl"))
      .map(({ name, range, comment, scope }, at) => {
        const id = `name ${at + 1}`;
        const localSheetId = scope === undefined ? WHOLE_WORKBOOK : (sheetIds.get(scope) ?? WHOLE_WORKBOOK);
        return [id, { id, name, formulaOrRefString: fromFileSpelling(range), comment: comment ?? "", localSheetId }];
      }),
  );
}
