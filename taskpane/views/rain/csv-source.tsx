import { useId, useState } from "preact/hooks";
import { Button } from "../../parts/form.tsx";
import { drawn } from "../../parts/while-writing.ts";
import { rainText } from "./text.ts";

const MEGABYTE = 1_000_000;
/** A million rows of sixty letters: more than any sheet takes. */
const MOST_MEGABYTES = 60;
/** A text area with more letters brings the pane to a stand; what was opened as a file is not shown in it. */
const MOST_LETTERS_SHOWN = 20_000;

/** A file to open, or a field to paste into. */
export function CsvSource({ text, onText }: { readonly text: string; readonly onText: (text: string) => void }) {
  const words = rainText.source;
  const id = useId();
  const [opening, setOpening] = useState<string | null>(null);
  const [fault, say] = useState("");
  const open = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file === undefined) return;
    say("");
    if (file.size > MOST_MEGABYTES * MEGABYTE) return say(words.tooLarge(MOST_MEGABYTES));
    setOpening(file.name);
    await drawn();
    try {
      onText(decoded(new Uint8Array(await file.arrayBuffer())));
    } catch {
      say(words.unreadable);
    }
    setOpening(null);
    // The same file may be opened again after it was put right.
    input.value = "";
  };
  return (
    <>
      <div class="field">
        <label class="label" for={`${id}-file`}>
          {words.file}
        </label>
        <input
          class="input"
          id={`${id}-file`}
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          aria-describedby={`${id}-said`}
          onChange={(event) => void open(event.currentTarget)}
        />
        <p class={opening === null ? "fault" : "hint"} id={`${id}-said`} role="status">
          {opening === null ? fault : words.opening(opening)}
        </p>
      </div>
      <div class="field">
        <label class="label" for={`${id}-paste`}>
          {words.paste}
        </label>
        <textarea
          class="input"
          id={`${id}-paste`}
          rows={4}
          spellcheck={false}
          value={text.slice(0, MOST_LETTERS_SHOWN)}
          readOnly={text.length > MOST_LETTERS_SHOWN}
          onInput={(event) => onText(event.currentTarget.value)}
        />
      </div>
      <div class="buttons">
        <Button kind="quiet" disabled={text === ""} onClick={() => onText("")}>
          {words.clear}
        </Button>
      </div>
    </>
  );
}

/** UTF-8, or what the file's first two bytes say; a file in neither is refused rather than shown in wrong letters. */
function decoded(bytes: Uint8Array): string {
  const encoding = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "utf-8";
  return new TextDecoder(encoding, { fatal: true }).decode(bytes);
}
