import { useState } from "preact/hooks";
import { ChooseYards } from "../../parts/choose-yards.tsx";
import { Fold } from "../../parts/fold.tsx";
import type { ViewProps } from "../../view.ts";
import { ExportButtons } from "./export-buttons.tsx";
import { estimateText } from "./text.ts";
import "./estimate.css";

const words = estimateText.many;

/** Files of several yards at once, for the page of the whole program. */
export function ExportMany({ program, workbook, write }: Pick<ViewProps, "program" | "workbook" | "write">) {
  const withLines = program.yards.filter(({ estimateLines }) => estimateLines.length > 0).map(({ siteId }) => siteId);
  // Those with lines, whatever is added meanwhile, until a person chooses.
  const [own, choose] = useState<readonly string[] | null>(null);
  const chosen = own ?? withLines;
  const yards = program.yards.filter(({ siteId }) => chosen.includes(siteId));
  return (
    <Fold title={words.title} says={words.chosen(yards.length)}>
      <ChooseYards
        program={program}
        legend={words.which}
        allSays={words.all}
        all={withLines}
        chosen={chosen}
        onChoose={choose}
        noteOn={({ estimateLines }) => (estimateLines.length === 0 ? words.noLines : null)}
      />
      <p class="hint">{estimateText.exports.explain}</p>
      <ExportButtons program={program} workbook={workbook} write={write} yards={yards} />
    </Fold>
  );
}
