/** The page by keyboard alone: what cannot be reached with the Tab key is a fault, and is found here. */
import type { Page } from "playwright-core";
import { expect } from "vitest";

const MOST_TABS = 120;

/** What a screen reader would call the control that has the keyboard, with the words of its step where it stands in one. */
export function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const control = document.activeElement;
    if (!(control instanceof HTMLElement) || control === document.body) return "the page";
    const labels =
      control instanceof HTMLInputElement || control instanceof HTMLSelectElement
        ? [...(control.labels ?? [])].map((label) => label.textContent.trim())
        : [];
    return (control.getAttribute("aria-label") ?? (labels.length > 0 ? labels.join(" ") : control.textContent))
      .replaceAll(/\s+/g, " ")
      .trim();
  });
}

/** Presses Tab until the control so called has the keyboard. */
export async function tabTo(page: Page, name: string | RegExp, key: "Tab" | "Shift+Tab" = "Tab"): Promise<void> {
  const passed: string[] = [];
  for (let tabs = 0; tabs < MOST_TABS; tabs++) {
    const at = await focused(page);
    if (typeof name === "string" ? at === name : name.test(at)) return;
    passed.push(at);
    await page.keyboard.press(key);
  }
  throw new Error(`The Tab key never came to ${String(name)}. It came to: ${passed.join(" | ")}`);
}

/** One key, or the letters of a word or number. */
export async function strike(page: Page, key: string): Promise<void> {
  if (/^(Tab|Shift\+Tab|Space|Enter|Arrow\w+|Page\w+)$/.test(key)) await page.keyboard.press(key);
  else await page.keyboard.type(key);
}

/**
 * Answers the open step of a visit, which has the keyboard already: what is typed is written with Enter, and a key on one of
 * a few answers is the answer. The pane then goes on to the next step by itself.
 */
export async function answerStep(page: Page, title: string, ...keys: readonly string[]): Promise<void> {
  const inStep = () => page.evaluate(() => document.activeElement?.closest(".step")?.querySelector(".step-title")?.textContent ?? "none");
  const isOn = (what: string) => page.evaluate((selector) => document.activeElement?.matches(selector) === true, what);
  await expect.poll(inStep).toBe(title);
  await expect.poll(() => isOn("input, select, .choice")).toBe(true);
  for (const key of keys.slice(0, -1)) await strike(page, key);
  const isTyped = await isOn("input, select");
  for (const key of [...keys.slice(-1), ...(isTyped ? ["Enter"] : [])]) await strike(page, key);
  const status = page.locator("#pane .status-line p");
  await expect.poll(() => status.textContent()).toBe(`${title}: written to Visits.`);
}

/** A day as the browser's date field takes it from the keyboard: month, day, year. */
export function dayKeys(day: string): string {
  const [year, month, dayOfMonth] = day.split("-");
  return `${month}${dayOfMonth}${year}`;
}
