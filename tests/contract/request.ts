/**
 * Answers one request of the object model, as Excel would: finds the object of each path, carries out the
 * actions in order, and stops at the first that fails. What was done before it stays done, as in Excel.
 */
import { HostError, NotModelled, invoke, isHostObject, readProperty, writeProperty, type HostObject } from "./host-object.ts";

export interface Request {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly unknown[] | null;
}

interface Body {
  readonly Results: readonly { readonly ActionId: number; readonly Value: unknown }[];
  readonly Error?: { readonly Code: string; readonly Message: string; readonly ActionIndex: number; readonly HttpStatusCode: number };
}

/** Ranges that a context holds on to between requests, by the name Excel gives them. */
export class References {
  readonly #kept = new Map<string, HostObject>();
  #made = 0;

  get size(): number {
    return this.#kept.size;
  }

  keep(object: HostObject): void {
    this.#made += 1;
    this.#kept.set(`${object.type} ${this.#made}`, object);
  }

  giveUp(name: string): void {
    this.#kept.delete(name);
  }

  nameOf(object: HostObject): string | undefined {
    return [...this.#kept].find(([, each]) => each === object)?.[0];
  }

  named(name: string): HostObject {
    const kept = this.#kept.get(name);
    if (kept === undefined) throw new HostError("InvalidReference", `${name} was given up.`);
    return kept;
  }
}

const PATH = { root: 1, method: 3, property: 4, indexer: 5, reference: 6, nullObject: 7 };
const ACTION = { instantiate: 1, load: 2, method: 3, set: 4, trace: 5 };

export function answer(request: Request, root: HostObject, references: References): Body {
  const paths = new Paths(request.ObjectPaths, root, references);
  const results: { ActionId: number; Value: unknown }[] = [];
  for (const [index, action] of request.Actions.entries()) {
    try {
      const value = carryOut(action, paths, references);
      if (value !== NOTHING) results.push({ ActionId: action.Id, Value: value });
    } catch (error) {
      if (!(error instanceof HostError)) throw error;
      return { Results: results, Error: { Code: error.code, Message: error.message, ActionIndex: index, HttpStatusCode: 400 } };
    }
  }
  return { Results: results };
}

const NOTHING = Symbol("no result");

function carryOut(action: Action, paths: Paths, references: References): unknown {
  // Handlers are added when the answer to their trace arrives.
  if (action.ActionType === ACTION.trace) return null;
  const object = paths.object(action.ObjectPathId);
  switch (action.ActionType) {
    case ACTION.instantiate:
      return object === null ? null : identity(object, references);
    case ACTION.load:
      return object === null ? null : loaded(object, action.QueryInfo?.Select ?? []);
    case ACTION.method:
      // A range that is not there has nothing to keep.
      if (object === null && action.Name === "_KeepReference") return NOTHING;
      return method(given(object, action.Name), action, paths, references);
    case ACTION.set:
      writeProperty(given(object, action.Name), action.Name, paths.arguments(action.ArgumentInfo)[0]);
      return NOTHING;
    default:
      throw new NotModelled(`action ${action.ActionType} (${action.Name})`);
  }
}

function given(object: HostObject | null, name: string): HostObject {
  if (object === null) throw new NotModelled(`${name} on an object that is not there`);
  return object;
}

function method(object: HostObject, action: Action, paths: Paths, references: References): unknown {
  if (action.Name === "_KeepReference") {
    references.keep(object);
    return NOTHING;
  }
  if (action.Name === "_RemoveReference") {
    references.giveUp(String(paths.arguments(action.ArgumentInfo)[0]));
    return NOTHING;
  }
  const value = invoke(object, action.Name, paths.arguments(action.ArgumentInfo));
  return isHostObject(value) || value === undefined ? NOTHING : value;
}

function identity(object: HostObject, references: References): object {
  const reference = references.nameOf(object);
  return {
    ...(object.id === undefined ? {} : { Id: object.id, _Id: object.id }),
    ...(reference === undefined ? {} : { _ReferenceId: reference }),
  };
}

/** The names come as "worksheet/name"; an empty list would mean everything, which is slow in Excel and refused here. */
function loaded(object: HostObject, names: readonly string[]): object {
  if (names.length === 0) throw new NotModelled(`loading all of ${object.type}: name the properties`);
  if (object.items !== undefined)
    return { _Items: object.items().map((item) => ({ ...identity(item, new References()), ...loaded(item, names) })) };
  const answers: Record<string, unknown> = {};
  for (const name of names) {
    const [first = "", ...rest] = name.split("/");
    const wireName = first.charAt(0).toUpperCase() + first.slice(1);
    const value = readProperty(object, wireName);
    if (!isHostObject(value)) answers[wireName] = value;
    else answers[wireName] = { ...(answers[wireName] as object | undefined), ...loaded(value, rest.length === 0 ? [] : [rest.join("/")]) };
  }
  return answers;
}

/** Each path is followed once a request, because a method on the way may add a sheet. */
class Paths {
  readonly #found = new Map<number, HostObject | null>();
  readonly #paths: Readonly<Record<string, ObjectPath>>;
  readonly #root: HostObject;
  readonly #references: References;

  constructor(paths: Readonly<Record<string, ObjectPath>>, root: HostObject, references: References) {
    this.#paths = paths;
    this.#root = root;
    this.#references = references;
  }

  object(id: number): HostObject | null {
    const known = this.#found.get(id);
    if (known !== undefined) return known;
    const path = this.#paths[String(id)];
    if (path === undefined) throw new NotModelled(`object path ${id}`);
    const object = this.#follow(path);
    this.#found.set(id, object);
    return object;
  }

  arguments(info: ArgumentInfo | undefined): readonly unknown[] {
    const referenced = info?.ReferencedObjectPathIds ?? [];
    return (info?.Arguments ?? []).map((argument, index) => {
      const id = referenced[index];
      return typeof id === "number" && id > 0 ? this.object(id) : argument;
    });
  }

  #follow(path: ObjectPath): HostObject | null {
    if (path.ObjectPathType === PATH.root) return this.#root;
    if (path.ObjectPathType === PATH.nullObject) return null;
    if (path.ObjectPathType === PATH.reference) return this.#references.named(path.Name);
    const parent = given(this.object(path.ParentObjectPathId ?? 0), path.Name);
    const found = this.#step(path, parent);
    if (found === null || isHostObject(found)) return found;
    throw new NotModelled(`${parent.type}.${path.Name} as an object`);
  }

  #step(path: ObjectPath, parent: HostObject): unknown {
    switch (path.ObjectPathType) {
      case PATH.method:
        return invoke(parent, path.Name, this.arguments(path.ArgumentInfo));
      case PATH.property:
        return readProperty(parent, path.Name);
      case PATH.indexer:
        if (parent.item === undefined) throw new NotModelled(`${parent.type}.getItem()`);
        return parent.item(String(path.ArgumentInfo?.Arguments?.[0]));
      default:
        throw new NotModelled(`object path type ${path.ObjectPathType}`);
    }
  }
}
