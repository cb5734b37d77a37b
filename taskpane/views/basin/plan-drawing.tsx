import { useId, useRef } from "preact/hooks";
import { useElementWidth } from "../../parts/element-width.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { Arrow, DimensionLine, Label, Letter, Patterns, ScaleBar } from "./drafting.tsx";
import { Handle, type Pulling } from "./handle.tsx";
import { normalAt, planGeometry, pointOn, SILL_ANGLE, widened, type Outline, type PlanGeometry, type Point } from "./plan-geometry.ts";
import { basinText } from "./text.ts";

/** Room around the plan for arrows and dimension lines, in CSS pixels. */
const MARGIN = { left: 40, right: 46, top: 58, bottom: 50 };

const TALLEST_TO_WIDTH = 1.1;

/** The basin from above, to scale, uphill at the top; its length, width and sides can be pulled. */
export function PlanDrawing({ basin, pulling }: { readonly basin: BasinDimensions; readonly pulling: Pulling }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useElementWidth(frame);
  return (
    <div ref={frame} class="drawing">
      {width > 0 && <PullablePlan basin={basin} width={width} pulling={pulling} />}
    </div>
  );
}

function PullablePlan({ basin, width, pulling }: { readonly basin: BasinDimensions; readonly width: number; readonly pulling: Pulling }) {
  const layout = layoutPlan(basin, width);
  const { plan, scale, at } = layout;
  const { floor, rim } = plan;
  return (
    <>
      <Plan basin={basin} width={width} layout={layout} />
      <Handle {...pulling} pulled="length" at={at({ x: floor.halfLength, y: 0 })} outward={{ x: 1, y: 0 }} scale={scale} />
      <Handle {...pulling} pulled="width" at={at({ x: 0, y: floor.halfWidth })} outward={{ x: 0, y: 1 }} scale={scale} />
      <Handle {...pulling} pulled="sides" at={at({ x: -rim.halfLength, y: 0 })} outward={{ x: -1, y: 0 }} scale={scale} />
    </>
  );
}

interface PlanLayout {
  readonly plan: PlanGeometry;
  /** Pixels of one foot or meter. */
  readonly scale: number;
  readonly height: number;
  readonly at: (point: Point) => Point;
  /** Where the dimension line of the rim's width stands. */
  readonly rimRight: number;
}

export function layoutPlan(basin: BasinDimensions, width: number): PlanLayout {
  const plan = planGeometry(basin);
  const { extent } = plan;
  const across = extent.right - extent.left;
  const down = extent.bottom - extent.top;
  const room = { width: width - MARGIN.left - MARGIN.right, height: TALLEST_TO_WIDTH * width - MARGIN.top - MARGIN.bottom };
  const scale = Math.min(room.width / across, room.height / down);
  const height = Math.round(down * scale + MARGIN.top + MARGIN.bottom);
  const middle = { x: MARGIN.left + (room.width - across * scale) / 2 - extent.left * scale, y: MARGIN.top - extent.top * scale };
  return {
    plan,
    scale,
    height,
    at: ({ x, y }) => ({ x: middle.x + x * scale, y: middle.y + y * scale }),
    rimRight: MARGIN.left + (room.width + across * scale) / 2 + 24,
  };
}

/** As wide as asked; within another drawing, its top left corner at x and y. */
export function Plan({
  basin,
  width,
  layout = layoutPlan(basin, width),
  x = 0,
  y = 0,
}: {
  readonly basin: BasinDimensions;
  readonly width: number;
  readonly layout?: PlanLayout;
  readonly x?: number;
  readonly y?: number;
}) {
  const id = useId();
  const { units } = basin;
  const { plan, scale, height, at, rimRight } = layout;
  const { extent, floor, rim } = plan;
  const length = (value: number) => quantityWords("length", value, units);

  const top = at({ x: 0, y: extent.top }).y;
  const bottom = at({ x: 0, y: extent.bottom }).y;
  const inlet = at(pointOn(rim, INLET_ANGLE));
  const inletFloor = at(pointOn(floor, INLET_ANGLE));
  const sillEnd = at(middleOf(plan.sill[1], plan.sill[2]));
  const out = normalAt(plan.crestOuter, SILL_ANGLE);
  const slopeLeft = 13;
  // How far from the middle the floor's edge is where the width is written.
  const widthLine = basin.shape === "ellipse" ? Math.sqrt(1 - 0.55 ** 2) : 1;
  const ring = (rim.halfWidth - floor.halfWidth) * scale;
  const between = pointOn(widened(floor, (rim.halfWidth - floor.halfWidth) / 2), RING_LETTER_ANGLE);
  const onCrest = pointOn(widened(plan.crestInner, basin.bermCrestWidth / 2), CREST_LETTER_ANGLE);
  const ringLetterOut = ring < LETTER_ROOM ? at(pointOn(widened(rim, 20 / scale), RING_LETTER_ANGLE)) : undefined;
  const crestBand = (plan.crestOuter.halfWidth - plan.crestInner.halfWidth) * scale;
  const crestLetterOut =
    crestBand < LETTER_ROOM
      ? at(pointOn({ shape: "ellipse", halfLength: extent.right + 4 / scale, halfWidth: extent.bottom + 4 / scale }, CREST_LETTER_ANGLE))
      : undefined;

  return (
    <svg
      class="drawing-paper"
      viewBox={`0 0 ${width} ${height}`}
      x={x}
      y={y}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-words`}
    >
      <title id={`${id}-title`}>{basinText.plan.title}</title>
      <desc id={`${id}-words`}>{basinText.plan.description(basin)}</desc>
      <Patterns id={id} />

      <path class="zone zone-c" style={{ fill: `url(#${id}-c)` }} d={bermPath(plan.berm, at)} />
      {plan.berm.toe !== null && <path class="outline-thin dashed" d={lineThrough(plan.berm.toe, at)} />}
      <path class="outline-thin" d={lineThrough(plan.berm.crestInner, at)} />
      <path class="outline-thin" d={lineThrough(plan.berm.crestOuter, at)} />
      {plan.cutEdge.length > 0 && <path class="outline-thin dashed" d={lineThrough(plan.cutEdge, at)} />}
      <path class="zone zone-b" style={{ fill: `url(#${id}-b)` }} d={`${lineThrough(allOf(rim), at)}Z`} />
      <path class="zone zone-a" style={{ fill: `url(#${id}-a)` }} d={`${lineThrough(allOf(floor), at)}Z`} />
      <polygon class="outline" style={{ fill: `url(#${id}-stone)` }} points={plan.sill.map((corner) => pair(at(corner))).join(" ")} />

      <Arrow from={{ x: inlet.x, y: Math.min(inlet.y, top) - 26 }} to={inletFloor} class="water-arrow" />
      <Label x={inlet.x - 8} y={Math.min(inlet.y, top) - 18} anchor="end">
        {basinText.plan.inlet}
      </Label>
      <Arrow from={sillEnd} to={{ x: sillEnd.x + 20 * out.x, y: sillEnd.y + 20 * out.y }} class="water-arrow" />

      <DimensionLine from={at({ x: -floor.halfLength, y: 0 })} to={at({ x: floor.halfLength, y: 0 })} says={length(basin.floorLength)} />
      <DimensionLine
        from={at({ x: -floor.halfLength * 0.55, y: -floor.halfWidth * widthLine })}
        to={at({ x: -floor.halfLength * 0.55, y: floor.halfWidth * widthLine })}
        says={length(basin.floorWidth)}
      />
      <DimensionLine
        from={at({ x: -rim.halfLength, y: 0 })}
        to={at({ x: rim.halfLength, y: 0 })}
        movedTo={{ y: bottom + 16 }}
        says={length(2 * rim.halfLength)}
      />
      <DimensionLine
        from={at({ x: 0, y: -rim.halfWidth })}
        to={at({ x: 0, y: rim.halfWidth })}
        movedTo={{ x: rimRight }}
        says={length(2 * rim.halfWidth)}
      />

      <Letter at={at({ x: floor.halfLength * 0.62, y: -floor.halfWidth * 0.42 })}>A</Letter>
      <Letter at={ringLetterOut ?? at(between)} to={ringLetterOut && at(between)}>
        B
      </Letter>
      <Letter at={crestLetterOut ?? at(onCrest)} to={crestLetterOut && at(onCrest)}>
        C
      </Letter>

      <Label x={4} y={14} anchor="start">
        {basinText.uphill}
      </Label>
      <Arrow from={{ x: slopeLeft, y: top - 30 }} to={{ x: slopeLeft, y: bottom }} />
      <Label x={slopeLeft + 15} y={(top + bottom) / 2} anchor="middle" turned>
        {basinText.plan.slope(basin.groundFall)}
      </Label>
      <Label x={4} y={bottom + 16} anchor="start">
        {basinText.downhill}
      </Label>
      <ScaleBar x={4} y={height - 8} unit={scale} units={units} />
      <Label x={width - 4} y={height - 8} anchor="end">
        {basinText.plan.edge(length(basin.floorEdge))}
      </Label>
    </svg>
  );
}

const INLET_ANGLE = (-Math.PI * 2) / 5;
const RING_LETTER_ANGLE = (-Math.PI * 3) / 4;
const CREST_LETTER_ANGLE = (Math.PI * 3) / 4;

/** Narrower than this and a letter stands outside with a leader. */
const LETTER_ROOM = 22;

function middleOf(one: Point | undefined, other: Point | undefined): Point {
  return { x: ((one?.x ?? 0) + (other?.x ?? 0)) / 2, y: ((one?.y ?? 0) + (other?.y ?? 0)) / 2 };
}

function allOf(outline: Outline): Point[] {
  return Array.from({ length: 128 }, (_, index) => pointOn(outline, (Math.PI * index) / 64));
}

function lineThrough(points: readonly Point[], at: (point: Point) => Point): string {
  return `M${points.map((point) => pair(at(point))).join("L")}`;
}

function bermPath({ toe, crestOuter, foot }: PlanGeometry["berm"], at: (point: Point) => Point): string {
  return `${lineThrough([...(toe ?? crestOuter), ...[...foot].reverse()], at)}Z`;
}

function pair({ x, y }: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
