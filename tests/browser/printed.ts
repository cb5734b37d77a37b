/** What a page prints, read back from its PDF. */
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Locator, Page } from "playwright-core";

export interface Printed {
  /** The letters of each page. */
  readonly pages: readonly string[];
  readonly smallestPrintPoints: number;
}

const MARGIN = { top: "0.5in", bottom: "0.5in", left: "0.5in", right: "0.5in" };

export async function printedBy(page: Page, format: "Letter" | "A4" = "Letter"): Promise<Printed> {
  const data = new Uint8Array(await page.pdf({ format, margin: MARGIN }));
  const pdf = await getDocument({ data, useSystemFonts: true, verbosity: 0 }).promise;
  const pages: string[] = [];
  let smallestPrintPoints = Infinity;
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const words: string[] = [];
    for (const item of (await (await pdf.getPage(number)).getTextContent()).items) {
      if (!("str" in item)) continue;
      words.push(item.str);
      if (item.str.trim() !== "") smallestPrintPoints = Math.min(smallestPrintPoints, item.height);
    }
    pages.push(letters(words.join("")));
  }
  return { pages, smallestPrintPoints };
}

/** Line breaks and hyphens of a page are the printer's: letters, figures and signs are what was written. */
export function letters(text: string): string {
  return text.normalize("NFKC").replaceAll(/[\s\u00ad-]+/g, "");
}

/** Every piece of text within what is found. */
export function textNodes(found: Locator): Promise<readonly string[]> {
  return found.evaluateAll((elements) =>
    elements.flatMap((element) => {
      const texts: string[] = [];
      const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      while (walker.nextNode() !== null) texts.push(walker.currentNode.nodeValue ?? "");
      return texts.filter((text) => text.trim() !== "");
    }),
  );
}
