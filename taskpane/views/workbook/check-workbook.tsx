import { useEffect, useState } from "preact/hooks";
import { checkWorkbook, repairWorkbook } from "../../../addin/actions/workbook/check-workbook.ts";
import type { Finding } from "../../../addin/actions/workbook/finding.ts";
import type { Workbook } from "../../../addin/workbook/port.ts";
import { Button, MessageBar } from "../../parts/form.tsx";
import type { GoTo } from "../../parts/slip-list.tsx";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import { text } from "../../text.ts";
import type { ViewProps } from "../../view.ts";
import { workbookText } from "./text.ts";

/** Looks the workbook over and shows what each repair will do before any is made. */
export function CheckWorkbook({
  workbook,
  write,
  goTo,
  checksAtOnce = false,
}: {
  readonly workbook: Workbook;
  readonly write: ViewProps["write"];
  readonly goTo?: GoTo;
  readonly checksAtOnce?: boolean;
}) {
  const { check } = workbookText;
  const [found, show] = useState<readonly Finding[] | "checking" | { readonly fault: string } | null>(null);
  const look = async () => {
    show("checking");
    try {
      show(await checkWorkbook(workbook));
    } catch (error) {
      show({ fault: sentenceOfError(error) });
    }
  };
  useEffect(() => {
    if (checksAtOnce) void look();
  }, [checksAtOnce]);
  const repairs = Array.isArray(found) ? (found as readonly Finding[]).filter(({ repair }) => repair !== undefined) : [];
  const repairAll = () => write(async () => show(await repairWorkbook(workbook, repairs)), check.done(repairs.length));
  return (
    <section aria-label={check.title}>
      <h2>{check.title}</h2>
      <p class="hint">{check.explain}</p>
      <div class="buttons">
        <Button onClick={look}>{check.button}</Button>
      </div>
      <p role="status">
        {found === "checking"
          ? check.checking
          : Array.isArray(found)
            ? found.length === 0
              ? check.nothing
              : check.found(found.length)
            : ""}
      </p>
      {found !== null && typeof found === "object" && "fault" in found && <MessageBar kind="error">{found.fault}</MessageBar>}
      {Array.isArray(found) && found.length > 0 && (
        <ul class="findings">
          {(found as readonly Finding[]).map((finding) => (
            <FindingItem key={finding.sentence} finding={finding} goTo={goTo} />
          ))}
        </ul>
      )}
      {repairs.length > 0 && (
        <>
          <Button kind="primary" onClick={repairAll}>
            {check.repair(repairs.length)}
          </Button>
          <p class="hint">{check.next}</p>
        </>
      )}
    </section>
  );
}

function FindingItem({ finding: { sentence, where, repair }, goTo }: { readonly finding: Finding; readonly goTo: GoTo | undefined }) {
  const { check } = workbookText;
  return (
    <li>
      <p>{sentence}</p>
      <p class="hint">{repair === undefined ? check.byHand : `${check.willDo} ${repair.says}`}</p>
      {where !== undefined && goTo !== undefined && (
        <Button kind="quiet" aria-label={`${text.goToCell}: ${sentence}`} onClick={() => goTo(where)}>
          {text.goToCell}
        </Button>
      )}
    </li>
  );
}
