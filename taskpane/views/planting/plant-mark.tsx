import type { PlantMark } from "./plant-marks.ts";

/** A mark at a place of a drawing, `size` from its middle to its edge, in CSS pixels. */
export function Mark({ mark, x, y, size }: { readonly mark: PlantMark; readonly x: number; readonly y: number; readonly size: number }) {
  return (
    <g class={`plant-mark plant-mark-${mark.fill}`} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${size.toFixed(2)})`}>
      <path d={mark.path} />
      {mark.fill === "barred" && <path d="M-.9 0H.9M0-.9V.9" />}
    </g>
  );
}

/** A mark with its number, as the legend shows it. */
export function MarkKey({ mark }: { readonly mark: PlantMark }) {
  return (
    <svg class="mark-key" width="44" height="24" viewBox="0 0 44 24" aria-hidden="true" focusable="false">
      <Mark mark={mark} x={11} y={12} size={8} />
      <text x="26" y="17">
        {mark.number}
      </text>
    </svg>
  );
}
