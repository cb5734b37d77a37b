import { isoDate, today } from "../../../addin/actions/dates.ts";
import { plantNamed } from "../../../addin/actions/planting/palette.ts";
import { putBack, type PlannedClump } from "../../../addin/actions/planting/plan.ts";
import { countOf } from "../../../addin/actions/planting/plant-counts.ts";
import { removedMeanwhile, stillOnSheet, writePlan } from "../../../addin/actions/planting/record-planting.ts";
import { fromUs } from "../../../functions/quantities.ts";
import "../basin/basin.css";
import { Fold } from "../../parts/fold.tsx";
import { Button, ChoiceField, MessageBar } from "../../parts/form.tsx";
import { Headline } from "../../parts/headline.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { MaterialsPanel } from "../materials/materials-panel.tsx";
import { layOutInstead } from "../../parts/lay-out-instead.ts";
import { printPaper } from "../../parts/print-paper.tsx";
import type { ViewProps } from "../../view.ts";
import { BloomStrip } from "./bloom-strip.tsx";
import { ClumpForm } from "./clump-form.tsx";
import { planCautions } from "./plan-cautions.ts";
import { planChanges } from "./plan-changes.ts";
import { PlanSection } from "./plan-section.tsx";
import { PlantPicker } from "./plant-picker.tsx";
import { marksOf } from "./plant-marks.ts";
import { PlantingPaper } from "./planting-paper.tsx";
import { shoppingList } from "./shopping-list.ts";
import { ShoppingView } from "./shopping-view.tsx";
import { plantingText } from "./text.ts";
import { usePlan, type Plan } from "./use-plan.ts";
import "./planting.css";

/** The planting of a yard: a plan to scale, the plants to choose from, their bloom, what to buy, and what to know first. */
export function PlantingView(view: ViewProps) {
  const { yard } = view;
  const plan = usePlan(view);
  const { palette, form, drawn } = plan;
  const marks = marksOf(drawn.standing.filter(({ plants }) => plants.length > 0).map(({ clump }) => clump.plant));
  const linesFor = (plantsInFlat: number | null) => shoppingList(form.value, palette, plantsInFlat, yard.units);
  const lines = linesFor(null);
  const plants = lines.flatMap(({ plant }) => plantNamed(palette, plant) ?? []);
  const cautions = [
    plantingText.cautions.invasive,
    plantingText.cautions.memory,
    plantingText.cautions.indicator,
    plantingText.cautions.marks,
    ...planCautions(lines, palette),
  ];
  const print = async (bought: typeof lines) => {
    const unprinted = await printPaper(
      <PlantingPaper
        heading={plantingText.shopping.heading(yard.siteId, yard.site.record.yard ?? "")}
        date={isoDate(today())}
        plan={plan}
        marks={marks}
        plants={plants}
        lines={bought}
        units={yard.units}
        cautions={cautions}
      />,
    );
    await layOutInstead(view, `${yard.siteId} planting`, unprinted);
  };
  return (
    <>
      <PlanHeadline view={view} plan={plan} />
      <PlanSection plan={plan} marks={marks}>
        <ChangeClump plan={plan} units={yard.units} />
      </PlanSection>
      <SheetPart view={view} plan={plan} />
      <LiveSentence says={plan.said} />
      <div class="folds">
        <PlantPicker
          needed={form.value.length === 0}
          palette={palette}
          typed={plan.wish.value}
          setWish={(changed) => plan.wish.set((current) => ({ ...current, ...changed }))}
          chosen={plan.names.value}
          setChosen={plan.names.set}
          units={yard.units}
        >
          <DraftButtons plan={plan} />
        </PlantPicker>
        <BloomStrip plants={plants} marks={marks} />
        <ShoppingView linesFor={linesFor} units={yard.units} print={print} />
        <Cautions cautions={cautions} />
        <Fold title={plantingText.materials}>
          <MaterialsPanel {...view} />
        </Fold>
      </div>
    </>
  );
}

/** The clump to change, chosen by name for those who do not use the drawing. */
function ChangeClump({ plan, units }: { readonly plan: Plan; readonly units: ViewProps["yard"]["units"] }) {
  const { form, drawn, chosen, nameOf, move, choose, change, say } = plan;
  const words = plantingText.clump;
  if (form.value.length === 0) return null;
  const choices = form.value.map((clump, index) => ({ value: clump.id, says: clumpName(clump, index, nameOf) }));
  const middle = drawn.standing.find(({ clump }) => clump.id === chosen?.id)?.middle;
  const step = fromUs("length", NUDGE_FEET, units);
  return (
    <div class="card" role="group" aria-label={words.title}>
      <h2>{words.title}</h2>
      <ChoiceField label={words.choose} value={chosen?.id ?? null} blank={words.none} choices={choices} onChoose={choose} />
      {chosen !== undefined && (
        <ClumpForm
          key={chosen.id}
          clump={chosen}
          palette={plan.palette}
          units={units}
          change={change}
          nudge={({ along, across }) => {
            if (middle !== undefined) move(chosen.id, { along: middle.along + along * step, across: middle.across + across * step });
          }}
          add={() => plan.add(chosen)}
          remove={() => {
            say(words.removed(chosen.plant === null ? "" : nameOf(chosen.plant)));
            choose(null);
          }}
        />
      )}
    </div>
  );
}

const NUDGE_FEET = 0.5;

function clumpName(clump: PlannedClump, index: number, nameOf: (plant: string) => string): string {
  const name = clump.plant === null ? "" : nameOf(clump.plant);
  return plantingText.clump.named(index + 1, name, countOf(clump), clump.zone);
}

function DraftButtons({ plan: { zones, form, names, report, suggest, layOut, forgetReport } }: { readonly plan: Plan }) {
  const words = plantingText.picker;
  const nothingChosen = Object.values(names.value).every((ofZone) => ofZone.length === 0);
  return (
    <>
      <Button onClick={suggest}>{words.suggest}</Button>
      <Button kind={form.touched ? "plain" : "primary"} disabled={zones === null || nothingChosen} onClick={layOut}>
        {words.draft}
      </Button>
      <p class="hint">{words.suggestHint}</p>
      {form.value.length > 0 && <p class="hint">{words.draftReplaces}</p>}
      {report !== null && report.leftOut.length + report.tooLarge.length > 0 && (
        <MessageBar kind="warning" actions={<Button onClick={forgetReport}>{words.understood}</Button>}>
          <ul>
            {report.tooLarge.map((zone) => (
              <li key={zone}>{words.tooLarge(zone)}</li>
            ))}
            {report.leftOut.map(({ plant, zone, reason }) => (
              <li key={`${plant} ${zone}`}>{words.leftOut(plant, zone, reason)}</li>
            ))}
          </ul>
        </MessageBar>
      )}
    </>
  );
}

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  return (
    <Fold title={plantingText.cautions.title} says={String(cautions.length)}>
      <ul class="bullets">
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Fold>
  );
}

/** How many plants the plan has, and the way to the sheet. */
function PlanHeadline({ view: { yard, workbook, write }, plan: { form, choose, forgetReport } }: SheetProps) {
  const words = plantingText.sheet;
  const { added, changed, removed } = planChanges(stillOnSheet(yard, form.basis), form.value);
  const isSame = added + changed + removed === 0;
  const save = async () => {
    if (!(await write(() => writePlan(workbook, yard, form.basis, form.value), words.done(yard.siteId)))) return;
    form.clear();
    forgetReport();
    choose(null);
  };
  const plants = form.value.reduce((sum, clump) => sum + (countOf(clump) ?? 0), 0);
  return (
    <Headline
      figure={plantingText.plan.plants(plants)}
      badge={null}
      action={
        <Button kind={isSame ? "plain" : "primary"} disabled={isSame} onClick={save}>
          {words.write}
        </Button>
      }
    >
      <span>{form.value.length === 0 ? plantingText.plan.noClump : plantingText.plan.clumps(form.value.length)}</span>
    </Headline>
  );
}

interface SheetProps {
  readonly view: ViewProps;
  readonly plan: Plan;
}

function SheetPart({ view: { yard }, plan: { form, nameOf, change, choose, forgetReport } }: SheetProps) {
  const words = plantingText.sheet;
  const { added, changed, removed, noted } = planChanges(stillOnSheet(yard, form.basis), form.value);
  const gone = removedMeanwhile(yard, form.basis, form.value);
  const isSame = added + changed + removed === 0;
  return (
    <section class="sheet-part" aria-label={words.title}>
      <p class={isSame ? "hint" : "unsaved"}>{isSame ? words.same : words.willChange(added, changed, removed)}</p>
      {gone.length > 0 && (
        <MessageBar
          kind="warning"
          actions={
            <>
              <Button onClick={() => change((clumps) => clumps.filter(({ id }) => !gone.some((one) => one.id === id)))}>
                {words.leaveOut}
              </Button>
              <Button onClick={() => change((clumps) => putBack(clumps, gone))}>{words.putBack}</Button>
            </>
          }
        >
          <strong>{words.removedTitle}</strong>
          <p>{words.removed(gone.map(({ plant }) => (plant === null ? words.noPlant : nameOf(plant))))}</p>
        </MessageBar>
      )}
      {noted.length > 0 && <MessageBar kind="warning">{words.notes(noted)}</MessageBar>}
      {form.touched && (
        <Button
          kind="quiet"
          onClick={() => {
            form.clear();
            choose(null);
            forgetReport();
          }}
        >
          {words.back}
        </Button>
      )}
    </section>
  );
}
