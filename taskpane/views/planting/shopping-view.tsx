import { useState } from "preact/hooks";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, NumberField } from "../../parts/form.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { copyText } from "../working/copy-text.ts";
import type { ShoppingLine } from "./shopping-list.ts";
import { plantingText } from "./text.ts";

const words = plantingText.shopping;

/** What to buy, to copy into an order or to print beside the plan. */
export function ShoppingView({
  linesFor,
  units,
  print,
}: {
  readonly linesFor: (plantsInFlat: number | null) => readonly ShoppingLine[];
  readonly units: UnitSystem;
  readonly print: (lines: readonly ShoppingLine[]) => Promise<void>;
}) {
  // Of the nursery, not of the yard.
  const flat = useDraft<string>("plants-in-flat", "");
  const [said, say] = useState("");
  const read = readTypedNumber(flat.value, { label: words.flat, atLeast: 1 });
  const inFlat = isRefused(read) || !Number.isInteger(read.value) ? null : read.value;
  const lines = linesFor(inFlat);
  if (lines.length === 0)
    return (
      <Fold title={words.title}>
        <p class="hint">{words.none}</p>
      </Fold>
    );
  return (
    <Fold title={words.title} says={words.total(total(lines))}>
      <NumberField label={words.flat} hint={words.flatHint} value={flat.value} fault={flatFault(flat.value)} onInput={flat.set} />
      <ShoppingTable lines={lines} units={units} />
      <p class="hint">{words.basis}</p>
      <div class="buttons">
        <Button onClick={async () => say((await copyText(shoppingText(lines, units))) ? words.copied : words.cannotCopy)}>
          {words.copy}
        </Button>
        <Button onClick={() => print(lines)}>{words.print}</Button>
      </div>
      <p role="status" class="hint">
        {said}
      </p>
    </Fold>
  );
}

function flatFault(text: string): string | null {
  const read = readTypedNumber(text, { label: words.flat, atLeast: 1 });
  if (isRefused(read)) return read.sentence;
  return read.value === null || Number.isInteger(read.value) ? null : words.flatWhole;
}

export function ShoppingTable({ lines, units }: { readonly lines: readonly ShoppingLine[]; readonly units: UnitSystem }) {
  return (
    <table class="shopping">
      <thead>
        <tr>
          <th scope="col">{words.columns.plant}</th>
          <th scope="col">{words.columns.count}</th>
          <th scope="col">{words.columns.spacing(shownUnit("length", units))}</th>
          <th scope="col">{words.columns.container}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.plant}>
            <th scope="row">
              {line.commonName !== "" && <span>{line.commonName} </span>}
              <i>{line.plant}</i>
            </th>
            <td>{shown(line.count, 0)}</td>
            <td>{spacingWords(line)}</td>
            <td>{containerWords(line)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={4}>{words.total(total(lines))}</td>
        </tr>
      </tfoot>
    </table>
  );
}

/** A line a kind, its columns apart by tabs, as a sheet and an email both take it. */
export function shoppingText(lines: readonly ShoppingLine[], units: UnitSystem): string {
  const { plant, count, spacing, container } = words.columns;
  const rows = lines.map((line) => [
    plantingText.named(line.plant, line.commonName),
    String(line.count),
    spacingWords(line),
    containerWords(line),
  ]);
  return (
    [[plant, count, spacing(shownUnit("length", units)), container], ...rows].map((cells) => cells.map(oneLine).join("\t")).join("\n") +
    `\n${words.total(total(lines))}\n`
  );
}

/** What begins like a formula is pasted as words: a name that a person typed must not run in another sheet. */
function oneLine(text: string): string {
  const flat = text.replaceAll(/\s+/g, " ").trim();
  return /^[=+\-@]/.test(flat) ? `'${flat}` : flat;
}

function total(lines: readonly ShoppingLine[]): number {
  return lines.reduce((sum, { count }) => sum + count, 0);
}

function spacingWords({ spacings }: ShoppingLine): string {
  const [first, ...others] = spacings;
  const say = (spacing: number) => shown(spacing, 2);
  if (first === undefined) return "";
  return others.length === 0 ? say(first) : `${say(first)}–${say(others.at(-1) ?? first)}`;
}

function containerWords({ container, flats }: ShoppingLine): string {
  const kind = container === null ? words.noContainer : words.containers[container];
  return flats === null ? kind : `${kind}: ${words.flats(flats.flats, flats.plants)}`;
}
