import { useEffect } from "preact/hooks";
import { sentenceOf } from "../../addin/actions/program/write-records.ts";
import { useFocusWhileShown } from "./focus.ts";
import { Button, MessageBar } from "./form.tsx";
import { text } from "../text.ts";
import type { ConflictQuestion, Writing } from "./writing.ts";

/** What happened to the last write, and the question when the sheet changed behind the form. */
export function WritingNotices({ writing: { status, dismiss, question } }: { readonly writing: Writing }) {
  useEffect(() => {
    if (status?.kind !== "success") return undefined;
    const timer = setTimeout(dismiss, SUCCESS_SHOWN_MILLISECONDS);
    return () => clearTimeout(timer);
  }, [status]);
  return (
    <div class="notices">
      {question !== null && <Conflicts question={question} />}
      <div role="status" class="status-line">
        {status !== null && question === null && (
          <div class={`status status-${status.kind}`}>
            <p>{status.sentence}</p>
            {status.undo !== undefined && (
              <Button kind="quiet" aria-label={`${text.status.undo}: ${status.sentence}`} onClick={status.undo}>
                {text.status.undo}
              </Button>
            )}
            {status.kind !== "working" && (
              <button type="button" class="close" aria-label={text.status.close} onClick={dismiss}>
                <svg class="icon" viewBox="0 0 20 20" aria-hidden="true">
                  <path d="M4 5.4 5.4 4 10 8.6 14.6 4 16 5.4 11.4 10l4.6 4.6-1.4 1.4L10 11.4 5.4 16 4 14.6 8.6 10z" />
                </svg>
              </button>
            )}
          </div>
        )}
      </div>
    </div>
  );
}

const SUCCESS_SHOWN_MILLISECONDS = 10_000;

function Conflicts({ question: { conflicts, answer } }: { readonly question: ConflictQuestion }) {
  const region = useFocusWhileShown();
  return (
    <div
      ref={region}
      class="conflict"
      role="alertdialog"
      aria-label={text.conflict.title}
      aria-describedby="soakbook-conflicts"
      tabIndex={-1}
    >
      <MessageBar
        kind="warning"
        actions={
          <>
            <Button onClick={() => answer("mine")}>{text.conflict.mine}</Button>
            <Button onClick={() => answer("sheet")}>{text.conflict.sheet}</Button>
          </>
        }
      >
        <strong>{text.conflict.title}</strong>
        <ul id="soakbook-conflicts">
          {conflicts.map((conflict) => (
            <li key={`${conflict.where.sheet} ${conflict.where.row} ${conflict.where.column}`}>{sentenceOf(conflict)}</li>
          ))}
        </ul>
      </MessageBar>
    </div>
  );
}
