import { plannedPlants } from "../../../addin/actions/planting/plant-counts.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import type { CellValue } from "../../../addin/workbook/port.ts";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { NoResult, ResultNumber, ResultRow } from "../../parts/result-row.tsx";
import { chain, type ChainItem } from "./chain.ts";
import { yardText } from "./text.ts";

/** The chain of results of one yard, as the Design sheet holds it. */
export function Results({ yard }: { readonly yard: Yard }) {
  return (
    <section aria-label={yardText.chain.title} class="results" role="status">
      <h2>{yardText.chain.title}</h2>
      <p class="hint">{yardText.chain.where}</p>
      {chain.map(({ title, items }) => (
        <div key={title} class="result-group">
          <h3>{title}</h3>
          <dl>
            {items
              .filter(({ key, onlyIfThere }) => onlyIfThere !== true || typeof yard.design[key] === "number")
              .map((item) => (
                <Result key={item.key} item={item} yard={yard} />
              ))}
          </dl>
        </div>
      ))}
    </section>
  );
}

function Result({ item, yard }: { readonly item: ChainItem; readonly yard: Yard }) {
  const { key, kind, decimals, headline } = item;
  const value = yard.design[key];
  return (
    <ResultRow label={labelOf(key, yard)} headline={headline}>
      {typeof value === "number" ? (
        <ResultNumber says={shown(value, decimals)} unit={shownUnit(kind, yard.units)} />
      ) : (
        <NoResult says={whyNone(value)} />
      )}
    </ResultRow>
  );
}

/** With how many holes, or whose count of plants, the number rests on. */
function labelOf(key: ChainItem["key"], { design, clumps }: Yard): string {
  const words = yardText.chain;
  if (key === "plants") return plannedPlants(clumps) === null ? words.plantsBySpacing : words.plantsOfPlan;
  return key === "testedRate" && typeof design.holes === "number" && design.holes > 0
    ? `${words[key]} (${words.holes(design.holes)})`
    : words[key];
}

/** Never the error itself: its sentence stands in the list above the results. */
function whyNone(value: CellValue): string {
  if (value === null || value === "" || value === "#N/A") return yardText.notMeasured;
  return value === "#BUSY!" || value === "#GETTING_DATA" ? yardText.computing : yardText.noAnswer;
}
