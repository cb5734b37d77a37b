import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { firstRow } from "../../addin/records/place.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import { stages } from "../../addin/checklist/stages.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { expectCell, goTo, typeInto, values } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, onExcelPage, openYard, pane, unfoldAnswered } from "./pane.ts";
import { letters, printedBy } from "./printed.ts";

/** A yard in US units whose answers no other test file counts on. */
const PLACE = 7;
const SITE_ID = "Y-008";
/** Read at arm's length on a clipboard: common practice, no source. */
const SMALLEST_PRINT_POINTS = 6;

const status = (page: Page) => pane(page).locator(".status-line p");
const stepCard = (page: Page, title: string) =>
  pane(page).locator(".step", { has: page.locator(".step-title", { hasText: new RegExp(`^${title}$`) }) });

async function pickStage(page: Page, name: string): Promise<void> {
  await pane(page).locator(".stage-picker summary").click();
  await pane(page)
    .locator(".stage-button", { hasText: new RegExp(`^${name}`) })
    .click();
  await pane(page).locator(".stage-head h2", { hasText: name }).waitFor();
}

/** Step, answer, unit and verdict of the yard's answers, oldest first. */
async function answersOf(page: Page, siteId: string): Promise<readonly (readonly CellValue[])[]> {
  const first = firstRow(visitsSheet) + 1;
  const all = await values(page, `Visits!A${first}:J${first + 590}`);
  return all.filter(([id]) => id === siteId).map((row) => [row[3] ?? null, row[4] ?? null, row[5] ?? null, row[9] ?? null]);
}

describe("The visits of a yard", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  beforeAll(async () => {
    await openYard(page, PLACE, "Visits");
  });

  it("writes a foundation too close to Visits as a stop that follows the Rules sheet", async () => {
    await pickStage(page, "Screening visit");
    await unfoldAnswered(page);
    const step = stepCard(page, "Foundation");
    if ((await step.locator(".step-toggle").getAttribute("aria-expanded")) === "false") await step.locator(".step-toggle").click();
    expect(await step.innerText()).toContain("at least 10 ft, otherwise stop");
    const before = (await answersOf(page, SITE_ID)).length;
    await button(page, "Write the answer: Foundation").click();
    await expect.poll(() => step.innerText()).toContain("Distance is missing. A blank is not measured, never a pass.");
    expect(await answersOf(page, SITE_ID)).toHaveLength(before);

    await step.getByLabel(/Distance from the nearest edge/).fill("9.5");
    await button(page, "Write the answer: Foundation").click();
    await expect.poll(() => status(page).innerText()).toBe("Foundation: written to Visits.");
    await expect.poll(async () => (await answersOf(page, SITE_ID)).at(-1)).toEqual(["foundation", 9.5, "ft", "stop"]);
    expect(await step.locator(".verdict").innerText()).toBe("Stop");

    await typeInto(page, "Rules!C4", "8");
    await goTo(page, address(sitesSheet, PLACE, "yard"));
    // What passes is folded to a line with what else is answered.
    await expect.poll(async () => (await unfoldAnswered(page), step.locator(".verdict").innerText())).toBe("Pass");
    await typeInto(page, "Rules!C4", "10");
    await goTo(page, address(sitesSheet, PLACE, "yard"));
    await expect.poll(() => step.locator(".verdict").innerText()).toBe("Stop");
  });

  it("keeps a slope on Sites, and shows its percent while it is typed", async () => {
    await unfoldAnswered(page);
    const toggle = stepCard(page, "Ground slope").locator(".step-toggle");
    if ((await toggle.getAttribute("aria-expanded")) === "false") await toggle.click();
    await pane(page).getByLabel("Drop", { exact: true }).fill("6");
    await pane(page).getByLabel("Run of the level string").fill("180");
    // 6 over 180 is 3.33 percent: computed by hand.
    expect(await pane(page).locator(".slope-is").innerText()).toBe("Slope: 3.3 %");
    await button(page, "Write the answer: Ground slope").click();
    await expectCell(page, address(sitesSheet, PLACE, "slopeDrop"), 6);
    await expectCell(page, address(sitesSheet, PLACE, "slopeRun"), 180);
  });

  it("a stop shuts the stages after it, and an override takes a name and a reason", async () => {
    await pickStage(page, "One-call ticket");
    const gate = pane(page).locator(".gate");
    expect(await gate.innerText()).toContain('Screening visit says stop: Foundation, "9.5 ft".');
    await gate.getByRole("button", { name: /^Override: Screening visit says stop: Foundation/ }).click();
    await gate.getByLabel("Your name").fill("Kit Marlow");
    await button(page, "Write the override").click();
    await expect.poll(() => gate.innerText()).toContain("Reason is missing. An override without one is none.");
    await gate.getByLabel("Reason").fill("Slab without a cellar; engineer's letter");
    await button(page, "Write the override").click();
    await expect.poll(() => status(page).innerText()).toBe("The override was written to Visits.");
    await expect.poll(() => gate.innerText()).toContain("Overridden by Kit Marlow on ");
    expect((await answersOf(page, SITE_ID)).at(-1)).toEqual(["override: stop: foundation", "Overridden", null, null]);
  });

  it("a ticket is entered with the keyboard alone: Enter writes and goes to the next step", async () => {
    await stepCard(page, "Ticket number").locator(".step-toggle").focus();
    if ((await stepCard(page, "Ticket number").locator(".step-toggle").getAttribute("aria-expanded")) === "false")
      await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    await page.keyboard.type("TF-2207");
    await page.keyboard.press("Enter");
    await expect.poll(() => stepCard(page, "Dig outlined").locator(".step-toggle").getAttribute("aria-expanded")).toBe("true");
    await expect.poll(() => page.evaluate(() => document.activeElement?.classList.contains("choice"))).toBe(true);
    await page.keyboard.press("1");
    await expect.poll(() => stepCard(page, "Kind of ticket").locator(".step-toggle").getAttribute("aria-expanded")).toBe("true");
    expect((await answersOf(page, SITE_ID)).slice(-2)).toEqual([
      ["ticket-number", "TF-2207", null, null],
      ["white-lined", "Outlined", null, "pass"],
    ]);
  });

  it("where no state is chosen nothing is counted, and nothing but a hand fills in the first lawful day", async () => {
    const lawful = stepCard(page, "Lawful from");
    if ((await lawful.locator(".step-toggle").getAttribute("aria-expanded")) === "false") await lawful.locator(".step-toggle").click();
    expect(await lawful.innerText()).toContain(
      "No state is chosen on Program, so no rule is shown and nothing is counted: ask the center.",
    );
    const buttons = await lawful.getByRole("button").allInnerTexts();
    expect(buttons.filter((says) => /\d/.test(says))).toEqual([]);
    await lawful.getByRole("button", { name: "Show the choice on Program" }).click();
    await expect.poll(() => page.evaluate(() => window.soakbook?.workbook.selection())).toMatchObject({ sheet: "Program" });
    await goTo(page, address(sitesSheet, PLACE, "yard"));
    await pickStage(page, "One-call ticket");
  });

  it("no hole is dug on half a ticket, and nobody can override that", async () => {
    await pickStage(page, "Test visit");
    const gate = pane(page).locator(".gate");
    expect(await gate.locator(".gate-verdict").innerText()).toBe("Do not dig.");
    expect(await gate.innerText()).toContain("The operators on the ticket are not listed.");
    expect(await gate.innerText()).toContain("Nobody can override this");
    await pane(page).getByRole("tab", { name: "Hole test" }).click();
    expect(await pane(page).getByText("Do not dig.").isVisible()).toBe(true);
    await button(page, "Go to Visits").click();
    await pane(page).locator(".stage-head h2", { hasText: "Test visit" }).waitFor();
  });

  describe("on paper", () => {
    beforeAll(async () => {
      await page.evaluate(() => {
        window.print = () => void window.dispatchEvent(new Event("beforeprint"));
      });
    });

    it.each(stages.map(({ name }) => name))("%s prints as one page, whole and legible, on Letter and on A4", async (name) => {
      await pickStage(page, name);
      const paper = page.locator(".field-sheet-paper");
      for (const format of ["Letter", "A4"] as const) {
        await button(page, "Print a field sheet").click();
        expect(await paper.textContent()).toContain(`Field sheet: ${name}`);
        const pieces = await paper.locator("td:first-child, .sheet-boxes li, .sheet-reminders li, .sheet-lock").allTextContents();
        expect(pieces.length).toBeGreaterThan(0);
        const { pages, smallestPrintPoints } = await printedBy(page, format);
        expect(pages.length, `${name} on ${format}`).toBe(1);
        expect(smallestPrintPoints, `${name} on ${format}`).toBeGreaterThanOrEqual(SMALLEST_PRINT_POINTS);
        expect(pieces.filter((piece) => !pages[0]?.includes(letters(piece)))).toEqual([]);
        // The browser's own event of having printed, which a test cannot wait for, may have come first.
        await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
        await paper.waitFor({ state: "detached" });
      }
      expect(await paper.count()).toBe(0);
    });
  });

  it("the board of what is next opens a yard at the stage where it is done", async () => {
    await button(page, /All yards/).click();
    await pane(page).getByRole("tab", { name: "Next" }).click();
    await pane(page).getByLabel("Find a yard").fill(SITE_ID);
    await pane(page).getByLabel("Show").selectOption({ label: "Overrides in force" });
    await pane(page).locator(".board-group .yard-button").click();
    await expect.poll(() => pane(page).locator("h1").innerText()).toContain(SITE_ID);
    await pane(page).locator(".stage-head h2", { hasText: "One-call ticket" }).waitFor();
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});
