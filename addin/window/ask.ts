export interface Choice<Answer extends string> {
  readonly answer: Answer;
  readonly label: string;
}

export interface Question<Answer extends string> {
  readonly title: string;
  readonly text: string;
  /** In reading order; the first has the focus, so let it be the one that loses nothing. */
  readonly choices: readonly Choice<Answer>[];
}

/** Asks in the page and waits for the answer; null when the question is dismissed with Escape. */
export function ask<Answer extends string>(question: Question<Answer>): Promise<Answer | null> {
  const dialog = document.createElement("dialog");
  dialog.className = "question";
  const title = document.createElement("h2");
  title.id = "question-title";
  title.textContent = question.title;
  const text = document.createElement("p");
  text.id = "question-text";
  text.textContent = question.text;
  const buttons = document.createElement("div");
  buttons.className = "question-buttons";
  dialog.setAttribute("aria-labelledby", title.id);
  dialog.setAttribute("aria-describedby", text.id);
  dialog.append(title, text, buttons);

  return new Promise((resolve) => {
    let given: Answer | null = null;
    for (const choice of question.choices) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = choice.label;
      button.addEventListener("click", () => {
        given = choice.answer;
        dialog.close();
      });
      buttons.append(button);
    }
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(given);
    });
    // The grid listens for keys on the whole page; while a question is open they belong to the question.
    for (const type of ["keydown", "keypress", "keyup"]) {
      dialog.addEventListener(type, (event) => {
        event.stopPropagation();
      });
    }
    document.body.append(dialog);
    dialog.showModal();
    buttons.querySelector("button")?.focus();
  });
}

/** Tells something that has to be read before going on. */
export async function tell(title: string, text: string): Promise<void> {
  await ask({ title, text, choices: [{ answer: "read", label: "Close" }] });
}
