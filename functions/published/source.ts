/** Where a number, an equation or a worked example comes from, and how surely we know that it says so. */
export type Citation = PlaceInPrint | Unpublished;

/** A place in a published document. */
export interface PlaceInPrint {
  readonly document: string;
  readonly edition: string;
  readonly place: string;
  readonly evidence: "read" | "read in transcription" | "from memory";
}

/** What no document backs: a rule of thumb, or a check worked by hand from a definition. */
export interface Unpublished {
  readonly statement: string;
  readonly evidence: "common practice, no source" | "computed by hand";
}

/** Published values travel with their place in print and the step of their last printed digit. */
export interface Published<Values> {
  readonly values: Values;
  readonly printedTo: number;
  readonly from: PlaceInPrint;
}

type Evidence = PlaceInPrint["evidence"];

/** One edition of a document: `tr55.table("2-1")` is a place in it. */
export class PublishedDocument {
  constructor(
    readonly document: string,
    readonly edition: string,
    readonly evidence: Evidence,
  ) {}

  equation(number: string, evidence?: Evidence): PlaceInPrint {
    return this.place(`equation ${number}`, evidence);
  }

  table(number: string, evidence?: Evidence): PlaceInPrint {
    return this.place(`table ${number}`, evidence);
  }

  example(number: string, evidence?: Evidence): PlaceInPrint {
    return this.place(`example ${number}`, evidence);
  }

  chapter(number: string, evidence?: Evidence): PlaceInPrint {
    return this.place(`chapter ${number}`, evidence);
  }

  place(place: string, evidence: Evidence = this.evidence): PlaceInPrint {
    return { document: this.document, edition: this.edition, place, evidence };
  }
}

export function commonPractice(statement: string): Unpublished {
  return { statement, evidence: "common practice, no source" };
}

export function computedByHand(statement: string): Unpublished {
  return { statement, evidence: "computed by hand" };
}

/** "TR-55, 2nd ed., 1986, table 2-1 (read)." for the reference and the pane. */
export function citationText(citation: Citation): string {
  const evidence = citation.evidence === "from memory" ? "from memory, check before use" : citation.evidence;
  return "document" in citation
    ? `${citation.document}, ${citation.edition}, ${citation.place} (${evidence}).`
    : `${citation.statement} (${evidence}).`;
}
