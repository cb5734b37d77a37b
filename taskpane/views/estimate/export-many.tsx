import { useState } from "preact/hooks";
import { Fold } from "../../parts/fold.tsx";
import { Button, CheckField } from "../../parts/form.tsx";
import type { ViewProps } from "../../view.ts";
import { nameOf } from "../../yard-button.tsx";
import { ExportButtons } from "./export-buttons.tsx";
import { estimateText } from "./text.ts";
import "./estimate.css";

const words = estimateText.many;

/** Files of several yards at once, for the page of the whole program. */
export function ExportMany({ program, workbook, write }: Pick<ViewProps, "program" | "workbook" | "write">) {
  const withLines = program.yards.filter(({ estimateLines }) => estimateLines.length > 0).map(({ siteId }) => siteId);
  const [chosen, choose] = useState<readonly string[]>(withLines);
  const yards = program.yards.filter(({ siteId }) => chosen.includes(siteId));
  return (
    <Fold title={words.title} says={words.chosen(yards.length)}>
      <div class="buttons">
        <Button kind="quiet" onClick={() => choose(withLines)}>
          {words.all}
        </Button>
        <Button kind="quiet" onClick={() => choose([])}>
          {words.none}
        </Button>
      </div>
      <fieldset class="export-yards">
        <legend class="label">{words.which}</legend>
        {program.yards.map((yard) => (
          <CheckField
            key={yard.siteId}
            label={[`${yard.siteId} ${nameOf(yard)}`, ...(yard.estimateLines.length === 0 ? [words.noLines] : [])].join(", ")}
            checked={chosen.includes(yard.siteId)}
            onChange={(checked) =>
              choose((current) => (checked ? [...current, yard.siteId] : current.filter((one) => one !== yard.siteId)))
            }
          />
        ))}
      </fieldset>
      <p role="status">{words.chosen(yards.length)}</p>
      <p class="hint">{estimateText.exports.explain}</p>
      <ExportButtons program={program} workbook={workbook} write={write} yards={yards} />
    </Fold>
  );
}
