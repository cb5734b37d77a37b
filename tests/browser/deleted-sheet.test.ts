/** Deleting a sheet of the program asks first, and one tap brings it back after a reload. */
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { value, values } from "./grid.ts";
import { onProgramPage } from "./pane.ts";

const TYPED = "Surfaces!A1:G40";

describe("A sheet of the program", () => {
  let page: Page;

  onProgramPage((opened) => {
    page = opened.page;
  });

  const tab = (name: string) => page.locator("[data-u-comp='slide-tab-item']").filter({ hasText: new RegExp(`^${name}$`) });
  const askToDelete = async (name: string) => {
    await tab(name).click();
    await tab(name).click({ button: "right" });
    await page.getByText("Delete", { exact: true }).click();
    return page.getByRole("dialog", { name: `Delete sheet ${name}?` });
  };
  const sheetNames = () => page.evaluate(() => window.soakbook?.workbook.sheetNames());

  test("is deleted after an answer alone", async () => {
    const question = await askToDelete("Surfaces");
    expect(await question.textContent()).toMatch(/\d\d rows are typed on it\. Design, .* will show errors/);
    await question.getByRole("button", { name: "Keep the sheet" }).click();
    expect(await sheetNames()).toContain("Surfaces");
  });

  test("that was deleted comes back with all its rows, in one tap and after a reload", async () => {
    const [typed, drains] = [await values(page, TYPED), await value(page, "Design!G4")];
    expect(drains).toBeGreaterThan(0);
    await (await askToDelete("Surfaces")).getByRole("button", { name: "Delete it" }).click();
    await page.locator("#pane").getByRole("heading", { name: "Sheets are missing" }).waitFor();
    expect(await sheetNames()).not.toContain("Surfaces");
    await page.getByText("Saved in this browser").first().waitFor();
    await page.reload();
    await page
      .locator("#pane")
      .getByText(/^Bring sheet Surfaces back with the \d\d rows typed on it/)
      .waitFor();
    await page.locator("#pane").getByRole("button", { name: "Bring the sheet back" }).click();
    await page.locator("#pane").getByText("The sheets are back.").waitFor();
    await page.evaluate(() => window.soakbook?.workbook.calculated());
    expect(await values(page, TYPED)).toEqual(typed);
    expect(await value(page, "Design!G4")).toBe(drains);
  });
});
