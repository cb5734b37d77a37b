import type { PrintedBlock, PrintedDocument, PrintedTable } from "../../addin/actions/export/printed-page.ts";

/** What stands on a paper, in its order: headings, sentences, facts, lists and tables. Drawings have no words. */
export function documentOnPaper(paper: HTMLElement): PrintedDocument {
  const [title, ...blocks] = [...blocksIn(paper)];
  return title !== undefined && "heading" in title
    ? { title: title.heading, subtitle: "", blocks }
    : { title: "", subtitle: "", blocks: title === undefined ? [] : [title, ...blocks] };
}

function* blocksIn(element: Element): Generator<PrintedBlock> {
  for (const child of element.children) {
    if (/^H[1-6]$/.test(child.tagName)) yield { heading: wordsOf(child) };
    else if (child.tagName === "TABLE") yield { table: tableOf(child) };
    else if (child.tagName === "DL") yield { facts: factsOf(child) };
    else if (child.tagName === "UL" || child.tagName === "OL") yield { list: [...child.children].map(wordsOf) };
    else if (child.tagName === "P") yield { paragraph: wordsOf(child) };
    else if (!(child instanceof SVGElement)) yield* blocksIn(child);
  }
}

function factsOf(list: Element): (readonly [string, string])[] {
  return [...list.querySelectorAll("dt")].map((term) => {
    const values: string[] = [];
    for (let next = term.nextElementSibling; next?.tagName === "DD"; next = next.nextElementSibling) values.push(wordsOf(next));
    return [wordsOf(term), values.join("; ")];
  });
}

function tableOf(table: Element): PrintedTable {
  const headings = [...table.querySelectorAll("thead th")].map((cell) => ({ heading: wordsOf(cell), isNumber: false }));
  const lines = [...table.querySelectorAll("tr")].filter((row) => row.closest("thead") === null);
  return {
    caption: wordsOf(table.querySelector("caption")),
    columns: headings,
    rows: lines.map((row) => [...row.children].map(wordsOf)),
    totals: 0,
  };
}

/** Words that stand in boxes of their own are words of their own. */
function wordsOf(element: Element | null): string {
  const texts: string[] = [];
  const walker = element === null ? null : document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
  while (walker?.nextNode() != null) texts.push(walker.currentNode.nodeValue ?? "");
  return texts
    .join(" ")
    .replace(/\s+/g, " ")
    .replace(/ ([.,;:])/g, "$1")
    .trim();
}
