import { render } from "preact";
import type { Working } from "../../addin/actions/show-working.ts";
import { workingText as words } from "./text.ts";
import { WorkingSheet } from "./working-sheet.tsx";

/** Prints the working alone, as a calculation sheet; false where the page may not print. */
export function printSheet(working: Working, date: string): boolean {
  const sheet = document.createElement("div");
  sheet.className = "working-paper";
  render(<Paper working={working} date={date} />, sheet);
  document.body.append(sheet);
  document.body.classList.add("working-printing");
  const finish = () => {
    window.removeEventListener("afterprint", finish);
    document.body.classList.remove("working-printing");
    render(null, sheet);
    sheet.remove();
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

function Paper({ working, date }: { readonly working: Working; readonly date: string }) {
  return (
    <>
      <h1>{words.sheetTitle}</h1>
      <dl class="working-lines">
        <div class="working-line">
          <dt>{words.cell}</dt>
          <dd>{working.address}</dd>
        </div>
        <div class="working-line">
          <dt>{words.date}</dt>
          <dd>{date}</dd>
        </div>
      </dl>
      <WorkingSheet working={working} linked={false} />
      <p class="working-footer">{words.footer}</p>
    </>
  );
}
