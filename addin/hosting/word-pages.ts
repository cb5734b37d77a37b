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
<p>What each function computes, with its equation and sources, is in the <a href="help.html">function reference</a>. What becomes of your records is on the <a href="privacy.html">privacy page</a>. Whoever hands the add-in out finds the steps on the <a href="admin.html">page for administrators</a>.</p>
<section id="terms">
<h2>Terms</h2>
<p>Soakbook comes without warranty. It computes; it does not permit. Have buried utilities marked before any digging, check results before anyone digs, and follow local codes and licensed practice.</p>
<p>What others wrote and is in it, with their licences, is on the <a href="licences.html">licences page</a>.</p>
</section>`,
  );
}

/** For whoever hands the add-in out in an organisation. Waiting times are those that Microsoft's pages give. */
export function adminPage(origin: string): string {
  const host = new URL(origin).origin;
  return page(
    "Soakbook: for administrators",
    html`<h2>Hand it out</h2>
<ol>
<li>In the Microsoft 365 admin center: Settings, Integrated apps, Upload custom apps. Choose Office Add-in, and give <a href="manifest.xml">manifest.xml</a>.</li>
<li>Choose the people. It can take up to 24 hours until the add-in shows in their Excel.</li>
<li>Where everybody has Excel of Microsoft 365, <a href="manifest.json">manifest.json</a> with the two icons that it names, in one zip file, does the same. With both installed the commands of manifest.xml are hidden within 24 hours.</li>
</ol>
<h2>Let it through</h2>
<ul>
<li>${host}: pages, scripts, functions and pictures. Nothing is sent there.</li>
<li>https://appsforoffice.microsoft.com: Excel's own script for add-ins.</li>
</ul>
<p>What the host must send with each file is in the README of the project: above all Access-Control-Allow-Origin, and nothing that forbids frames.</p>
<h2>Who can use it</h2>
<p>Excel of Microsoft 365 or 2021 and later on Windows and Mac, and Excel on the web; not on iPad. The sheets need formulas that fill the cells below them: an Excel that has none is told so before anything is set up.</p>
<h2>Update it</h2>
<ol>
<li>Build the new version and put its files in the place of the old ones, all at once.</li>
<li>Pages and pane are new when they are next opened. Excel keeps the list of functions for up to a day; each version has an address of its own for it.</li>
<li>Where the manifest has changed (a button, a new address), upload it again; that takes up to 24 hours. Ids of functions never change, so workbooks go on computing.</li>
</ol>
<p>Which version computes a workbook: =SOAK.VERSION().</p>`,
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
