/**
 * What leaves the printer, read back from the PDF: every row of the report, every plant of the list, every line of the
 * estimate and of a field sheet, to the last page.
 */
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { savedBytes, type OpenPage } from "./page.ts";
import { button, onProgramPage, openTab, openYard, pane, pickStage, unfoldAll } from "./pane.ts";
import { letters, printedBy, textNodes, type Printed } from "./printed.ts";

/** The first yard of the demo. */
const CORNER_HOUSE = 0;

describe("What is printed", () => {
  let opened: OpenPage;
  onProgramPage((page) => {
    opened = page;
  });

  beforeAll(async () => {
    await opened.page.evaluate(() => {
      window.print = () => void window.dispatchEvent(new Event("beforeprint"));
    });
  });

  it("holds every row of the report, each with its source, over as many pages as it takes", async () => {
    const { page } = opened;
    await button(page, /All yards/).click();
    await openTab(page, "Report");
    const rows = await printedRows(page, "Print", ".report-paper tbody tr");
    expect(rows.texts.length).toBeGreaterThan(15);
    expect(rows.printed.pages.length).toBeGreaterThan(1);
    expectAll(rows);
  });

  it("holds the plan's every plant, in the legend and in the list", async () => {
    const { page } = opened;
    await openYard(page, CORNER_HOUSE, "Planting");
    await button(page, "Suggest plants").click();
    await button(page, "Draft the plan").click();
    await unfoldAll(page);
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

/** What only a screen reader is told is not on paper. */
const wholeTexts: Reading = (found) =>
  found.evaluateAll((elements) =>
    elements.map((element) => {
      const shown = element.cloneNode(true) as Element;
      for (const unseen of shown.querySelectorAll(".unseen")) unseen.remove();
      return shown.textContent ?? "";
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

function expectAll({ texts, printed }: Rows): void {
  const all = printed.pages.join("");
  const missing = texts.filter((text) => !all.includes(letters(text)));
  expect(missing, `of ${texts.length} rows on ${printed.pages.length} pages`).toEqual([]);
}
