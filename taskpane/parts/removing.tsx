import { useEffect, useRef, useState } from "preact/hooks";
import { Button } from "./form.tsx";

/** A button that asks once more before something is taken out of the sheet. Keeping it comes first for the keyboard. */
export function Removing({
  says,
  label = says,
  question,
  keep,
  remove,
  onRemove,
}: {
  readonly says: string;
  /** Where the words on the button do not say what goes. */
  readonly label?: string;
  readonly question: string;
  readonly keep: string;
  readonly remove: string;
  readonly onRemove: () => Promise<unknown>;
}) {
  const [asked, ask] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const before = useRef(asked);
  useEffect(() => {
    if (before.current !== asked) place.current?.querySelector<HTMLElement>("fluent-button")?.focus();
    before.current = asked;
  }, [asked]);
  return (
    <div ref={place} class="removing">
      {asked ? (
        <div role="group" aria-label={question}>
          <p>{question}</p>
          <div class="buttons">
            <Button onClick={() => ask(false)}>{keep}</Button>
            <Button
              onClick={async () => {
                await onRemove();
                ask(false);
              }}
            >
              {remove}
            </Button>
          </div>
        </div>
      ) : (
        <Button kind="quiet" aria-label={label} onClick={() => ask(true)}>
          {says}
        </Button>
      )}
    </div>
  );
}
