import { useEffect, useRef } from "preact/hooks";
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { useElementWidth } from "./element-width.ts";
import "./time-chart.css";

/** Two columns of one length, as the chart library takes them. */
export interface ChartPoints {
  readonly times: readonly number[];
  readonly values: readonly number[];
}

/** A point that stands out, told from others by its shape and its letter. */
export interface ChartMark {
  readonly time: number;
  readonly value: number;
  readonly shape: "circle" | "diamond" | "square";
  readonly letter: string;
}

/** One small chart, against time or what else its axis is named for. What it shows stands in words beside it. */
export function TimeChart({
  title,
  words,
  points,
  until,
  steps = false,
  marks = NO_MARKS,
}: {
  readonly title: string;
  /** What a screen reader says instead of the picture. */
  readonly words: string;
  readonly points: ChartPoints;
  /** Where the time axis ends, so that charts above each other agree. */
  readonly until: number;
  /** A level step from point to point, for what holds over an interval. */
  readonly steps?: boolean;
  readonly marks?: readonly ChartMark[];
}) {
  const marked = useRef(marks);
  marked.current = marks;
  const frame = useRef<HTMLDivElement>(null);
  const width = useElementWidth(frame);
  const chart = useRef<uPlot | null>(null);
  useEffect(() => {
    const element = frame.current;
    if (element === null || width === 0) return undefined;
    const plot = new uPlot(optionsOf(element, width, steps, marked), dataOf(points), element);
    chart.current = plot;
    const stopFollowing = followTheme(() => plot.redraw());
    return () => {
      stopFollowing();
      plot.destroy();
      chart.current = null;
    };
  }, [width > 0, steps]);
  useEffect(() => chart.current?.setSize({ width, height: HEIGHT_PIXELS }), [width]);
  useEffect(() => {
    chart.current?.setData(dataOf(points), false);
    chart.current?.setScale("x", { min: points.times[0] ?? 0, max: until });
  });
  return (
    <figure class="chart">
      <figcaption>{title}</figcaption>
      <div ref={frame} class="chart-frame" role="img" aria-label={words} />
    </figure>
  );
}

const NO_MARKS: readonly ChartMark[] = [];

const HEIGHT_PIXELS = 150;

function dataOf({ times, values }: ChartPoints): uPlot.AlignedData {
  return [[...times], [...values]];
}

/** Colors are asked for at every drawing, because the theme can change under the chart. */
function optionsOf(element: HTMLElement, width: number, steps: boolean, marked: { readonly current: readonly ChartMark[] }): uPlot.Options {
  const color = (name: string) => () => getComputedStyle(element).getPropertyValue(name).trim();
  const axis: uPlot.Axis = {
    font: AXIS_FONT,
    stroke: color("--chart-ink"),
    grid: { stroke: color("--chart-grid"), width: 1, dash: [2, 4] },
    ticks: { stroke: color("--chart-grid"), width: 1, size: 4 },
  };
  const stepped = uPlot.paths.stepped?.({ align: -1 });
  return {
    width,
    height: HEIGHT_PIXELS,
    // Room at the right for half of the last time's digits.
    padding: [8, 16, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    hooks: { draw: [(plot) => marked.current.forEach((mark) => drawMark(plot, mark, color("--chart-ink")(), color("--chart-paper")()))] },
    scales: { x: { time: false }, y: { range: (_plot, _least, most) => [0, most > 0 ? most * 1.1 : 1] } },
    axes: [
      { ...axis, size: 30, space: 48 },
      { ...axis, size: 46, space: 28 },
    ],
    series: [
      {},
      {
        stroke: color("--chart-line"),
        width: 2,
        points: {
          show: (plot) => !steps && plot.data[0].length <= MOST_DOTS,
          size: 7,
          fill: color("--chart-line"),
          stroke: color("--chart-line"),
        },
        ...(steps && stepped !== undefined ? { paths: stepped, fill: color("--chart-fill") } : {}),
      },
    ],
  };
}

/** More readings than this stand so close that dots would hide the line. */
const MOST_DOTS = 40;

const MARK_RADIUS_PIXELS = 6;

/** Filled with the paper's color and drawn in ink, so that it stands out on any line in any theme. */
function drawMark(plot: uPlot, { time, value, shape, letter }: ChartMark, ink: string, paper: string): void {
  const { ctx } = plot;
  const scale = devicePixelRatio;
  const radius = MARK_RADIUS_PIXELS * scale;
  const [x, y] = [plot.valToPos(time, "x", true), plot.valToPos(value, "y", true)];
  ctx.save();
  ctx.beginPath();
  if (shape === "circle") ctx.arc(x, y, radius, 0, 2 * Math.PI);
  else if (shape === "square") ctx.rect(x - radius * 0.85, y - radius * 0.85, radius * 1.7, radius * 1.7);
  else
    [
      [0, -1.2],
      [1.2, 0],
      [0, 1.2],
      [-1.2, 0],
    ].forEach(([across = 0, down = 0], corner) => ctx[corner === 0 ? "moveTo" : "lineTo"](x + across * radius, y + down * radius));
  ctx.closePath();
  Object.assign(ctx, {
    fillStyle: paper,
    strokeStyle: ink,
    lineWidth: 2 * scale,
    font: `600 ${12 * scale}px system-ui, sans-serif`,
    textAlign: "center",
  });
  ctx.fill();
  ctx.stroke();
  ctx.fillStyle = ink;
  ctx.fillText(letter, x, y + radius + 13 * scale);
  ctx.restore();
}

const AXIS_FONT = "12px system-ui, sans-serif";

/** Draws again when the pane, the system or a contrast theme changes color. */
function followTheme(redraw: () => void): () => void {
  const observer = new MutationObserver(redraw);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ["class", "style"] });
  const queries = [matchMedia("(prefers-color-scheme: dark)"), matchMedia("(forced-colors: active)")];
  queries.forEach((query) => query.addEventListener("change", redraw));
  return () => {
    observer.disconnect();
    queries.forEach((query) => query.removeEventListener("change", redraw));
  };
}
