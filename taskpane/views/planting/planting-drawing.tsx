import { useId, useRef, useState } from "preact/hooks";
import type { TargetedPointerEvent } from "preact";
import type { DrawnClump } from "../../../addin/actions/planting/plan.ts";
import type { StandingClump } from "../../../addin/actions/planting/place-plants.ts";
import { ringOf, type Edge, type Spot, type PlantingZones } from "../../../addin/actions/planting/planting-zones.ts";
import { Label, Patterns, ScaleBar } from "../basin/drafting.tsx";
import { useElementWidth } from "../../parts/element-width.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { Mark } from "./plant-mark.tsx";
import type { PlantMark } from "./plant-marks.ts";
import { plantingText } from "./text.ts";

const words = plantingText.plan;

/** Room around the plan for its words, in CSS pixels. */
const MARGIN = { side: 14, top: 34, bottom: 54 };
const TALLEST_TO_WIDTH = 1.1;

export interface DrawingProps {
  readonly zones: PlantingZones;
  readonly standing: readonly StandingClump<DrawnClump>[];
  readonly marks: ReadonlyMap<string, PlantMark>;
  readonly nameOf: (plant: string) => string;
  readonly chosen: string | null;
  readonly choose: (id: string) => void;
  readonly chooseNext: (step: 1 | -1) => void;
  readonly move: (id: string, to: Spot) => void;
  /** How far an arrow key moves, in the yard's length unit. */
  readonly step: number;
  /** Sets the patterns of a second drawing on the page apart from those of the first. */
  readonly idPrefix?: string;
}

/** Zones and plants from above, to scale, uphill at the top. */
export function PlantingDrawing(drawing: DrawingProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useElementWidth(frame);
  return (
    <div ref={frame} class="drawing planting-drawing">
      {width > 0 && <Plan {...drawing} width={width} />}
    </div>
  );
}

/** The same on paper, where nothing is chosen or moved. */
export function PrintedDrawing(drawing: Pick<DrawingProps, "zones" | "standing" | "marks" | "nameOf">) {
  return (
    <div class="drawing planting-drawing">
      <Plan
        {...drawing}
        idPrefix={PAPER_PREFIX}
        width={PAPER_WIDTH}
        chosen={null}
        step={0}
        choose={nothing}
        chooseNext={nothing}
        move={nothing}
      />
    </div>
  );
}

/** A page rendered apart counts its ids from the start again. */
export const PAPER_PREFIX = "paper-";

const PAPER_WIDTH = 640;
const nothing = () => undefined;

function Plan({ zones, standing, marks, nameOf, width, idPrefix = "", ...acts }: DrawingProps & { readonly width: number }) {
  const id = idPrefix + useId();
  const outer = ringOf(zones, "C").outer;
  const scale = Math.min(
    (width - 2 * MARGIN.side) / (2 * outer.halfLength),
    (TALLEST_TO_WIDTH * width - MARGIN.top - MARGIN.bottom) / (2 * outer.halfWidth),
  );
  const height = Math.round(2 * outer.halfWidth * scale + MARGIN.top + MARGIN.bottom);
  const middle = { x: width / 2, y: MARGIN.top + outer.halfWidth * scale };
  const at = ({ along, across }: Spot) => ({ x: middle.x + along * scale, y: middle.y - across * scale });
  const length = (value: number) => quantityWords("length", value, zones.units);
  const kinds = [...marks.keys()].map(nameOf);
  const tabStop = acts.chosen ?? standing[0]?.clump.id;
  return (
    <svg
      class="drawing-paper"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="group"
      aria-label={words.drawing}
      aria-describedby={`${id}-words`}
    >
      <desc id={`${id}-words`}>{words.description(length(2 * outer.halfLength), length(2 * outer.halfWidth), kinds)}</desc>
      <Patterns id={id} />
      {(["C", "B", "A"] as const).map((zone) => (
        <Outline key={zone} edge={ringOf(zones, zone).outer} middle={middle} scale={scale} fill={`url(#${id}-${zone.toLowerCase()})`} />
      ))}
      {standing.map((clump, index) => (
        <ClumpMarks
          key={clump.clump.id}
          clump={clump}
          number={index + 1}
          mark={marks.get(clump.clump.plant)}
          name={nameOf(clump.clump.plant)}
          at={at}
          scale={scale}
          isTabStop={clump.clump.id === tabStop}
          {...acts}
        />
      ))}
      <Label x={width / 2} y={12} anchor="middle">
        {words.uphill}
      </Label>
      <Label x={width / 2} y={height - 26} anchor="middle">
        {words.downhill}
      </Label>
      <ScaleBar x={4} y={height - 6} unit={scale} units={zones.units} />
    </svg>
  );
}

function Outline({
  edge,
  middle,
  scale,
  fill,
}: {
  readonly edge: Edge;
  readonly middle: { readonly x: number; readonly y: number };
  readonly scale: number;
  readonly fill: string;
}) {
  const rx = edge.halfLength * scale;
  const ry = edge.halfWidth * scale;
  return edge.shape === "rectangle" ? (
    <rect class="zone" style={{ fill }} x={middle.x - rx} y={middle.y - ry} width={2 * rx} height={2 * ry} />
  ) : (
    <ellipse class="zone" style={{ fill }} cx={middle.x} cy={middle.y} rx={rx} ry={ry} />
  );
}

type ClumpProps = Pick<DrawingProps, "chosen" | "choose" | "chooseNext" | "move" | "step"> & {
  readonly clump: StandingClump<DrawnClump>;
  readonly number: number;
  readonly mark: PlantMark | undefined;
  readonly name: string;
  readonly at: (place: Spot) => { readonly x: number; readonly y: number };
  readonly scale: number;
  readonly isTabStop: boolean;
};

function ClumpMarks({
  clump: { clump, middle, plants },
  number,
  mark,
  name,
  at,
  scale,
  chosen,
  choose,
  chooseNext,
  move,
  step,
  isTabStop,
}: ClumpProps) {
  const isChosen = chosen === clump.id;
  const drag = useDrag(isChosen, (x, y) => move(clump.id, { along: middle.along + x / scale, across: middle.across - y / scale }));
  if (mark === undefined || plants.length === 0) return null;
  const reach = (clump.spacing / 2) * scale;
  const press = (event: KeyboardEvent) => {
    const by = ARROWS.get(event.key);
    if (by !== undefined) move(clump.id, { along: middle.along + by.along * step, across: middle.across + by.across * step });
    else if (event.key === "PageDown" || event.key === "PageUp") chooseNext(event.key === "PageDown" ? 1 : -1);
    else if (event.key === "Enter" || event.key === " ") choose(clump.id);
    else return;
    event.preventDefault();
  };
  const center = at(centerOf(plants));
  return (
    <g
      class={isChosen ? "clump clump-chosen" : "clump"}
      data-clump={clump.id}
      role="button"
      tabIndex={isTabStop ? 0 : -1}
      aria-pressed={isChosen}
      aria-label={words.clump(number, mark.number, name, plants.length, clump.zone)}
      transform={drag.shift}
      onFocus={() => choose(clump.id)}
      onKeyDown={press}
      {...drag.handlers}
    >
      {plants.map((place) => {
        const { x, y } = at(place);
        return (
          <g key={`${place.along} ${place.across}`}>
            <circle class="plant-ground" cx={x} cy={y} r={Math.max(2, reach * 0.94)} />
            <Mark mark={mark} x={x} y={y} size={Math.max(2, Math.min(6, reach * 0.55))} />
          </g>
        );
      })}
      <text class="drawing-words clump-number" x={center.x} y={center.y + 4} text-anchor="middle">
        {mark.number}
      </text>
    </g>
  );
}

const ARROWS: ReadonlyMap<string, Spot> = new Map([
  ["ArrowLeft", { along: -1, across: 0 }],
  ["ArrowRight", { along: 1, across: 0 }],
  ["ArrowUp", { along: 0, across: 1 }],
  ["ArrowDown", { along: 0, across: -1 }],
]);

function centerOf(plants: readonly Spot[]): Spot {
  const mean = (of: (place: Spot) => number) => plants.reduce((sum, place) => sum + of(place), 0) / plants.length;
  return { along: mean(({ along }) => along), across: mean(({ across }) => across) };
}

/** Dragging the chosen clump alone, so that a finger that scrolls past the drawing moves nothing. Moves once, when let go. */
function useDrag(enabled: boolean, moveBy: (x: number, y: number) => void) {
  const start = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const [by, setBy] = useState<{ readonly x: number; readonly y: number } | null>(null);
  const end = () => {
    start.current = null;
    setBy(null);
  };
  const handlers = {
    onPointerDown: (event: TargetedPointerEvent<SVGGElement>) => {
      event.currentTarget.focus({ preventScroll: true });
      if (!enabled) return;
      start.current = { x: event.clientX, y: event.clientY };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: TargetedPointerEvent<SVGGElement>) => {
      if (start.current !== null) setBy({ x: event.clientX - start.current.x, y: event.clientY - start.current.y });
    },
    onPointerUp: () => {
      if (by !== null && Math.hypot(by.x, by.y) > TAP_PIXELS) moveBy(by.x, by.y);
      end();
    },
    onPointerCancel: end,
  };
  return { handlers, shift: by === null ? undefined : `translate(${by.x} ${by.y})` };
}

/** A hand that taps moves this much. */
const TAP_PIXELS = 4;
