import { useState } from "preact/hooks";
import { isoDate, today } from "../../../addin/actions/dates.ts";
import { partMissing, reasonOf } from "../../../addin/actions/part-missing.ts";
import { ChooseYards } from "../../parts/choose-yards.tsx";
import { Button } from "../../parts/form.tsx";
import { saveFile } from "../../parts/save-file.ts";
import { drawn } from "../../parts/while-writing.ts";
import type { ViewProps } from "../../view.ts";
import { fieldCopyText } from "./text.ts";

const words = fieldCopyText.taking;
const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

export function TakeAlong({ program, workbook }: Pick<ViewProps, "program" | "workbook">) {
  const [chosen, choose] = useState<readonly string[]>([]);
  const [said, say] = useState("");
  const present = chosen.filter((siteId) => program.yards.some((yard) => yard.siteId === siteId));
  const take = async () => {
    if (present.length === 0) return say(words.chooseFirst);
    say(words.working);
    await drawn();
    try {
      const { copyFile } = await import("../../../addin/actions/field-copy/copy-file.ts");
      const fileName = fileNameOf(present);
      saveFile(fileName, await copyFile(workbook, present), XLSX_TYPE);
      say(words.saved(fileName));
    } catch (error) {
      say(words.failed(partMissing(error) ?? `${reasonOf(error)}.`));
    }
  };
  return (
    <>
      <ChooseYards program={program} legend={words.which} allSays={words.all} chosen={present} onChoose={choose} />
      <p class="hint">{words.personal}</p>
      <div class="buttons">
        <Button kind="primary" disabled={present.length === 0} onClick={take}>
          {words.button(present.length)}
        </Button>
      </div>
      <p role="status">{said}</p>
      <p class="hint">{words.fallback}</p>
    </>
  );
}

/** Nothing that a disk could refuse. */
function fileNameOf(siteIds: readonly string[]): string {
  const which = siteIds.length === 1 ? (siteIds[0] ?? "").replace(/[^A-Za-z0-9_-]+/g, "-").slice(0, 40) : `${siteIds.length}-yards`;
  return `field-copy-${which}-${isoDate(today())}.xlsx`;
}
