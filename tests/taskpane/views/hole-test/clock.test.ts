import { describe, expect, test } from "vitest";
import { clockFace, elapsedMinutes, isReadingDue, minutesFace, nextReadingMinutes } from "../../../../taskpane/views/hole-test/clock.ts";
import { clockOf, withClock } from "../../../../taskpane/views/hole-test/clocks.ts";

const noon = Date.UTC(2026, 4, 4, 12);
const clock = { startedAtMilliseconds: noon, intervalMinutes: 15 };
const after = (minutes: number) => noon + minutes * 60_000;

describe("the clock of a hole", () => {
  test("a reading is stamped to a tenth of a minute", () => {
    expect(elapsedMinutes(clock, after(15))).toBe(15);
    expect(elapsedMinutes(clock, noon + 15 * 60_000 + 20_000)).toBe(15.3);
  });

  test("the face shows minutes and seconds, and hours once there are any", () => {
    expect(clockFace(clock, noon + 7_000)).toBe("0:07");
    expect(clockFace(clock, after(42.5))).toBe("42:30");
    expect(clockFace(clock, after(62) + 7_000)).toBe("1:02:07");
    expect(minutesFace(60)).toBe("1:00:00");
  });

  test("a device clock that was set back shows the start, never a negative time", () => {
    expect(clockFace(clock, noon - 5_000)).toBe("0:00");
    expect(elapsedMinutes(clock, noon - 5_000)).toBe(0);
  });

  test("the next reading is one interval after the last, or after the start", () => {
    expect(nextReadingMinutes(clock, null)).toBe(15);
    expect(nextReadingMinutes(clock, 16.2)).toBe(31.2);
  });

  test("a reading is due at its minute and not a second before", () => {
    expect(isReadingDue(clock, 15, after(30) - 1_000)).toBe(false);
    expect(isReadingDue(clock, 15, after(30))).toBe(true);
  });
});

describe("clocks of several holes", () => {
  test("two holes of a yard are timed side by side", () => {
    const other = { startedAtMilliseconds: after(5), intervalMinutes: 5 };
    const both = withClock(withClock([], "4", clock), "new", other);
    expect(clockOf(both, "4")).toBe(clock);
    expect(clockOf(both, "new")).toBe(other);
  });

  test("stopping one leaves the other running", () => {
    const both = withClock(withClock([], "4", clock), "5", clock);
    expect(clockOf(withClock(both, "4", null), "4")).toBeNull();
    expect(clockOf(withClock(both, "4", null), "5")).toBe(clock);
  });
});
