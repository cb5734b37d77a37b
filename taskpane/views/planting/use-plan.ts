import { useMemo, useState } from "preact/hooks";
import { draftPlanting, zonesOfYard, type PlantingDraft } from "../../../addin/actions/planting/draft-planting.ts";
import {
  KINDS_SUGGESTED_A_ZONE,
  plantNamed,
  plantsFor,
  readPalette,
  suggestedFrom,
  type PalettePlant,
} from "../../../addin/actions/planting/palette.ts";
import { addClump, clumpOf, drawPlan, moveClump, type DrawnPlan, type PlannedClump } from "../../../addin/actions/planting/plan.ts";
import { MOISTURE_ZONES, type Spot, type PlantingZones } from "../../../addin/actions/planting/planting-zones.ts";
import { seenClumps, type SeenClump } from "../../../addin/actions/planting/record-planting.ts";
import { useDraft, type Draft } from "../../parts/drafts.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { ViewProps } from "../../view.ts";
import { ANY_PLANT, type ChosenNames, type TypedWish } from "./plant-picker.tsx";
import { plantingText } from "./text.ts";

/** A yard's plan while it is worked on: its clumps, what is drawn of them, what is chosen, and what was last done. */
export interface Plan {
  readonly palette: readonly PalettePlant[];
  readonly zones: PlantingZones | null;
  /** Why there are no zones. */
  readonly sentence: string | null;
  readonly form: Draft<readonly PlannedClump[], readonly SeenClump[]>;
  readonly drawn: DrawnPlan;
  readonly nameOf: (plant: string) => string;
  readonly chosen: PlannedClump | undefined;
  readonly choose: (id: string | null) => void;
  readonly move: (id: string, to: Spot) => void;
  readonly add: (like: PlannedClump) => void;
  readonly change: (to: (clumps: readonly PlannedClump[]) => readonly PlannedClump[]) => void;
  readonly wish: Draft<TypedWish>;
  readonly names: Draft<ChosenNames>;
  readonly suggest: () => void;
  readonly layOut: () => void;
  /** What the last draft left out. */
  readonly report: PlantingDraft | null;
  readonly forgetReport: () => void;
  readonly said: string;
  readonly say: (sentence: string) => void;
}

export function usePlan({ program: { plants, settings }, yard }: Pick<ViewProps, "program" | "yard">): Plan {
  const { siteId, units } = yard;
  const palette = useMemo(() => readPalette(plants, units), [plants, units]);
  const found = useMemo(() => zonesOfYard(yard, settings), [yard, settings]);
  const zones = "sentence" in found ? null : found;
  const form = useDraft<readonly PlannedClump[], readonly SeenClump[]>(`${siteId}/planting`, yard.clumps.map(clumpOf), seenClumps(yard));
  // Neither is written, so neither is an unwritten entry of the yard: the keys do not begin with its Site ID.
  const wish = useDraft<TypedWish>("planting-filters", ANY_PLANT);
  const names = useDraft<ChosenNames>(`planting-choice/${siteId}`, namesIn(form.value, palette));
  const clumpsAsText = JSON.stringify(form.value);
  const drawn = useMemo(
    () => (zones === null ? NOTHING_DRAWN : drawPlan(form.value, zones, palette, settings)),
    [clumpsAsText, zones, palette, settings],
  );
  const [chosenId, choose] = useState<string | null>(null);
  const [report, setReport] = useState<PlantingDraft | null>(null);
  const [said, say] = useState("");

  const nameOf = (plant: string) => plantingText.named(plant, plantNamed(palette, plant)?.commonName ?? "");
  const spoken = ({ plant }: PlannedClump) => (plant === null ? "" : nameOf(plant));
  const move = (id: string, to: Spot) => {
    const { clumps, exchangedWith } = moveClump(form.value, drawn, id, to);
    const moved = clumps.find((clump) => clump.id === id);
    if (moved === undefined) return;
    form.set(clumps);
    const length = (value: number | null) => quantityWords("length", value ?? 0, units);
    say(
      exchangedWith === null
        ? plantingText.clump.moved(spoken(moved), length(moved.along), length(moved.across))
        : plantingText.clump.exchanged(spoken(moved), spoken(exchangedWith)),
    );
  };
  const layOut = () => {
    if (zones === null) return;
    const kept = form.value.filter(({ planted }) => planted !== null);
    const keptDrawn = drawPlan(kept, zones, palette, settings).standing.map(({ clump }) => clump);
    const made = draftPlanting(siteId, zones, chosenPlants(names.value, palette), keptDrawn);
    form.set([...kept, ...made.clumps]);
    choose(null);
    setReport(made);
    say(
      plantingText.picker.drafted(
        made.clumps.reduce((sum, { planned }) => sum + (planned ?? 0), 0),
        made.clumps.length,
      ),
    );
  };
  return {
    palette,
    zones,
    form,
    drawn,
    nameOf,
    choose,
    move,
    wish,
    names,
    layOut,
    report,
    said,
    say,
    sentence: "sentence" in found ? found.sentence : null,
    chosen: form.value.find(({ id }) => id === chosenId),
    change: (to) => form.set((clumps) => to(clumps)),
    add: ({ plant, zone, planned }) => {
      const known = plantNamed(palette, plant);
      if (known !== undefined) form.set((clumps) => addClump(clumps, known, zone ?? known.zones[0] ?? "A", planned ?? 3));
    },
    suggest: () => names.set(suggestedNames(palette, wish.value)),
    forgetReport: () => setReport(null),
  };
}

const NOTHING_DRAWN: DrawnPlan = { standing: [], undrawn: [] };

function byZone<Value>(of: (zone: (typeof MOISTURE_ZONES)[number]) => Value) {
  return Object.fromEntries(MOISTURE_ZONES.map((zone) => [zone, of(zone)])) as Record<(typeof MOISTURE_ZONES)[number], Value>;
}

/** The plants that the clumps on the sheet are of, zone by zone. */
function namesIn(clumps: readonly PlannedClump[], palette: readonly PalettePlant[]): ChosenNames {
  return byZone((zone) => {
    const known = clumps.filter((clump) => clump.zone === zone).flatMap(({ plant }) => plantNamed(palette, plant)?.name ?? []);
    return [...new Set(known)];
  });
}

function chosenPlants(names: ChosenNames, palette: readonly PalettePlant[]) {
  return byZone((zone) => names[zone].flatMap((name) => plantNamed(palette, name) ?? []));
}

function suggestedNames(palette: readonly PalettePlant[], { sun }: TypedWish): ChosenNames {
  const suitable = (zone: (typeof MOISTURE_ZONES)[number]) =>
    plantsFor(palette, { zone, sun, region: null, atLeastAsWetAs: null, widestSpacing: null, bloomMonth: null });
  return byZone((zone) => suggestedFrom(suitable(zone), KINDS_SUGGESTED_A_ZONE).map(({ name }) => name));
}
