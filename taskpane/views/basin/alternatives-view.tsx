import { useState } from "preact/hooks";
import { Fold } from "../../parts/fold.tsx";
import { Button } from "../../parts/form.tsx";
import { ALTERNATIVE_NAMES, type AlternativeName, type ComparedRow } from "./alternatives.ts";
import { basinText } from "./text.ts";

const words = basinText.alternatives;

/** A, B and C side by side, and what can be done with each. */
export function Alternatives({
  kept,
  rows,
  faulty,
  onKeep,
  onOpen,
  onChoose,
}: {
  readonly kept: ReadonlySet<AlternativeName>;
  readonly rows: readonly ComparedRow[];
  /** What is in the form cannot be kept. */
  readonly faulty: boolean;
  readonly onKeep: (name: AlternativeName) => void;
  readonly onOpen: (name: AlternativeName) => void;
  readonly onChoose: (name: AlternativeName) => Promise<unknown>;
}) {
  const [said, say] = useState("");
  const keep = (name: AlternativeName) => {
    say(faulty ? words.fixFirst : words.kept(name));
    if (!faulty) onKeep(name);
  };
  return (
    <Fold title={words.title} says={kept.size === 0 ? "" : words.keptNames([...kept].join(", "))}>
      <p class="hint">{words.explain}</p>
      <div class="buttons">
        {ALTERNATIVE_NAMES.map((name) => (
          <Button key={name} onClick={() => keep(name)}>
            {kept.has(name) ? words.replace(name) : words.keep(name)}
          </Button>
        ))}
      </div>
      <p role="status" class={faulty ? "fault" : "hint"}>
        {said}
      </p>
      {kept.size > 0 && (
        <>
          <Comparison rows={rows} />
          {ALTERNATIVE_NAMES.filter((name) => kept.has(name)).map((name) => (
            <div key={name} class="buttons alternative-buttons" role="group" aria-label={words.of(name)}>
              <Button kind="quiet" onClick={() => onOpen(name)}>
                {words.open(name)}
              </Button>
              <Button onClick={() => onChoose(name)}>{words.choose(name)}</Button>
            </div>
          ))}
        </>
      )}
    </Fold>
  );
}

function Comparison({ rows }: { readonly rows: readonly ComparedRow[] }) {
  return (
    <table class="compared">
      <caption>{words.table}</caption>
      <thead>
        <tr>
          <td />
          {ALTERNATIVE_NAMES.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ label, cells }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            {cells.map((cell, place) => (
              <td key={ALTERNATIVE_NAMES[place]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
