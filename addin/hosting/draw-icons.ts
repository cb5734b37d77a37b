/**
 * Renders the drawings of manifest/icons into the PNG files that Excel asks for: npx tsx addin/hosting/draw-icons.ts
 *
 * Run it after changing the drawing, and commit what it writes.
 */
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { COMMAND_IDS, RIBBON_PIXELS } from "../../manifest/addin-description.ts";

const icons = fileURLToPath(new URL("../../manifest/icons/", import.meta.url));

/** Excel's dark chrome shows this one: white lines, nothing filled. */
const OUTLINE = "path { fill: none; stroke: #fff; stroke-width: 5; stroke-linejoin: round }";

const browser = await chromium.launch({
  executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
const page = await browser.newPage();
try {
  for (const name of ["icon", ...COMMAND_IDS]) for (const pixels of RIBBON_PIXELS) await draw(name, `${name}-${pixels}.png`, pixels, "");
  await draw("icon", "icon-192.png", 192, "");
  await draw("icon", "outline-32.png", 32, OUTLINE);
} finally {
  await browser.close();
}

async function draw(name: string, file: string, pixels: number, style: string): Promise<void> {
  const drawing = await readFile(`${icons}${name}.svg`, "utf8");
  await page.setViewportSize({ width: pixels, height: pixels });
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: 100vw; height: 100vh } ${style}</style>${drawing}`);
  await page.screenshot({ path: `${icons}${file}`, omitBackground: true });
}
