import type { Injector } from "@univerjs/core";
import { ICalculateFormulaService } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

/** The parts of the grid's formula engine by which one calculation keeps the next waiting. */
interface Engine {
  execute(what: object): Promise<void>;
  readonly _executeLock: { acquire(key: string, work: () => undefined): Promise<unknown> };
}

/** Resolves when the engine has carried out every calculation that it was asked for. */
export type EngineIsIdle = () => Promise<void>;

const LOCK = "FORMULA_EXECUTION_LOCK";

/**
 * A calculation begins when the one before it is over. Left to itself the engine loads what the next is about while the
 * last still goes on, and either may then compute the wrong cells. A calculation that was stopped also reports its end a
 * second time when the next has been announced, so that the grid takes the next for finished: only the engine itself
 * knows when it is.
 */
export function calculateInTurn(injector: Injector): EngineIsIdle {
  const engine = reach<Engine>(injector.get(ICalculateFormulaService), "formula engine", ["execute", "_executeLock"]);
  const execute = engine.execute.bind(engine);
  const isOver = (): Promise<unknown> => engine._executeLock.acquire(LOCK, () => undefined);
  let last: Promise<unknown> = Promise.resolve();
  engine.execute = (what) => {
    const present = last.then(() => execute(what));
    last = present.catch(() => undefined).then(isOver);
    return present;
  };
  return async () => {
    for (let awaited: unknown; awaited !== last; ) await (awaited = last);
  };
}
