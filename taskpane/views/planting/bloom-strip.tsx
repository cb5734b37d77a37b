import type { PalettePlant } from "../../../addin/actions/planting/palette.ts";
import { Fold } from "../../parts/fold.tsx";
import { bloomOf, MONTHS, SEASONS, type Bloom, type Season } from "./bloom.ts";
import { MarkKey } from "./plant-mark.tsx";
import type { PlantMark } from "./plant-marks.ts";
import { plantingText } from "./text.ts";

const words = plantingText.bloom;

/** When each kind blooms, a column a month, and the gaps in words. */
export function BloomStrip({
  plants,
  marks,
}: {
  readonly plants: readonly PalettePlant[];
  readonly marks: ReadonlyMap<string, PlantMark>;
}) {
  if (plants.length === 0) return null;
  const bloom = bloomOf(plants);
  return (
    <Fold title={words.title}>
      <table class="bloom">
        <thead>
          <tr>
            <th scope="col">{words.kind}</th>
            {MONTHS.map((month) => (
              <th key={month} scope="col">
                <abbr title={monthName(month)}>{monthName(month).slice(0, 1)}</abbr>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plants.map(({ name, commonName, bloomMonths }) => {
            const mark = marks.get(name);
            return (
              <tr key={name}>
                <th scope="row">
                  {mark !== undefined && <MarkKey mark={mark} />}
                  <span class="bloom-name">{commonName === "" ? name : commonName}</span>
                </th>
                {MONTHS.map((month) => (
                  <td key={month} class={bloomMonths.includes(month) ? "blooms" : ""}>
                    {bloomMonths.includes(month) && <span class="unseen">{words.inBloom}</span>}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{words.total}</th>
            {bloom.kindsByMonth.map((kinds, place) => (
              <td key={place}>{kinds}</td>
            ))}
          </tr>
        </tfoot>
      </table>
      {bloomWords(bloom).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p class="hint">{words.hemisphere}</p>
    </Fold>
  );
}

export function bloomWords({ kindsByMonth, gaps, seasons, unknown }: Bloom): readonly string[] {
  const first = kindsByMonth.findIndex((kinds) => kinds > 0);
  const last = kindsByMonth.findLastIndex((kinds) => kinds > 0);
  const missing = (Object.keys(SEASONS) as Season[]).filter((season) => !seasons.includes(season));
  const known =
    first < 0
      ? [words.none]
      : [
          `${words.span(monthName(first + 1), monthName(last + 1))} ${gaps.length === 0 ? words.noGaps : words.gaps(gaps.map(monthName))}`,
          ...(missing.length === 0 ? [] : [words.missing(missing.map((season) => plantingText.seasons[season]))]),
        ];
  return unknown.length === 0 ? known : [...known, words.unknown(unknown)];
}

function monthName(month: number): string {
  return plantingText.months[month - 1] ?? "";
}
