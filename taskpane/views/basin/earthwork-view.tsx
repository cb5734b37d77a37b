import type { ComponentChildren } from "preact";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { numberWords, quantityWords } from "../../parts/quantity-words.ts";
import { NoResult, ResultNumber, ResultRow } from "../../parts/result-row.tsx";
import { valueOf } from "./basin-checks.ts";
import { roundDepth } from "./depths.ts";
import { basinText } from "./text.ts";

const words = basinText.earthwork;

/** Cut, berm and what is left over on the yard's own slope. */
export function Earthwork({ draft }: { readonly draft: BasinDraft }) {
  const { units, earthwork } = draft;
  if (valueOf(draft.floorArea) === null) return null;
  const cut = earthwork === null ? null : valueOf(earthwork.cut);
  return (
    <Fold title={words.title} says={cut === null ? "" : words.digs(quantityWords("earthVolume", cut, units))}>
      {draft.groundSlopePercent === null || earthwork === null ? (
        <p class="hint">{words.noSlope}</p>
      ) : (
        <>
          <dl class="basin-results">
            <Row label={words.cut} hint={words.cutHint} kind="earthVolume" value={valueOf(earthwork.cut)} units={units} />
            <Row label={words.fill} kind="earthVolume" value={valueOf(earthwork.fill)} units={units} />
            <LeftOver value={valueOf(earthwork.leftOver)} units={units} />
            <Row
              label={words.bermHeight}
              hint={words.bermHint}
              kind="depth"
              value={roundDepth(valueOf(earthwork.bermHeight), units)}
              units={units}
            />
            <Row label={words.uphillRise} kind="depth" value={roundDepth(earthwork.uphillRise, units)} units={units} />
          </dl>
          {(draft.mediaDepth ?? 0) > 0 && (
            <p class="hint">{words.mix(quantityWords("earthVolume", valueOf(draft.mixVolume) ?? 0, units))}</p>
          )}
          <p class="hint">{words.basis}</p>
        </>
      )}
    </Fold>
  );
}

function LeftOver({ value, units }: { readonly value: number | null; readonly units: UnitSystem }) {
  return (
    <Row
      label={value !== null && value < 0 ? words.short : words.leftOver}
      kind="earthVolume"
      value={value === null ? null : Math.abs(value)}
      units={units}
    />
  );
}

function Row({
  label,
  hint,
  kind,
  value,
  units,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly kind: "earthVolume" | "depth";
  readonly value: number | null;
  readonly units: UnitSystem;
}): ComponentChildren {
  return (
    <ResultRow label={label} hint={hint}>
      {value === null ? (
        <NoResult says={basinText.results.none} />
      ) : (
        <ResultNumber says={numberWords(kind, value, units)} unit={shownUnit(kind, units)} />
      )}
    </ResultRow>
  );
}
