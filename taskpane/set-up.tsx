import { useEffect, useState } from "preact/hooks";
import { bringSheetsBack, checkWorkbook } from "../addin/actions/workbook/check-workbook.ts";
import type { Progress } from "../addin/actions/program/progress.ts";
import type { Finding } from "../addin/actions/workbook/finding.ts";
import { refuseOldSpreadsheet, setUpWorkbook, sheetNamesOfProgram } from "../addin/actions/workbook/set-up-workbook.ts";
import type { Workbook } from "../addin/workbook/port.ts";
import { Button, MessageBar } from "./parts/form.tsx";
import { text } from "./text.ts";
import type { ViewProps } from "./view.ts";
import { CheckWorkbook } from "./views/workbook/check-workbook.tsx";

/** For a workbook that has none of the program's sheets: says what will be added before adding it. */
export function SetUp({ workbook, write }: { readonly workbook: Workbook; readonly write: ViewProps["write"] }) {
  return (
    <section class="page">
      <h1>{text.setUp.title}</h1>
      <p>{text.setUp.explain}</p>
      <SheetList names={sheetNamesOfProgram} />
      <Button kind="primary" onClick={() => write((progress) => setUp(workbook, progress), text.setUp.done)}>
        {text.setUp.button}
      </Button>
    </section>
  );
}

async function setUp(workbook: Workbook, progress: Progress): Promise<void> {
  await refuseOldSpreadsheet(workbook);
  await setUpWorkbook(workbook, progress);
}

/** Says what is missing, and shows what a repair would add before adding it. */
export function SheetsMissing({
  missing,
  workbook,
  write,
  readAgain,
}: {
  readonly missing: readonly string[];
  readonly workbook: Workbook;
  readonly write: ViewProps["write"];
  readonly readAgain: () => Promise<void>;
}) {
  return (
    <section class="page">
      <h1>{text.incomplete.title}</h1>
      <MessageBar kind="warning">{text.incomplete.explain}</MessageBar>
      <BringBack missing={missing} workbook={workbook} write={write} />
      <p>{text.incomplete.what}</p>
      <CheckWorkbook workbook={workbook} write={write} />
      <Button onClick={readAgain}>{text.readAgain}</Button>
    </section>
  );
}

/** What comes back with each sheet that is gone, before one tap brings it. */
function BringBack({
  missing,
  workbook,
  write,
}: {
  readonly missing: readonly string[];
  readonly workbook: Workbook;
  readonly write: ViewProps["write"];
}) {
  const [found, show] = useState<readonly Finding[]>([]);
  useEffect(() => {
    let isCurrent = true;
    checkWorkbook(workbook).then(
      (read) => isCurrent && show(read),
      () => isCurrent && show([]),
    );
    return () => {
      isCurrent = false;
    };
  }, [missing.join(), workbook]);
  const toAdd = found.filter(({ repair }) => repair !== undefined);
  return (
    <>
      {found.length === 0 ? (
        <SheetList names={missing} />
      ) : (
        <SheetList names={found.map(({ sentence, repair }) => repair?.says ?? sentence)} />
      )}
      {toAdd.length > 0 && (
        <Button kind="primary" onClick={() => write(async () => void (await bringSheetsBack(workbook)), text.incomplete.brought)}>
          {text.incomplete.bring(toAdd.length)}
        </Button>
      )}
    </>
  );
}

/** For a workbook that must not be written to: why, and what a person can do. */
export function LeftAlone({
  title,
  explain,
  names,
  readAgain,
}: {
  readonly title: string;
  readonly explain: string;
  readonly names: readonly string[];
  readonly readAgain: () => Promise<void>;
}) {
  return (
    <section class="page">
      <h1>{title}</h1>
      <MessageBar kind="warning">{explain}</MessageBar>
      <SheetList names={names} />
      <Button onClick={readAgain}>{text.readAgain}</Button>
    </section>
  );
}

function SheetList({ names }: { readonly names: readonly string[] }) {
  return names.length === 0 ? null : (
    <ul class="sheet-list">
      {names.map((name) => (
        <li key={name}>{name}</li>
      ))}
    </ul>
  );
}
