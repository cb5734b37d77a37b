import { describe, expect, test } from "vitest";
import { readRainTable } from "../../../../addin/actions/rain-record/rain-table.ts";
import { clock, fileOf, localHours, seriesOf } from "./rain-files.ts";

const THREE_DAYS = "Date,Rain (in)\n2026-05-04,0.25\n2026-05-05,0\n2026-05-06,1.5\n";

describe("A daily record", () => {
  test("of a date and a depth is read as it stands, with the unit that its heading says", () => {
    const { series, unitFrom, open } = fileOf(THREE_DAYS);
    expect(series).toMatchObject({ unit: "in", stepMinutes: 1440, depths: [0.25, 0, 1.5] });
    expect(clock(series?.beganMinutes ?? 0)).toBe("2026-05-04 00:00");
    expect({ unitFrom, open }).toEqual({ unitFrom: "heading", open: [] });
  });

  test("is never written before somebody said its unit, where the heading says none", () => {
    const text = THREE_DAYS.replace("Rain (in)", "Rain");
    expect(fileOf(text)).toMatchObject({ series: null, open: ["unit"], unit: null });
    expect(seriesOf(text, { unit: "mm" })).toMatchObject({ unit: "mm", depths: [0.25, 0, 1.5] });
  });

  test.each([
    ["Rain (in)", "in"],
    ["rain_in", "in"],
    ["Rainfall, inches", "in"],
    ["Precip in.", "in"],
    ["Depth [mm]", "mm"],
    ["Rain in mm", "mm"],
    ["rain_mm", "mm"],
    ["millimetres", "mm"],
    ["Rain", null],
    ["Rain in the garden", null],
    ["Rain mm or in", null],
    ["Minimum", null],
    ["Rinse (min)", null],
  ])("under the heading %j has the unit %j", (heading, unit) => {
    expect(fileOf(`Date;${heading}\n2026-05-04;1\n2026-05-05;2\n`, { columns: { date: 0, time: null, depth: 1 } }).unit).toBe(unit);
  });

  test("keeps a trace as 0 with a note, however it is written, and counts it", () => {
    const file = fileOf("Date,Rain (in)\n2026-05-04,T\n2026-05-05,trace\n2026-05-06,0.00T\n2026-05-07,0.1\n");
    expect(file.series?.depths).toEqual([0, 0, 0, 0.1]);
    expect([...(file.series?.remarks ?? [])]).toEqual([
      [0, "trace"],
      [1, "trace"],
      [2, "trace"],
    ]);
    expect(file.read?.traces).toBe(3);
  });

  test("says which words and codes stand for no measurement, and asks what becomes of those days", () => {
    const text = "Date,Rain (in)\n2026-05-04,0.1\n2026-05-05,\n2026-05-06,-9999\n2026-05-07,M\n2026-05-08,999.99\n2026-05-09,0.2\n";
    const file = fileOf(text);
    expect([...(file.read?.codes ?? [])]).toEqual([
      ["", 1],
      ["-9999", 1],
      ["M", 1],
      ["999.99", 1],
    ]);
    expect(file).toMatchObject({ notMeasured: 4, open: ["notMeasured"], series: null });
    expect(seriesOf(text, { notMeasured: "blank" }).depths).toEqual([0.1, null, null, null, null, 0.2]);
    const dry = seriesOf(text, { notMeasured: "dry" });
    expect(dry.depths).toEqual([0.1, 0, 0, 0, 0, 0.2]);
    expect(dry.remarks.get(2)).toBe("taken as dry");
  });

  test("takes no negative depth and no words for a depth: each is named with its line and counts as not measured", () => {
    const file = fileOf("Date,Rain (in)\n2026-05-04,-0.2\n2026-05-05,=1+1\n2026-05-06,0.35A\n2026-05-07,1\n", { notMeasured: "blank" });
    expect(file.read?.badDepths).toEqual([
      { line: 2, words: "-0.2" },
      { line: 3, words: "=1+1" },
      { line: 4, words: "0.35A" },
    ]);
    expect(file.series?.depths).toEqual([null, null, null, 1]);
  });

  test("with days that have no line asks whether it stayed dry or nobody measured", () => {
    const text = "Date,Rain (mm)\n2026-05-04,3\n2026-05-05,1\n2026-05-08,4\n";
    expect(fileOf(text)).toMatchObject({ stepsWithoutReading: 2, open: ["noReading"], series: null });
    expect(seriesOf(text, { noReading: "dry" }).depths).toEqual([3, 1, 0, 0, 4]);
    const blank = seriesOf(text, { noReading: "blank" });
    expect(blank.depths).toEqual([3, 1, null, null, 4]);
    expect([...blank.remarks]).toEqual([
      [2, "no reading"],
      [3, "no reading"],
    ]);
  });

  test("that says a day twice alike has it once; where the two differ, a person says which counts", () => {
    const text = "Date,Rain (in)\n2026-05-04,0.1\n2026-05-04,0.1\n2026-05-05,0.2\n2026-05-05,0.3\n2026-05-06,\n2026-05-06,0.4\n";
    const file = fileOf(text);
    expect(file).toMatchObject({ again: 2, open: ["repeated"], series: null });
    expect(file.clashes.map(({ minutes, depths }) => [clock(minutes), depths])).toEqual([["2026-05-05 00:00", [0.2, 0.3]]]);
    expect((["first", "last", "sum"] as const).map((repeated) => seriesOf(text, { repeated }).depths)).toEqual([
      [0.1, 0.2, 0.4],
      [0.1, 0.3, 0.4],
      [0.1, 0.5, 0.4],
    ]);
  });

  test("in any order of lines is put into the order of its days, and that is said", () => {
    const file = fileOf("Date,Rain (in)\n2026-05-06,3\n2026-05-04,1\n2026-05-05,2\n");
    expect(file.series?.depths).toEqual([1, 2, 3]);
    expect(file.read?.wasSorted).toBe(false);
  });

  test("read at 7 in the morning for the day before begins a day earlier where a person says that times end the step", () => {
    const text = "Date,Rain (in)\n2026-05-05 07:00,0.1\n2026-05-06 07:00,0.2\n";
    expect(clock(seriesOf(text, { timesSay: "ended" }).beganMinutes)).toBe("2026-05-04 07:00");
    expect(clock(seriesOf(text).beganMinutes)).toBe("2026-05-05 07:00");
  });
});

describe("Dates", () => {
  test("that could be read either way are asked about, and not guessed", () => {
    const text = "Date,Rain (in)\n03/04/2026,0.1\n04/04/2026,0.2\n05/04/2026,0\n";
    expect(fileOf(text)).toMatchObject({ open: ["dateOrder"], series: null });
    expect(seriesOf(text, { dateOrder: "day first" }).depths).toEqual([0.1, 0.2, 0]);
    const monthFirst = fileOf(text, { dateOrder: "month first", noReading: "dry" });
    // March 4 to May 4 are 62 days, of which three have a line.
    expect([clock(monthFirst.series?.beganMinutes ?? 0), monthFirst.stepsWithoutReading]).toEqual(["2026-03-04 00:00", 59]);
  });

  test("with one part over 12 say their order themselves", () => {
    expect(clock(seriesOf("Date,Rain (in)\n12/05/2026,0\n13/05/2026,0\n").beganMinutes)).toBe("2026-05-12 00:00");
    expect(clock(seriesOf("Date,Rain (in)\n05/12/2026,0\n05/13/2026,0\n").beganMinutes)).toBe("2026-05-12 00:00");
  });

  test("of which some can only be the one order and some only the other are refused", () => {
    expect(fileOf("Date,Rain (in)\n13/05/2026,0\n05/14/2026,0\n").refusal).toEqual({ kind: "both orders" });
  });

  test.each(["2026-05-04", "2026/5/4", "20260504", "4 May 2026", "04-May-2026", "May 4, 2026", "2026-05-04T00:00:00", "2026-05-04 24:00"])(
    "are read as %s",
    (written) => {
      const { series } = fileOf(`Date;Rain (in)\n${written};0.1\n2026-05-06;0.2\n`, { noReading: "dry" });
      expect(clock(series?.beganMinutes ?? 0)).toBe(written.endsWith("24:00") ? "2026-05-05 00:00" : "2026-05-04 00:00");
    },
  );

  test("that no calendar has, and words, are left out and named with their line", () => {
    const file = fileOf("Date,Rain (in)\n2026-02-27,0.1\n2026-02-30,9\n2026-02-28,0.2\ntotal,0.3\n2026-03-01,0\n");
    expect(file.read?.badDates).toEqual([
      { line: 3, words: "2026-02-30" },
      { line: 5, words: "total" },
    ]);
    expect(file.series?.depths).toEqual([0.1, 0.2, 0]);
  });

  test("with two digits for the year are no dates, because the century would be a guess", () => {
    expect(fileOf("Date,Rain (in)\n04/05/26,1\n05/05/26,2\n", { columns: { date: 0, time: null, depth: 1 } }).refusal).toEqual({
      kind: "no dates",
    });
  });
});

describe("An hourly record", () => {
  test("has the step that most of its readings keep, and takes a time in a column of its own", () => {
    const series = seriesOf("Date,Time,Rain (mm)\n2026-05-04,22:00,1\n2026-05-04,23:00,0\n2026-05-05,0:00,2.5\n");
    expect(series).toMatchObject({ stepMinutes: 60, depths: [1, 0, 2.5] });
    expect(clock(series.beganMinutes)).toBe("2026-05-04 22:00");
  });

  test("with hours as a.m. and p.m. is read by the half of the day", () => {
    expect(seriesOf("When,Rain (in)\n5/14/2026 11:00 AM,1\n5/14/2026 12:00 PM,2\n5/14/2026 1:00 PM,3\n").depths).toEqual([1, 2, 3]);
  });

  test("with readings between its steps is refused by the lines that do not fit", () => {
    const file = fileOf(
      "When,Rain (in)\n2026-05-04 00:00,1\n2026-05-04 01:00,2\n2026-05-04 02:07,3\n2026-05-04 03:00,3\n2026-05-04 04:00,3\n",
    );
    expect(file.refusal).toEqual({ kind: "off the step", stepMinutes: 60, count: 1, lines: [4] });
  });

  test("of one reading has no step", () => {
    expect(fileOf("When,Rain (in)\n2026-05-04 00:00,1\n").refusal).toEqual({ kind: "one reading" });
  });

  test("adds up to days: a day with an hour that is blank is blank, and days not whole at the ends are left off", () => {
    const hours = localHours("2026-05-04", "2026-05-08", []).slice(5, -3);
    const text = ["When,Rain (in)", ...hours.map((hour) => `${hour},${hour === "2026-05-06 10:00" ? "" : 0.1}`)].join("\n");
    const days = seriesOf(text, { kept: "daily totals", notMeasured: "blank" });
    expect(days).toMatchObject({ stepMinutes: 1440, depths: [2.4, null] });
    expect(clock(days.beganMinutes)).toBe("2026-05-05 00:00");
    expect(seriesOf(text, { kept: "daily totals", notMeasured: "dry" }).depths).toEqual([2.4, 2.3]);
  });
});

describe("A clock that follows summer time", () => {
  // In 2026 the clock goes forward on Sunday, March 8 at 2 and back on Sunday, November 1 at 2 (rule of the United States since 2007, from memory).
  const hours = localHours("2026-01-01", "2027-01-01", [["2026-03-08 02", "2026-11-01 01"]]);
  const text = ["When,Rain (mm)", ...hours.map((hour, index) => `${hour},${(index % 7) / 10}`)].join("\n");

  test("leaves out an hour in spring and tells one twice in autumn, and is known by it", () => {
    expect([hours.includes("2026-03-08 02:00"), hours.filter((hour) => hour === "2026-11-01 01:00").length]).toEqual([false, 2]);
    const file = fileOf(text);
    expect(file.clockChanges.map(({ kind, minutes }) => `${kind} ${clock(minutes)}`)).toEqual([
      "skipped 2026-03-08 02:00",
      "doubled 2026-11-01 01:00",
    ]);
    expect(file).toMatchObject({ isSummerTime: true, stepsWithoutReading: 0, clashes: [], again: 0 });
  });

  test("loses no hour and no rain in standard time: 8,760 hours in the order of the file", () => {
    const { depths, beganMinutes } = seriesOf(text);
    expect(depths).toEqual(hours.map((_, index) => (index % 7) / 10));
    expect([depths.length, clock(beganMinutes)]).toEqual([8760, "2026-01-01 00:00"]);
  });

  test("that a person says is standard time leaves a step without a reading and a time told twice", () => {
    expect(fileOf(text, { clock: "standard" })).toMatchObject({
      isSummerTime: false,
      stepsWithoutReading: 1,
      open: ["repeated", "noReading"],
    });
  });

  test("is known in a record that begins in summer, and in quarters of an hour", () => {
    const fromJune = hours.filter((hour) => hour >= "2026-06-01");
    const quarters = fromJune.flatMap((hour) => ["00", "15", "30", "45"].map((minutes) => `${hour.slice(0, 14)}${minutes}`));
    const series = seriesOf(["When,Rain (mm)", ...quarters.map((time, index) => `${time},${index % 3}`)].join("\n"));
    expect(series.depths.length).toBe(quarters.length);
    expect(clock(series.beganMinutes)).toBe("2026-05-31 23:00");
  });

  test("is not seen in one hour that is there twice on a day when no clock changes, nor on one Sunday of years without a change", () => {
    const twice = (at: string) => localHours("2026-01-01", "2027-01-01", []).flatMap((hour) => (hour === at ? [hour, hour] : [hour]));
    for (const at of ["2026-11-02 01:00", "2026-11-01 01:00"]) {
      const file = fileOf(["When,Rain (mm)", ...twice(at).map((hour) => `${hour},1`)].join("\n"));
      expect(file).toMatchObject({ clockChanges: [], again: 1, stepsWithoutReading: 0 });
    }
  });

  test("written with its distance from Greenwich needs no guess", () => {
    const series = seriesOf(
      "When,Rain (mm)\n2026-11-01T00:00-04:00,1\n2026-11-01T01:00-04:00,2\n2026-11-01T01:00-05:00,3\n2026-11-01T02:00-05:00,4\n",
    );
    expect(series.depths).toEqual([1, 2, 3, 4]);
    expect(clock(series.beganMinutes)).toBe("2026-10-31 23:00");
  });
});

describe("How a file is written", () => {
  test.each([
    ["a byte order mark", `\uFEFF${THREE_DAYS}`],
    ["Windows line ends", THREE_DAYS.replaceAll("\n", "\r\n")],
    ["semicolons", THREE_DAYS.replaceAll(",", ";")],
    ["tabs", THREE_DAYS.replaceAll(",", "\t")],
    ["quotes around everything", '"Date","Rain (in)"\n"2026-05-04","0.25"\n"2026-05-05","0"\n"2026-05-06","1.5"'],
    ["semicolons and decimal commas", "Date;Rain (in)\n2026-05-04;0,25\n2026-05-05;0\n2026-05-06;1,5\n"],
    ["decimal commas in quotes", 'Date,Rain (in)\n2026-05-04,"0,25"\n2026-05-05,"0"\n2026-05-06,"1,5"\n'],
    ["blank lines and a line about the gauge above", `Gauge at the ferry steps\n\n${THREE_DAYS}\n\n`],
    ["other columns about it", "Station,Date,Wind,Rain (in)\nA,2026-05-04,3,0.25\nA,2026-05-05,1,0\nA,2026-05-06,2,1.5\n"],
  ])("with %s changes nothing about the rain", (_, text) => {
    expect(seriesOf(text)).toMatchObject({ unit: "in", depths: [0.25, 0, 1.5] });
  });

  test("without headings is read from its first line on", () => {
    expect(seriesOf("2026-05-04,0.25\n2026-05-05,0\n", { unit: "in" }).depths).toEqual([0.25, 0]);
  });

  test("with decimal commas between commas is named line by line, because it has a column too many", () => {
    const { read } = fileOf("Date,Rain (in)\n2026-05-04,0,25\n2026-05-05,1,5\n2026-05-06,0\n", {
      columns: { date: 0, time: null, depth: 1 },
    });
    expect(read?.tooWide.map(({ line }) => line)).toEqual([2, 3]);
  });

  test("with points and commas both for decimals leaves the commas unread rather than guessed", () => {
    const { read } = fileOf("Date;Rain (in)\n2026-05-04;0.25\n2026-05-05;1,234\n2026-05-06;0.5\n", { notMeasured: "blank" });
    expect(read?.badDepths).toEqual([{ line: 3, words: "1,234" }]);
  });

  test.each([
    ["nothing", "", "There is nothing in it."],
    ["one column", "0.1\n0.2\n", "No line has two columns: put a comma, a semicolon or a tab between the date and the depth."],
    ["headings alone", "Date,Rain\n", "There are headings and no readings under them."],
    ["a quote that is never closed", 'Date,Rain\n2026-05-04,"0.1\n2026-05-05,0\n', "A quote that opens in line 2 is never closed."],
  ])("with %s is refused in a sentence", (_, text, sentence) => {
    expect(readRainTable(text)).toEqual({ sentence });
  });
});

describe("A record that is hard to believe", () => {
  const year = (heading: string, depth: number) =>
    [
      "Date," + heading,
      ...localHours("2026-01-01", "2027-01-01", [])
        .filter((hour) => hour.endsWith("00:00"))
        .map((hour) => `${hour.slice(0, 10)},${depth}`),
    ].join("\n");

  test("as inches with 365 in of rain a year looks like millimetres", () => {
    expect(fileOf(year("Rain (in)", 1)).unlikely).toMatchObject([{ kind: "looks like mm" }]);
    expect(fileOf(year("Rain (mm)", 1)).unlikely).toEqual([]);
  });

  test("as millimetres with 37 mm a year looks like inches", () => {
    expect(fileOf(year("Rain (mm)", 0.1)).unlikely).toMatchObject([{ kind: "looks like inches" }]);
    expect(fileOf(year("Rain (in)", 0.1)).unlikely).toEqual([]);
  });

  test("has a day with more rain than any gauge ever measured", () => {
    expect(fileOf("Date,Rain (in)\n2026-05-04,80\n2026-05-05,0\n").unlikely).toMatchObject([
      { kind: "more than ever measured", largest: 80, within: "day" },
    ]);
    expect(fileOf("Date,Rain (in)\n2026-05-04,70\n2026-05-05,0\n").unlikely).toEqual([]);
  });
});
