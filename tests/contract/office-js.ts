/**
 * Microsoft's object model of Excel, unmodified, from the pinned package: a page loads it as its own script, and on
 * Node it is loaded into this realm, where the few things of a page that it looks for are stood in for. Nothing of it is
 * kept in this repository. `officeHooks` are internal names of that file: the smoke test says which one is gone.
 */
export interface Executor {
  executeAsync(customData: string, flags: number, message: RequestMessage): Promise<ResponseMessage>;
}

export interface RequestMessage {
  readonly Body: unknown;
}

export interface ResponseMessage {
  readonly HttpStatusCode: number;
  readonly ErrorCode?: string;
  readonly ErrorMessage?: string;
  readonly Headers: object;
  readonly Body: unknown;
}

/** What the library accepts in place of the connection to Excel. */
export interface Session {
  _resolveRequestUrlAndHeaderInfo(): Promise<{ url: string; headers: object }>;
  _createRequestExecutorOrNull(): Executor;
}

export interface EventMessage {
  readonly entries: readonly {
    readonly messageCategory: number;
    readonly messageType: number;
    readonly targetId: string;
    readonly message: string;
  }[];
}

interface Internals {
  SessionBase?: { _overrideSession?: Session };
  CommonUtility?: { _doApiNotSupportedCheck?: boolean; isSetSupported?(name: string, version: string): boolean };
  Constants?: { eventMessageCategory?: number; eventWorkbookId?: string };
  _testSetRichApiMessageReadyImpl?(ready: () => Promise<void>): void;
  _testTriggerRichApiMessageEvent?(message: EventMessage): void;
}

function loadOfficeJs(): void {
  const element = () => ({ style: {}, setAttribute() {}, appendChild() {} });
  const storage = { getItem: () => null, setItem() {}, removeItem() {} };
  standIn({
    window: globalThis,
    document: {
      createElement: element,
      getElementById: () => null,
      getElementsByTagName: () => [],
      head: element(),
      body: element(),
      addEventListener() {},
      readyState: "complete",
    },
    location: {
      href: "https://garden.example/taskpane.html",
      search: "",
      hash: "",
      protocol: "https:",
      host: "garden.example",
      pathname: "/taskpane.html",
    },
    navigator: { userAgent: "contract test" },
    localStorage: storage,
    sessionStorage: storage,
    addEventListener() {},
  });
  // Asked for here, so that a page's script can hold this file.
  const [{ createRequire }, { readFileSync }, { runInThisContext }] = [
    process.getBuiltinModule("module"),
    process.getBuiltinModule("fs"),
    process.getBuiltinModule("vm"),
  ];
  const file = createRequire(import.meta.url).resolve("@microsoft/office-js/dist/excel-web-16.00.debug.js");
  runInThisContext(readFileSync(file, "utf8"), { filename: file });
}

function standIn(globals: Record<string, unknown>): void {
  for (const [name, value] of Object.entries(globals))
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
}

/** The internal names that the in-memory host rests on. */
export function officeHooks(): Internals {
  if (!("OfficeExtension" in globalThis)) loadOfficeJs();
  return OfficeExtension as unknown as Internals;
}

/** From now on plain `Excel.run` speaks to this session, and every gated member asks `isSetSupported` first. */
export function connect(session: Session, isSetSupported: (name: string, version: string) => boolean): void {
  const hooks = officeHooks();
  if (!hooks.SessionBase || !hooks.CommonUtility || !hooks._testSetRichApiMessageReadyImpl)
    throw new Error("This @microsoft/office-js lacks a hook: see the smoke test of the contract tests.");
  hooks.SessionBase._overrideSession = session;
  hooks.CommonUtility._doApiNotSupportedCheck = true;
  hooks._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  // The library's own Office.context can be filled by a real Excel only.
  const context: unknown = { requirements: { isSetSupported } };
  Object.assign(globalThis, { Office: Object.create(Office, { context: { value: context } }) });
}

export function raise(messageType: number, message: object): void {
  const hooks = officeHooks();
  if (
    !hooks._testTriggerRichApiMessageEvent ||
    hooks.Constants?.eventMessageCategory === undefined ||
    hooks.Constants.eventWorkbookId === undefined
  )
    throw new Error("This @microsoft/office-js lacks an event hook.");
  hooks._testTriggerRichApiMessageEvent({
    entries: [
      {
        messageCategory: hooks.Constants.eventMessageCategory,
        messageType,
        targetId: hooks.Constants.eventWorkbookId,
        message: JSON.stringify(message),
      },
    ],
  });
}
