import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { addinDescription, COMMAND_IDS, iconFile, RIBBON_PIXELS } from "../../manifest/addin-description.ts";

const icon = (file: string) => readFileSync(new URL(`../../manifest/${file}`, import.meta.url));

/** Width and height stand in the first chunk of a PNG file: PNG Specification (ISO/IEC 15948:2004), 5.2 and 11.2.2. */
function pixelsOf(png: Buffer): readonly [number, number] {
  expect(png.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
  expect(png.subarray(12, 16).toString("latin1")).toBe("IHDR");
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

const pictures = (["icon", ...COMMAND_IDS] as const).flatMap((name) =>
  RIBBON_PIXELS.map((pixels) => ({ name, pixels, file: iconFile(addinDescription, name, pixels) })),
);

describe("the icons", () => {
  test.each(pictures)("$file is $pixels pixels wide and high", ({ pixels, file }) => {
    expect(pixelsOf(icon(file))).toEqual([pixels, pixels]);
  });

  // Sizes of the ribbon: "size" of "extensionCommonIcon" in the schema of the unified manifest 1.30.
  test("come in every size that a ribbon asks for, a picture of its own for each command", () => {
    expect(RIBBON_PIXELS).toEqual([16, 20, 24, 32, 40, 48, 64, 80]);
    for (const pixels of RIBBON_PIXELS) {
      const drawn = pictures.filter((each) => each.pixels === pixels).map(({ file }) => icon(file).toString("base64"));
      expect(new Set(drawn).size).toBe(COMMAND_IDS.length + 1);
    }
  });

  test("of the packaged manifest are 192 pixels in colour and 32 in outline", () => {
    expect(pixelsOf(icon(addinDescription.icons.color))).toEqual([192, 192]);
    expect(pixelsOf(icon(addinDescription.icons.outline))).toEqual([32, 32]);
  });
});
