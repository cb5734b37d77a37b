/** The pane as it stands: no serious fault of accessibility, nothing cut off, nothing too small to tap, the corner free. */
import axe from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** Resolves when nothing on the page is on its way from one look to another: colours in between are nobody's to judge. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const passing = document.getAnimations().filter((each) => each.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY);
    await Promise.allSettled(passing.map((each) => each.finished));
  });
}

/** What axe-core finds in the pane that is serious or critical, with the elements concerned. */
export async function seriousFaults(page: Page): Promise<readonly { readonly id: string; readonly where: readonly string[] }[]> {
  await settled(page);
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { violations } = await (
      globalThis as unknown as {
        axe: {
          run: (target: string, options: object) => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }>;
        };
      }
    ).axe.run("#pane", { resultTypes: ["violations"] });
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(({ id, nodes }) => ({ id, where: nodes.map(({ html }) => html.slice(0, 160)) }));
  });
}

export async function expectUsable(page: Page): Promise<void> {
  expect(await seriousFaults(page)).toEqual([]);
  expect(await layoutFaults(page)).toEqual({ cutOff: [], small: [], sideways: 0, headings: [], corner: [] });
}

/** What is wrong with the page as it is laid out, each fault by the element that has it. */
function layoutFaults(page: Page) {
  return page.evaluate(() => {
    const shell = document.querySelector("#pane") ?? document.body;
    const edges = shell.getBoundingClientRect();
    const visible = [...shell.querySelectorAll<HTMLElement>("*")].filter((each) => each.checkVisibility());
    const targets =
      "button, fluent-button, fluent-tab, select, summary, textarea, label.segment, label.check, input:not([type=radio], [type=checkbox])";
    const ranks = visible
      .filter((each) => each.matches("h1, h2, h3, h4"))
      .map((each) => ({ rank: Number(each.tagName.slice(1)), named: each.outerHTML.slice(0, 120) }));

    // Excel draws its own button over the top right 34 by 32 pixels, wherever the pane is scrolled to.
    const corner = [0, shell.scrollHeight].flatMap((top) => {
      shell.scrollTo(0, top);
      const points = [1, 17, 33].flatMap((left) =>
        [1, 16, 31].map((down) => document.elementFromPoint(edges.right - left, edges.top + down)),
      );
      // Below the tabs or the first heading a page may scroll: only what stays in sight has to keep away.
      const staying = top === 0 ? points : points.filter((each) => each?.closest(".tabs") !== null);
      return staying.flatMap(
        (each) => each?.closest("button, fluent-button, fluent-tab, a, input, summary, h1")?.outerHTML.slice(0, 120) ?? [],
      );
    });
    shell.scrollTo(0, 0);
    return {
      cutOff: visible.filter((each) => each.getBoundingClientRect().right > edges.right + 0.5).map((each) => each.outerHTML.slice(0, 120)),
      small: visible
        .filter((each) => each.matches(targets) && (each.getBoundingClientRect().height < 44 || each.getBoundingClientRect().width < 44))
        .map((each) => each.outerHTML.slice(0, 120)),
      sideways: shell.scrollWidth - shell.clientWidth,
      headings: ranks.filter(({ rank }, place) => rank > (ranks[place - 1]?.rank ?? 0) + 1).map(({ named }) => named),
      corner,
    };
  });
}

/** Looks at the pane in letters as wide as those of DejaVu Sans, which stands in for others on many machines. */
export async function inWideLetters(page: Page, look: () => Promise<void>): Promise<void> {
  const space = (width: string) => page.evaluate((each) => document.body.style.setProperty("letter-spacing", each), width);
  await space("0.06em");
  await look();
  await space("");
}
