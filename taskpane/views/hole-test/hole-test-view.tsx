import { useEffect, useState } from "preact/hooks";
import { combineHoles } from "../../../addin/actions/hole-test/combine-holes.ts";
import { today } from "../../../addin/actions/dates.ts";
import { draftHoleTest } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import { addHoleTest, changeHoleTest } from "../../../addin/actions/yard/record-yard.ts";
import { clearRow } from "../../../addin/actions/program/write-records.ts";
import { hasDraft, useDraft } from "../../parts/drafts.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, ChoiceField, MessageBar } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { SafetyLine } from "../../parts/safety-line.tsx";
import { Removing } from "../../parts/removing.tsx";
import { text } from "../../text.ts";
import type { ViewProps } from "../../view.ts";
import { useClocks, type Clocks } from "./clocks.ts";
import { plannedDig, shallowHole } from "../../../addin/actions/hole-test/planned-dig.ts";
import { HoleFields } from "./hole-fields.tsx";
import { holeAsTyped, newHole, readHole, remeasured, type HoleDraft, type HoleTestRow, type Measured } from "./hole-draft.ts";
import { HoleCharts } from "./hole-charts.tsx";
import { HoleHeadline } from "./hole-headline.tsx";
import { HoleVerdict } from "./hole-verdict.tsx";
import { ReadingsList, waterFieldId } from "./readings-list.tsx";
import { SoilInShort, SoilSummary } from "./soil-summary.tsx";
import { holeTestText } from "./text.ts";
import { TimerCard } from "./timer-card.tsx";
import "./hole-test.css";

const NEW = "new";

/** Stays with the person from hole to hole: a field sheet is kept one way all day. */
let lastMeasured: Measured = "up";

/** The hole tests of a yard: one hole at a time, from its first reading to its rate on the sheet. */
export function HoleTestView(view: ViewProps) {
  const { program, yard } = view;
  const [chosen, choose] = useState<string>(() => firstHole(yard.siteId, yard.holeTests));
  const clocks = useClocks(yard.siteId);
  // After writing a new hole the newest row is the one in hand; a row that was deleted gives way to a new hole.
  const row = chosen === NEWEST ? yard.holeTests.at(-1) : yard.holeTests.find((test) => keyOf(test) === chosen);
  const key = row === undefined ? NEW : keyOf(row);
  useEffect(() => {
    if (chosen !== NEWEST || row === undefined) return;
    clocks.handOver(NEW, keyOf(row));
    choose(keyOf(row));
  }, [chosen, row]);
  const soil = combineHoles(program, yard);
  const { testedRate } = yard.design;
  const running = (hole: string) => (clocks.of(hole) === null ? "" : ` (${holeTestText.holes.running})`);
  return (
    <div class="hole-test">
      <Caution {...view} />
      <div class="soil-first">
        <SoilInShort soil={soil} units={yard.units} />
        <p class="hint">{holeTestText.holes.hint(yard.holeTests.length, soil.faults)}</p>
      </div>
      {yard.holeTests.length > 0 && (
        <ChoiceField
          label={holeTestText.holes.choose}
          value={key}
          choices={[
            ...yard.holeTests.map((test) => ({
              value: keyOf(test),
              says: holeTestText.holes.named(test.record.hole, test.row + 1) + running(keyOf(test)),
            })),
            { value: NEW, says: holeTestText.holes.new + running(NEW) },
          ]}
          onChoose={(hole) => choose(hole ?? NEW)}
        />
      )}
      <Hole key={key} {...view} row={row ?? null} holeKey={key} clocks={clocks} onAdded={() => choose(NEWEST)} />
      <SoilSummary soil={soil} designTestedRate={typeof testedRate === "number" ? testedRate : null} units={yard.units} />
    </div>
  );
}

const NEWEST = "newest";

function keyOf(test: HoleTestRow): string {
  return String(test.row);
}

/** What is half done comes first, then what the sheet holds. */
function firstHole(siteId: string, tests: readonly HoleTestRow[]): string {
  const keys = [NEW, ...tests.map(keyOf)];
  return keys.find((key) => hasDraft(draftKey(siteId, key))) ?? keys[1] ?? NEW;
}

function draftKey(siteId: string, hole: string): string {
  return `${siteId}/hole-test/${hole}/`;
}

function Caution({ yard }: ViewProps) {
  const { caution } = holeTestText;
  return (
    <SafetyLine id="hole" title={caution.title}>
      <ul class="bullets">
        {caution.lines(yard.units).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p class="hint">{caution.source}</p>
    </SafetyLine>
  );
}

function Hole({
  program,
  yard,
  workbook,
  write,
  row,
  holeKey,
  clocks,
  onAdded,
}: ViewProps & {
  readonly row: HoleTestRow | null;
  readonly holeKey: string;
  readonly clocks: Clocks;
  readonly onAdded: () => void;
}) {
  const { units } = yard;
  const initial = row === null ? newHole(yard, lastMeasured, today()) : holeAsTyped(row, lastMeasured);
  // The cells alone, because a draft is kept as plain data: where they stand is the row's to say.
  const draft = useDraft<HoleDraft, HoleTestRow["cells"] | null>(draftKey(yard.siteId, holeKey), initial, row?.cells ?? null);
  const [refusal, refuse] = useState<string | null>(null);
  const [markFault, setMarkFault] = useState<string | null>(null);
  const typed = draft.value;
  const { entry, faults } = readHole(typed);
  const test = draftHoleTest(entry, units, program.settings, program.rules);
  const set = (changed: Partial<HoleDraft>) => {
    refuse(null);
    draft.set((current) => ({ ...current, ...changed }));
  };

  const measure = (measured: Measured) => {
    const other = remeasured(typed, measured);
    setMarkFault(other === null ? holeTestText.markMissing : null);
    if (other === null) return;
    lastMeasured = measured;
    draft.set(other);
  };

  const addReading = (minutes: number) => {
    set({ readings: [...typed.readings, { minutes: String(minutes), water: typed.waterNow }], waterNow: "" });
    if (typed.waterNow.trim() === "")
      requestAnimationFrame(() => document.getElementById(waterFieldId(typed.readings.length + 1))?.focus());
  };

  const save = async () => {
    const reason = whyNotWritten(typed, faults.length > 0, entry.readings.length);
    refuse(reason);
    if (reason !== null) return;
    const seen = row === null || draft.basis === null ? null : { ...row, cells: draft.basis };
    const written = await write(
      () => (seen === null ? addHoleTest(workbook, yard, entry) : changeHoleTest(workbook, seen, entry)),
      seen === null ? holeTestText.sheet.added(entry.hole) : holeTestText.sheet.changed(entry.hole),
    );
    if (!written) return;
    draft.clear();
    if (seen === null) onAdded();
  };

  const clearHole = async (held: HoleTestRow) => {
    if (await write(() => clearRow(workbook, held), holeTestText.sheet.removed(held.record.hole ?? ""))) draft.clear();
  };

  const aboveHole = entry.readings.findIndex(
    ({ waterDepth }) => typeof waterDepth === "number" && typeof entry.holeDepth === "number" && waterDepth > entry.holeDepth,
  );
  const sentenceOf = (reading: number) =>
    reading === test.readingAtFault ? sentenceIn(test.dropRate) : reading === aboveHole + 1 ? holeTestText.aboveHole(reading) : null;

  return (
    <>
      <HoleHeadline test={test} units={units} marked={faults.length > 0} unsaved={draft.touched} onSave={save} />
      <p class="fault" role="status">
        {refusal ?? ""}
      </p>
      <Fold
        title={holeTestText.setUp.title}
        says={holeTestText.setUp.says(typed.holeDepth, typed.holeDiameter, shownUnit("depth", units))}
        needed={typed.readings.length === 0 || faults.length > 0 || markFault !== null}
      >
        <HoleFields draft={typed} faults={faults} markFault={markFault} units={units} set={set} measure={measure} />
      </Fold>
      <TimerCard
        draft={typed}
        clock={clocks.of(holeKey)}
        units={units}
        onWater={(waterNow) => set({ waterNow })}
        onStart={(clock) => {
          clocks.set(holeKey, clock);
          addReading(0);
        }}
        onInterval={(clock, intervalMinutes) => clocks.set(holeKey, { ...clock, intervalMinutes })}
        onStop={() => clocks.set(holeKey, null)}
        onReading={addReading}
      />
      <ReadingsList
        draft={typed}
        read={entry.readings}
        faults={faults}
        sentenceOf={sentenceOf}
        units={units}
        onChange={(readings) => set({ readings })}
      />
      <HoleVerdict
        test={test}
        units={units}
        reductionFactor={program.settings.reductionFactor}
        notSoaked={typed.soaked === "no"}
        shallow={shallowHole(
          entry.hole,
          typeof entry.holeDepth === "number" ? entry.holeDepth : null,
          plannedDig(program.settings, yard),
          yard,
        )}
        marked={faults.length > 0}
      />
      <HoleCharts readings={entry.readings} test={test} units={units} />
      <div class="sheet-part">
        {draft.touched && <p class="unsaved">{text.form.unsaved}</p>}
        {row !== null && <SheetRate row={row} touched={draft.touched} pane={test.infiltrationRate} view={yard} />}
        {draft.touched && (
          <Button kind="quiet" onClick={draft.clear}>
            {row === null ? text.form.discard : holeTestText.sheet.back}
          </Button>
        )}
        {row !== null && (
          <Removing
            says={holeTestText.sheet.remove}
            question={holeTestText.sheet.removeQuestion(row.record.hole ?? "")}
            keep={holeTestText.sheet.removeKeep}
            remove={holeTestText.sheet.removeYes}
            onRemove={() => clearHole(row)}
          />
        )}
      </div>
    </>
  );
}

function whyNotWritten(typed: HoleDraft, faulty: boolean, readings: number): string | null {
  const { sheet } = holeTestText;
  if (faulty) return sheet.fixFirst;
  if (typed.waterNow.trim() !== "") return sheet.addFirst;
  return readings === 0 ? sheet.nothing : null;
}

/** What the row's own formula says, beside the pane's number: the same cells must give the same rate. */
function SheetRate({
  row,
  touched,
  pane,
  view: { units },
}: {
  readonly row: HoleTestRow;
  readonly touched: boolean;
  readonly pane: ReturnType<typeof draftHoleTest>["infiltrationRate"];
  readonly view: ViewProps["yard"];
}) {
  const { sheet } = holeTestText;
  const rate = row.record.infiltrationRate;
  if (typeof rate !== "number") return <p class="hint">{sheet.noRate}</p>;
  const words = quantityWords("rate", rate, units);
  if (touched) return <p class="hint">{sheet.other(words)}</p>;
  const agrees = "value" in pane && Math.abs(pane.value - rate) <= 1e-9 * Math.abs(rate);
  if (agrees) return <p class="hint">{sheet.same(words)}</p>;
  return (
    <MessageBar kind="warning">
      {sheet.differs(words, "value" in pane ? quantityWords("rate", pane.value, units) : pane.sentence)}
    </MessageBar>
  );
}

function sentenceIn(answer: ReturnType<typeof draftHoleTest>["dropRate"]): string | null {
  return "sentence" in answer ? answer.sentence : null;
}
