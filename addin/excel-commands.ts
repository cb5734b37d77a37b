/**
 * What the buttons of the ribbon and the menu of a cell do, by the ids that the manifests name. Excel runs them in the
 * page of the pane, so a command is an action on the workbook, or a view that the pane is asked for.
 */
import type { CommandId } from "../manifest/addin-description.ts";
import { partMissing, reasonOf } from "./actions/part-missing.ts";
import type { Workbook } from "./workbook/port.ts";

/** Tells a person in words what a command did. */
export type Tell = (sentence: string) => void;

export function associateCommands(workbook: Workbook, tell: Tell): void {
  for (const [id, run] of Object.entries(commands(workbook))) {
    Office.actions.associate(id, (event?: Office.AddinCommands.Event) => void carryOut(run, tell, event));
  }
}

async function carryOut(run: () => Promise<string | null>, tell: Tell, event?: Office.AddinCommands.Event): Promise<void> {
  try {
    const sentence = await run();
    if (sentence !== null) tell(sentence);
  } catch (error) {
    tell(partMissing(error) ?? `${reasonOf(error)}.`);
  } finally {
    // Until then Excel shows the button as busy.
    event?.completed();
  }
}

/** Each answers with a sentence, or null where the pane shows what was asked for. */
function commands(workbook: Workbook): Readonly<Record<CommandId, () => Promise<string | null>>> {
  return {
    setUpWorkbook: async () => {
      const { programState } = await import("./actions/workbook/set-up-workbook.ts");
      const { state } = await programState(workbook);
      // Where sheets are to be added or repaired, the pane says which before it adds any.
      if (state === "ready") await showView("workbook");
      else await Office.addin.showAsTaskpane();
      return state === "ready" ? "This workbook is set up already. Check workbook looks whether all is in its place." : null;
    },
    newVisit: () => showView("visits"),
    checkWorkbook: () => showView("workbook"),
    showWorking: () => showView("working"),
    help: async () => {
      const address = new URL("help.html", location.href).href;
      if (Office.context.requirements.isSetSupported("OpenBrowserWindowApi", "1.1")) {
        Office.context.ui.openBrowserWindow(address);
        return null;
      }
      // A frame that may open no windows answers null; with "noopener" every window would.
      if (window.open(address, "_blank") !== null) return null;
      await Office.addin.showAsTaskpane();
      return `This window opens no others. The help is at ${address}`;
    },
    repairFormulas: async () => {
      const { repairFormulas, repairSentence } = await import("./actions/workbook/repair-formulas.ts");
      await Office.addin.showAsTaskpane();
      return repairSentence(await repairFormulas(workbook));
    },
    turnIntoValues: async () => {
      const { turnIntoValues } = await import("./actions/workbook/turn-into-values.ts");
      await Office.addin.showAsTaskpane();
      return `Sheet "${await turnIntoValues(workbook)}" holds what the cells show now, without formulas.`;
    },
    openWithWorkbook: async () => {
      await Office.addin.showAsTaskpane();
      const opens = await opensWithWorkbook();
      await Office.addin.setStartupBehavior(opens ? Office.StartupBehavior.none : Office.StartupBehavior.load);
      return opens
        ? "The pane no longer opens with this workbook."
        : "The pane opens with this workbook from now on, once the workbook is saved.";
    },
  };
}

/** Kept in the workbook, because a person asked for it there. A workbook that does not say opens without the pane. */
export async function opensWithWorkbook(): Promise<boolean> {
  return Office.addin.getStartupBehavior().then(
    (behavior) => behavior === Office.StartupBehavior.load,
    () => false,
  );
}

async function showView(view: "visits" | "workbook" | "working"): Promise<null> {
  const { askForView } = await import("../taskpane/asked-view.ts");
  askForView(view);
  await Office.addin.showAsTaskpane();
  return null;
}
