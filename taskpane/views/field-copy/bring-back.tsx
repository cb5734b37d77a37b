import { useEffect, useId, useMemo, useState } from "preact/hooks";
import { bringBack } from "../../../addin/actions/field-copy/bring-back.ts";
import { isoDate } from "../../../addin/actions/dates.ts";
import type { FieldCopy } from "../../../addin/actions/field-copy/field-copy.ts";
import type { Choice, Difference } from "../../../addin/actions/field-copy/merge-rows.ts";
import {
  planBringBack,
  readHome,
  type BringBackPlan,
  type Home,
  type SharedIdAnswers,
} from "../../../addin/actions/field-copy/plan-bring-back.ts";
import { Button, MessageBar, Segmented } from "../../parts/form.tsx";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import { drawn } from "../../parts/while-writing.ts";
import type { ViewProps } from "../../view.ts";
import { fieldCopyText } from "./text.ts";
import { isQuestion, nameOfDifference, YardFold } from "./yard-fold.tsx";

const words = fieldCopyText.bringing;
const LARGEST_FILE_BYTES = 50_000_000;

type Props = Pick<ViewProps, "program" | "workbook" | "write">;

export function BringBack(props: Props) {
  const id = useId();
  const [reading, setReading] = useState("");
  const [copy, take] = useState<FieldCopy | { readonly sentence: string } | null>(null);
  const [taken, count] = useState(0);
  const open = async (file: File | undefined) => {
    if (file === undefined) return;
    take(null);
    setReading(words.reading(file.name));
    await drawn();
    take(await copyIn(file).catch((error: unknown) => ({ sentence: sentenceOfError(error) })));
    // Another file begins without the answers to the one before.
    count(taken + 1);
    setReading("");
  };
  return (
    <>
      <div class="field">
        <label class="label" for={id}>
          {words.file}
        </label>
        <input class="input" id={id} type="file" accept=".xlsx" onChange={(event) => void open(event.currentTarget.files?.[0])} />
        <p class="hint" role="status">
          {reading}
        </p>
      </div>
      {copy !== null &&
        ("sentence" in copy ? <MessageBar kind="error">{copy.sentence}</MessageBar> : <Compared key={taken} {...props} copy={copy} />)}
    </>
  );
}

async function copyIn(file: File): Promise<FieldCopy | { readonly sentence: string }> {
  if (file.size > LARGEST_FILE_BYTES) return { sentence: words.tooLarge };
  const { readCopyFile } = await import("../../../addin/actions/field-copy/copy-file.ts");
  return readCopyFile(file.name, new Uint8Array(await file.arrayBuffer()));
}

function Compared({ program, workbook, write, copy }: Props & { readonly copy: FieldCopy }) {
  const home = useHome(workbook, program);
  const [shared, answer] = useState<SharedIdAnswers>(new Map());
  const plan = useMemo(() => (home === null || "fault" in home ? null : planBringBack(home, copy, shared)), [home, copy, shared]);
  if (home !== null && "fault" in home) return <MessageBar kind="error">{home.fault}</MessageBar>;
  if (plan === null) return null;
  if ("sentence" in plan) return <MessageBar kind="error">{plan.sentence}</MessageBar>;
  const open = plan.sharedIds.filter(({ siteId }) => !shared.has(siteId.toLowerCase())).length;
  return (
    <>
      <p>{words.takenOn(isoDate(copy.origin.takenOn))}</p>
      {copy.left.length > 0 && (
        <MessageBar kind="warning">
          {words.left}
          <ul class="bullets">
            {copy.left.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </MessageBar>
      )}
      {plan.sharedIds.map(({ siteId, home: here, copy: there }) => (
        <Segmented
          key={siteId}
          label={words.sharedId(siteId)}
          hint={words.sharedHint(here, there)}
          value={shared.get(siteId.toLowerCase()) ?? null}
          choices={(["same", "another"] as const).map((value) => ({ value, says: words.sharedAnswers[value] }))}
          onChoose={(value) => answer(new Map([...shared, [siteId.toLowerCase(), value] as const]))}
        />
      ))}
      <Differences workbook={workbook} write={write} plan={plan} openBefore={open} />
    </>
  );
}

function Differences({
  workbook,
  write,
  plan,
  openBefore,
}: Pick<Props, "workbook" | "write"> & { readonly plan: BringBackPlan; readonly openBefore: number }) {
  const [choices, choose] = useState<ReadonlyMap<string, Choice>>(new Map());
  const [leftOut, leaveOut] = useState<ReadonlySet<string>>(new Set());
  const brought = plan.yards.filter(({ siteId }) => !leftOut.has(siteId));
  const differences = brought.flatMap((yard) => yard.differences);
  const chosen = (difference: Difference): Choice | null => choices.get(nameOfDifference(difference)) ?? null;
  const open = openBefore + differences.filter((difference) => isQuestion(difference) && chosen(difference) === null).length;
  const yards = brought.filter(({ siteId }) => siteId !== "").length;
  if (plan.yards.length === 0) return openBefore === 0 ? <p role="status">{words.same}</p> : null;
  return (
    <>
      {plan.yards.map((yard) => (
        <YardFold
          key={yard.siteId}
          yard={yard}
          isIncluded={!leftOut.has(yard.siteId)}
          onInclude={(isIncluded) => {
            const others = [...leftOut].filter((siteId) => siteId !== yard.siteId);
            leaveOut(new Set(isIncluded ? others : [...others, yard.siteId]));
          }}
          chosen={chosen}
          onChoose={(answers) => choose(new Map([...choices, ...answers]))}
        />
      ))}
      <p role="status">{open === 0 ? "" : words.open(open)}</p>
      <div class="buttons">
        <Button
          kind="primary"
          disabled={open > 0 || differences.length === 0}
          onClick={() => write(() => bringBack(workbook, differences, chosen), yards === 0 ? words.doneProgram : words.done(yards))}
        >
          {yards === 0 ? words.buttonProgram : words.button(yards)}
        </Button>
      </div>
    </>
  );
}

/** What the copy is held against, read again whenever the program is. */
function useHome(workbook: Props["workbook"], program: Props["program"]): Home | { readonly fault: string } | null {
  const [home, show] = useState<Home | { readonly fault: string } | null>(null);
  useEffect(() => {
    let isCurrent = true;
    readHome(workbook).then(
      (read) => isCurrent && show(read),
      (error: unknown) => isCurrent && show({ fault: sentenceOfError(error) }),
    );
    return () => {
      isCurrent = false;
    };
  }, [workbook, program]);
  return home;
}
