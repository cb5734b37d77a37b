/**
 * What leaves the printer, read back from the PDF: every row of the report, every plant of the list, every line of the
 * estimate and of a field sheet, to the last page.
 */
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { savedBytes, type OpenPage } from "./page.ts";
import { button, onProgramPage, openTab, openYard, pane, pickStage, START_MILLISECONDS } from "./pane.ts";

const PAPER = { format: "Letter", margin: { top: "0.5in", bottom: "0.5in", left: "0.5in", right: "0.5in" } } as const;
/** The first yard of the demo. */
const CORNER_HOUSE = 0;

interface Printed {
  readonly pages: number;
  readonly text: string;
}

describe("What is printed", { timeout: START_MILLISECONDS }, () => {
  let opened: OpenPage;
  onProgramPage((page) => {
    opened = page;
  });

  beforeAll(async () => {
    await opened.page.evaluate(() => {
      window.print = () => undefined;
    });
  });

  it("holds every row of the report, each with its source, over as many pages as it takes", async () => {
    const { page } = opened;
    await button(page, /All yards/).click();
    await openTab(page, "Report");
    const rows = await printedRows(page, "Print", ".report-paper tbody tr");
    expect(rows.texts.length).toBeGreaterThan(15);
    expect(rows.printed.pages).toBeGreaterThan(1);
    expectAll(rows);
  });

  it("holds the plan's every plant, in the legend and in the list", async () => {
    const { page } = opened;
    await openYard(page, CORNER_HOUSE, "Planting");
    await button(page, "Suggest plants").click();
    await button(page, "Draft the plan").click();
    const rows = await printedRows(page, "Print plan and list", ".planting-paper tbody tr, .planting-paper li");
    expect(rows.texts.length).toBeGreaterThan(10);
    expectAll(rows);
  });

  it("holds every line of a stage's field sheet", async () => {
    const { page } = opened;
    await openTab(page, "Visits");
    await pickStage(page, "Screening");
    // Boxes to tick stand side by side, so each piece of text is looked for by itself.
    const rows = await printedRows(page, "Print a field sheet", ".field-sheet-paper", textNodes);
    expect(rows.texts.length).toBeGreaterThan(50);
    expectAll(rows);
  });

  it("holds every line of the estimate, in the page that is saved to print", async () => {
    const { page } = opened;
    await openTab(page, "Estimate");
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Estimate, to print").click()]);
    const sheet = await opened.context.newPage();
    await sheet.setContent((await savedBytes(download)).toString("utf8"));
    const texts = await textNodes(sheet.locator("body"));
    expect(texts.length).toBeGreaterThan(10);
    expectAll({ texts, printed: await printedBy(sheet) });
    await sheet.close();
  });
});

interface Rows {
  readonly texts: readonly string[];
  readonly printed: Printed;
}

/** The text of each element that is found, or every piece of text within it. */
type Reading = (found: Locator) => Promise<readonly string[]>;

const wholeTexts: Reading = (found) => found.allTextContents();

const textNodes: Reading = (found) =>
  found.evaluateAll((elements) =>
    elements.flatMap((element) => {
      const texts: string[] = [];
      const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      while (walker.nextNode() !== null) texts.push(walker.currentNode.nodeValue ?? "");
      return texts.filter((text) => text.trim() !== "");
    }),
  );

async function printedRows(page: Page, named: string, rows: string, read = wholeTexts): Promise<Rows> {
  await button(page, named).click();
  const paper = page.locator(".paper");
  await paper.waitFor({ state: "attached" });
  const texts = await read(page.locator(rows));
  const printed = await printedBy(page);
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await paper.waitFor({ state: "detached" });
  expect(await pane(page).isVisible()).toBe(true);
  return { texts, printed };
}

async function printedBy(page: Page): Promise<Printed> {
  const pdf = await getDocument({ data: new Uint8Array(await page.pdf(PAPER)), useSystemFonts: true, verbosity: 0 }).promise;
  const words: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    for (const item of items) if ("str" in item) words.push(item.str);
  }
  return { pages: pdf.numPages, text: letters(words.join("")) };
}

/** Line breaks and hyphens of a page are the printer's: letters, figures and signs are what was written. */
function letters(text: string): string {
  return text.normalize("NFKC").replaceAll(/[\s\u00ad-]+/g, "");
}

function expectAll({ texts, printed }: Rows): void {
  const missing = texts.filter((text) => !printed.text.includes(letters(text)));
  expect(missing, `of ${texts.length} rows on ${printed.pages} pages`).toEqual([]);
}
