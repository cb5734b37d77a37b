import { howToWrite, referenceEntries, referenceTitle, type ReferenceEntry, type ReferenceInput } from "./reference.ts";

/** The function reference as it stands in the repository, functions/worksheet/REFERENCE.md. */
export function referenceMarkdown(): string {
  const entries = referenceEntries();
  return [
    `# ${referenceTitle}`,
    "<!-- Written by npm run reference from the declarations; a change belongs there. -->",
    plain(howToWrite),
    entries.map(({ name }) => `[${name}](#soak${name.toLowerCase()})`).join(" · "),
    ...entries.flatMap(section),
    "",
  ]
    .join("\n\n")
    .replace(/\n+$/, "\n");
}

function section({ name, summary, usage, inputs, result, equation, cautions, sources, example }: ReferenceEntry): readonly string[] {
  return [
    `## SOAK.${name}`,
    plain(summary),
    code([usage]),
    ...(inputs.length === 0 ? [] : [inputTable(inputs)]),
    `**Result:** ${plain(result)}`,
    ...(equation.length === 0 ? [] : ["**Equation, in US units**", code(equation)]),
    ...sentences("Cautions", cautions),
    ...sentences("Sources", sources),
    "**Example**",
    code([example.formula]),
    `gives ${plain(example.answer)}. ${plain(example.from)}`,
  ];
}

function inputTable(inputs: readonly ReferenceInput[]): string {
  return [
    "| argument | US | metric | what it takes |",
    "|---|---|---|---|",
    ...inputs.map(({ name, us, metric, takes }) => `| ${[`\`${name}\``, us, metric, takes].map(inTable).join(" | ")} |`),
  ].join("\n");
}

function sentences(title: string, items: readonly string[]): readonly string[] {
  return items.length === 0 ? [] : [`**${title}**`, items.map((item) => `- ${plain(item)}`).join("\n")];
}

function code(lines: readonly string[]): string {
  return ["```", ...lines, "```"].join("\n");
}

function inTable(cell: string): string {
  return cell.startsWith("`") ? cell : plain(cell);
}

/** Text whose characters mean nothing but themselves. */
function plain(text: string): string {
  return text.replace(/[\\`*_[\]<>|]/g, (character) => `\\${character}`);
}
