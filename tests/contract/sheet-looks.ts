/** Filters, colors by rule, printed pages and names of the in-memory Excel, as far as the adapter asks for them. */
import { HostError, type HostObject } from "./host-object.ts";
import { absolute, addressOf } from "../../addin/workbook/port.ts";
import type { Area, Sheet, Spreadsheet } from "./spreadsheet.ts";

export interface RangeObject extends HostObject {
  readonly sheet: Sheet;
  readonly area: Area;
}

/** A color that cells take where a formula holds, written as for the first of them. */
export interface ColorRule {
  area: Area;
  formula: string;
  fill: string | null;
  font: string | null;
}

export interface Page {
  readonly [setting: string]: unknown;
}

export function autoFilterObject(sheet: Sheet, rangeOf: (area: Area) => HostObject): HostObject {
  return {
    type: "AutoFilter",
    properties: { IsDataFiltered: { get: () => sheet.isDataFiltered } },
    methods: {
      GetRangeOrNullObject: () => (sheet.filtered === null ? null : rangeOf(sheet.filtered)),
      Apply: (range: RangeObject) => {
        if (range.sheet !== sheet) throw new HostError("InvalidArgument", "A filter stands on its own sheet.");
        sheet.filtered = range.area;
      },
    },
  };
}

export function conditionalFormatsObject(sheet: Sheet, area: Area): HostObject {
  return {
    type: "ConditionalFormatCollection",
    properties: {},
    methods: {
      Add: (kind: string) => {
        if (kind !== "Custom") throw new HostError("InvalidArgument", `The in-memory Excel knows no color rule of the kind ${kind}.`);
        const rule: ColorRule = { area, formula: "", fill: null, font: null };
        sheet.colorRules.push(rule);
        return colorRuleObject(rule);
      },
    },
  };
}

function colorRuleObject(rule: ColorRule): HostObject {
  const one = (type: string, properties: HostObject["properties"]): HostObject => ({ type, properties });
  const part = (object: HostObject) => ({ get: () => object });
  const formula = {
    set: (text: string) => {
      if (!text.startsWith("=")) throw new HostError("InvalidArgument", "The formula of a color rule starts with =.");
      // Excel takes custom functions in cells alone.
      if (/SOAK\./i.test(text)) throw new HostError("InvalidArgument", "A color rule calls no custom function.");
      rule.formula = text;
    },
  };
  const fill = one("ConditionalRangeFill", { Color: { set: (color: string) => void (rule.fill = color) } });
  const font = one("ConditionalRangeFont", { Color: { set: (color: string) => void (rule.font = color) } });
  const format = one("ConditionalRangeFormat", { Fill: part(fill), Font: part(font) });
  const custom = one("CustomConditionalFormat", { Rule: part(one("ConditionalFormatRule", { Formula: formula })), Format: part(format) });
  return one("ConditionalFormat", { Custom: part(custom) });
}

const PAGE_SETTINGS = ["Orientation", "LeftMargin", "RightMargin", "TopMargin", "BottomMargin", "Zoom"];

export function pageLayoutObject(sheet: Sheet): HostObject {
  const keep = (name: string, value: unknown): void => {
    sheet.page = { ...sheet.page, [name]: value };
  };
  const setting = (name: string) => ({
    get: () => sheet.page[name] ?? null,
    set: (value: unknown) => {
      if (name === "Orientation" && value !== "Portrait" && value !== "Landscape")
        throw new HostError("InvalidArgument", `${String(value)} is no orientation.`);
      keep(name, value);
    },
  });
  return {
    type: "PageLayout",
    properties: Object.fromEntries(PAGE_SETTINGS.map((name) => [name, setting(name)])),
    methods: {
      SetPrintArea: (range: RangeObject) => {
        keep("PrintArea", range.area);
      },
      SetPrintTitleRows: (range: RangeObject) => {
        keep("PrintTitleRows", range.area);
      },
    },
  };
}

export function namesObject(book: Spreadsheet): HostObject {
  const named = (name: string): HostObject => ({
    type: "NamedItem",
    properties: { Name: { get: () => name }, Formula: { get: () => book.names.get(name) } },
    methods: { Delete: () => void book.setName(name, null) },
  });
  return {
    type: "NamedItemCollection",
    properties: {},
    items: () => [...book.names.keys()].map(named),
    methods: {
      Add: (name: string, { sheet, area }: RangeObject) => {
        if (!/^[A-Za-z_\\][\w.]*$/.test(name) || /^([A-Z]{1,3}\d+|R\d*C?\d*|C\d*)$/i.test(name))
          throw new HostError("InvalidArgument", `${name} cannot name a range.`);
        if (book.names.has(name)) throw new HostError("ItemAlreadyExists", `There is a name ${name} already.`);
        book.setName(name, `=${absolute(addressOf({ sheet: sheet.name, ...area }))}`);
        return named(name);
      },
      GetItemOrNullObject: (name: string) => (book.names.has(name) ? named(name) : null),
    },
  };
}
