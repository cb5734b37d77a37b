import { useEffect, useState } from "preact/hooks";
import { minutesOfToday, today } from "../../../addin/actions/dates.ts";
import { movedOn, readStanding, writeStanding } from "../../../addin/actions/program/standing-sheet.ts";
import { Button } from "../../parts/form.tsx";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import type { ViewProps } from "../../view.ts";
import { nextText } from "./text.ts";

const words = nextText.standing;

/** The same for every yard on a sheet, to filter, sort and pivot on; what moved on since is told. */
export function StandingLine({ program, workbook, write }: Pick<ViewProps, "program" | "workbook" | "write">) {
  const [standing, show] = useState<{ readonly old: number | null } | { readonly fault: string } | null>(null);
  useEffect(() => {
    let isCurrent = true;
    readStanding(workbook).then(
      (written) => isCurrent && show({ old: written === null ? null : movedOn(written, program, today(), minutesOfToday()).length }),
      (error: unknown) => isCurrent && show({ fault: sentenceOfError(error) }),
    );
    return () => {
      isCurrent = false;
    };
  }, [workbook, program]);
  if (standing === null) return null;
  if ("fault" in standing) return <p class="hint">{standing.fault}</p>;
  const { old } = standing;
  return (
    <section aria-label={words.title}>
      <p class="hint">{old === null ? words.explain : old === 0 ? words.upToDate : words.old(old)}</p>
      {old !== 0 && (
        <div class="buttons">
          <Button onClick={() => write(() => writeStanding(workbook, program, today(), minutesOfToday()), words.done)}>
            {old === null ? words.lay : words.anew}
          </Button>
        </div>
      )}
    </section>
  );
}
