import { render } from "preact";
import type { ComponentChildren } from "preact";

/** Prints what is given alone; false where the page may not print. `kind` names the paper for its style sheet. */
export function printPaper(content: ComponentChildren, kind = "working"): boolean {
  const paper = document.createElement("div");
  paper.className = `paper ${kind}-paper`;
  render(content, paper);
  document.body.append(paper);
  document.body.classList.add("printing-paper");
  const finish = () => {
    window.removeEventListener("afterprint", finish);
    document.body.classList.remove("printing-paper");
    render(null, paper);
    paper.remove();
  };
  window.addEventListener("afterprint", finish);
  try {
    window.print();
    return true;
  } catch {
    finish();
    return false;
  }
}
