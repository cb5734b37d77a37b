import { html, type Html } from "./html.ts";
import { plainPage } from "./plain-page.ts";

/** The pages of words that the manifests lead to. */
export function privacyPage(): string {
  return page(
    "Soakbook: privacy",
    html`<p>Soakbook has no server of its own. Nothing that you type, measure or compute leaves your workbook.</p>
<ul>
<li>In Excel, all records stand in the workbook, and whoever can open the workbook can read them. Excel itself loads one script from Microsoft and keeps the workbook where you keep it: Microsoft's terms hold for that.</li>
<li>Without Excel, the workbook is kept in this browser, on this device, until you start over or clear the browser's data. Save it to a file to have it elsewhere.</li>
<li>Files that you save (workbooks, estimates, drawings, prints) go where you save them and nowhere else.</li>
<li>There are no cookies, no accounts, no counting of visits and no messages to anybody. The host of these pages sees that they were fetched, as every host does.</li>
<li>The name that you give in the pane, for the log of changes, is kept in this browser and written into the workbook beside what you write.</li>
</ul>
<p>A yard's records can name people and places. Share the workbook as you would share the paper file.</p>`,
  );
}

export function supportPage(): string {
  return page(
    "Soakbook: support",
    html`<p>Ask whoever hosts this add-in for you. Say what you did, what you expected and what came, and give the answer to <code>=SOAK.VERSION()</code>.</p>
<h2>First things to try</h2>
<ul>
<li>A cell shows #NAME?: open the pane once, then use Check the workbook.</li>
<li>A cell shows #VALUE! or #N/A: select it; the pane says in words what is missing or impossible.</li>
<li>The pane says that Excel is waiting: press Enter or Esc in the sheet, then try again.</li>
<li>A sheet is protected: unprotect it on the Review tab. Soakbook never does so by itself.</li>
</ul>
<p>What each function computes, with its equation and sources, is in the <a href="help.html">function reference</a>. What becomes of your records is on the <a href="privacy.html">privacy page</a>.</p>
<section id="terms">
<h2>Terms</h2>
<p>Soakbook comes without warranty. It computes; it does not permit. Have buried utilities marked before any digging, check results before anyone digs, and follow local codes and licensed practice.</p>
<p>What others wrote and is in it, with their licences, is on the <a href="licences.html">licences page</a>.</p>
</section>`,
  );
}

function page(title: string, content: Html): string {
  return plainPage(
    title,
    html`<main>
<h1>${title}</h1>
${content}
</main>`,
  );
}
