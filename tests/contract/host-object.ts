/** What one object of the object model answers, in the names of the wire: `Values`, not `values`. */
export interface HostObject {
  readonly type: string;
  readonly properties: Readonly<Record<string, Property>>;
  readonly methods?: Readonly<Record<string, (...given: readonly never[]) => unknown>>;
  /** Objects that a collection finds again by id. */
  readonly id?: string;
  readonly items?: () => readonly HostObject[];
  readonly item?: (key: string) => HostObject;
}

export interface Property {
  readonly get?: () => unknown;
  readonly set?: (value: never) => void;
}

/** Excel's refusal, as it would arrive in an answer. */
export class HostError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
    this.name = "HostError";
  }
}

/** The adapter used something that the in-memory Excel has no idea of. Model it, from Excel's documentation, or do without. */
export class NotModelled extends Error {
  constructor(what: string) {
    super(`The in-memory Excel does not model ${what}.`);
    this.name = "NotModelled";
  }
}

export function isHostObject(value: unknown): value is HostObject {
  return typeof value === "object" && value !== null && "type" in value && "properties" in value;
}

export function propertyOf(object: HostObject, name: string): Property {
  const property = object.properties[name];
  if (property === undefined) throw new NotModelled(`${object.type}.${name}`);
  return property;
}

export function readProperty(object: HostObject, name: string): unknown {
  const { get } = propertyOf(object, name);
  if (get === undefined) throw new NotModelled(`reading ${object.type}.${name}`);
  return get();
}

export function writeProperty(object: HostObject, name: string, value: unknown): void {
  const { set } = propertyOf(object, name);
  if (set === undefined) throw new NotModelled(`setting ${object.type}.${name}`);
  set(value as never);
}

export function invoke(object: HostObject, name: string, given: readonly unknown[]): unknown {
  const method = object.methods?.[name];
  if (method === undefined) throw new NotModelled(`${object.type}.${name}()`);
  return method(...(given as readonly never[]));
}
