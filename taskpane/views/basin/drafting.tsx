import type { ComponentChildren } from "preact";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { Point } from "./plan-geometry.ts";
import { scaleBarLength } from "./scale.ts";

/** The marks of a technical drawing: arrows, dimension lines, letters, hatching. All positions are CSS pixels. */

export function Label({
  x,
  y,
  anchor,
  turned = false,
  children,
}: {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  /** Reads from the bottom up. */
  readonly turned?: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <text class="drawing-words" x={x} y={y} text-anchor={anchor} {...(turned ? { transform: `rotate(-90 ${x} ${y})` } : {})}>
      {children}
    </text>
  );
}

/** A zone's letter, with a leader to the place where the letter itself has no room. */
export function Letter({
  at,
  to,
  children,
}: {
  readonly at: Point;
  readonly to?: Point | undefined;
  readonly children: ComponentChildren;
}) {
  return (
    <g>
      {to !== undefined && <line class="leader" x1={at.x} y1={at.y} x2={to.x} y2={to.y} />}
      {to !== undefined && <circle class="leader-end" cx={to.x} cy={to.y} r={2} />}
      <circle class="letter-disc" cx={at.x} cy={at.y} r={9} />
      <text class="drawing-letter" x={at.x} y={at.y + 4.3} text-anchor="middle">
        {children}
      </text>
    </g>
  );
}

export function Arrow({ from, to, class: name = "" }: { readonly from: Point; readonly to: Point; readonly class?: string }) {
  return (
    <g class={`arrow ${name}`}>
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      <ArrowHead tip={to} from={from} size={7} />
    </g>
  );
}

/**
 * A length between two points, its line drawn there or moved aside with extension lines. An upright one is read from
 * the bottom up. Where the line is too short for its words, they stand after it.
 */
export function DimensionLine({
  from,
  to,
  movedTo,
  says,
  wordsAside = false,
}: {
  readonly from: Point;
  readonly to: Point;
  readonly movedTo?: { readonly x: number } | { readonly y: number };
  readonly says: string;
  /** Beside an upright line and level, instead of on it. */
  readonly wordsAside?: boolean;
}) {
  const start = { ...from, ...movedTo };
  const end = { ...to, ...movedTo };
  const upright = Math.abs(end.x - start.x) < Math.abs(end.y - start.y);
  const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
  return (
    <g class="dimension">
      {movedTo !== undefined && <ExtensionLine from={from} to={start} />}
      {movedTo !== undefined && <ExtensionLine from={to} to={end} />}
      <line x1={start.x} y1={start.y} x2={end.x} y2={end.y} />
      <ArrowHead tip={start} from={end} size={5} />
      <ArrowHead tip={end} from={start} size={5} />
      {wordsAside ? (
        <Label x={middle.x + 5} y={middle.y + 4} anchor="start">
          {says}
        </Label>
      ) : (
        <Label x={upright ? middle.x - 4 : middle.x} y={upright ? middle.y : middle.y - 4} anchor="middle" turned={upright}>
          {says}
        </Label>
      )}
    </g>
  );
}

function ExtensionLine({ from, to }: { readonly from: Point; readonly to: Point }) {
  const beyond = { x: to.x + 3 * Math.sign(to.x - from.x), y: to.y + 3 * Math.sign(to.y - from.y) };
  return <line class="extension" x1={from.x} y1={from.y} x2={beyond.x} y2={beyond.y} />;
}

function ArrowHead({ tip, from, size }: { readonly tip: Point; readonly from: Point; readonly size: number }) {
  const reach = Math.hypot(tip.x - from.x, tip.y - from.y);
  if (reach === 0) return null;
  const back = { x: (size * (from.x - tip.x)) / reach, y: (size * (from.y - tip.y)) / reach };
  const aside = { x: -back.y * 0.4, y: back.x * 0.4 };
  const corners = [
    tip,
    { x: tip.x + back.x + aside.x, y: tip.y + back.y + aside.y },
    { x: tip.x + back.x - aside.x, y: tip.y + back.y - aside.y },
  ];
  return <polygon class="arrow-head" points={corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ")} />;
}

/** A round length drawn at the drawing's scale; `unit` is the pixels of one foot or metre. */
export function ScaleBar({
  x,
  y,
  unit,
  units,
}: {
  readonly x: number;
  readonly y: number;
  readonly unit: number;
  readonly units: UnitSystem;
}) {
  const length = scaleBarLength(70 / unit);
  const end = x + length * unit;
  return (
    <g class="scale-bar">
      <path d={`M${x} ${y - 5}V${y}H${end.toFixed(1)}V${y - 5}`} />
      <Label x={end + 5} y={y} anchor="start">
        {quantityWords("length", length, units)}
      </Label>
    </g>
  );
}

/** Hatching that tells the zones apart without color. */
export function Patterns({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`${id}-a`} width="14" height="7" patternUnits="userSpaceOnUse">
        <rect class="ground-a" width="14" height="7" />
        <path class="hatch" d="M0 4q3.5-3 7 0t7 0" />
      </pattern>
      <pattern id={`${id}-b`} width="8" height="8" patternUnits="userSpaceOnUse">
        <rect class="ground-b" width="8" height="8" />
        <circle class="dot" cx="2" cy="2" r="0.9" />
        <circle class="dot" cx="6" cy="6" r="0.9" />
      </pattern>
      <pattern id={`${id}-c`} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect class="ground-c" width="7" height="7" />
        <path class="hatch" d="M-1 1 1-1M0 7 7 0M6 8 8 6" />
      </pattern>
      <pattern id={`${id}-stone`} width="8" height="8" patternUnits="userSpaceOnUse">
        <rect class="ground-stone" width="8" height="8" />
        <path class="stones" d="M1 2.5a1.7 1.4 0 1 0 3.4 0a1.7 1.4 0 1 0-3.4 0M4.2 6.2a1.7 1.3 0 1 0 3.4 0a1.7 1.3 0 1 0-3.4 0" />
      </pattern>
      <pattern id={`${id}-mix`} width="10" height="10" patternUnits="userSpaceOnUse">
        <rect class="ground-mix" width="10" height="10" />
        <path class="hatch" d="M1 2h3M6 7h3" />
        <circle class="dot" cx="7.5" cy="2.5" r="0.8" />
        <circle class="dot" cx="2.5" cy="7.5" r="0.8" />
      </pattern>
      <pattern id={`${id}-mulch`} width="9" height="6" patternUnits="userSpaceOnUse">
        <rect class="ground-mulch" width="9" height="6" />
        <path class="hatch" d="M1 4 4 2M5 5l3-2" />
      </pattern>
      <pattern id={`${id}-earth`} width="12" height="12" patternUnits="userSpaceOnUse">
        <rect class="ground-earth" width="12" height="12" />
        <path class="hatch" d="M2 10 6 4M5 11 9 5" />
      </pattern>
    </defs>
  );
}
