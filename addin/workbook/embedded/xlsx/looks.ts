import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
  type IStyleData,
  type Nullable,
} from "@univerjs/core";
import type { CellStyle } from "hucre/xlsx";

type Font = NonNullable<CellStyle["font"]>;
type Border = NonNullable<CellStyle["border"]>;

/** A style states its whole font: the writer takes nothing from the default one. */
export const FILE_FONT = { name: "Calibri", size: 11 } as const satisfies Font;

/** What a cell of the grid looks like, as the file says it. */
export function fileLook(style: IStyleData): CellStyle {
  const fill = hex(style.bg?.rgb);
  const border = borderOf(style);
  return {
    font: {
      ...FILE_FONT,
      ...(style.ff ? { name: style.ff } : {}),
      ...(style.fs === undefined ? {} : { size: style.fs }),
      ...(style.bl === BooleanNumber.TRUE ? { bold: true } : {}),
      ...(style.it === BooleanNumber.TRUE ? { italic: true } : {}),
      ...(style.ul?.s === BooleanNumber.TRUE ? { underline: true } : {}),
      ...(style.st?.s === BooleanNumber.TRUE ? { strikethrough: true } : {}),
      ...colored(style.cl?.rgb),
    },
    ...(fill === null ? {} : { fill: { type: "pattern", pattern: "solid", fgColor: { rgb: fill } } }),
    ...(border === null ? {} : { border }),
    alignment: {
      vertical: VERTICAL.get(style.vt ?? VerticalAlign.MIDDLE) ?? "center",
      ...(HORIZONTAL.has(style.ht as HorizontalAlign) ? { horizontal: HORIZONTAL.get(style.ht as HorizontalAlign) ?? "general" } : {}),
      ...(style.tb === WrapStrategy.WRAP ? { wrapText: true } : {}),
    },
    ...(style.n?.pattern === undefined ? {} : { numFmt: style.n.pattern }),
  };
}

const VERTICAL: ReadonlyMap<VerticalAlign, "top" | "center" | "bottom"> = new Map([
  [VerticalAlign.TOP, "top"],
  [VerticalAlign.MIDDLE, "center"],
  [VerticalAlign.BOTTOM, "bottom"],
]);

const HORIZONTAL: ReadonlyMap<HorizontalAlign, "left" | "center" | "right" | "justify"> = new Map([
  [HorizontalAlign.LEFT, "left"],
  [HorizontalAlign.CENTER, "center"],
  [HorizontalAlign.RIGHT, "right"],
  [HorizontalAlign.JUSTIFIED, "justify"],
]);

const LINES: ReadonlyMap<BorderStyleTypes, NonNullable<Border["top"]>["style"]> = new Map([
  [BorderStyleTypes.THIN, "thin"],
  [BorderStyleTypes.HAIR, "hair"],
  [BorderStyleTypes.DOTTED, "dotted"],
  [BorderStyleTypes.DASHED, "dashed"],
  [BorderStyleTypes.DOUBLE, "double"],
  [BorderStyleTypes.MEDIUM, "medium"],
  [BorderStyleTypes.THICK, "thick"],
]);

function borderOf({ bd }: IStyleData): Border | null {
  if (!bd) return null;
  const border: Border = {};
  for (const [side, line] of [
    ["top", bd.t],
    ["right", bd.r],
    ["bottom", bd.b],
    ["left", bd.l],
  ] as const) {
    const style = line ? LINES.get(line.s) : undefined;
    if (line && style !== undefined) border[side] = { style, ...colored(line.cl.rgb) };
  }
  return Object.keys(border).length === 0 ? null : border;
}

/** What a cell of the file looks like, as the grid says it. Colors of a theme are the file's own and are left out. */
export function gridLook({ font, fill, border, alignment, numFmt }: CellStyle): IStyleData {
  const background = fill?.type === "pattern" && fill.pattern === "solid" ? fill.fgColor?.rgb : undefined;
  const lines = Object.entries({ t: border?.top, r: border?.right, b: border?.bottom, l: border?.left }).flatMap(([side, line]) => {
    const style = [...LINES].find(([, name]) => name === line?.style)?.[0];
    return line === undefined || style === undefined ? [] : [[side, { s: style, cl: { rgb: cssColor(line.color?.rgb) ?? "#000000" } }]];
  });
  return {
    ...(font?.name === undefined || font.name === FILE_FONT.name ? {} : { ff: font.name }),
    ...(font?.size === undefined || font.size === FILE_FONT.size ? {} : { fs: font.size }),
    ...(font?.bold === true ? { bl: BooleanNumber.TRUE } : {}),
    ...(font?.italic === true ? { it: BooleanNumber.TRUE } : {}),
    ...(font?.underline === undefined || font.underline === false ? {} : { ul: { s: BooleanNumber.TRUE } }),
    ...(font?.strikethrough === true ? { st: { s: BooleanNumber.TRUE } } : {}),
    ...(font?.color?.rgb === undefined ? {} : { cl: { rgb: cssColor(font.color.rgb) } }),
    ...(background === undefined ? {} : { bg: { rgb: cssColor(background) } }),
    ...(lines.length === 0 ? {} : { bd: Object.fromEntries(lines) as NonNullable<IStyleData["bd"]> }),
    ...(alignment?.wrapText === true ? { tb: WrapStrategy.WRAP } : {}),
    // In a file words stand at the foot of their cell where nothing else is said, in the grid in its middle.
    ...inGrid("vt", VERTICAL, alignment?.vertical ?? "bottom"),
    ...inGrid("ht", HORIZONTAL, alignment?.horizontal),
    ...(numFmt === undefined || numFmt === "General" ? {} : { n: { pattern: numFmt } }),
  };
}

function inGrid<Key extends string, Place, Name>(
  key: Key,
  names: ReadonlyMap<Place, Name>,
  name: unknown,
): { readonly [K in Key]?: Place } {
  const found = [...names].find((entry) => entry[1] === name)?.[0];
  return found === undefined ? {} : ({ [key]: found } as { readonly [K in Key]: Place });
}

/** "#RRGGBB" of the six or, with how opaque it is before them, eight digits of a file. */
function cssColor(rgb: string | undefined): string | null {
  const digits = /([0-9a-f]{6})$/i.exec(rgb ?? "")?.[1];
  return digits === undefined ? null : `#${digits.toLowerCase()}`;
}

function colored(rgb: Nullable<string>): { readonly color?: { readonly rgb: string } } {
  const found = hex(rgb);
  return found === null ? {} : { color: { rgb: found } };
}

function hex(rgb: Nullable<string>): string | null {
  return /^#([0-9a-f]{6})$/i.exec(rgb ?? "")?.[1]?.toUpperCase() ?? null;
}
