import type { CellRange, Workbook } from "../../workbook/port.ts";

/** Something about the workbook that is not as the pane and the formulas need it, and what would put it right. */
export interface Finding {
  readonly sentence: string;
  readonly where?: CellRange;
  /** What a repair would do, in words, and the doing. Left out where only a person can decide. */
  readonly repair?: {
    readonly says: string;
    /** Formulas are written where they belong, and over nothing that anybody typed. */
    readonly isFormulaAlone?: boolean;
    readonly run: (workbook: Workbook) => Promise<void>;
  };
}
