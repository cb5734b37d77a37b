/** Filters: the grid knows which rows one hides, and a file hides them besides. */
import type { IRange } from "@univerjs/core";
import type { WriteSheet } from "hucre/xlsx";
import { addressIn, areasIn } from "./areas.ts";

/** A filter as the grid keeps it. */
export interface GridFilter {
  readonly ref: IRange;
  readonly filterColumns?: readonly {
    readonly colId: number;
    readonly filters?: { readonly blank?: true; readonly filters?: readonly string[] };
  }[];
  readonly cachedFilteredOut?: readonly number[];
}

type FileFilter = NonNullable<WriteSheet["autoFilter"]>;

/** Only lists of values have a place in the file as it is written; by whatever rule, the rows that are out are hidden there. */
export function fileFilter({ ref, filterColumns = [] }: GridFilter): FileFilter {
  const columns = filterColumns.flatMap(({ colId, filters }) =>
    filters?.filters === undefined || filters.blank === true ? [] : [{ colIndex: colId - ref.startColumn, filters: [...filters.filters] }],
  );
  return { range: addressIn(ref), ...(columns.length === 0 ? {} : { columns }) };
}

/** `hidden` are the rows that the file hides; those that its filter may hide are the filter's. */
export function gridFilter(filter: FileFilter | undefined, hidden: readonly number[]): GridFilter | null {
  const [ref] = areasIn(filter?.range ?? "");
  if (filter === undefined || ref === undefined) return null;
  const filterColumns = (filter.columns ?? []).flatMap(({ colIndex, filters }) => {
    const colId = ref.startColumn + colIndex;
    return filters === undefined || colId > ref.endColumn ? [] : [{ colId, filters: { filters } }];
  });
  const out = filterColumns.length === 0 ? [] : hidden.filter((row) => row > ref.startRow && row <= ref.endRow);
  return { ref, filterColumns, cachedFilteredOut: out };
}
