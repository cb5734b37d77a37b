import { html, list, type Html } from "./html.ts";
import { plainPage } from "./plain-page.ts";
import { howToWrite, referenceEntries, referenceTitle, type ReferenceEntry, type ReferenceInput } from "./reference.ts";

/** The function reference, written from the catalogue: Excel's own help for a function opens it at the function's name. */
export function helpPage(): string {
  const entries = referenceEntries();
  return plainPage(
    referenceTitle,
    html`<header>
<h1>${referenceTitle}</h1>
<p>${howToWrite}</p>
</header>
<nav aria-label="Functions">
<ul class="contents">
${list(entries.map(({ name }) => html`<li><a href="#${name}">${name}</a></li>`))}
</ul>
</nav>
<main>
${list(entries.map(section))}
<p><a href="support.html">Support and terms</a> · <a href="privacy.html">Privacy</a></p>
</main>`,
  );
}

function section({ name, summary, usage, inputs, result, equation, cautions, sources, example }: ReferenceEntry): Html {
  return html`<section id="${name}">
<h2>SOAK.${name}</h2>
<p>${summary}</p>
<p><code>${usage}</code></p>
${inputs.length === 0 ? html`` : inputTable(name, inputs)}
<p><strong>Result:</strong> ${result}</p>
${sentences(
  "Equation, in US units",
  equation.map((line) => html`<li><code>${line}</code></li>`),
)}
${sentences(
  "Cautions",
  cautions.map((caution) => html`<li>${caution}</li>`),
)}
${sentences(
  "Sources",
  sources.map((source) => html`<li>${source}</li>`),
)}
<p><strong>Example:</strong> <code>${example.formula}</code> gives ${example.answer}. ${example.from}</p>
</section>
`;
}

function inputTable(name: string, inputs: readonly ReferenceInput[]): Html {
  return html`<div class="wide" role="region" aria-label="Arguments of ${name}" tabindex="0">
<table>
<thead><tr><th scope="col">Argument</th><th scope="col">US</th><th scope="col">Metric</th><th scope="col">What it takes</th></tr></thead>
<tbody>
${list(inputs.map(({ name: input, us, metric, takes }) => html`<tr><th scope="row">${input}</th><td>${us}</td><td>${metric}</td><td>${takes}</td></tr>`))}
</tbody>
</table>
</div>
`;
}

function sentences(title: string, items: readonly Html[]): Html {
  if (items.length === 0) return html``;
  return html`<h3>${title}</h3>
<ul>
${list(items)}
</ul>`;
}
