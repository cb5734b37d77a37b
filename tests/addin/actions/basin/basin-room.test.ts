import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkRoom } from "../../../../addin/actions/basin/basin-room.ts";
import { draftBasin, type BasinInputs } from "../../../../addin/actions/basin/draft-basin.ts";
import { roofInMetric, roofInUs, settings } from "../../../taskpane/views/basin/basin-examples.ts";

/**
 * Handbook section 3c, G2, computed by hand: a rectangle of 17 by 7 ft with 3 to 1 sides has a rim of 20 by 10 ft at 6 in
 * and holds 79.00 cu ft: 1 in of rain on that rim and the runoff of 787.368 sq ft at 0.95.
 */
const rectangle: BasinInputs = {
  ...roofInUs,
  contributingArea: ((79 - 200 / 12) * 12) / 0.95,
  mediaDepth: null,
  shape: "rectangle",
  lengthToWidth: 17 / 7,
};

const check = (inputs: BasinInputs, length: number | null, width: number | null) => checkRoom(inputs, { length, width }, settings);

describe("a rim of 20 by 10 ft", () => {
  test("fits a room of 20 by 10 ft, exactly", () => {
    const checked = check(rectangle, 20, 10);
    expect(checked).toMatchObject({
      verdict: "fits",
      rim: { length: expect.closeTo(20, 9) as number, width: expect.closeTo(10, 9) as number },
    });
  });

  test("does not fit where an inch is missing on either side", () => {
    expect(check(rectangle, 20 - 1 / 12, 30).verdict).toBe("too large");
    expect(check(rectangle, 30, 10 - 1 / 12).verdict).toBe("too large");
  });

  test("is held against the side that was measured, and against nothing where none was", () => {
    expect(check(rectangle, null, 10).verdict).toBe("fits");
    expect(check(rectangle, null, 9).verdict).toBe("too large");
    expect(check(rectangle, null, null).verdict).toBe("not measured");
  });

  test("is the same in meters", () => {
    const feet = 0.3048;
    const metric = {
      ...rectangle,
      units: "metric",
      contributingArea: Number(rectangle.contributingArea) * feet ** 2,
      testedRate: 12.7,
      pondingDepth: 152.4,
    } as const;
    expect(check(metric, 20 * feet, 10 * feet).verdict).toBe("fits");
    expect(check(metric, 19.9 * feet, 10 * feet).verdict).toBe("too large");
  });
});

describe("what would fit", () => {
  const remedy = (inputs: BasinInputs, length: number | null, width: number | null) => {
    const checked = check(inputs, length, width);
    return checked.verdict === "too large" ? checked.remedy : undefined;
  };

  test("is first another length to width of the same shape", () => {
    // 15 ft across take what 200 sq ft of rim need down the slope, some 14 ft.
    expect(remedy(rectangle, 15, 15)).toMatchObject({ kind: "proportions", changes: { shape: "rectangle" } });
  });

  test("is a rectangle where an ellipse of any proportions is too large for its corners", () => {
    const ellipse: BasinInputs = { ...rectangle, shape: null, lengthToWidth: null };
    expect(remedy(ellipse, 14.5, 14.5)).toMatchObject({ kind: "shape", changes: { shape: "rectangle" } });
  });

  test("is deeper ponding, where that still drains in time", () => {
    const fast: BasinInputs = { ...rectangle, testedRate: 1, pondingDepth: 5 };
    const deeper = remedy(fast, 14, 14);
    expect(deeper?.kind).toBe("ponding");
    expect(Number(deeper?.changes.pondingDepth)).toBeGreaterThan(5);
    // At 0.2 in/h of design rate 8 in would stand 40 h, and 48 h are the limit; at 0.11 in/h only 5.28 in drain.
    const slow = remedy({ ...fast, testedRate: 0.22 }, 14, 14);
    expect(slow?.kind).not.toBe("ponding");
  });

  test("is soil mix under the floor, where ponding may not be deeper", () => {
    expect(remedy({ ...rectangle, testedRate: 4, pondingDepth: 8 }, 11.5, 11.5)).toMatchObject({ kind: "mix" });
  });

  test("is less rain where nothing holds this storm there, and then as much as fits", () => {
    const tight = { ...rectangle, testedRate: 0.34 };
    const less = remedy(tight, 10, 10);
    expect(less?.kind).toBe("storm");
    const storm = Number(less?.changes.stormDepth);
    expect(storm).toBeLessThan(1);
    expect(check({ ...tight, ...less?.changes }, 10, 10).verdict).toBe("fits");
  });

  test("is nothing in a room of 7 by 7 ft, 49 sq ft, for a floor of at least 50 sq ft", () => {
    expect(remedy({ ...rectangle, testedRate: 0.34 }, 7, 7)).toBeNull();
  });

  test("is nothing in a room smaller than the sloping sides alone", () => {
    expect(remedy(rectangle, 2, 2)).toBeNull();
  });

  test("fits when it is put into the form, whatever the basin and the room", () => {
    const side = fc.double({ min: 4, max: 25, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(roofInUs, roofInMetric),
        fc.constantFrom("ellipse", "rectangle"),
        side,
        side,
        (roof, shape, length, width) => {
          const feet = roof.units === "metric" ? 0.3048 : 1;
          const found = remedy({ ...roof, shape }, length * feet, width * feet);
          if (found === undefined || found === null) return;
          const changed = { ...roof, ...found.changes };
          expect(check(changed, length * feet, width * feet).verdict).toBe("fits");
          expect(draftBasin(changed, settings).status).toBe("fits");
        },
      ),
      { numRuns: 20 },
    );
  });
});

test("a basin without a size has nothing to fit", () => {
  expect(check({ ...rectangle, testedRate: null }, 10, 10)).toEqual({ verdict: "no size" });
});
