import { ownColumnsIn } from "../../records/own-columns.ts";
import { findPlace } from "../../records/place.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import type { CellValue } from "../../workbook/port.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** What people keep of a yard in columns of their own. */
export interface OwnCell {
  readonly sheet: string;
  readonly heading: string;
  readonly value: CellValue;
}

/** Of its row on Sites first, then of its other rows; blank cells are nobody's. */
export function ownCellsOf({ cells }: Pick<Program, "cells">, yard: Yard): readonly OwnCell[] {
  const rows: readonly { readonly sheet: Sheet; readonly row: number }[] = [
    { sheet: sitesSheet, row: yard.site.row },
    ...[yard.surfaces, yard.holeTests, yard.clumps, yard.estimateLines, yard.digDays, yard.asBuilt, yard.followUps].flat(),
  ];
  return rows.flatMap(({ sheet, row }) => {
    const values = cells.get(sheet.name) ?? [];
    const at = findPlace(sheet, values);
    if (!("place" in at)) return [];
    return ownColumnsIn(sheet, values[at.place.headingRow] ?? []).flatMap(({ heading, column }) => {
      const value = values[row]?.[column] ?? null;
      return isBlank(value) ? [] : [{ sheet: sheet.name, heading, value }];
    });
  });
}
