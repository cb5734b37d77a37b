import type { UnitSystem } from "../../../functions/quantities.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import { writtenUnit } from "../../../functions/worksheet/calling/working.ts";
import { ChoiceField, NumberField, Segmented, TextField } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import { isConverted, type InputAsRead, type TypedValues, type ValuesAsRead } from "./what-if-form.ts";
import { whatIfText as words } from "./text.ts";

/** One varied input and the values it takes. */
export function ValuesFields({
  title,
  typed,
  read,
  units,
  choices,
  none,
  converted = false,
  set,
}: {
  readonly title: string;
  readonly typed: TypedValues;
  readonly read: ValuesAsRead;
  readonly units: UnitSystem;
  readonly choices: readonly Parameter[];
  /** Says that nothing is varied here, or that something has yet to be. */
  readonly none: string;
  readonly converted?: boolean;
  readonly set: (typed: TypedValues) => void;
}) {
  const { parameter } = read;
  const isNumber = parameter !== null && isNumberKind(parameter.kind);
  const bySteps = isNumber && typed.how === "steps";
  const change = (changed: Partial<TypedValues>) => set({ ...typed, ...changed });
  const listed = parameter?.kind === "flag" ? [words.yes, words.no] : (parameter?.choices ?? []);
  return (
    <fieldset class="pair what-if-values">
      <legend class="label">{title}</legend>
      <ChoiceField
        label={words.input}
        value={parameter?.key ?? null}
        choices={choices.map((choice) => ({ value: choice.key, says: withUnit(choice, units) }))}
        blank={none}
        onChoose={(key) => change({ key })}
      />
      {isNumber && (
        <Segmented
          label={words.how}
          value={typed.how}
          choices={[
            { value: "steps", says: words.steps },
            { value: "list", says: words.list },
          ]}
          onChoose={(how) => change({ how })}
        />
      )}
      {bySteps && (
        <div class="what-if-steps">
          <NumberField label={words.from} value={typed.from} onInput={(from) => change({ from })} />
          <NumberField label={words.to} value={typed.to} onInput={(to) => change({ to })} />
          <NumberField label={words.step} value={typed.step} onInput={(step) => change({ step })} />
        </div>
      )}
      {parameter !== null && !bySteps && (
        <TextField
          label={words.listLabel(parameter.label)}
          hint={isNumber ? words.listHint : words.wordsHint(listed.slice(0, 3).join("; "))}
          value={typed.list}
          onInput={(list) => change({ list })}
        />
      )}
      <p class={read.fault === null ? "hint" : "fault"} role="status">
        {read.fault ?? valuesWords(read, units)}
      </p>
      {converted && isConverted(read) && <p class="hint">{words.inUsUnits}</p>}
    </fieldset>
  );
}

function withUnit({ label, kind }: Parameter, units: UnitSystem): string {
  const unit = isNumberKind(kind) ? writtenUnit(kind, units) : "";
  return unit === "" ? label : `${label} (${unit})`;
}

function valuesWords({ values, parameter }: ValuesAsRead, units: UnitSystem): string {
  if (parameter === null || values.length === 0) return "";
  const said = values.map((value) =>
    typeof value === "number" ? shown(value, 4) : typeof value === "boolean" ? (value ? words.yes : words.no) : String(value),
  );
  const unit = isNumberKind(parameter.kind) ? writtenUnit(parameter.kind, units) : "";
  const listed = said.length > 5 ? `${said.slice(0, 3).join(", ")} … ${said.at(-1) ?? ""}` : said.join(", ");
  return words.count(`${listed} ${unit}`.trimEnd(), said.length);
}

/** An input that is not varied: blank follows the workbook or takes its default, as the hint says. */
export function FixedInput({ input, onInput }: { readonly input: InputAsRead; readonly onInput: (typed: string) => void }) {
  const { parameter, source, typed, fault, unit, hint } = input;
  const { label, kind, choices } = parameter;
  if (parameter.isRange)
    return source?.kind === "series" ? <p class="hint">{words.series(label, words.seriesNames[source.series])}</p> : null;
  if (isNumberKind(kind)) return <NumberField label={label} unit={unit} hint={hint} value={typed} fault={fault} onInput={onInput} />;
  const listed = kind === "flag" ? [words.yes, words.no] : choices;
  if (listed === undefined) return <TextField label={label} hint={hint} value={typed} fault={fault} onInput={onInput} />;
  return (
    <ChoiceField
      label={label}
      hint={hint}
      value={typed === "" ? null : typed}
      fault={fault}
      blank=""
      choices={listed.map((choice) => ({ value: choice, says: choice }))}
      onChoose={(choice) => onInput(choice ?? "")}
    />
  );
}
