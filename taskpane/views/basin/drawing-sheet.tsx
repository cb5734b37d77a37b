import { useId } from "preact/hooks";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { nameOf } from "../../yard-button.tsx";
import { rimWords, valueOf } from "./basin-checks.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { roundDepthWords } from "./depths.ts";
import { Label, Patterns } from "./drafting.tsx";
import { layoutPlan, Plan } from "./plan-drawing.tsx";
import { layoutSection, Section } from "./section-drawing.tsx";
import { basinText } from "./text.ts";

const words = basinText.sheetOfDrawings;

/** What stands on the sheet beside the drawings. */
export interface DrawingSheetProps {
  readonly yard: Yard;
  readonly draft: BasinDraft;
  readonly basin: BasinDimensions;
  /** "2026-05-04". */
  readonly date: string;
}

/** Wide enough for every word at a size that is read on paper and on a screen. */
export const SHEET_PIXELS = 720;

const LINE = 20;
const TITLE_AT = 26;
const PLAN_AT = 108;
const ZONES = ["A", "B", "C"] as const;

export function sheetHeight(basin: BasinDimensions): number {
  return sectionAt(basin) + layoutSection(basin, SHEET_PIXELS).height + 2 * LINE;
}

function zonesAt(basin: BasinDimensions): number {
  return PLAN_AT + layoutPlan(basin, SHEET_PIXELS).height + LINE;
}

function sectionAt(basin: BasinDimensions): number {
  return zonesAt(basin) + ZONES.length * LINE + LINE;
}

/** Plan, zones and section with their numbers on one white sheet, for paper and for the workbook. */
export function DrawingSheet({ yard, draft, basin, date }: DrawingSheetProps) {
  const id = useId();
  const height = sheetHeight(basin);
  return (
    <div class="drawing drawing-sheet">
      <svg
        class="drawing-paper"
        viewBox={`0 0 ${SHEET_PIXELS} ${height}`}
        width={SHEET_PIXELS}
        height={height}
        role="img"
        aria-label={sheetWords({ yard, draft, basin, date })}
      >
        <rect class="paper" width={SHEET_PIXELS} height={height} />
        <text class="drawing-title" x={8} y={TITLE_AT}>
          {words.title(`${yard.siteId} ${nameOf(yard)}`)}
        </text>
        {factLines(draft, date, yard).map((line, place) => (
          <Label key={line} x={8} y={TITLE_AT + (place + 1) * LINE} anchor="start">
            {line}
          </Label>
        ))}
        <Plan basin={basin} width={SHEET_PIXELS} y={PLAN_AT} />
        {ZONES.map((zone, place) => (
          <g key={zone}>
            <Patterns id={`${id}-${zone}`} />
            <rect
              class="zone"
              x={8}
              y={zonesAt(basin) + place * LINE - 12}
              width={26}
              height={16}
              style={{ fill: `url(#${id}-${zone}-${zone.toLowerCase()})` }}
            />
            <Label x={42} y={zonesAt(basin) + place * LINE} anchor="start">
              {zoneWords(draft, zone)}
            </Label>
          </g>
        ))}
        <Section basin={basin} width={SHEET_PIXELS} y={sectionAt(basin)} />
        <Label x={8} y={height - LINE / 2} anchor="start">
          {words.footer}
        </Label>
      </svg>
    </div>
  );
}

/** The zone's meaning and its ground as seen from above. */
export function zoneWords({ zones, units }: BasinDraft, zone: (typeof ZONES)[number]): string {
  const area = valueOf(zones[zone]);
  const meaning = basinText.drawing.zones[zone];
  return area === null ? meaning : words.zone(meaning, quantityWords("area", area, units));
}

/** Everything the sheet shows, for those who cannot see it. */
export function sheetWords({ yard, draft, basin, date }: DrawingSheetProps): string {
  const { section, taller } = layoutSection(basin, SHEET_PIXELS);
  return [
    `${words.title(`${yard.siteId} ${nameOf(yard)}`)}.`,
    ...factLines(draft, date, yard).map((line) => `${line}.`),
    basinText.plan.description(basin),
    ...ZONES.map((zone) => `${zoneWords(draft, zone)}.`),
    basinText.section.description(basin, section, taller),
  ].join(" ");
}

function factLines(draft: BasinDraft, date: string, yard: Yard): readonly string[] {
  const { units, earthwork } = draft;
  const said = (kind: Parameters<typeof quantityWords>[0], value: number | null) =>
    value === null ? basinText.alternatives.none : quantityWords(kind, value, units);
  const numbers = words.numbers(
    said("area", valueOf(draft.floorArea)),
    rimWords({ length: valueOf(draft.rimLength) ?? 0, width: valueOf(draft.rimWidth) ?? 0 }, units),
    said("depth", valueOf(draft.pondingDepth)),
    said("waterVolume", valueOf(draft.waterHeld)),
  );
  const left = earthwork === null ? null : valueOf(earthwork.leftOver);
  const place = [yard.site.record.address, words.drawn(date)].filter((fact) => fact !== null).join(" · ");
  if (earthwork === null || left === null) return [place, numbers];
  const over = left < 0 ? words.short(said("earthVolume", -left)) : words.leftOver(said("earthVolume", left));
  return [
    place,
    numbers,
    words.earth(said("earthVolume", valueOf(earthwork.cut)), over, roundDepthWords(valueOf(earthwork.bermHeight) ?? 0, units)),
  ];
}
