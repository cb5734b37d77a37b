/** A start opens what is kept, or asks: it never begins with the demo over something that may be a person's work. */
import { describe, expect, it } from "vitest";
import type { Question } from "../../../addin/window/ask.ts";
import { openFirstWorkbook, type KeptSave } from "../../../addin/window/first-workbook.ts";

interface Start {
  readonly saves?: readonly (KeptSave & { readonly content: unknown })[];
  readonly unreadable?: number;
  readonly cutShort?: boolean;
  readonly answers?: readonly string[];
}

const save = (savedAt: number, content: unknown) => ({ savedAt, content, isDemo: false });

async function start({ saves = [], unreadable = 0, cutShort = false, answers = [] }: Start) {
  const questions: Question<string>[] = [];
  const opened: unknown[] = [];
  const files: unknown[] = [];
  const heldBack: string[] = [];
  let faults = unreadable;
  const outcome = await openFirstWorkbook({
    keeping: {
      find: async () => {
        if (faults-- > 0) return { is: "unreadable", sentence: "The browser's storage did not answer (UnknownError)." };
        return saves[0] === undefined ? { is: "nothing" } : { is: "kept", latest: saves[0], earlier: saves.slice(1) };
      },
      read: async (one) => one.content,
      holdBack: (sentence) => heldBack.push(sentence),
    },
    open: async (content) => {
      if (String(content).startsWith("damaged")) throw new Error(`"${String(content)}" is damaged.`);
      opened.push(content);
    },
    openDemo: async () => void opened.push("demo"),
    saveToFile: (content) => files.push(content),
    lastStartWasCutShort: cutShort,
    ask: async (question) => {
      questions.push(question);
      const wanted = answers[questions.length - 1];
      if (wanted === undefined) throw new Error(`Nobody answers "${question.title}".`);
      return question.choices.find(({ label }) => label.startsWith(wanted))?.answer ?? null;
    },
  });
  return { outcome, opened, files, heldBack, titles: questions.map(({ title }) => title), questions };
}

describe("The page begins", () => {
  it("with the demo where nothing is kept", async () => {
    expect(await start({})).toMatchObject({ outcome: "the demo", opened: ["demo"], titles: [], heldBack: [] });
  });

  it("with the latest save, asking nothing", async () => {
    const saves = [save(2, "two"), save(1, "one")];
    expect(await start({ saves })).toMatchObject({ outcome: "the latest", opened: ["two"], titles: [], heldBack: [] });
  });

  it("with what is kept as soon as the storage answers, asked again", async () => {
    const { outcome, opened, titles, heldBack } = await start({
      saves: [save(1, "mine")],
      unreadable: 2,
      answers: ["Try again", "dismissed with Escape"],
    });
    expect({ outcome, opened, heldBack }).toEqual({ outcome: "the latest", opened: ["mine"], heldBack: [] });
    expect(titles).toEqual(Array(2).fill("What this browser keeps could not be read"));
  });

  it("with the demo and without saving it where the storage does not answer and the person says so", async () => {
    const { outcome, opened, heldBack, questions } = await start({
      saves: [save(1, "mine")],
      unreadable: 9,
      answers: ["Look at the demo"],
    });
    expect({ outcome, opened }).toEqual({ outcome: "the demo, saving nothing", opened: ["demo"] });
    expect(heldBack).toHaveLength(1);
    expect(questions[0]?.text).toContain("nothing is saved over it");
  });

  it("with an earlier save where the latest is damaged, whose bytes can be had as a file", async () => {
    const { outcome, opened, files, heldBack, titles } = await start({
      saves: [save(3, "damaged three"), save(2, "damaged two"), save(1, "one")],
      answers: ["Save it to a file", "Open the one saved", "Open the one saved"],
    });
    expect({ outcome, opened, files, heldBack }).toEqual({
      outcome: "an earlier one",
      opened: ["one"],
      files: ["damaged three"],
      heldBack: [],
    });
    expect(titles).toEqual(Array(3).fill("The workbook kept in this browser cannot be opened"));
  });

  it("with the demo and without saving it where all that is kept is damaged and the person says so", async () => {
    const { outcome, opened, heldBack, questions } = await start({ saves: [save(1, "damaged")], answers: ["Look at the demo"] });
    expect({ outcome, opened }).toEqual({ outcome: "the demo, saving nothing", opened: ["demo"] });
    expect(heldBack).toHaveLength(1);
    expect(questions[0]?.text).toBe('"damaged" is damaged. Nothing is saved over it.');
    expect(questions[0]?.choices.map(({ label }) => label)).toEqual(["Save it to a file", "Look at the demo; nothing is saved"]);
  });

  it("by offering the earlier saves, with their times, where the last start did not finish", async () => {
    const saves = [save(Date.UTC(2031, 4, 6, 12), "two"), save(Date.UTC(2031, 4, 5, 12), "one")];
    const latest = await start({ saves, cutShort: true, answers: ["Open the latest"] });
    expect(latest).toMatchObject({ outcome: "the latest", opened: ["two"], titles: ["The last start did not finish"] });
    expect(latest.questions[0]?.choices[0]?.label).toMatch(/^Open the latest, saved .*2031/);
    const earlier = await start({ saves, cutShort: true, answers: ["Open the one"] });
    expect(earlier).toMatchObject({ outcome: "an earlier one", opened: ["one"] });
  });
});
