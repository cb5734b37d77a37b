import type { Injector } from "@univerjs/core";
import { CellAlertManagerService } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

export interface ErrorWords {
  readonly code: string;
  readonly sentence: string;
}

type Alerts = Pick<CellAlertManagerService, "showAlert">;

/** Pointing at a cell in error shows the function's own sentence in place of the grid's general one. */
export function explainErrors(injector: Injector, wordsAt: (sheetId: string, row: number, column: number) => ErrorWords | null): void {
  const alerts = reach<Alerts>(injector.get(CellAlertManagerService), "alerts", ["showAlert"]);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { subUnitId, row, col } = alert.location;
    const words = wordsAt(subUnitId, row, col);
    show(words === null ? alert : { ...alert, title: words.code, message: words.sentence });
  };
}
