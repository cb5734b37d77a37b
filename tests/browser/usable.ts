/** The pane as it stands: no serious fault of accessibility, nothing cut off, nothing too small to tap, the corner free. */
import axe from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";

export async function expectUsable(page: Page): Promise<void> {
  await page.evaluate(axe.source);
  const violations = await page.evaluate(async () => {
    const { violations: found } = await (globalThis as unknown as { axe: { run: (target: string) => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> } }).axe.run("#pane");
    return found.map(({ id, impact, nodes }) => ({ id, impact, where: nodes.map(({ html }) => html.slice(0, 120)) }));
  });
  expect(violations.filter(({ impact }) => impact === "serious" || impact === "critical")).toEqual([]);

  const { cutOff, small, corner } = await page.evaluate(() => {
    const shell = document.querySelector("#pane");
    shell?.scrollTo(0, 0);
    const edges = shell?.getBoundingClientRect() ?? new DOMRect();
    const visible = [...(shell?.querySelectorAll<HTMLElement>("*") ?? [])].filter((each) => each.checkVisibility());
    const targets = "button, fluent-button, fluent-tab, select, summary, label.segment, label.check, input:not([type=radio], [type=checkbox])";
    const named = (each: Element): string => each.outerHTML.slice(0, 120);
    const inCorner = document.elementFromPoint(edges.right - 20, edges.top + 16);
    return {
      cutOff: visible.filter((each) => each.getBoundingClientRect().right > edges.right + 0.5).map(named),
      small: visible.filter((each) => each.matches(targets) && each.getBoundingClientRect().height < 44).map(named),
      corner: inCorner?.matches("button, fluent-button, a, input") === true ? named(inCorner) : "free",
    };
  });
  expect(cutOff).toEqual([]);
  expect(small).toEqual([]);
  expect(corner).toBe("free");
}
