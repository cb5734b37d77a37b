/** Parts packed as a .zip file: enough to write a file of Excel's by hand. */
import { deflateRawSync } from "node:zlib";

interface Packed {
  readonly name: Uint8Array;
  readonly content: Uint8Array;
  readonly checksum: number;
  /** What the file says of its length, where that is to be a lie. */
  readonly said: number;
}

export function zipped(parts: Readonly<Record<string, string>>, said: Readonly<Record<string, number>> = {}): Uint8Array {
  const packed = Object.entries(parts).map(([name, text]): Packed => {
    const unpacked = new TextEncoder().encode(text);
    const content = deflateRawSync(unpacked);
    return { name: new TextEncoder().encode(name), content, checksum: checksumOf(unpacked), said: said[name] ?? unpacked.length };
  });
  const bodies: Uint8Array[] = [];
  const entries: Uint8Array[] = [];
  let at = 0;
  for (const part of packed) {
    const body = joined([header(0x04034b50, [], part), part.name, part.content]);
    entries.push(header(0x02014b50, [20], part, at), part.name);
    bodies.push(body);
    at += body.length;
  }
  const directory = joined(entries);
  return joined([...bodies, directory, end(packed.length, directory.length, at)]);
}

/** APPNOTE 4.3.7 and 4.3.12: the same fields, the entry of the directory with more of them before and after. */
function header(signature: number, before: readonly number[], { name, content, checksum, said }: Packed, at?: number): Uint8Array {
  const fields = [...before, 20, 0x800, 8, 0, 0];
  const bytes = new DataView(new ArrayBuffer(4 + fields.length * 2 + 16 + (at === undefined ? 0 : 14)));
  bytes.setUint32(0, signature, true);
  fields.forEach((field, place) => {
    bytes.setUint16(4 + place * 2, field, true);
  });
  const next = 4 + fields.length * 2;
  bytes.setUint32(next, checksum, true);
  bytes.setUint32(next + 4, content.length, true);
  bytes.setUint32(next + 8, said, true);
  bytes.setUint16(next + 12, name.length, true);
  if (at !== undefined) bytes.setUint32(next + 26, at, true);
  return new Uint8Array(bytes.buffer);
}

function end(count: number, directoryBytes: number, at: number): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(22));
  bytes.setUint32(0, 0x06054b50, true);
  bytes.setUint16(8, count, true);
  bytes.setUint16(10, count, true);
  bytes.setUint32(12, directoryBytes, true);
  bytes.setUint32(16, at, true);
  return new Uint8Array(bytes.buffer);
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** CRC-32 as APPNOTE 4.4.7 has it, bit by bit. */
function checksumOf(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}
