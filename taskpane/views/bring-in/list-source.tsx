import { useId, useState } from "preact/hooks";
import { cellsOfText } from "../../../addin/actions/bring-in/list-table.ts";
import type { CellValue, Workbook } from "../../../addin/workbook/port.ts";
import { ChoiceField, MessageBar, Segmented } from "../../parts/form.tsx";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import { drawn } from "../../parts/while-writing.ts";
import { bringInText } from "./text.ts";

export type ListCells = readonly (readonly CellValue[])[];

/** A sheet of the file that was chosen. */
interface FileSheet {
  readonly name: string;
  readonly cells: ListCells;
}

const LARGEST_FILE_BYTES = 50_000_000;

/** A file, the clipboard or a sheet: whatever is chosen is handed on as cells, and null while there are none. */
export function ListSource({ workbook, onCells }: { readonly workbook: Workbook; readonly onCells: (cells: ListCells | null) => void }) {
  const [kind, choose] = useState<keyof typeof bringInText.sources>("file");
  const [fault, say] = useState<string | null>(null);
  const take = (cells: ListCells | { readonly sentence: string } | null) => {
    say(cells !== null && "sentence" in cells ? cells.sentence : null);
    onCells(cells === null || "sentence" in cells ? null : cells);
  };
  return (
    <>
      <Segmented
        label={bringInText.source}
        value={kind}
        choices={(Object.keys(bringInText.sources) as (typeof kind)[]).map((value) => ({ value, says: bringInText.sources[value] }))}
        onChoose={(chosen) => {
          choose(chosen);
          take(null);
        }}
      />
      {kind === "file" && <FileSource onCells={take} />}
      {kind === "paste" && <PasteSource onText={(text) => take(text.trim() === "" ? null : cellsOfText(text))} />}
      {kind === "sheet" && <SheetSource workbook={workbook} onCells={take} />}
      {fault !== null && <MessageBar kind="error">{fault}</MessageBar>}
    </>
  );
}

type Take = (cells: ListCells | { readonly sentence: string } | null) => void;

function FileSource({ onCells }: { readonly onCells: Take }) {
  const id = useId();
  const [reading, setReading] = useState("");
  const [sheets, show] = useState<readonly FileSheet[]>([]);
  const [chosen, choose] = useState<string | null>(null);
  const open = async (file: File | undefined) => {
    if (file === undefined) return;
    show([]);
    onCells(null);
    setReading(bringInText.reading(file.name));
    await drawn();
    const read = await sheetsOf(file).catch((error: unknown) => ({ sentence: sentenceOfError(error) }));
    setReading("");
    if ("sentence" in read) return onCells(read);
    show(read);
    choose(read[0]?.name ?? null);
    onCells(read[0]?.cells ?? null);
  };
  return (
    <>
      <div class="field">
        <label class="label" for={id}>
          {bringInText.file}
        </label>
        <input
          class="input"
          id={id}
          type="file"
          accept=".xlsx,.csv,.tsv,.txt"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
        <p class="hint" role="status">
          {reading}
        </p>
      </div>
      {sheets.length > 1 && (
        <ChoiceField
          label={bringInText.fileSheet}
          value={chosen}
          choices={sheets.map(({ name }) => ({ value: name, says: name }))}
          onChoose={(name) => {
            choose(name);
            onCells(sheets.find((sheet) => sheet.name === name)?.cells ?? null);
          }}
        />
      )}
    </>
  );
}

async function sheetsOf(file: File): Promise<readonly FileSheet[] | { readonly sentence: string }> {
  if (file.size > LARGEST_FILE_BYTES) return { sentence: bringInText.tooLarge };
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (/\.xls[xm]?$/i.test(file.name)) {
    const { sheetsOfFile } = await import("../../../addin/actions/bring-in/list-file.ts");
    return sheetsOfFile(file.name, bytes);
  }
  const cells = textCells(bytes);
  return "sentence" in cells ? cells : [{ name: file.name, cells }];
}

function textCells(bytes: Uint8Array): ListCells | { readonly sentence: string } {
  try {
    return cellsOfText(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    return { sentence: bringInText.unreadable };
  }
}

function PasteSource({ onText }: { readonly onText: (text: string) => void }) {
  const id = useId();
  return (
    <div class="field">
      <label class="label" for={id}>
        {bringInText.paste}
      </label>
      <textarea class="input" id={id} rows={4} spellcheck={false} onInput={(event) => onText(event.currentTarget.value)} />
    </div>
  );
}

function SheetSource({ workbook, onCells }: { readonly workbook: Workbook; readonly onCells: Take }) {
  const [names, show] = useState<readonly string[] | null>(null);
  const [chosen, choose] = useState<string | null>(null);
  if (names === null) {
    workbook.sheetNames().then(show, (error: unknown) => onCells({ sentence: sentenceOfError(error) }));
    return null;
  }
  const open = async (name: string | null) => {
    choose(name);
    onCells(name === null ? null : ((await workbook.readSheets([name]))[0] ?? null));
  };
  return (
    <ChoiceField
      label={bringInText.workbookSheet}
      value={chosen}
      choices={names.map((name) => ({ value: name, says: name }))}
      blank={bringInText.choose}
      onChoose={(name) => void open(name)}
    />
  );
}
