import { text } from "../text.ts";
import { Button } from "./form.tsx";

/** The end of a form: says what is not written yet, writes it, or lets it go. */
export function WriteOrDiscard({
  save,
  touched,
  onSave,
  onDiscard,
}: {
  /** The words of the button that writes. */
  readonly save: string;
  readonly touched: boolean;
  readonly onSave: () => unknown;
  readonly onDiscard: () => unknown;
}) {
  return (
    <>
      {touched && <p class="unsaved">{text.form.unsaved}</p>}
      <div class="buttons">
        <Button kind="primary" onClick={onSave}>
          {save}
        </Button>
        <Button kind="quiet" onClick={onDiscard}>
          {text.form.discard}
        </Button>
      </div>
    </>
  );
}
