/**
 * What is packed into an .xlsx file, looked through before any of it is unpacked.
 *
 * Source  Names of the parts: Office Open XML, ECMA-376 part 1 (from memory); where Office keeps an add-in's settings:
 *         [MS-OWEXML] 2.2 (from memory).
 */
import { strFromU8, unzipSync, type UnzipFileInfo } from "fflate";

const LARGEST_FILE_BYTES = 50_000_000;
/** How the files begin that hold others: Excel's before .xlsx, and those that a password locks ([MS-CFB] 2.2). */
const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** The fullest workbook of ours unpacks to less than half of it. */
const MOST_UNPACKED_BYTES = 500_000_000;

/** Why the file is not unpacked: it would fill the memory, or holds what we neither run nor follow. Null where it may be. */
export function refusalOfParts(fileName: string, bytes: Uint8Array): string | null {
  if (bytes.length > LARGEST_FILE_BYTES) return `"${fileName}" is larger than 50 MB.`;
  if (COMPOUND_FILE.every((byte, at) => bytes[at] === byte))
    return `"${fileName}" is protected by a password, or of the kind before .xlsx. Save it as .xlsx without a password.`;
  const parts = partsOf(bytes);
  const unpacked = parts.reduce((sum, part) => sum + part.originalSize, 0);
  // A part that says it unpacks to nothing would be unpacked without a bound.
  const hidesItsSize = parts.some((part) => part.originalSize === 0 && part.size > 2);
  if (unpacked > MOST_UNPACKED_BYTES || hidesItsSize)
    return `"${fileName}" unpacks to more than 500 MB, which is no workbook of a program.`;
  if (parts.some(({ name }) => /vbaProject\.bin$|^xl\/macrosheets\//i.test(name)))
    return `"${fileName}" holds macros, which do not run here. Save it as .xlsx without them.`;
  if (parts.some(({ name }) => /^xl\/externalLinks\//i.test(name)))
    return `"${fileName}" takes values from other files or programs. In Excel choose Data, Edit Links, Break Link, and save it again.`;
  return null;
}

/** The settings that our add-in keeps in a file of Excel's, by name. */
export function addinSettings(bytes: Uint8Array): ReadonlyMap<string, string> {
  const settings = new Map<string, string>();
  for (const xml of textsOf(bytes, (name) => /^xl\/webextensions\/webextension\d*\.xml$/i.test(name)).values()) {
    for (const attributes of tags(xml, "property")) {
      const name = attribute(attributes, "name");
      if (name?.startsWith("soakbook.") === true) settings.set(name, asText(attribute(attributes, "value") ?? ""));
    }
  }
  return settings;
}

/** A message for a cell without a rule about what it may hold: the reader of files passes those over. */
export interface CellMessage {
  readonly range: string;
  readonly text: string;
}

/** By the name of the sheet. Our add-in keeps the notes of headings so. */
export function messagesWithoutRule(bytes: Uint8Array): ReadonlyMap<string, readonly CellMessage[]> {
  // One at a time: all sheets together may be large.
  const xmlOf = (part: string) => textsOf(bytes, (name) => name === part).get(part) ?? "";
  const [workbook, relations] = [xmlOf("xl/workbook.xml"), xmlOf("xl/_rels/workbook.xml.rels")];
  const targets = new Map(
    tags(relations, "Relationship").map((each) => [attribute(each, "Id"), (attribute(each, "Target") ?? "").replace(/^\/?(xl\/)?/, "xl/")]),
  );
  const messages = new Map<string, readonly CellMessage[]>();
  for (const sheet of tags(workbook, "sheet")) {
    const xml = xmlOf(targets.get(attribute(sheet, "r:id")) ?? "");
    const rules = tags(xml.slice(Math.max(0, xml.lastIndexOf("<dataValidations"))), "dataValidation");
    const found = rules.flatMap((rule) => {
      const [range, text] = [attribute(rule, "sqref"), attribute(rule, "prompt")];
      return range === null || text === null || (attribute(rule, "type") ?? "none") !== "none" ? [] : [{ range, text }];
    });
    if (found.length > 0) messages.set(attribute(sheet, "name") ?? "", found);
  }
  return messages;
}

/** The attributes of every tag of this name. */
function tags(xml: string, name: string): readonly string[] {
  return [...xml.matchAll(new RegExp(`<(?:\\w+:)?${name}\\s((?:[^>"']|"[^"]*"|'[^']*')*)>`, "g"))].map(([, attributes = ""]) => attributes);
}

/** The list of what is packed; none of it is unpacked. What is no such file is told by the reader of the file: no parts are found then. */
function partsOf(bytes: Uint8Array): readonly UnzipFileInfo[] {
  const parts: UnzipFileInfo[] = [];
  try {
    unzipSync(bytes, {
      filter(part) {
        parts.push(part);
        return false;
      },
    });
  } catch {
    return parts;
  }
  return parts;
}

/** By name, the texts of the parts that are wanted. */
function textsOf(bytes: Uint8Array, isWanted: (name: string) => boolean): ReadonlyMap<string, string> {
  return new Map(Object.entries(unzipSync(bytes, { filter: ({ name }) => isWanted(name) })).map(([name, text]) => [name, strFromU8(text)]));
}

function attribute(attributes: string, name: string): string | null {
  const [, , text = null] = new RegExp(`(?:^|\\s)${name}=("|')(.*?)\\1`, "s").exec(attributes) ?? [];
  return (
    text?.replaceAll(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (whole, hex?: string, decimal?: string, word?: string) => {
      if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
      if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
      return ENTITIES.get(word ?? "") ?? whole;
    }) ?? null
  );
}

const ENTITIES: ReadonlyMap<string, string> = new Map([
  ["amp", "&"],
  ["lt", "<"],
  ["gt", ">"],
  ["quot", '"'],
  ["apos", "'"],
]);

/** Office keeps a setting as JSON. */
function asText(value: string): string {
  try {
    const read: unknown = JSON.parse(value);
    return typeof read === "string" ? read : value;
  } catch {
    return value;
  }
}
