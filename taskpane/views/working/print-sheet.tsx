import type { Working } from "../../../addin/actions/working/show-working.ts";
import type { PrintedDocument } from "../../../addin/actions/export/printed-page.ts";
import { printPaper } from "../../parts/print-paper.tsx";
import { workingText as words } from "./text.ts";
import { WorkingSheet } from "./working-sheet.tsx";

/** Prints the working alone, as a calculation sheet; what stands on it, where the page may not print. */
export function printSheet(working: Working, date: string): Promise<PrintedDocument | null> {
  return printPaper(<Paper working={working} date={date} />);
}

function Paper({ working, date }: { readonly working: Working; readonly date: string }) {
  return (
    <>
      <h1>{words.sheetTitle}</h1>
      <dl class="working-lines">
        <div class="working-line">
          <dt>{words.cell}</dt>
          <dd>{working.address}</dd>
        </div>
        <div class="working-line">
          <dt>{words.date}</dt>
          <dd>{date}</dd>
        </div>
      </dl>
      <WorkingSheet working={working} linked={false} />
      <p class="working-footer">{words.footer}</p>
    </>
  );
}
