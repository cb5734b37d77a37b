import type { ComponentChildren } from "preact";
import type { WorkedCall, Working } from "../../../addin/actions/working/show-working.ts";
import { citationText } from "../../../functions/published/source.ts";
import { workingText as words } from "./text.ts";
import { inputLine, resultLines, shownResults, shownWords, stepLine, type Line } from "./working-lines.ts";

/** The working as it is read in the pane and on paper. */
export function WorkingSheet({ working, linked }: { readonly working: Working; readonly linked: boolean }) {
  const { formula, spilledFrom, agrees, calls, shown } = working;
  const isBlank = shown === null || shown === "";
  return (
    <>
      <dl class="working-lines">
        <WorkedLine line={{ label: words.shows, words: shownWords(working), written: "" }} />
        <div class="working-line">
          <dt>{words.formula}</dt>
          <dd>
            <code>{formula}</code>
          </dd>
        </div>
      </dl>
      {spilledFrom !== null && <p class="hint">{words.spilledFrom(spilledFrom)}</p>}
      {agrees === false && <p class="working-caution">{words.disagrees}</p>}
      {calls.map((call, place) => (
        <CallSheet
          key={`${place} ${call.written}`}
          call={call}
          formula={formula}
          linked={linked}
          explainsNoNumbers={agrees !== false && !isBlank}
        />
      ))}
    </>
  );
}

function CallSheet({
  call,
  formula,
  linked,
  explainsNoNumbers,
}: {
  readonly call: WorkedCall;
  readonly formula: string;
  readonly linked: boolean;
  readonly explainsNoNumbers: boolean;
}) {
  const { name, written, summary, equation, inputs, steps, cautions, sources } = call;
  const { rows, left } = shownResults(call);
  return (
    <section class="working-call" aria-label={name}>
      <h2>{name}</h2>
      <p>{summary}</p>
      {`=${written}` !== formula && (
        <p class="hint">
          <code>{written}</code>
        </p>
      )}
      {equation.length > 0 && (
        <Part title={words.equation}>
          {equation.map((line) => (
            <p key={line} class="working-equation">
              {line}
            </p>
          ))}
        </Part>
      )}
      {inputs.length > 0 && <Lines title={words.inputs} lines={inputs.map(inputLine)} />}
      {steps.length > 0 && <Lines title={words.steps} lines={steps.map(stepLine)} />}
      {rows.length > 0 && (
        <Part title={words.result}>
          {rows.map((row, place) => (
            <dl key={place} class="working-lines working-result">
              {resultLines(row).map((line) => (
                <WorkedLine key={line.label} line={line} />
              ))}
            </dl>
          ))}
          {left > 0 && <p class="hint">{words.moreRows(left)}</p>}
        </Part>
      )}
      {rows.length === 0 && explainsNoNumbers && <p class="hint">{words.noNumbers}</p>}
      {cautions.length > 0 && <Sentences title={words.cautions} sentences={cautions} kind="working-caution" />}
      <Sentences title={words.sources} sentences={sources.map(citationText)} kind="working-source" />
      {linked && (
        <p>
          <a class="working-link" href={`help.html#${name}`} target="_blank" rel="noopener">
            {words.reference(name)}
            <span class="unseen"> ({words.opensInNewWindow})</span>
          </a>
        </p>
      )}
    </section>
  );
}

function Part({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <div class="working-part">
      <h3>{title}</h3>
      {children}
    </div>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly Line[] }) {
  return (
    <Part title={title}>
      <dl class="working-lines">
        {lines.map((line, place) => (
          <WorkedLine key={`${place} ${line.label}`} line={line} />
        ))}
      </dl>
    </Part>
  );
}

function WorkedLine({ line: { label, words: said, written } }: { readonly line: Line }) {
  return (
    <div class="working-line">
      <dt>
        {label}
        {written !== "" && written !== said && <code>{written}</code>}
      </dt>
      <dd>{said}</dd>
    </div>
  );
}

function Sentences({ title, sentences, kind }: { readonly title: string; readonly sentences: readonly string[]; readonly kind: string }) {
  return (
    <Part title={title}>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence} class={kind}>
            {sentence}
          </li>
        ))}
      </ul>
    </Part>
  );
}
