import { useId, useRef } from "preact/hooks";
import { useElementWidth } from "../../parts/element-width.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { depthWords } from "./depths.ts";
import { DimensionLine, Label, Patterns, ScaleBar } from "./drafting.tsx";
import { Handle, type Pulling } from "./handle.tsx";
import type { Point } from "./plan-geometry.ts";
import { verticalExaggeration } from "./scale.ts";
import { sectionGeometry, type SectionGeometry } from "./section-geometry.ts";
import { basinText } from "./text.ts";

/** Room for the words over the section and the dimension lines under it, in CSS pixels. */
const MARGIN = { side: 4, top: 52, bottom: 66 };

/** Room for the section itself, as a share of the drawing's width. */
const TALLEST_TO_WIDTH = 0.55;

/** Common practice, no source: more than this and nobody recognizes a gentle slope. */
const MOST_EXAGGERATION = 5;

/** The basin cut down the slope, uphill at the left, to scale; taller than true where it would be too flat to read. The floor can be pulled down. */
export function SectionDrawing({ basin, pulling }: { readonly basin: BasinDimensions; readonly pulling: Pulling }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useElementWidth(frame);
  return (
    <div ref={frame} class="drawing">
      {width > 0 && <Section basin={basin} width={width} />}
      {width > 0 && <FloorHandle basin={basin} width={width} pulling={pulling} />}
    </div>
  );
}

function FloorHandle({ basin, width, pulling }: { readonly basin: BasinDimensions; readonly width: number; readonly pulling: Pulling }) {
  const { section, scale, taller, highest } = layoutSection(basin, width);
  const {
    ground: [left],
    floorUphill,
    floorDownhill,
  } = section;
  const middle = MARGIN.side + ((floorUphill.x + 3 * floorDownhill.x) / 4 - left.x) * scale;
  const floor = MARGIN.top + (highest - floorUphill.y) * scale * taller;
  return <Handle {...pulling} pulled="ponding" at={{ x: middle, y: floor }} outward={{ x: 0, y: 1 }} scale={scale * taller} />;
}

interface SectionLayout {
  readonly section: SectionGeometry;
  /** Pixels of one foot or meter on the level. */
  readonly scale: number;
  /** How many times taller than true. */
  readonly taller: number;
  readonly height: number;
  readonly highest: number;
}

export function layoutSection(basin: BasinDimensions, width: number): SectionLayout {
  const section = sectionGeometry(basin);
  const {
    ground: [left, right],
    floorUphill,
  } = section;
  const lowest = Math.min(right.y, floorUphill.y - basin.mulchDepth - basin.mixDepth) - EARTH_BELOW * basin.pondingDepth;
  const highest = Math.max(left.y, basin.freeboard);
  const scale = (width - 2 * MARGIN.side) / (right.x - left.x);
  const taller = verticalExaggeration((highest - lowest) * scale, TALLEST_TO_WIDTH * width, MOST_EXAGGERATION);
  return { section, scale, taller, height: Math.round((highest - lowest) * scale * taller + MARGIN.top + MARGIN.bottom), highest };
}

/** As wide as asked; within another drawing, its top left corner at x and y. */
export function Section({
  basin,
  width,
  x: left0 = 0,
  y: top0 = 0,
}: {
  readonly basin: BasinDimensions;
  readonly width: number;
  readonly x?: number;
  readonly y?: number;
}) {
  const id = useId();
  const { units } = basin;
  const { section, scale, taller, height, highest } = layoutSection(basin, width);
  const {
    ground: [left, right],
    floorUphill,
    floorDownhill,
    uphillRim,
    downhillRim,
    crestInner,
    crestOuter,
    toe,
  } = section;
  const at = ({ x, y }: Point): Point => ({ x: MARGIN.side + (x - left.x) * scale, y: MARGIN.top + (highest - y) * scale * taller });
  const corners = (points: readonly Point[]) => points.map((point) => pair(at(point))).join(" ");
  const length = (value: number) => quantityWords("length", value, units);
  const depth = (value: number) => depthWords(value, units);

  const foot = height - MARGIN.bottom;
  const floor = at({ x: 0, y: floorUphill.y }).y;
  const mulchFoot = at({ x: 0, y: floorUphill.y - basin.mulchDepth }).y;
  const mixFoot = at({ x: 0, y: floorUphill.y - basin.mulchDepth - basin.mixDepth }).y;
  const sill = at(downhillRim);
  const crest = at({ x: (crestInner.x + crestOuter.x) / 2, y: basin.freeboard });
  const depthLine = at({ x: -basin.floorWidth * 0.3, y: 0 }).x;
  const fullWater = at(uphillRim);
  const sillOuter = at({ x: crestOuter.x + basin.freeboard * basin.bermOuterSlope, y: 0 });

  return (
    <svg
      class="drawing-paper"
      viewBox={`0 0 ${width} ${height}`}
      x={left0}
      y={top0}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-words`}
    >
      <title id={`${id}-title`}>{basinText.section.title}</title>
      <desc id={`${id}-words`}>{basinText.section.description(basin, section, taller)}</desc>
      <Patterns id={id} />

      <polygon
        style={{ fill: `url(#${id}-earth)` }}
        points={`${corners([left, right])} ${at(right).x.toFixed(1)} ${foot} ${at(left).x.toFixed(1)} ${foot}`}
      />
      <polygon class="paper" points={corners(section.water)} />
      {section.berms.map((berm, index) => (
        <polygon key={index} class="outline-thin" style={{ fill: `url(#${id}-c)` }} points={corners(berm)} />
      ))}
      {basin.mixDepth > 0 && <polygon class="outline-thin" style={{ fill: `url(#${id}-mix)` }} points={corners(section.mix)} />}
      {basin.mulchDepth > 0 && <polygon class="outline-thin" style={{ fill: `url(#${id}-mulch)` }} points={corners(section.mulch)} />}
      <polygon style={{ fill: `url(#${id}-a)` }} points={corners(section.water)} />
      <line class="outline-thin dashed" x1={at(left).x} y1={at(left).y} x2={at(right).x} y2={at(right).y} />
      <polyline class="outline" points={corners(section.surface)} />

      <line class="water-line" x1={at(uphillRim).x} y1={sill.y} x2={sill.x} y2={sill.y} />
      <path class="water-mark" d={`M${fullWater.x + 5} ${fullWater.y - 9}h10l-5 8z`} />
      <line class="water-line dashed" x1={sill.x} y1={sill.y} x2={sillOuter.x} y2={sill.y} />

      <Callout
        words={basinText.section.berm(length(basin.bermCrestWidth), depth(basin.freeboard))}
        y={28}
        to={{ x: crest.x, y: crest.y }}
        right={width - 2}
      />
      <Label x={fullWater.x + 20} y={fullWater.y - 5} anchor="start">
        {fitting(sill.x - fullWater.x - 20, basinText.section.sill)}
      </Label>
      <Label x={2} y={12} anchor="start">
        {basinText.uphill}
      </Label>
      <Label x={width - 2} y={12} anchor="end">
        {basinText.downhill}
      </Label>

      <DimensionLine
        from={{ x: depthLine, y: sill.y }}
        to={{ x: depthLine, y: floor }}
        says={basinText.section.ponding(depth(basin.pondingDepth))}
        wordsAside
      />
      {basin.mulchDepth > 0 && (
        <Label x={depthLine + 5} y={(floor + mulchFoot) / 2 + 4} anchor="start">
          {basinText.section.mulch(depth(basin.mulchDepth))}
        </Label>
      )}
      {basin.mixDepth > 0 && (
        <DimensionLine
          from={{ x: depthLine, y: mulchFoot }}
          to={{ x: depthLine, y: mixFoot }}
          says={basinText.section.mix(depth(basin.mixDepth))}
          wordsAside
        />
      )}

      <DimensionLine
        from={at(floorUphill)}
        to={at(floorDownhill)}
        movedTo={{ y: foot + 16 }}
        says={basinText.section.floor(length(basin.floorWidth))}
      />
      <DimensionLine
        from={at(uphillRim)}
        to={at(downhillRim)}
        movedTo={{ y: foot + 36 }}
        says={basinText.section.rim(length(downhillRim.x - uphillRim.x))}
      />
      <Label x={width - 6} y={foot - 7} anchor="end">
        {basinText.section.ground(basin.groundFall)}
      </Label>
      <ScaleBar x={4} y={height - 6} unit={scale} units={units} />
      <Label x={width - 2} y={height - 6} anchor="end">
        {basinText.section.exaggeration(taller)}
      </Label>
      {toe === null ? null : <circle class="leader-end" cx={at(toe).x} cy={at(toe).y} r={2} />}
    </svg>
  );
}

/** Native soil drawn under the lowest layer, as a share of the ponding depth. */
const EARTH_BELOW = 0.6;

function Callout({ words, y, to, right }: { readonly words: string; readonly y: number; readonly to: Point; readonly right: number }) {
  return (
    <g>
      <path class="leader" d={`M${to.x.toFixed(1)} ${y + 4}V${to.y.toFixed(1)}`} />
      <circle class="leader-end" cx={to.x} cy={to.y} r={2} />
      <Label x={right} y={y} anchor="end">
        {words}
      </Label>
    </g>
  );
}

/** The longest of the wordings, longest first, that the room takes. */
function fitting(room: number, wordings: readonly string[]): string {
  return wordings.find((words) => words.length * WIDEST_LETTER <= room) ?? wordings.at(-1) ?? "";
}

/** Room for one letter of the drawing's 12 px words, with something to spare. */
const WIDEST_LETTER = 6.6;

function pair({ x, y }: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
