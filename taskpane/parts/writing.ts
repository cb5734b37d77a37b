import { useMemo, useState } from "preact/hooks";
import type { LoggedWorkbook } from "../../addin/actions/program/change-log.ts";
import { undoChange } from "../../addin/actions/program/undo-change.ts";
import { settleUnfinished } from "../../addin/actions/program/long-write.ts";
import { unfinishedIn } from "../../addin/actions/program/unfinished.ts";
import type { Progress } from "../../addin/actions/program/progress.ts";
import { writeUnlessChanged, type Conflict } from "../../addin/actions/program/write-records.ts";
import { rememberedName } from "./remembered-name.ts";
import { sentenceOfError } from "./spoken-errors.ts";
import { text } from "../text.ts";
import type { ViewProps } from "../view.ts";
import { drawn, isWriting } from "./while-writing.ts";

export interface Status {
  readonly kind: "working" | "success" | "info" | "error";
  readonly sentence: string;
  /** Puts the cells back as they were before the write. */
  readonly undo?: () => void;
}

/** Cells that changed behind an open form: the person decides, and nothing is written meanwhile. */
export interface ConflictQuestion {
  readonly conflicts: readonly Conflict[];
  readonly answer: (choice: "mine" | "sheet") => void;
}

export interface Writing {
  readonly write: ViewProps["write"];
  /** Runs what writes nothing, such as selecting a cell, and says what went wrong. */
  readonly attempt: (action: () => Promise<unknown>) => Promise<void>;
  readonly status: Status | null;
  readonly dismiss: () => void;
  readonly question: ConflictQuestion | null;
}

/** One write at a time, in the order asked for. */
export function useWriting({ workbook, forget, anyWritten, putOnLog }: LoggedWorkbook, readAgain: () => Promise<void>): Writing {
  const [status, say] = useState<Status | null>(null);
  const [question, setQuestion] = useState<ConflictQuestion | null>(null);
  const { write, attempt } = useMemo(() => {
    let queue: Promise<unknown> = Promise.resolve();

    const ask = (conflicts: readonly Conflict[]): Promise<"mine" | "sheet"> =>
      new Promise((resolve) => {
        const answer = (choice: "mine" | "sheet") => {
          setQuestion(null);
          resolve(choice);
        };
        setQuestion({ conflicts, answer });
      });

    const perform = async (action: Parameters<ViewProps["write"]>[0], done: string): Promise<boolean> => {
      forget({ by: rememberedName(), what: done });
      const progress: Progress = (share) => {
        say({ kind: "working", sentence: text.status.writingShare(Math.floor(share * 100)) });
        return drawn();
      };
      say({ kind: "working", sentence: text.status.writing });
      try {
        await drawn();
        for (let conflicts = (await action(progress)) ?? []; conflicts.length > 0; conflicts = (await action(progress)) ?? []) {
          say({ kind: "info", sentence: text.conflict.asked });
          if ((await ask(conflicts)) === "sheet") {
            await readAgain();
            say({ kind: "info", sentence: text.conflict.sheetStays });
            return false;
          }
          // What was read for the question is now what the person has seen: a further change asks again.
          await writeUnlessChanged(
            workbook,
            conflicts.map(({ where, now, write: wanted }) => ({ where, shown: now, write: wanted })),
          );
        }
        await workbook.calculated();
        const logged = await onLog(done);
        await readAgain();
        say(logged);
        return true;
      } catch (error) {
        const sentence = sentenceOfError(error, anyWritten() ? "part" : "nothing");
        await putOnLog({ by: rememberedName(), what: text.status.unfinished(done) }).catch(() => null);
        await readAgain();
        say({ kind: "error", sentence });
        return false;
      }
    };

    /** The write stands, whatever becomes of its record: what could not be put on the log is said. */
    const onLog = async (done: string): Promise<Status> => {
      try {
        const change = await putOnLog({ by: rememberedName(), what: done });
        return { kind: "success", sentence: done, ...(change === null ? {} : { undo: () => void undo(change, done) }) };
      } catch (error) {
        return { kind: "info", sentence: text.status.notOnLog(done, sentenceOfError(error, "written")) };
      }
    };

    const write = (action: Parameters<ViewProps["write"]>[0], done: string): Promise<boolean> => {
      const written = queue.then(() => perform(action, done));
      queue = written;
      isWriting(written);
      return written;
    };
    const undo = (change: number, what: string) => write((progress) => undoChange(workbook, change, progress), text.status.undone(what));

    /** What an earlier visit was in the midst of is taken back, or undone to its end, before anything else is written. */
    const settle = async (): Promise<void> => {
      const unfinished = await unfinishedIn(workbook).catch(() => null);
      if (unfinished !== null)
        await perform((progress) => settleUnfinished(workbook, unfinished, progress), text.status.settled[unfinished.doing]);
    };
    queue = settle();

    return {
      write,
      attempt: async (action: () => Promise<unknown>): Promise<void> => {
        try {
          await action();
        } catch (error) {
          say({ kind: "error", sentence: sentenceOfError(error) });
        }
      },
    };
  }, [workbook]);
  return { write, attempt, status, dismiss: () => say(null), question };
}
