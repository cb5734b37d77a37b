import { IUniverInstanceService, UniverInstanceType, type Injector, type Workbook } from "@univerjs/core";
import { SheetsDataValidationValidatorService } from "@univerjs/preset-sheets-data-validation";
import { reach } from "./reach.ts";

type Checks = Pick<SheetsDataValidationValidatorService, "validatorRanges">;

/** The grid checks changed cells against their drop-downs a moment later, and fails where their workbook or sheet is gone by then. */
export function checkOnlyWhatIsOpen(injector: Injector): void {
  const workbooks = injector.get(IUniverInstanceService);
  const checks = reach<Checks>(injector.get(SheetsDataValidationValidatorService), "check of drop-downs", ["validatorRanges"]);
  const check = checks.validatorRanges.bind(checks);
  checks.validatorRanges = async (unitId, sheetId, ranges) => {
    const workbook = workbooks.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return workbook?.getSheetBySheetId(sheetId) ? check(unitId, sheetId, ranges) : [];
  };
}
