/**
 * What is packed into an .xlsx file, looked through before any of it is unpacked.
 *
 * Source  .ZIP File Format Specification 6.3, 4.3.7, 4.3.12 and 4.3.16 (headers, central directory, its end; from memory);
 *         names of the parts: Office Open XML, ECMA-376 part 1 (from memory); where Office keeps an add-in's settings:
 *         [MS-OWEXML] 2.2 (from memory).
 */

interface Part {
  readonly name: string;
  readonly isPacked: boolean;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly headerAt: number;
}

const END_SIGNATURE = 0x06054b50;
const END_BYTES = 22;
const LONGEST_COMMENT_BYTES = 65_535;
const ENTRY_SIGNATURE = 0x02014b50;
const ENTRY_BYTES = 46;
const HEADER_BYTES = 30;
const PACKED = 8;

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
  const unpacked = parts.reduce((sum, part) => sum + part.bytes, 0);
  // A part that says it unpacks to nothing would be unpacked without a bound.
  const hidesItsSize = parts.some((part) => part.bytes === 0 && part.packedBytes > 2);
  if (unpacked > MOST_UNPACKED_BYTES || hidesItsSize)
    return `"${fileName}" unpacks to more than 500 MB, which is no workbook of a program.`;
  if (parts.some(({ name }) => /vbaProject\.bin$|^xl\/macrosheets\//i.test(name)))
    return `"${fileName}" holds macros, which do not run here. Save it as .xlsx without them.`;
  if (parts.some(({ name }) => /^xl\/externalLinks\//i.test(name)))
    return `"${fileName}" takes values from other files or programs. In Excel choose Data, Edit Links, Break Link, and save it again.`;
  return null;
}

/** The settings that our add-in keeps in a file of Excel's, by name. */
export async function addinSettings(bytes: Uint8Array): Promise<ReadonlyMap<string, string>> {
  const settings = new Map<string, string>();
  for (const part of partsOf(bytes).filter(({ name }) => /^xl\/webextensions\/webextension\d*\.xml$/i.test(name))) {
    const xml = await textOf(bytes, part);
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
export async function messagesWithoutRule(bytes: Uint8Array): Promise<ReadonlyMap<string, readonly CellMessage[]>> {
  const parts = new Map(partsOf(bytes).map((part) => [part.name, part]));
  const xmlOf = async (name: string) => {
    const part = parts.get(name);
    return part === undefined ? "" : textOf(bytes, part);
  };
  const [workbook, relations] = [await xmlOf("xl/workbook.xml"), await xmlOf("xl/_rels/workbook.xml.rels")];
  const targets = new Map(
    tags(relations, "Relationship").map((each) => [attribute(each, "Id"), (attribute(each, "Target") ?? "").replace(/^\/?(xl\/)?/, "xl/")]),
  );
  const messages = new Map<string, readonly CellMessage[]>();
  for (const sheet of tags(workbook, "sheet")) {
    const xml = await xmlOf(targets.get(attribute(sheet, "r:id")) ?? "");
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

/** An end that is missing or cut off is told by the reader of the file: no parts are found then. */
function partsOf(bytes: Uint8Array): readonly Part[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - END_BYTES;
  while (end >= 0 && end >= bytes.length - END_BYTES - LONGEST_COMMENT_BYTES && view.getUint32(end, true) !== END_SIGNATURE) end -= 1;
  if (end < 0 || view.getUint32(end, true) !== END_SIGNATURE) return [];
  const parts: Part[] = [];
  let at = view.getUint32(end + 16, true);
  while (at + ENTRY_BYTES <= end && view.getUint32(at, true) === ENTRY_SIGNATURE) {
    const nameBytes = view.getUint16(at + 28, true);
    parts.push({
      name: new TextDecoder().decode(bytes.subarray(at + ENTRY_BYTES, at + ENTRY_BYTES + nameBytes)),
      isPacked: view.getUint16(at + 10, true) === PACKED,
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      headerAt: view.getUint32(at + 42, true),
    });
    at += ENTRY_BYTES + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return parts;
}

async function textOf(bytes: Uint8Array, { headerAt, packedBytes, isPacked }: Part): Promise<string> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = headerAt + HEADER_BYTES + view.getUint16(headerAt + 26, true) + view.getUint16(headerAt + 28, true);
  const packed = new Blob([bytes.slice(start, start + packedBytes)]);
  if (!isPacked) return packed.text();
  return new Response(packed.stream().pipeThrough(new DecompressionStream("deflate-raw"))).text();
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
