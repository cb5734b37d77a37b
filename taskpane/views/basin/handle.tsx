import { useRef } from "preact/hooks";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { TypedBasin } from "./basin-form.ts";
import type { Point } from "./plan-geometry.ts";
import { pulledNumber, pulledTo, steppedBy, type Pulled } from "./pull-handles.ts";
import { basinText } from "./text.ts";

/** What a drawing needs to be pulled; without it, it is only looked at. */
export interface Pulling {
  readonly draft: BasinDraft;
  readonly onTune: (changed: Partial<TypedBasin>) => void;
}

/** Where a pull began: the basin is worked out anew and drawn to another scale while it goes on. */
interface Start {
  readonly draft: BasinDraft;
  readonly at: Point;
  readonly scale: number;
}

/** A place of the drawing that a finger or pointer pulls, and that the arrow keys move. */
export function Handle({
  pulled,
  at,
  outward,
  scale,
  draft,
  onTune,
}: Pulling & {
  readonly pulled: Pulled;
  readonly at: Point;
  /** The direction in which it is pulled outward, of length 1. */
  readonly outward: Point;
  /** Pixels of one foot or meter in that direction. */
  readonly scale: number;
}) {
  const start = useRef<Start | null>(null);
  const number = pulledNumber(pulled, draft);
  if (number === null) return null;
  const pull = (event: PointerEvent) => {
    const began = start.current;
    if (began === null) return;
    const pixels = (event.clientX - began.at.x) * outward.x + (event.clientY - began.at.y) * outward.y;
    onTune(pulledTo(pulled, began.draft, pixels / began.scale));
  };
  const step = (event: KeyboardEvent) => {
    const steps = STEPS.get(event.key);
    if (steps === undefined) return;
    event.preventDefault();
    onTune(steppedBy(pulled, draft, steps));
  };
  return (
    <div
      class="handle"
      role="slider"
      tabIndex={0}
      aria-label={basinText.handles[pulled]}
      aria-orientation={outward.x === 0 ? "vertical" : "horizontal"}
      aria-valuemin={number.least}
      aria-valuemax={number.most}
      aria-valuenow={number.value}
      aria-valuetext={number.says}
      style={{ left: `${at.x}px`, top: `${at.y}px`, cursor: outward.x === 0 ? "ns-resize" : "ew-resize" }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        start.current = { draft, at: { x: event.clientX, y: event.clientY }, scale };
      }}
      onPointerMove={pull}
      onPointerUp={() => (start.current = null)}
      onPointerCancel={() => (start.current = null)}
      onKeyDown={step}
    />
  );
}

const STEPS: ReadonlyMap<string, number> = new Map([
  ["ArrowRight", 1],
  ["ArrowUp", 1],
  ["ArrowLeft", -1],
  ["ArrowDown", -1],
  ["PageUp", 5],
  ["PageDown", -5],
]);
