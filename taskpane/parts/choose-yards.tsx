import { useState } from "preact/hooks";
import type { Program, Yard } from "../../addin/actions/program/read-program.ts";
import { text } from "../text.ts";
import { nameOf } from "../yard-button.tsx";
import { Button, CheckField, TextField } from "./form.tsx";
import { yardsMatching } from "./yards-matching.ts";
import "./choose-yards.css";

/** Some of the program's yards. Those that a search leaves out stay chosen. */
export function ChooseYards({
  program,
  legend,
  allSays,
  all = program.yards.map(({ siteId }) => siteId),
  chosen,
  onChoose,
  noteOn = () => null,
}: {
  readonly program: Program;
  readonly legend: string;
  readonly allSays: string;
  /** What "all" takes. */
  readonly all?: readonly string[];
  readonly chosen: readonly string[];
  readonly onChoose: (siteIds: readonly string[]) => void;
  /** What is to say of a yard behind its name. */
  readonly noteOn?: (yard: Yard) => string | null;
}) {
  const words = text.chooseYards;
  const [search, setSearch] = useState("");
  const isLong = program.yards.length > FEW_YARDS;
  return (
    <>
      {isLong && <TextField label={text.picker.search} hint={text.picker.searchHint} value={search} onInput={setSearch} />}
      <div class="buttons">
        <Button kind="quiet" onClick={() => onChoose(all)}>
          {allSays}
        </Button>
        <Button kind="quiet" onClick={() => onChoose([])}>
          {words.none}
        </Button>
      </div>
      <fieldset class="choose-yards">
        <legend class="label">{legend}</legend>
        {yardsMatching(program, isLong ? search : "").map((yard) => (
          <CheckField
            key={yard.siteId}
            label={[`${yard.siteId} ${nameOf(yard)}`, ...[noteOn(yard) ?? []].flat()].join(", ")}
            checked={chosen.includes(yard.siteId)}
            onChange={(checked) => onChoose(checked ? [...chosen, yard.siteId] : chosen.filter((one) => one !== yard.siteId))}
          />
        ))}
      </fieldset>
      <p role="status">{words.chosen(chosen.length)}</p>
    </>
  );
}

const FEW_YARDS = 12;
