/** A page whose calendar the test turns: the clock runs on as ever, so many days away from ours. */
import type { Page } from "playwright-core";
import type { OpenPage, PageHost } from "./page.ts";

const SHIFT_KEY = "calendar of the test: milliseconds ahead";

/** Excel's page, started on a day such as "2027-03-01". */
export function openInExcelOn(host: PageHost, day: string): Promise<OpenPage> {
  return host.openInExcel({ timezoneId: "UTC" }, (page) => page.addInitScript(shiftDates, [SHIFT_KEY, millisecondsUntil(day)] as const));
}

export async function turnCalendarTo(page: Page, day: string): Promise<void> {
  await page.evaluate(([key, shift]) => localStorage.setItem(key, String(shift)), [SHIFT_KEY, millisecondsUntil(day)] as const);
}

/** From now to nine in the morning of that day. */
function millisecondsUntil(day: string): number {
  return Date.parse(`${day}T09:00:00Z`) - Date.now();
}

/** Runs in the page, before anything of ours. The shift is kept where the test can change it and a reload finds it. */
function shiftDates([key, first]: readonly [key: string, first: number]): void {
  const RealDate = Date;
  if (localStorage.getItem(key) === null) localStorage.setItem(key, String(first));
  const shifted = () => RealDate.now() + Number(localStorage.getItem(key));
  globalThis.Date = new Proxy(RealDate, {
    construct: (target, given: unknown[]) => Reflect.construct(target, given.length === 0 ? [shifted()] : given) as Date,
    get: (target, property) => (property === "now" ? shifted : (Reflect.get(target, property) as unknown)),
  });
}
