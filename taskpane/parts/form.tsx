import type { ComponentChildren } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import { text } from "../text.ts";

export interface FieldProps {
  readonly label: string;
  /** The sentence to show under the field, or nothing while there is no fault. */
  readonly fault?: string | null | undefined;
  readonly hint?: string | undefined;
}

interface TypedProps extends FieldProps {
  /** Exactly what was typed; parse it when it is used. */
  readonly value: string;
  readonly onInput: (typed: string) => void;
}

/** A number with its unit. Keeps the text as typed, whatever it is: readTypedNumber reads it at use. */
export function NumberField({
  unit,
  big,
  disabled,
  placeholder,
  ...field
}: TypedProps & {
  readonly unit?: string | undefined;
  /** What a blank stands for. */
  readonly placeholder?: string;
  readonly big?: boolean;
  readonly disabled?: boolean;
}) {
  return (
    <Field {...field} unit={unit}>
      {(attributes, unitId) => (
        <span class={big === true ? "number number-big" : "number"}>
          <input
            {...attributes}
            class="input"
            type="text"
            inputMode="decimal"
            autocomplete="off"
            disabled={disabled}
            placeholder={placeholder}
            value={field.value}
            onInput={(event) => field.onInput(event.currentTarget.value)}
          />
          {unit !== undefined && unit !== "" && (
            <span class="unit" id={unitId}>
              {unit}
            </span>
          )}
        </span>
      )}
    </Field>
  );
}

export function TextField(field: TypedProps) {
  return (
    <Field {...field}>
      {(attributes) => (
        <input
          {...attributes}
          class="input"
          type="text"
          autocomplete="off"
          value={field.value}
          onInput={(event) => field.onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

/** A calendar day as "2026-05-04", or "" for none; the browser's own picker. */
export function DateField(field: TypedProps) {
  return (
    <Field {...field}>
      {(attributes) => (
        <input
          {...attributes}
          class="input"
          type="date"
          value={field.value}
          onInput={(event) => field.onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

/** A time of day as "09:30", or "" for none; the browser's own picker. */
export function TimeField(field: TypedProps) {
  return (
    <Field {...field}>
      {(attributes) => (
        <input
          {...attributes}
          class="input"
          type="time"
          value={field.value}
          onInput={(event) => field.onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

/** Yes or no, the whole line to tap on. */
export function CheckField({
  label,
  checked,
  onChange,
}: {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}) {
  return (
    <label class="check">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  );
}

export interface Choice<Value extends string = string> {
  readonly value: Value;
  readonly says: string;
  /** What choosing it leads to, in small print. */
  readonly meaning?: string;
}

interface ChoiceProps<Value extends string> extends FieldProps {
  readonly value: Value | null;
  readonly choices: readonly Choice<Value>[];
}

/** One of a long list. With `blank` the first entry stands for none. A value outside the list is kept and shown. */
export function ChoiceField<Value extends string>({
  blank,
  onChoose,
  ...field
}: ChoiceProps<Value> & {
  readonly blank?: string;
  readonly onChoose: (value: Value | null) => void;
}) {
  const { value, choices } = field;
  const unlisted = value !== null && !choices.some((choice) => choice.value === value);
  return (
    <Field {...field}>
      {(attributes) => (
        <select
          {...attributes}
          class="input"
          value={value ?? ""}
          onChange={(event) => onChoose(event.currentTarget.value === "" ? null : (event.currentTarget.value as Value))}
        >
          {(blank !== undefined || value === null) && <option value="">{blank ?? ""}</option>}
          {unlisted && <option value={value}>{value}</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.says}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** One of a few, all in sight: large enough for gloves. */
export function Segmented<Value extends string>({
  label,
  fault,
  hint,
  value,
  choices,
  onChoose,
}: ChoiceProps<Value> & {
  readonly onChoose: (value: Value) => void;
}) {
  const id = useId();
  return (
    <fieldset class="segmented" aria-describedby={describedBy(id, fault, hint)}>
      <legend class="label">{label}</legend>
      <Hint id={id} hint={hint} />
      <div class="segments">
        {choices.map((choice) => (
          <label key={choice.value} class="segment">
            <input type="radio" name={id} value={choice.value} checked={choice.value === value} onChange={() => onChoose(choice.value)} />
            <span class="segment-words">
              <span>{choice.says}</span>
              {choice.meaning !== undefined && <span class="segment-meaning">{choice.meaning}</span>}
            </span>
          </label>
        ))}
      </div>
      <Fault id={id} fault={fault} />
    </fieldset>
  );
}

/**
 * "primary" for the one thing to do next, "quiet" for what is rarely wanted. While a promise that `onClick` returns
 * is pending the button does nothing, so that two taps never write twice. A disabled one can still be found by the
 * keyboard and read, and does nothing.
 */
export function Button({
  kind = "plain",
  disabled = false,
  onClick,
  children,
  ...labelled
}: {
  readonly kind?: "primary" | "plain" | "quiet";
  readonly disabled?: boolean;
  readonly onClick: () => unknown;
  readonly children: ComponentChildren;
  /** Where the words on the button do not say what it acts on. */
  readonly "aria-label"?: string;
  readonly "aria-expanded"?: boolean;
}) {
  const appearance = { primary: "primary", plain: "outline", quiet: "subtle" }[kind];
  const working = useRef(false);
  const [busy, setBusy] = useState(false);
  const click = async () => {
    if (disabled || working.current) return;
    const outcome = onClick();
    if (!(outcome instanceof Promise)) return;
    working.current = true;
    setBusy(true);
    try {
      await outcome;
    } finally {
      working.current = false;
      setBusy(false);
    }
  };
  return (
    <fluent-button
      {...labelled}
      class={`button button-${kind}`}
      type="button"
      // Fluent says so by element internals, which not every reader of the page looks at.
      role="button"
      appearance={appearance}
      aria-disabled={disabled ? "true" : undefined}
      aria-busy={busy}
      onClick={() => void click()}
    >
      {children}
    </fluent-button>
  );
}

/** Enter in a field writes it; on a button or a link it does what they do. */
export function isEnterInField(event: KeyboardEvent): boolean {
  const { target } = event;
  const isField = target instanceof HTMLInputElement || target instanceof HTMLSelectElement;
  if (event.key !== "Enter" || event.isComposing || !isField) return false;
  event.preventDefault();
  return true;
}

/** A sentence with a border and an icon. `actions` are Buttons. */
export function MessageBar({
  kind,
  children,
  actions,
}: {
  readonly kind: "info" | "success" | "warning" | "error";
  readonly children: ComponentChildren;
  readonly actions?: ComponentChildren;
}) {
  return (
    <fluent-message-bar class={`message message-${kind}`} intent={kind} layout="multiline">
      <Icon slot="icon" shape={{ info: "info", success: "pass", warning: "refer", error: "stop" }[kind] as Shape} />
      <div class="message-words">{children}</div>
      {actions !== undefined && <div class="message-actions">{actions}</div>}
    </fluent-message-bar>
  );
}

export type ShownVerdict = keyof typeof text.verdicts;

/** A verdict by icon, word and color: any one of the three is enough. `says` is the word where it is not the verdict's own. */
export function VerdictBadge({
  verdict,
  says = text.verdicts[verdict],
  big = false,
}: {
  readonly verdict: ShownVerdict;
  readonly says?: string;
  readonly big?: boolean;
}) {
  return (
    <span class={`verdict verdict-${verdict.replace(" ", "-")}${big ? " verdict-big" : ""}`}>
      <Icon shape={verdict} />
      <span>{says}</span>
    </span>
  );
}

type Shape = ShownVerdict | "info";

const SHAPES: Record<Shape, string> = {
  pass: "M8.5 14.6 4.4 10.5 3 11.9l5.5 5.5L17 6.6l-1.4-1.4z",
  refer: "M10 2 1 18h18L10 2zm-.9 6h1.8v5H9.1V8zm0 6.5h1.8v1.8H9.1v-1.8z",
  stop: "M6.2 1.5h7.6l4.7 4.7v7.6l-4.7 4.7H6.2l-4.7-4.7V6.2l4.7-4.7zM5.5 9v2h9V9h-9z",
  watch: "M10 4.5C5.5 4.5 2.2 8 1 10c1.2 2 4.5 5.5 9 5.5s7.8-3.5 9-5.5c-1.2-2-4.5-5.5-9-5.5zm0 9a3.5 3.5 0 1 1 0-7 3.5 3.5 0 0 1 0 7z",
  fail: "M5.4 4 4 5.4 8.6 10 4 14.6 5.4 16 10 11.4 14.6 16 16 14.6 11.4 10 16 5.4 14.6 4 10 8.6z",
  "not measured": "M4 9h12v2H4z",
  info: "M10 1.5a8.5 8.5 0 1 0 0 17 8.5 8.5 0 0 0 0-17zM9 9h2v5.5H9V9zm0-3.5h2v2H9v-2z",
};

function Icon({ shape, slot }: { readonly shape: Shape; readonly slot?: string }) {
  return (
    <svg slot={slot} class="icon" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <path d={SHAPES[shape]} fill-rule="evenodd" />
    </svg>
  );
}

interface ControlAttributes {
  readonly id: string;
  readonly "aria-invalid"?: "true";
  readonly "aria-describedby"?: string | undefined;
}

function Field({
  label,
  fault,
  hint,
  unit = "",
  children,
}: FieldProps & {
  readonly unit?: string | undefined;
  readonly children: (attributes: ControlAttributes, unitId: string) => ComponentChildren;
}) {
  const id = useId();
  const wrong = isFault(fault);
  const described = describedBy(id, fault, hint, unit !== "" ? [`${id}-unit`] : []);
  return (
    <div class={wrong ? "field field-wrong" : "field"}>
      <label class="label" for={id}>
        {label}
      </label>
      <Hint id={id} hint={hint} />
      {children({ id, "aria-describedby": described, ...(wrong ? { "aria-invalid": "true" as const } : {}) }, `${id}-unit`)}
      <Fault id={id} fault={fault} />
    </div>
  );
}

export function Hint({ id, hint }: { readonly id: string; readonly hint: string | undefined }) {
  return hint === undefined ? null : (
    <p class="hint" id={`${id}-hint`}>
      {hint}
    </p>
  );
}

/** Always in the page, so that a screen reader hears a fault the moment it appears. */
export function Fault({ id, fault }: { readonly id: string; readonly fault: string | null | undefined }) {
  return (
    <p class="fault" id={`${id}-fault`} role="status">
      {isFault(fault) && (
        <>
          <Icon shape="refer" />
          <span>{fault}</span>
        </>
      )}
    </p>
  );
}

export function describedBy(
  id: string,
  fault: string | null | undefined,
  hint: string | undefined,
  others: readonly string[] = [],
): string | undefined {
  const ids = [...others, ...(hint === undefined ? [] : [`${id}-hint`]), ...(isFault(fault) ? [`${id}-fault`] : [])];
  return ids.length === 0 ? undefined : ids.join(" ");
}

function isFault(fault: string | null | undefined): fault is string {
  return fault !== null && fault !== undefined && fault !== "";
}
