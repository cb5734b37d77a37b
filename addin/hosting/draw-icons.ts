/**
 * Renders manifest/icons/icon.svg into the PNG files that Excel asks for: npx tsx addin/hosting/draw-icons.ts
 *
 * Run it after changing the drawing, and commit what it writes.
 */
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const icons = fileURLToPath(new URL("../../manifest/icons/", import.meta.url));

/** Excel's dark chrome shows this one: white lines, nothing filled. */
const OUTLINE = "path { fill: none; stroke: #fff; stroke-width: 5; stroke-linejoin: round }";

const drawing = await readFile(`${icons}icon.svg`, "utf8");
const browser = await chromium.launch({
  executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
try {
  for (const pixels of [16, 32, 64, 80, 192]) await draw(`icon-${pixels}.png`, pixels, "");
  await draw("outline-32.png", 32, OUTLINE);
} finally {
  await browser.close();
}

async function draw(file: string, pixels: number, style: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: pixels, height: pixels } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: 100vw; height: 100vh } ${style}</style>${drawing}`);
  await page.screenshot({ path: `${icons}${file}`, omitBackground: true });
  await page.close();
}
