/** Shapes over a sheet of the in-memory Excel: pictures, and what people draw themselves. */
import { HostError, type HostObject } from "./host-object.ts";
import type { Shape, Sheet } from "./spreadsheet.ts";

/** Points of a column and of a row that nobody changed. */
export const COLUMN_POINTS = 48;
const ROW_POINTS = 15;

export function leftOf(sheet: Sheet, column: number): number {
  return Array.from({ length: column }, (_, before) => sheet.columnWidths.get(before) ?? COLUMN_POINTS).reduce(
    (left, width) => left + width,
    0,
  );
}

export function topOf(row: number): number {
  return row * ROW_POINTS;
}

export function shapesObject(sheet: Sheet): HostObject {
  return {
    type: "ShapeCollection",
    properties: {},
    items: () => sheet.shapes.map((shape) => shapeObject(sheet, shape)),
    item: (key) => {
      const shape = sheet.shapes.find(({ id, name }) => id === key || name === key);
      if (shape === undefined) throw new HostError("ItemNotFound", `There is no shape ${key}.`);
      return shapeObject(sheet, shape);
    },
    methods: {
      AddImage: (base64: string) => {
        refuseIfProtected(sheet);
        const size = pngSize(base64);
        if (size === null) throw new HostError("InvalidArgument", "This is no picture.");
        return shapeObject(sheet, addShape(sheet, { type: "Image", image: base64, ...size }));
      },
    },
  };
}

let shapesMade = 0;

/** As Excel places one before anybody moves it. */
export function addShape(sheet: Sheet, made: Pick<Shape, "type" | "image" | "width" | "height">): Shape {
  shapesMade += 1;
  const shape: Shape = {
    id: `{shape ${shapesMade}}`,
    name: `Shape ${shapesMade}`,
    left: 0,
    top: 0,
    altTextDescription: "",
    lockAspectRatio: made.type === "Image",
    ...made,
  };
  sheet.shapes.push(shape);
  return shape;
}

function shapeObject(sheet: Sheet, shape: Shape): HostObject {
  const free = <Key extends keyof Shape>(key: Key) => ({
    get: () => shape[key],
    set: (value: Shape[Key]) => {
      refuseIfProtected(sheet);
      shape[key] = value;
    },
  });
  const sized = (key: "width" | "height", other: "width" | "height") => ({
    get: () => shape[key],
    set: (points: number) => {
      refuseIfProtected(sheet);
      if (!(points >= 0)) throw new HostError("InvalidArgument", `${points} is no ${key}.`);
      if (shape.lockAspectRatio) shape[other] *= points / shape[key];
      shape[key] = points;
    },
  });
  return {
    type: "Shape",
    id: shape.id,
    properties: {
      Id: { get: () => shape.id },
      Type: { get: () => shape.type },
      Name: free("name"),
      Left: free("left"),
      Top: free("top"),
      Width: sized("width", "height"),
      Height: sized("height", "width"),
      AltTextDescription: free("altTextDescription"),
      LockAspectRatio: free("lockAspectRatio"),
    },
    methods: {
      Delete: () => {
        refuseIfProtected(sheet);
        sheet.shapes.splice(sheet.shapes.indexOf(shape), 1);
      },
    },
  };
}

function refuseIfProtected(sheet: Sheet): void {
  if (sheet.isProtected) throw new HostError("AccessDenied", "The sheet is protected.");
}

/** A PNG says its size in its header, in pixels; Excel shows it at 96 to the inch. Null for anything else. */
function pngSize(base64: string): { readonly width: number; readonly height: number } | null {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  if (bytes.length < 24 || String.fromCharCode(...bytes.subarray(1, 4)) !== "PNG") return null;
  const header = new DataView(bytes.buffer);
  return { width: header.getUint32(16) * 0.75, height: header.getUint32(20) * 0.75 };
}
