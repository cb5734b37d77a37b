/**
 * What Excel is told about Soakbook: the one source of manifest.xml and manifest.json.
 *
 * The limits in the schema are Excel's: a longer label or a malformed id would be refused when somebody
 * installs the add-in, so it is refused here first.
 */
import * as z from "zod";
import packageJson from "../package.json" with { type: "json" };

const text = (limit: number) => z.string().trim().min(1).max(limit);
const fileName = z.string().regex(/^[a-z0-9][a-z0-9./#?=-]*$/i, "A file is named from the hosting folder, without a leading slash.");

/** A workbook's ribbon remembers them: never renamed once released. */
export const COMMAND_IDS = [
  "setUpWorkbook",
  "newVisit",
  "checkWorkbook",
  "help",
  "repairFormulas",
  "turnIntoValues",
  "openWithWorkbook",
  "showWorking",
] as const;
export type CommandId = (typeof COMMAND_IDS)[number];

/** Every size that a ribbon asks for, at every scaling of the screen. */
export const RIBBON_PIXELS = [16, 20, 24, 32, 40, 48, 64, 80] as const;
export type RibbonPixels = (typeof RIBBON_PIXELS)[number];

const schema = z.strictObject({
  /** Excel tells two installed add-ins apart by id, so each manifest has its own. */
  xmlId: z.guid(),
  jsonId: z.guid(),
  version: z
    .string()
    .regex(/^\d{1,5}\.\d{1,5}\.\d{1,5}$/, "The version has three parts.")
    // The validator's words: "Manifest Version Too Low: unsupported version number less than 1.0."
    .regex(/^[1-9]/, "The version is 1.0.0 or later: Microsoft's validator refuses a manifest under 1.0."),
  name: text(30),
  /** Two add-ins of one name cannot be told apart where both are installed. */
  jsonName: text(30),
  provider: text(32),
  summary: text(80),
  description: text(250),
  namespace: z.string().regex(/^[A-Za-z][A-Za-z0-9]{0,31}$/, "The namespace has letters and digits only."),
  requirementSets: z.array(z.strictObject({ name: text(128), minimumVersion: z.string().regex(/^\d+\.\d+$/) })).min(1),
  ribbon: z.strictObject({
    group: text(32),
    button: text(32),
    buttonTip: text(250),
    more: text(32),
    moreTip: text(250),
  }),
  /** What the ribbon and the menu of a cell offer besides opening the pane. Ids are handed to the running add-in. */
  commands: z.array(
    z.strictObject({
      id: z.enum(COMMAND_IDS),
      place: z.enum(["ribbon", "more", "cell menu"]),
      label: text(32),
      tip: text(250),
      /** Ctrl, Alt and a letter: learn.microsoft.com, keyboard-shortcuts, "Guidelines for custom key combinations". */
      keys: z
        .string()
        .regex(/^Ctrl\+Alt\+[A-Z]$/)
        .optional(),
    }),
  ),
  files: z.strictObject({
    page: fileName,
    functions: fileName,
    functionsMetadata: fileName,
    shortcuts: fileName,
    help: fileName,
    support: fileName,
    privacy: fileName,
    terms: fileName,
  }),
  icons: z.strictObject({
    /** A folder with a file for each command and size: setUpWorkbook-16.png. */
    folder: fileName,
    color: fileName,
    outline: fileName,
  }),
  accentColor: z.string().regex(/^#[0-9A-F]{6}$/),
});

export type AddinDescription = z.infer<typeof schema>;

/** Rejects, naming the field, what Excel would refuse. */
export function describeAddin(description: unknown): AddinDescription {
  return schema.parse(description);
}

export const addinDescription: AddinDescription = describeAddin({
  xmlId: "d8bb2fa5-c1f0-4112-bee1-c846e0cf8954",
  jsonId: "974bc7b1-c06f-496b-8a02-d15344e5d94c",
  version: packageJson.version,
  name: "Soakbook",
  jsonName: "Soakbook for Microsoft 365",
  provider: "Soakbook contributors",
  summary: "Rain-garden functions and a visit pane for residential programs.",
  description:
    "Sizes residential rain gardens in live cells: hole tests, basin area, drawdown, digging and soil mix, with a pane that walks a yard visit. Everything stays in the workbook.",
  namespace: "SOAK",
  requirementSets: [
    { name: "SharedRuntime", minimumVersion: "1.1" },
    { name: "CustomFunctionsRuntime", minimumVersion: "1.3" },
    { name: "ExcelApi", minimumVersion: "1.9" },
  ],
  ribbon: {
    group: "Soakbook",
    button: "Open the pane",
    buttonTip: "Shows the yard of the selected row: its visit, its hole test and its basin.",
    more: "More",
    moreTip: "Formulas that show #NAME?, copies with plain numbers, and opening with this workbook.",
  },
  commands: [
    {
      id: "setUpWorkbook",
      place: "ribbon",
      label: "Set up workbook",
      tip: "Shows which sheets a program needs, and adds them when you say so.",
    },
    { id: "newVisit", place: "ribbon", label: "New visit", tip: "Opens the visits of the yard whose row is selected.", keys: "Ctrl+Alt+Y" },
    {
      id: "checkWorkbook",
      place: "ribbon",
      label: "Check workbook",
      keys: "Ctrl+Alt+K",
      tip: "Looks for lost sheets, headings and formulas, and offers to repair them.",
    },
    { id: "help", place: "ribbon", label: "Help", tip: "Every function of Soakbook with its arguments, units, sources and an example." },
    {
      id: "repairFormulas",
      place: "more",
      label: "Repair formulas",
      tip: "Writes Soakbook's formulas that show #NAME? once more, and names protected sheets.",
    },
    {
      id: "turnIntoValues",
      place: "more",
      label: "Turn into values",
      tip: "Adds a copy of the sheet in front with plain numbers, for people without Soakbook.",
    },
    {
      id: "openWithWorkbook",
      place: "more",
      label: "Open with this workbook",
      tip: "Opens the pane whenever this workbook is opened, or no longer.",
    },
    {
      id: "showWorking",
      place: "cell menu",
      label: "Show the working",
      keys: "Ctrl+Alt+W",
      tip: "How one of Soakbook's functions came to this cell, step by step with its sources.",
    },
  ],
  files: {
    page: "taskpane.html",
    // Excel keeps these two for a day, so a new version has new addresses.
    functions: `functions.js?v=${packageJson.version}`,
    functionsMetadata: `functions.json?v=${packageJson.version}`,
    shortcuts: `shortcuts.json?v=${packageJson.version}`,
    help: "help.html",
    support: "support.html",
    privacy: "privacy.html",
    terms: "support.html#terms",
  },
  icons: {
    folder: "icons/",
    color: "icons/icon-192.png",
    outline: "icons/outline-32.png",
  },
  accentColor: "#2E6F6B",
});

/** The picture of a command, or of the add-in itself, in one size. */
export function iconFile({ icons }: AddinDescription, name: CommandId | "icon", pixels: RibbonPixels): string {
  return `${icons.folder}${name}-${pixels}.png`;
}

/** The address of one of the add-in's files at an origin such as "https://garden.example". */
export function addressAt(origin: string, file: string): string {
  const base = new URL(origin.endsWith("/") ? origin : `${origin}/`);
  if (base.protocol !== "https:") throw new Error(`Excel loads an add-in over https only: "${origin}" is not an https address.`);
  return new URL(file, base).href;
}
