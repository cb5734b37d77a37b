import type { Workbook } from "../addin/workbook/workbook.ts";

/** A workbook that remembers whether anything was written through it, so that a failure can say how far it got. */
export interface RecordedWorkbook {
  readonly workbook: Workbook;
  readonly forget: () => void;
  readonly anyWritten: () => boolean;
}

export function recordWrites(inner: Workbook): RecordedWorkbook {
  let written = false;
  const noted = async (write: Promise<void>): Promise<void> => {
    await write;
    written = true;
  };
  return {
    workbook: {
      sheetNames: () => inner.sheetNames(),
      addSheets: (layouts) => noted(inner.addSheets(layouts)),
      read: (ranges) => inner.read(ranges),
      readSheets: (names) => inner.readSheets(names),
      readFormulas: (range) => inner.readFormulas(range),
      writeValues: (writes) => noted(inner.writeValues(writes)),
      writeFormulas: (writes) => noted(inner.writeFormulas(writes)),
      calculated: () => inner.calculated(),
      selection: () => inner.selection(),
      select: (range) => inner.select(range),
      onSelectionChanged: (listener) => inner.onSelectionChanged(listener),
      onCellsChanged: (listener) => inner.onCellsChanged(listener),
      readSetting: (key) => inner.readSetting(key),
      writeSetting: (key, text) => noted(inner.writeSetting(key, text)),
    },
    forget: () => {
      written = false;
    },
    anyWritten: () => written,
  };
}
