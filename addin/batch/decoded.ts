import type { Readable } from "node:stream";
import { quoted } from "../../functions/worksheet/calling/sentences.ts";
import { Refusal } from "./refusal.ts";

/** What a stream is written in where nobody says otherwise. */
export const USUAL_ENCODING = "utf-8";

/** The encoding by its usual name; refuses one that nobody here knows. */
export function encodingNamed(typed: string): string {
  try {
    return new TextDecoder(typed).encoding;
  } catch {
    throw new Refusal(`There is no encoding ${quoted(typed)}: name one such as utf-8, windows-1252 or utf-16le.`);
  }
}

/** The words of a stream of bytes, up to the line of the first byte that its encoding does not have: no letter is guessed at. */
export async function* decoded(input: Readable, encoding: string): AsyncGenerator<string> {
  const strict = new TextDecoder(encoding, { fatal: true });
  const lenient = new TextDecoder(encoding);
  let lines = 1;
  for await (const chunk of readable(input)) {
    const shown = lenient.decode(chunk, { stream: true });
    if (!isDecoded(strict, chunk, true)) {
      const before = shown.slice(0, Math.max(shown.indexOf(UNREADABLE), 0));
      yield before.slice(0, before.lastIndexOf("\n") + 1);
      throw notIn(encoding, lines + lineEnds(before));
    }
    lines += lineEnds(shown);
    yield shown;
  }
  if (!isDecoded(strict, undefined, false)) throw notIn(encoding, lines);
}

async function* readable(input: Readable): AsyncGenerator<Buffer> {
  try {
    for await (const chunk of input as AsyncIterable<Buffer>) yield chunk;
  } catch (error) {
    throw new Refusal(`The stream cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The words of a file that is read whole. */
export function decodedWhole(bytes: Buffer, encoding: string): string {
  if (!isDecoded(new TextDecoder(encoding, { fatal: true }), bytes, false)) throw notIn(encoding, 1);
  return new TextDecoder(encoding).decode(bytes);
}

/** What stands in the place of bytes that are no letter. */
const UNREADABLE = "\uFFFD";

function isDecoded(decoder: TextDecoder, bytes: Buffer | undefined, stream: boolean): boolean {
  try {
    decoder.decode(bytes, { stream });
    return true;
  } catch {
    return false;
  }
}

function notIn(encoding: string, line: number): Refusal {
  return new Refusal(
    `In line ${line} or after it stand bytes that are not ${encoding.toUpperCase()}. Say what they are written in, such as --encoding windows-1252.`,
  );
}

function lineEnds(text: string): number {
  return text.split("\n").length - 1;
}
