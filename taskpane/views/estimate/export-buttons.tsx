import { useState } from "preact/hooks";
import { today } from "../../../addin/actions/dates.ts";
import type { ExportName, PaperKind } from "../../../addin/actions/export/export-files.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { partMissing, reasonOf } from "../../../addin/actions/part-missing.ts";
import { freeSheetName } from "../../../addin/actions/workbook/free-sheet-name.ts";
import { Button } from "../../parts/form.tsx";
import { saveFile } from "../../parts/save-file.ts";
import type { ViewProps } from "../../view.ts";
import { copyText } from "../working/copy-text.ts";
import { estimateText } from "./text.ts";

const words = estimateText.exports;
const PAPERS = Object.keys(words.sheets) as PaperKind[];
const NAMES = Object.keys(words.names) as ExportName[];

/** A button a file, and the clipboard for a window that saves none. */
export function ExportButtons({
  program,
  yards,
  workbook,
  write,
}: Pick<ViewProps, "program" | "workbook" | "write"> & { readonly yards: readonly Yard[] }) {
  const [said, say] = useState("");
  const attempt = async (action: () => Promise<string>) => {
    if (yards.length === 0) return say(estimateText.many.chooseFirst);
    say(words.working);
    try {
      say(await action());
    } catch (error) {
      say(words.failed(partMissing(error) ?? `${reasonOf(error)}.`));
    }
  };
  const save = (name: ExportName) =>
    attempt(async () => {
      const { exportFile } = await writers();
      const file = await exportFile(name, program, yards, today());
      saveFile(file.fileName, file.content, file.mediaType);
      return words.saved(file.fileName);
    });
  const layOut = async (kind: PaperKind) => {
    const [only] = yards;
    if (only === undefined) return say(estimateText.many.chooseFirst);
    const wanted = `${words.sheets[kind]} ${yards.length === 1 ? only.siteId : `of ${yards.length} yards`}`;
    const name = freeSheetName(wanted, await workbook.sheetNames());
    return write(async () => {
      const { layOutPaper } = await writers();
      await layOutPaper(workbook, name, kind, program, yards, today());
    }, words.onSheet(name));
  };
  const copy = () =>
    attempt(async () => {
      const { estimateToPaste } = await writers();
      return (await copyText(estimateToPaste(program, yards, today()))) ? words.copied : words.notCopied;
    });
  return (
    <>
      <div class="export-buttons">
        {NAMES.map((name) => (
          <Button key={name} onClick={() => save(name)}>
            {words.names[name]}
          </Button>
        ))}
      </div>
      <p class="hint">{words.fallback}</p>
      <Button kind="quiet" onClick={copy}>
        {words.copy}
      </Button>
      <p class="hint">{words.onSheets}</p>
      <div class="export-buttons">
        {PAPERS.map((kind) => (
          <Button key={kind} kind="quiet" onClick={() => layOut(kind)}>
            {words.sheets[kind]}
          </Button>
        ))}
      </div>
      <p role="status">{said}</p>
    </>
  );
}

/** What writes files is loaded when the first one is asked for. */
function writers() {
  return import("../../../addin/actions/export/export-files.ts");
}
