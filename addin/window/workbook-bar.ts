/** What a person does with the workbook as a whole. */
export interface WorkbookCommands {
  saveToFile(): Promise<void>;
  saveValues(): Promise<void>;
  openFile(file: File): Promise<void>;
  openEarlier(): Promise<void>;
  startOver(): Promise<void>;
}

/** How keeping the workbook goes, as the bar words it. */
export interface SavingWords {
  readonly state: "unchanged" | "saved" | "saving" | "refused";
  readonly sentence?: string;
}

export interface WorkbookBar {
  showSaving(saving: SavingWords): void;
  /** Which answers are shown while the workbook is computed; null when that is over. */
  showComputing(sentence: string | null): void;
}

const WORDS = {
  unchanged: "Demo, nothing changed yet",
  saved: "Saved in this browser",
  saving: "Saving in this browser…",
  refused: "Not saved in this browser.",
};

/** Connects the bar's buttons; `failed` hears what went wrong in a command. */
export function connectWorkbookBar(commands: WorkbookCommands, failed: (error: unknown) => void): WorkbookBar {
  const chosenFile = element("chosen-file", HTMLInputElement);
  const run = (command: () => Promise<void>): void => {
    command().catch(failed);
  };
  element("save-to-file", HTMLButtonElement).addEventListener("click", () => {
    run(() => commands.saveToFile());
  });
  element("save-values", HTMLButtonElement).addEventListener("click", () => {
    run(() => commands.saveValues());
  });
  element("open-file", HTMLButtonElement).addEventListener("click", () => {
    chosenFile.click();
  });
  chosenFile.addEventListener("change", () => {
    const file = chosenFile.files?.[0];
    if (!file) return;
    run(async () => {
      await commands.openFile(file);
      // The same file can be chosen again.
      chosenFile.value = "";
    });
  });
  element("open-earlier", HTMLButtonElement).addEventListener("click", () => {
    run(() => commands.openEarlier());
  });
  element("start-over", HTMLButtonElement).addEventListener("click", () => {
    run(() => commands.startOver());
  });

  const state = element("saving-state", HTMLElement);
  const computing = element("computing-state", HTMLElement);
  return {
    showSaving(saving) {
      // Every change is followed by "saved"; only that it was not is worth interrupting somebody who listens.
      state.setAttribute("aria-live", saving.state === "refused" ? "polite" : "off");
      state.textContent = saving.sentence ?? WORDS[saving.state];
      state.classList.toggle("refused", saving.state === "refused");
    },
    showComputing(sentence) {
      computing.textContent = sentence ?? "";
    },
  };
}

/** The element of the page with this id. */
export function element<Kind extends HTMLElement>(id: string, kind: new () => Kind): Kind {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`The page has no ${kind.name} named "${id}".`);
  return found;
}
