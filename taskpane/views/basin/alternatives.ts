import { checkRoom, type RoomCheck } from "../../../addin/actions/basin/basin-room.ts";
import { draftBasin, type Answer, type BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { Program, Yard } from "../../../addin/actions/program/read-program.ts";
import type { BasinEntry } from "../../../addin/actions/yard/record-yard.ts";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { text } from "../../text.ts";
import { basinChecks, pondingHours, rimWords, valueOf, worstOf, type BasinCheck } from "./basin-checks.ts";
import { inputsFor, readBasin, type BasinAsRead, type Grounds, type TypedBasin } from "./basin-form.ts";
import { costWords } from "./cost-words.ts";
import { basinText } from "./text.ts";

export const ALTERNATIVE_NAMES = ["A", "B", "C"] as const;
export type AlternativeName = (typeof ALTERNATIVE_NAMES)[number];

/** What was kept under each name, as typed. */
export type KeptAlternatives = Readonly<Partial<Record<AlternativeName, TypedBasin>>>;

/** One set of inputs, worked out. */
export interface WorkedBasin {
  readonly entry: BasinEntry;
  readonly faults: BasinAsRead["faults"];
  readonly draft: BasinDraft;
  readonly room: RoomCheck;
  readonly checks: readonly BasinCheck[];
  readonly verdict: BasinCheck["verdict"];
}

/** Everything that the pane says of a basin, from what was typed. */
export function workOut(typed: TypedBasin, program: Program, yard: Yard, grounds: Grounds): WorkedBasin {
  const { entry, faults } = readBasin(typed);
  const inputs = inputsFor(yard, entry, grounds);
  const draft = draftBasin(inputs, program.settings);
  const there = { length: entry.roomLength, width: entry.roomWidth };
  const room = checkRoom(inputs, there, program.settings);
  const checks = basinChecks(draft, grounds.testedRate, program.rules, { check: room, there });
  return { entry, faults, draft, room, checks, verdict: worstOf(checks) };
}

export interface ComparedRow {
  readonly label: string;
  /** A cell for each alternative; a dash where none is kept or there is no number. */
  readonly cells: readonly string[];
}

/** The table of the alternatives, a column for each name. */
export function compareAlternatives(worked: readonly (WorkedBasin | null)[], costs: readonly (Answer | null)[]): readonly ComparedRow[] {
  const { rows, none, outline, room } = basinText.alternatives;
  const row = (label: string, says: (basin: WorkedBasin, place: number) => string | null): ComparedRow => ({
    label,
    cells: worked.map((basin, place) => (basin === null ? none : (says(basin, place) ?? none))),
  });
  const quantity = (label: string, kind: Parameters<typeof quantityWords>[0], of: (draft: BasinDraft) => Answer) =>
    row(label, ({ draft }) => (valueOf(of(draft)) === null ? null : quantityWords(kind, Number(valueOf(of(draft))), draft.units)));
  const compared = [
    row(rows.shape, ({ draft }) => outline(draft.shape, shown(draft.lengthToWidth, 2))),
    quantity(rows.floor, "area", ({ floorArea }) => floorArea),
    row(rows.rim, ({ draft }) => {
      const [length, width] = [valueOf(draft.rimLength), valueOf(draft.rimWidth)];
      return length === null || width === null ? null : rimWords({ length, width }, draft.units);
    }),
    row(rows.room, (basin) => room[basin.room.verdict]),
    row(rows.verdict, ({ verdict }) => text.verdicts[verdict]),
    quantity(rows.ponding, "depth", ({ pondingDepth }) => pondingDepth),
    row(rows.standing, ({ draft }) => {
      const hours = pondingHours(draft, draft.units);
      return hours === null ? null : quantityWords("hours", hours, draft.units);
    }),
    quantity(rows.held, "waterVolume", ({ waterHeld }) => waterHeld),
    quantity(rows.dig, "earthVolume", ({ digVolume }) => digVolume),
  ];
  return costs.some((cost) => cost !== null && "value" in cost)
    ? [...compared, row(rows.cost, (_, place) => costWords(costs[place] ?? null))]
    : compared;
}
