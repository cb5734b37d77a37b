/**
 * An Excel in memory behind Microsoft's real object model: production code calls plain `Excel.run` and the
 * requests end here.
 *
 * It shows that our adapter drives the published object model correctly, within the requirement sets that the
 * manifests demand. It does not show that Excel accepts the result.
 */
import { addinDescription } from "../../manifest/addin-description.ts";
import { HostError } from "./host-object.ts";
import { connect, raise, type Executor, type RequestMessage, type ResponseMessage, type Session } from "./office-js.ts";
import { workbookObject, type EventName } from "./object-model.ts";
import { answer, References, type Request } from "./request.ts";
import { Spreadsheet, type Area, type Happening } from "./spreadsheet.ts";

/** Excel on the web refuses a request and an answer above 5 MB. */
const PAYLOAD_LIMIT_BYTES = 5 * 1024 * 1024;

/** The numbers by which the object model tells events apart, read from its file. */
const EVENT_TYPES: Readonly<Record<EventName, number>> = { changed: 10, activated: 11, selected: 14, calculated: 16 };

export interface RequirementSet {
  readonly name: string;
  readonly minimumVersion: string;
}

export class InMemoryExcel implements Session, Executor {
  readonly book = new Spreadsheet();
  /** Somebody is typing in a cell: Excel refuses everything until they finish. */
  isEditingCell = false;
  isDisconnected = false;
  /** Requests that did more than give references up. */
  roundTrips = 0;
  largestRequestBytes = 0;
  readonly #asked = new Map<string, { readonly name: string; readonly version: string; readonly isSupported: boolean }>();
  readonly #wanted = new Set<EventName>();
  readonly #references = new References();
  #refusal: HostError | null = null;
  #afterNext: (() => void) | null = null;

  constructor(supported: readonly RequirementSet[] = addinDescription.requirementSets) {
    connect(this, (name, version) => {
      const isSupported = supported.some((set) => set.name === name && atLeast(set.minimumVersion, version));
      this.#asked.set(`${name} ${version}`, { name, version: String(version), isSupported });
      return isSupported;
    });
  }

  /** Every requirement set that the object model or the adapter asked about. */
  get askedSets(): readonly { readonly name: string; readonly version: string }[] {
    return [...this.#asked.values()].map(({ name, version }) => ({ name, version }));
  }

  get refusedSets(): readonly { readonly name: string; readonly version: string }[] {
    return [...this.#asked.values()].filter(({ isSupported }) => !isSupported).map(({ name, version }) => ({ name, version }));
  }

  /** The next request fails so. */
  refuseNext(code: string, message: string): void {
    this.#refusal = new HostError(code, message);
  }

  /** Somebody else does this between the next request and the one after it. */
  afterNextRequest(deed: () => void): void {
    this.#afterNext = deed;
  }

  get listenedTo(): readonly EventName[] {
    return [...this.#wanted].sort();
  }

  /** Ranges that nobody gave up are memory that Excel keeps. */
  get heldReferences(): number {
    return this.#references.size;
  }

  /** Somebody types into cells, here or in another window of a shared workbook. */
  type(sheetName: string, row: number, column: number, entry: string | number, source: "Local" | "Remote" = "Local"): void {
    const sheet = this.book.sheetNamed(sheetName);
    if (sheet === undefined) throw new Error(`There is no sheet ${sheetName}.`);
    this.book.write(sheet, { row, column, rows: 1, columns: 1 }, [[entry]], "as typed");
    this.book.settle();
    this.#tell(source);
  }

  /** Somebody selects cells; none stand for a chart or a picture. */
  select(sheetName: string, areas: readonly Area[]): void {
    const sheet = this.book.sheetNamed(sheetName);
    if (sheet === undefined) throw new Error(`There is no sheet ${sheetName}.`);
    this.book.select(sheet, areas);
    this.#tell();
  }

  _resolveRequestUrlAndHeaderInfo(): Promise<{ url: string; headers: object }> {
    return Promise.resolve({ url: "", headers: {} });
  }

  _createRequestExecutorOrNull(): Executor {
    return this;
  }

  async executeAsync(_customData: string, _flags: number, message: RequestMessage): Promise<ResponseMessage> {
    const text = typeof message.Body === "string" ? message.Body : JSON.stringify(message.Body);
    const request: Request = JSON.parse(text);
    if (!onlyGivesUp(request)) this.roundTrips += 1;
    this.largestRequestBytes = Math.max(this.largestRequestBytes, byteLength(text));
    if (this.isDisconnected) return failure(500, "ConnectionFailure");
    if (this.isEditingCell) return failure(400, "InvalidOperationInCellEditMode");
    if (byteLength(text) > PAYLOAD_LIMIT_BYTES) return failure(400, "RequestPayloadSizeLimitExceeded");
    const refused = this.#refusal;
    this.#refusal = null;
    if (refused !== null) return failure(400, refused.code, refused.message);
    const body = answer(request, workbookObject(this.book, this.#wanted), this.#references);
    this.book.settle();
    if (byteLength(JSON.stringify(body)) > PAYLOAD_LIMIT_BYTES) return failure(400, "ResponsePayloadSizeLimitExceeded");
    this.#afterNext?.();
    this.#afterNext = null;
    setTimeout(() => this.#tell(), 0);
    return { HttpStatusCode: 200, Headers: {}, Body: body };
  }

  #tell(source = "Local"): void {
    for (const { event, sheet } of this.book.happenings.splice(0) satisfies Happening[]) {
      if (this.#wanted.has(event)) raise(EVENT_TYPES[event], { worksheetId: sheet.id, address: "A1", changeType: "RangeEdited", source });
    }
  }
}

const encoder = new TextEncoder();

function byteLength(text: string): number {
  return encoder.encode(text).length;
}

/** `Excel.run` ends with a request that gives up the ranges it held; nobody waits for that one. */
function onlyGivesUp(request: Request): boolean {
  const names = request.Actions.map((action) => action.Name).filter((name) => name !== "");
  return names.length > 0 && names.every((name) => name === "_RemoveReference");
}

function failure(status: number, code: string, message = code): ResponseMessage {
  return { HttpStatusCode: status, ErrorCode: code, ErrorMessage: message, Headers: {}, Body: null };
}

function atLeast(have: string, want: string): boolean {
  const [haveMajor = 0, haveMinor = 0] = have.split(".").map(Number);
  const [wantMajor = 0, wantMinor = 0] = String(want).split(".").map(Number);
  return haveMajor > wantMajor || (haveMajor === wantMajor && haveMinor >= wantMinor);
}
