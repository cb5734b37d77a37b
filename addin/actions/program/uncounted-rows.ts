import { plainKey, plainWords } from "../../../functions/worksheet/calling/typed-words.ts";
import type { PreparedRows } from "../../records/prepared-rows.ts";
import type { SheetRecords } from "../../records/read-records.ts";
import { isBlank, type Sheet, type Slip } from "../../records/sheet.ts";
import { sitesSheet, type SiteRow } from "../../records/sites.ts";
import type { surfacesSheet } from "../../records/surfaces.ts";
import type { CellValue } from "../../workbook/port.ts";

/** A row that somebody typed and no formula counts, with the yards that may have to do without it. */
export interface UncountedRow extends Slip {
  readonly siteIds: readonly string[];
}

interface RowWithSite {
  readonly siteId: string | null;
}

/**
 * Rows of a sheet that belong to no yard: without a Site ID, with a pattern in place of one, with the ID in another
 * spelling, or below the rows that the formulas reach. A row that may belong to a yard is told to that yard: by an ID
 * that nearly fits, or, without an ID, by the row above it. Rows with an ID of no yard at all are told by `strays`.
 * Functions read an ID as we do; SUMIFS and its kin, which sum some sheets, stumble over a space before or after it.
 */
export function uncountedRows<S extends Sheet>(
  { rows, place }: SheetRecords<S>,
  siteIds: readonly string[],
  prepared: PreparedRows,
  by: "functions" | "sums" = "functions",
): readonly UncountedRow[] {
  if (place === null) return [];
  const { sheet, firstRow } = place;
  const reach = firstRow + (prepared.get(sheet) ?? sheet.rows);
  const known = new Set(siteIds.map(plainKey));
  return rows.flatMap((row, index): UncountedRow[] => {
    const { siteId } = row.record as RowWithSite;
    const where = row.at("siteId");
    const is = (sentence: string, ids: readonly string[], instead?: string): UncountedRow[] => [
      { where, sentence, siteIds: ids, ...(instead === undefined ? {} : { instead }) },
    ];
    if (siteId === null) {
      const above = rows[index - 1];
      const id = above !== undefined && above.row === row.row - 1 ? (above.record as RowWithSite).siteId : null;
      return is(
        "Site ID is blank: this row counts for no yard. Type the yard's ID, or clear the row.",
        id !== null && known.has(plainKey(id)) ? [id] : [],
      );
    }
    if (known.has(plainKey(siteId))) {
      if (row.row >= reach)
        return is(
          `This row stands below row ${reach}, down to which the formulas of ${sheet.name} reach: it is not counted. Check the workbook and let it prepare more rows.`,
          [siteId],
        );
      const typed = String((row.cells as { readonly siteId?: CellValue }).siteId ?? "");
      return by === "functions" || typed === plainWords(typed)
        ? []
        : is(`Site ID "${typed.slice(0, 40)}" has a space too many: Report does not count this row. Type ${siteId}.`, [siteId], siteId);
    }
    if (/[*?]/.test(siteId))
      return is(
        `Site ID "${siteId.slice(0, 40)}" is a pattern, not an ID: this row counts for no yard. Type one yard's ID.`,
        siteIds.filter((id) => patternOf(siteId).test(id)),
      );
    const alike = siteIds.filter((id) => plain(id) === plain(siteId));
    return alike.length === 0
      ? []
      : is(
          `Site ID "${siteId.slice(0, 40)}" is spelled otherwise than "${alike[0] ?? ""}": this row is not counted. Type it the same way.`,
          alike,
          alike.length === 1 ? alike[0] : undefined,
        );
  });
}

/** Surfaces that somebody began: named, and neither measured nor said what they are. */
export function unmeasuredSurfaces({ rows }: SheetRecords<typeof surfacesSheet>): readonly UncountedRow[] {
  return rows.flatMap(({ record: { siteId }, cells, at }): UncountedRow[] => {
    const isBegun = !isBlank(cells.surface) || !isBlank(cells.share);
    if (siteId === null || !isBegun || !isBlank(cells.area) || !isBlank(cells.cover)) return [];
    return [{ where: at("area"), sentence: "Area and cover are blank: this surface is not counted.", siteIds: [siteId] }];
  });
}

/** Rows of Sites that are no yard yet, and yards whose numbers nobody said the units of. */
export function uncountedSites({ rows, place }: SheetRecords<typeof sitesSheet>, prepared: PreparedRows): readonly UncountedRow[] {
  if (place === null) return [];
  const reach = place.firstRow + (prepared.get(sitesSheet) ?? sitesSheet.rows);
  return rows.flatMap((row: SiteRow): UncountedRow[] => {
    const { siteId } = row.record;
    if (siteId === null)
      return [
        {
          where: row.at("siteId"),
          sentence: "Site ID is blank: this row is no yard. Type an ID that was never used, or clear the row.",
          siteIds: [],
        },
      ];
    return [
      ...(STANDS_FOR_OTHERS.test(siteId)
        ? [
            {
              where: row.at("siteId"),
              sentence: `Site ID "${siteId.slice(0, 40)}" stands for other IDs too, because of a sign in it (* ? ~ < > =): Report adds their rows to this yard. Give the yard an ID of letters and digits, here and wherever it stands.`,
              siteIds: [siteId],
            },
          ]
        : []),
      ...(isBlank(row.cells.units)
        ? [
            {
              where: row.at("units"),
              sentence: "Units is blank: every number of this yard is taken for in, ft and sq ft. Choose us or metric.",
              siteIds: [siteId],
            },
          ]
        : []),
      ...(row.row < reach
        ? []
        : [
            {
              where: row.at("siteId"),
              sentence: `This yard stands below row ${reach}, down to which the formulas reach: it is not on Design. Check the workbook and let it prepare more rows.`,
              siteIds: [siteId],
            },
          ]),
    ];
  });
}

/** What the criteria of SUMIFS and its kin take for a pattern or a comparison. */
const STANDS_FOR_OTHERS = /[*?~]|^[<>=]/;

/** "Y-0*" as a spreadsheet reads it: any letters for *, one for ?. */
function patternOf(text: string): RegExp {
  const escaped = text.replaceAll(/[.+^${}()|[\]\\]/g, String.raw`\$&`);
  return new RegExp(`^${escaped.replaceAll("*", ".*").replaceAll("?", ".")}$`, "iu");
}

function plain(siteId: string): string {
  return siteId.toLowerCase().replaceAll(/\s+/g, "");
}
