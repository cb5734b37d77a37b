import type { GoTo } from "../../parts/slip-list.tsx";
import type { ViewProps } from "../../view.ts";
import { BringIn } from "../bring-in/bring-in.tsx";
import { FieldCopyView } from "../field-copy/field-copy.tsx";
import { OpenFiles } from "../open-files/open-files.tsx";
import { CheckWorkbook } from "./check-workbook.tsx";
import { LatestChanges } from "./latest-changes.tsx";
import { workbookText } from "./text.ts";
import "./workbook.css";

/** The workbook itself rather than a yard in it: whether it is whole, and what the pane changed in it. */
export function WorkbookView({
  program,
  workbook,
  write,
  goTo,
  checksAtOnce,
}: Pick<ViewProps, "program" | "workbook" | "write"> & {
  readonly goTo: GoTo;
  /** Whoever comes here to see a repair need not ask for it again. */
  readonly checksAtOnce: boolean;
}) {
  return (
    <>
      <CheckWorkbook workbook={workbook} write={write} goTo={goTo} checksAtOnce={checksAtOnce} />
      <BringIn program={program} workbook={workbook} write={write} />
      <FieldCopyView program={program} workbook={workbook} write={write} />
      <OpenFiles program={program} workbook={workbook} />
      <LatestChanges program={program} workbook={workbook} write={write} />
      <p>
        <a class="page-link" href="support.html" target="_blank" rel="noopener">
          {workbookText.support}
        </a>
      </p>
    </>
  );
}
