import { addWhatIf } from "../../../addin/actions/what-if/add-what-if.ts";
import type { Program } from "../../../addin/actions/program/read-program.ts";
import { firstAnswer } from "../../../addin/actions/what-if/what-if-preview.ts";
import { resultsOf } from "../../../addin/actions/what-if/lay-out-what-if.ts";
import { takesUnits, variable, type WhatIfRequest } from "../../../addin/actions/what-if/what-if-request.ts";
import { isCellError } from "../../../functions/worksheet/calling/cell.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import { writtenUnit } from "../../../functions/worksheet/calling/working.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, ChoiceField, Segmented } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import type { ViewProps } from "../../view.ts";
import { nameOf } from "../../yard-button.tsx";
import { FixedInput, ValuesFields } from "./what-if-fields.tsx";
import { readWhatIf, startingForm, type TypedInputs, type TypedWhatIf, type WhatIfAsRead } from "./what-if-form.ts";
import { whatIfText as words } from "./text.ts";
import "./what-if.css";

export const WHAT_IF_DRAFT = "program/what-if";

/** Asks for a what-if table and lays it out on its sheet. */
export function WhatIfView({ program, workbook, write }: Pick<ViewProps, "program" | "workbook" | "write">) {
  const draft = useDraft<TypedWhatIf>(WHAT_IF_DRAFT, startingForm(program));
  const form = draft.value;
  const read = readWhatIf(form, program);
  const { request } = read;
  const set = (changed: Partial<TypedWhatIf>) => draft.set((current) => ({ ...current, ...changed }));
  const typed = form[read.units];
  const setTyped = (changed: Partial<TypedInputs>) =>
    draft.set((current) => ({ ...current, [read.units]: { ...current[read.units], ...changed } }));
  const layOut = (asked: WhatIfRequest) =>
    write(async () => {
      const { answers } = await addWhatIf(workbook, asked);
      await workbook.select({ ...answers, rows: 1, columns: 1 });
    }, words.done);
  return (
    <div class="what-if">
      <h2>{words.title}</h2>
      <p class="hint">{words.explain}</p>
      <ScopeFields form={form} read={read} program={program} set={set} />
      <ResultFields form={form} read={read} set={set} />
      {read.scope.kind !== "all" && (
        <ValuesFields
          title={words.down}
          typed={typed.down}
          read={read.down}
          units={read.units}
          choices={variable(read.worksheetFunction)}
          none={words.choose}
          set={(down) => setTyped({ down })}
        />
      )}
      {fillsColumns(read, form) ? (
        <p class="hint">{words.acrossTooMany}</p>
      ) : (
        <ValuesFields
          title={words.across}
          typed={typed.across}
          read={read.across}
          units={read.units}
          choices={variable(read.worksheetFunction)}
          converted={read.scope.kind === "all"}
          none={read.scope.kind === "all" ? words.choose : words.acrossNone}
          set={(across) => setTyped({ across })}
        />
      )}
      {read.inputs.length > 0 && (
        <Fold
          title={words.others}
          says={String(read.inputs.length)}
          needed={read.inputs.some(({ fault }) => fault !== null && fault !== undefined)}
        >
          <div class="what-if-inputs">
            {read.scope.kind === "all" && <p class="hint">{words.othersAll}</p>}
            {read.inputs.map((input) => (
              <FixedInput
                key={input.parameter.key}
                input={input}
                onInput={(text) =>
                  setTyped({ fixed: [...typed.fixed.filter(([key]) => key !== input.parameter.key), [input.parameter.key, text]] })
                }
              />
            ))}
          </div>
        </Fold>
      )}
      <Outcome read={read} program={program} />
      <div class="buttons">
        <Button kind="primary" disabled={request === null} onClick={() => (request === null ? undefined : layOut(request))}>
          {words.layOut}
        </Button>
        {draft.touched && (
          <Button kind="quiet" onClick={draft.clear}>
            {words.startAnew}
          </Button>
        )}
      </div>
    </div>
  );
}

interface PartProps {
  readonly form: TypedWhatIf;
  readonly read: WhatIfAsRead;
  readonly set: (changed: Partial<TypedWhatIf>) => void;
}

function ScopeFields({ form, read, program, set }: PartProps & { readonly program: Program }) {
  const yards = program.yards.map((yard) => ({ value: yard.siteId, says: `${yard.siteId} ${nameOf(yard)}` }));
  return (
    <>
      <Segmented
        label={words.scope.label}
        value={read.scope.kind}
        choices={[
          { value: "yard", says: words.scope.yard, meaning: words.scope.yardMeaning },
          { value: "all", says: words.scope.all, meaning: words.scope.allMeaning },
          { value: "typed", says: words.scope.typed, meaning: words.scope.typedMeaning },
        ]}
        onChoose={(scope) => set({ scope })}
      />
      {form.scope === "yard" && yards.length === 0 && <p class="hint">{words.noYards}</p>}
      {read.scope.kind === "yard" && (
        <ChoiceField label={words.yard} value={read.scope.siteId} choices={yards} onChoose={(siteId) => set({ siteId })} />
      )}
      {read.scope.kind === "typed" && takesUnits(read.worksheetFunction) && (
        <Segmented
          label={words.units}
          value={read.scope.units}
          choices={[
            { value: "us", says: words.us },
            { value: "metric", says: words.metric },
          ]}
          onChoose={(units) => set({ units })}
        />
      )}
    </>
  );
}

function ResultFields({ form, read, set }: PartProps) {
  const { worksheetFunction, offered, scope } = read;
  const { shape, values } = worksheetFunction.result;
  const places = values.map(({ label }, place) => ({ value: String(place), says: label }));
  return (
    <>
      <ChoiceField
        label={words.result}
        hint={worksheetFunction.summary}
        value={worksheetFunction.name}
        choices={offered.map((each) => ({ value: each.name, says: functionWords(each) }))}
        onChoose={(name) => set({ functionName: name ?? worksheetFunction.name, result: "0" })}
      />
      {shape === "row" && (
        <ChoiceField
          label={words.value}
          value={places.some(({ value }) => value === form.result) || (form.result === "all" && scope.kind !== "all") ? form.result : "0"}
          choices={[...(scope.kind === "all" ? [] : [{ value: "all", says: words.allValues }]), ...places]}
          onChoose={(result) => set({ result: result ?? "0" })}
        />
      )}
    </>
  );
}

/** "Drawdown (DRAWDOWN)"; a row by what it begins with. */
function functionWords({ name, result }: WorksheetFunction): string {
  const labels = result.values.map(({ label }) => label);
  return `${labels.length > 1 ? `${labels[0] ?? ""} …` : labels.join("")} (${name})`;
}

function fillsColumns(read: WhatIfAsRead, form: TypedWhatIf): boolean {
  return read.scope.kind !== "all" && form.result === "all" && read.worksheetFunction.result.shape === "row";
}

/** What the table will be, or what it still needs. */
function Outcome({ read, program }: { readonly read: WhatIfAsRead; readonly program: Program }) {
  const { request, faults } = read;
  return (
    <section class="what-if-outcome" role="status">
      {request === null ? (
        <>
          <p>{words.faults}</p>
          <ul class="bullets">
            {faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </>
      ) : (
        <>
          <p>
            {words.size(request.down?.values.length ?? program.yards.length, request.across?.values.length ?? resultsOf(request).length)}
          </p>
          <p>{firstAnswerWords(program, request)}</p>
        </>
      )}
    </section>
  );
}

function firstAnswerWords(program: Program, request: WhatIfRequest): string {
  const answer = firstAnswer(program, request);
  const [result] = resultsOf(request);
  if (answer === null || answer === "" || result === undefined) return words.previewNone;
  if (isCellError(answer)) return `${words.preview}: ${answer.sentence === "" ? answer.code : answer.sentence}`;
  const unit = isNumberKind(result.kind) && request.scope.kind !== "all" ? writtenUnit(result.kind, request.scope.units) : "";
  return (
    `${words.preview}: ${result.label.toLowerCase()} ${typeof answer === "number" ? shown(answer, 2) : String(answer)} ${unit}`.trimEnd() +
    "."
  );
}
