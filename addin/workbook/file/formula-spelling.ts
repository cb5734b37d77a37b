/**
 * How a formula stands in an .xlsx file. Functions that came after the format are written there with a prefix, the names
 * of a LET with another, and a function of an add-in as one that the file itself cannot compute.
 *
 * Source  [MS-XLSX] 2.2.3 "Functions": future functions and the two that belong to worksheets alone (read as far as IMSEC,
 *         the rest of the list from memory); the prefixes of a name and of an add-in's function from memory.
 */
export function inFileSpelling(formula: string): string {
  const pieces = piecesOf(formula.replace(/^=/, ""));
  const names = namesOfLets(pieces);
  return pieces
    .map((piece, at) => {
      if (!IDENTIFIER.test(piece)) return piece;
      const isCall = pieces[at + 1] === "(";
      if (!isCall) return names.has(piece.toUpperCase()) ? `_xlpm.${piece}` : piece;
      const own = /^SOAK\.([A-Z0-9]+)$/i.exec(piece)?.[1];
      if (own !== undefined) return `_xldudf_SOAK_${own.toUpperCase()}`;
      const name = piece.toUpperCase();
      return WORKSHEET_ONLY.has(name) ? `_xlfn._xlws.${name}` : LATER.has(name) ? `_xlfn.${name}` : piece;
    })
    .join("");
}

/** The formula as people write it, from the spelling of a file. */
export function fromFileSpelling(formula: string): string {
  return piecesOf(formula)
    .map((piece) =>
      IDENTIFIER.test(piece) ? piece.replace(/^(?:_xlfn\.|_xlws\.|_xlpm\.)+/i, "").replace(/^_xldudf_SOAK_/i, "SOAK.") : piece,
    )
    .join("");
}

/** Texts, sheet names in quotes, words and whatever stands between. */
function piecesOf(formula: string): readonly string[] {
  return formula.match(/"(?:[^"]|"")*"|'(?:[^']|'')*'|[\p{L}_\\][\p{L}\p{N}_.\\?]*|\s+|[^]/gu) ?? [];
}

const IDENTIFIER = /^[\p{L}_\\]/u;

/** The words that a LET of the formula gives a value: every second argument but the last. */
function namesOfLets(pieces: readonly string[]): ReadonlySet<string> {
  const names = new Set<string>();
  /** For each open parenthesis, which argument is being read; null where the call is no LET. */
  const open: ({ argument: number } | null)[] = [];
  pieces.forEach((piece, at) => {
    const call = open.at(-1);
    if (piece === "(") open.push(pieces[at - 1]?.toUpperCase() === "LET" ? { argument: 0 } : null);
    else if (piece === ")") open.pop();
    else if (piece === "," && call) call.argument += 1;
    else if (call && call.argument % 2 === 0 && IDENTIFIER.test(piece) && pieces[at + 1] === ",") names.add(piece.toUpperCase());
  });
  return names;
}

const WORKSHEET_ONLY: ReadonlySet<string> = new Set(["FILTER", "SORT"]);

const LATER: ReadonlySet<string> = new Set(
  [
    "ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND BITLSHIFT",
    "BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT",
    "CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH",
    "DAYS DECIMAL DROP ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FIELDVALUE FILTERXML",
    "FLOOR.MATH FLOOR.PRECISE FORECAST.ETS FORECAST.ETS.CONFINT FORECAST.ETS.SEASONALITY FORECAST.ETS.STAT FORECAST.LINEAR",
    "FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV GAMMALN.PRECISE GAUSS HSTACK HYPGEOM.DIST IFNA IFS IMCOSH IMCOT IMCSC IMCSCH",
    "IMSEC IMSECH IMSINH IMTAN ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST LOGNORM.INV MAKEARRAY MAP MAXIFS MINIFS",
    "MODE.MULT MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC",
    "PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI POISSON.DIST QUARTILE.EXC QUARTILE.INC RANDARRAY",
    "RANK.AVG RANK.EQ REDUCE RRI SCAN SEC SECH SEQUENCE SHEET SHEETS SKEW.P SORTBY STDEV.P STDEV.S SWITCH T.DIST T.DIST.2T",
    "T.DIST.RT T.INV T.INV.2T T.TEST TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW UNICHAR UNICODE UNIQUE",
    "VALUETOTEXT VAR.P VAR.S VSTACK WEBSERVICE WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR Z.TEST",
  ].flatMap((line) => line.split(" ")),
);
