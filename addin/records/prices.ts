import { dateColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** What things cost, a row an item. The first seven columns are those SOAK.PRICED reads. */
export const pricesSheet = {
  name: "Prices",
  preface: [
    "Prices: your own price list. Estimates read it; a price older than six months is pointed out, never changed",
    "An amount buys whole packages, at least the minimum order, and pays the delivery once. All money is in the program's own currency.",
  ],
  columns: {
    item: nameColumn("Item", { widthPixels: 230 }),
    unitPrice: numberColumn("Unit price", { label: "Unit price", atLeast: 0 }, { numberFormat: "#,##0.00" }),
    unit: textColumn("Unit", { widthPixels: 80 }),
    packageSize: numberColumn(
      "Package size",
      { label: "Package size", moreThan: 0 },
      { note: "Smallest amount that is sold, in the unit. Blank: any amount." },
    ),
    minimumOrder: numberColumn("Minimum order", { label: "Minimum order", atLeast: 0 }, { note: "In the unit. Blank: none." }),
    delivery: numberColumn(
      "Delivery",
      { label: "Delivery", atLeast: 0 },
      { numberFormat: "#,##0.00", note: "Paid once for each line. Blank: none." },
    ),
    priceDate: dateColumn("Price date", "Price date", { widthPixels: 92 }),
    supplier: textColumn("Supplier", { widthPixels: 170 }),
    note: textColumn("Note", { widthPixels: 260 }),
  },
  rows: 120,
  frozenColumns: 1,
  together: [["item", "priceDate"]],
} as const satisfies Sheet;

export type Price = RecordOf<typeof pricesSheet>;
export type PriceRow = SheetRow<typeof pricesSheet>;

interface StartingItem {
  readonly item: string;
  readonly unit: string;
  readonly note: string;
}

/** Items that a drafted estimate asks for by name. Materials of a soil mix go by the name in their recipe. */
export const DRAFTED_ITEMS = {
  mulch: "shredded mulch",
  stone: "river stone",
  toolHire: "tool hire",
  disposal: "soil disposal",
  volunteerHour: "volunteer hour",
} as const;

/** What plants are sold in, smallest first, and the item that prices a plant of each. */
export const PLANT_ITEMS = {
  plug: "plant plug",
  quart: "plant quart",
  gallon: "plant gallon",
  "3 gallon": "plant 3 gallon",
} as const;

export type Container = keyof typeof PLANT_ITEMS;

const startingItems: readonly StartingItem[] = [
  { item: "sand", unit: "cu yd", note: "Washed, for soil mix." },
  { item: "topsoil", unit: "cu yd", note: "Screened, for soil mix." },
  { item: "compost", unit: "cu yd", note: "Leaf compost; no manure or biosolids where the overflow reaches a lake or a stream." },
  { item: "peat", unit: "cu yd", note: "For mixes low in phosphorus." },
  { item: DRAFTED_ITEMS.mulch, unit: "cu yd", note: "Hardwood, not dyed. In bags: give the price of a cu ft and the bag as package size." },
  { item: DRAFTED_ITEMS.stone, unit: "ton", note: "For the overflow and the inlet." },
  {
    item: PLANT_ITEMS.plug,
    unit: "plant",
    note: "In plugs, 1 ft apart or closer. A plant with a row under its scientific name goes by that.",
  },
  { item: PLANT_ITEMS.quart, unit: "plant", note: "In quarts, up to 1.5 ft apart." },
  { item: PLANT_ITEMS.gallon, unit: "plant", note: "In gallons, wider than 1.5 ft apart." },
  { item: PLANT_ITEMS["3 gallon"], unit: "plant", note: "Shrubs and trees, in 3 gallons." },
  { item: DRAFTED_ITEMS.toolHire, unit: "day", note: "Sod cutter, tamper, barrows: whatever you hire." },
  { item: DRAFTED_ITEMS.disposal, unit: "cu yd", note: "Loose soil hauled off the site, tipping included." },
  {
    item: DRAFTED_ITEMS.volunteerHour,
    unit: "h",
    note: "In-kind rate of the year the hours are worked, as the funder allows. The national value for 2022 was 31.80.",
  },
];

/** The rows of a new workbook's list: items with units and without prices, because those are the program's own. */
export const startingPrices: readonly (readonly (string | null)[])[] = startingItems.map(({ item, unit, note }) => [
  item,
  null,
  unit,
  null,
  null,
  null,
  null,
  null,
  note,
]);
