/** The pieces a spreadsheet formula is written in. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
}

export type TokenKind = "number" | "text" | "error" | "reference" | "function" | "name" | "mark";

const SHEET = String.raw`(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!`;
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}`;
/** Where a cell's name ends: A1 is no cell in A1B, and LOG10 is none in LOG10(2). */
const END_OF_CELL = String.raw`(?![\p{L}\p{N}_.!]|\s*\()`;

const PIECES: readonly (readonly [TokenKind | "space", RegExp])[] = [
  ["space", /\s+/uy],
  ["text", /"(?:[^"]|"")*"/uy],
  ["error", /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!)/uy],
  ["reference", new RegExp(`(?:${SHEET})?${CELL}(?::${CELL})?${END_OF_CELL}`, "uy")],
  ["function", /[\p{L}_][\p{L}\p{N}_.]*(?=\s*\()/uy],
  ["number", /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/uy],
  ["name", /[\p{L}_\\][\p{L}\p{N}_.\\?]*/uy],
  ["mark", /<>|<=|>=|[-+*/^&=<>%(),;{}@#]/uy],
];

/** The pieces of the text, or null where it holds something else (a table column, another workbook). */
export function tokensOf(formula: string): readonly Token[] | null {
  const tokens: Token[] = [];
  let start = 0;
  while (start < formula.length) {
    const piece = pieceAt(formula, start);
    if (piece === null) return null;
    if (piece.kind !== "space") tokens.push({ kind: piece.kind, text: piece.text, start });
    start += piece.text.length;
  }
  return tokens;
}

function pieceAt(formula: string, start: number): { readonly kind: TokenKind | "space"; readonly text: string } | null {
  for (const [kind, pattern] of PIECES) {
    pattern.lastIndex = start;
    const text = pattern.exec(formula)?.[0];
    if (text !== undefined) return { kind, text };
  }
  return null;
}
