import { useEffect, useState } from "preact/hooks";
import { latestChanges, type LoggedChange } from "../../../addin/actions/program/read-log.ts";
import { undoChange } from "../../../addin/actions/program/undo-change.ts";
import { isoDate } from "../../../addin/actions/dates.ts";
import { Button, MessageBar } from "../../parts/form.tsx";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import type { ViewProps } from "../../view.ts";
import { workbookText } from "./text.ts";

const CHANGES_SHOWN = 20;

/** The newest changes of the Change log, each with its undo; read again whenever the program is. */
export function LatestChanges({ program, workbook, write }: Pick<ViewProps, "program" | "workbook" | "write">) {
  const { changes } = workbookText;
  const [latest, show] = useState<readonly LoggedChange[] | { readonly fault: string } | null>(null);
  useEffect(() => {
    let isCurrent = true;
    latestChanges(workbook, CHANGES_SHOWN).then(
      (read) => isCurrent && show(read),
      (error: unknown) => isCurrent && show({ fault: sentenceOfError(error) }),
    );
    return () => {
      isCurrent = false;
    };
  }, [program, workbook]);
  return (
    <section aria-label={changes.title}>
      <h2>{changes.title}</h2>
      <p class="hint">{changes.explain}</p>
      {latest !== null && "fault" in latest && <MessageBar kind="error">{latest.fault}</MessageBar>}
      {Array.isArray(latest) && latest.length === 0 && <p>{changes.none}</p>}
      <ol class="changes">
        {Array.isArray(latest) &&
          (latest as readonly LoggedChange[]).map((logged) => (
            <li key={logged.change}>
              <p>{logged.what}</p>
              <p class="hint">
                {[when(logged.when), logged.by ?? changes.nobody, ...logged.siteIds, changes.cells(logged.cells)].join(" · ")}
              </p>
              <Button
                kind="quiet"
                aria-label={`${changes.undo}: ${logged.what}`}
                onClick={() => write((progress) => undoChange(workbook, logged.change, progress), changes.undone(logged.what))}
              >
                {changes.undo}
              </Button>
            </li>
          ))}
      </ol>
    </section>
  );
}

function when(moment: number | null): string {
  if (moment === null) return "";
  const minutes = Math.round((moment % 1) * 1440);
  const two = (part: number) => String(part).padStart(2, "0");
  return `${isoDate(Math.floor(moment))} ${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
