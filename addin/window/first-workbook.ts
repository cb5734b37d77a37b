/**
 * Which workbook the page begins with. What the browser keeps is opened; where nothing is kept, the demo. Where something
 * is kept and cannot be read or opened the person is asked, and nothing is saved over it.
 */
import type { Choice, Question } from "./ask.ts";

export interface KeptSave {
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  readonly isDemo: boolean;
}

export interface Keeping<Save extends KeptSave> {
  find(): Promise<
    | { readonly is: "nothing" }
    | { readonly is: "kept"; readonly latest: Save; readonly earlier: readonly Save[] }
    | { readonly is: "unreadable"; readonly sentence: string }
  >;
  read(save: Save): Promise<unknown>;
  holdBack(sentence: string): void;
}

export interface FirstWorkbook<Save extends KeptSave> {
  readonly keeping: Keeping<Save>;
  /** Opens what was read from a save. Rejects in words. */
  open(read: unknown): Promise<void>;
  openDemo(): Promise<void>;
  /** Hands what was read over to the person as a file, whatever it is. */
  saveToFile(read: unknown): void;
  readonly lastStartWasCutShort: boolean;
  ask(question: Question<string>): Promise<string | null>;
}

const TO_FILE: Choice<string> = { answer: "file", label: "Save it to a file" };
const DEMO: Choice<string> = { answer: "demo", label: "Look at the demo; nothing is saved" };

export async function openFirstWorkbook<Save extends KeptSave>(
  first: FirstWorkbook<Save>,
): Promise<"the demo" | "the latest" | "an earlier one" | "the demo, saving nothing"> {
  const { keeping } = first;
  for (;;) {
    const found = await keeping.find();
    if (found.is === "nothing") {
      await first.openDemo();
      return "the demo";
    }
    if (found.is === "kept") return openOneOf(first, found.latest, found.earlier);
    const answer = await first.ask({
      title: "What this browser keeps could not be read",
      text: `${found.sentence} It may hold your workbook, so nothing is saved over it. Close other tabs with this page, then try again.`,
      choices: [{ answer: "again", label: "Try again" }, DEMO],
    });
    if (answer === DEMO.answer) return demoSavingNothing(first, "what it keeps could not be read. Save to a file.");
  }
}

async function openOneOf<Save extends KeptSave>(
  first: FirstWorkbook<Save>,
  latest: Save,
  earlier: readonly Save[],
): Promise<"the latest" | "an earlier one" | "the demo, saving nothing"> {
  let wanted: Save = latest;
  let fault: { readonly title: string; readonly text: string } | null = first.lastStartWasCutShort
    ? {
        title: "The last start did not finish",
        text: "The workbook that this browser keeps was being opened when the page was closed or stopped.",
      }
    : null;
  const failed = new Set<Save>();
  for (;;) {
    if (fault === null) {
      const refusal = await refusalToOpen(first, wanted);
      if (refusal === null) return wanted === latest ? "the latest" : "an earlier one";
      failed.add(wanted);
      fault = { title: "The workbook kept in this browser cannot be opened", text: `${refusal} Nothing is saved over it.` };
    }
    const left = [latest, ...earlier].filter((save) => !failed.has(save));
    const answer = await first.ask({ ...fault, choices: [...choicesOf(left, latest), TO_FILE, DEMO] });
    if (answer === DEMO.answer) return demoSavingNothing(first, "it keeps a workbook that was not opened. Save to a file.");
    if (answer === TO_FILE.answer) first.saveToFile(await first.keeping.read(wanted).catch(unreadable));
    const chosen = left.find((save) => nameOf(save) === answer);
    if (chosen === undefined) continue;
    wanted = chosen;
    fault = null;
  }
}

async function demoSavingNothing(first: FirstWorkbook<KeptSave>, why: string): Promise<"the demo, saving nothing"> {
  first.keeping.holdBack(why);
  await first.openDemo();
  return "the demo, saving nothing";
}

async function refusalToOpen<Save extends KeptSave>(first: FirstWorkbook<Save>, save: Save): Promise<string | null> {
  try {
    await first.open(await first.keeping.read(save));
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function unreadable(error: unknown): string {
  return `This save could not be read: ${String(error)}`;
}

/** Asks which of the saves is meant; null for none of them. */
export async function askWhichSave<Save extends KeptSave>(
  ask: FirstWorkbook<Save>["ask"],
  question: { readonly title: string; readonly text: string; readonly noneOfThem: string },
  saves: readonly Save[],
): Promise<Save | null> {
  const { title, text, noneOfThem } = question;
  const answer = await ask({ title, text, choices: [{ answer: "none", label: noneOfThem }, ...choicesOf(saves)] });
  return saves.find((save) => nameOf(save) === answer) ?? null;
}

function choicesOf<Save extends KeptSave>(saves: readonly Save[], latest?: Save): readonly Choice<string>[] {
  return saves.map((save) => {
    const which = save === latest ? "Open the latest, saved" : "Open the one saved";
    return { answer: nameOf(save), label: `${which} ${timeInWords(save.savedAt)}${save.isDemo ? " (demo)" : ""}` };
  });
}

function nameOf({ savedAt }: KeptSave): string {
  return `saved ${savedAt}`;
}

function timeInWords(savedAt: number): string {
  return new Date(savedAt).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "medium" });
}
