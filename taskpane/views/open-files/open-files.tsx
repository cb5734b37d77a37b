import { useState } from "preact/hooks";
import { today } from "../../../addin/actions/dates.ts";
import type { ExportedFile } from "../../../addin/actions/export/export-files.ts";
import { partMissing, reasonOf } from "../../../addin/actions/part-missing.ts";
import { ChooseYards } from "../../parts/choose-yards.tsx";
import { Fold } from "../../parts/fold.tsx";
import { Button, CheckField, Segmented } from "../../parts/form.tsx";
import { saveFile } from "../../parts/save-file.ts";
import { drawn } from "../../parts/while-writing.ts";
import type { ViewProps } from "../../view.ts";
import { openFilesText as words } from "./text.ts";

const LINES_SHOWN = 20;

interface Said {
  readonly sentence: string;
  /** What is not in the file, and why. */
  readonly leftOut?: readonly string[];
}

/** Files in formats that other programs read. */
export function OpenFiles({ program, workbook }: Pick<ViewProps, "program" | "workbook">) {
  const all = program.yards.map(({ siteId }) => siteId);
  // All, whatever is added meanwhile, until a person chooses.
  const [own, choose] = useState<readonly string[] | null>(null);
  const chosen = own ?? all;
  const [units, setUnits] = useState<"us" | "metric">("us");
  const [withPersons, setPersons] = useState(false);
  const [withOwnColumns, setOwn] = useState(false);
  const [said, say] = useState<Said>({ sentence: "" });
  const yards = program.yards.filter(({ siteId }) => chosen.includes(siteId));
  const make = async (file: () => Promise<{ readonly file: ExportedFile; readonly said: Said }>) => {
    say({ sentence: words.working });
    await drawn();
    try {
      const { file: made, said: about } = await file();
      saveFile(made.fileName, made.content, made.mediaType);
      say({ ...about, sentence: `${words.saved(made.fileName)} ${about.sentence}`.trim() });
    } catch (error) {
      say({ sentence: words.failed(partMissing(error) ?? `${reasonOf(error)}.`) });
    }
  };
  const map = () =>
    make(async () => {
      const { exportMap } = await writers();
      const file = exportMap(program, yards, { units, withPersons, withOwnColumns }, today());
      const leftOut = file.leftOut.map(({ siteId, sentence }) => `${siteId}: ${sentence}`);
      return { file, said: { sentence: words.points(yards.length - leftOut.length), leftOut } };
    });
  const calendar = () =>
    make(async () => {
      const { exportCalendar } = await writers();
      const file = await exportCalendar(workbook, yards, { withPersons }, today());
      return { file, said: { sentence: words.days(file.days) } };
    });
  const tables = () =>
    make(async () => {
      const { exportTables } = await writers();
      const file = await exportTables(workbook, today());
      return { file, said: { sentence: file.missing.join(" ") } };
    });
  const ofYards = (action: () => Promise<void>) => () => (yards.length === 0 ? say({ sentence: words.chooseFirst }) : action());
  const { leftOut = [] } = said;
  return (
    <Fold title={words.title}>
      <p class="hint">{words.explain}</p>
      <ChooseYards program={program} legend={words.which} allSays={words.all} chosen={chosen} onChoose={choose} />
      <Segmented
        label={words.units}
        value={units}
        choices={(["us", "metric"] as const).map((value) => ({ value, says: words.unitChoices[value] }))}
        onChoose={setUnits}
      />
      <CheckField label={words.persons} checked={withPersons} onChange={setPersons} />
      <CheckField label={words.own} checked={withOwnColumns} onChange={setOwn} />
      <p class="hint">{words.personal}</p>
      <div class="buttons">
        <Button onClick={ofYards(map)}>{words.map}</Button>
        <Button onClick={ofYards(calendar)}>{words.calendar}</Button>
        <Button onClick={tables}>{words.tables}</Button>
      </div>
      <p class="hint">{words.tablesExplain}</p>
      <p role="status">{said.sentence}</p>
      {leftOut.length > 0 && (
        <>
          <p class="label">{words.leftOut}</p>
          <ul class="bullets">
            {leftOut.slice(0, LINES_SHOWN).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
            {leftOut.length > LINES_SHOWN && <li>{words.more(leftOut.length - LINES_SHOWN)}</li>}
          </ul>
        </>
      )}
      <p class="hint">{words.fallback}</p>
    </Fold>
  );
}

/** What writes files is loaded when the first one is asked for. */
function writers() {
  return import("../../../addin/actions/export/export-files.ts");
}
