import { render, type ComponentChildren } from "preact";
import type { PrintedDocument } from "../../addin/actions/export/printed-page.ts";
import { documentOnPaper } from "./paper-document.ts";

/**
 * Prints what is given alone. Resolves with null, or with what stood on the paper where the page may not print: a frame or
 * a window of Excel may pass print() over without a word, and then no beforeprint ever comes. `kind` names the paper for its
 * style sheet. With `onePage` what is longer than a page is made smaller until it fits, on Letter as on A4. What would then be
 * too small to read keeps its size and goes on over the page.
 */
export async function printPaper(content: ComponentChildren, kind = "working", onePage = false): Promise<PrintedDocument | null> {
  const paper = document.createElement("div");
  paper.className = `paper ${kind}-paper`;
  render(content, paper);
  document.body.append(paper);
  if (onePage) fitToPage(paper);
  document.body.classList.add("printing-paper");
  const finish = () => {
    window.removeEventListener("afterprint", finish);
    document.body.classList.remove("printing-paper");
    render(null, paper);
    paper.remove();
  };
  window.addEventListener("afterprint", finish);
  if (await prints()) return null;
  const unprinted = documentOnPaper(paper);
  finish();
  return unprinted;
}

/** Whether the page began to print. The event comes before print() returns, or soon after it. */
async function prints(): Promise<boolean> {
  let stopWaiting: () => void = () => undefined;
  const began = new Promise<true>((resolve) => {
    const begin = () => {
      resolve(true);
    };
    window.addEventListener("beforeprint", begin);
    stopWaiting = () => {
      window.removeEventListener("beforeprint", begin);
    };
  });
  const tooLong = new Promise<false>((resolve) => {
    setTimeout(() => {
      resolve(false);
    }, LONGEST_WAIT_MILLISECONDS);
  });
  try {
    window.print();
    return await Promise.race([began, tooLong]);
  } catch {
    return false;
  } finally {
    stopWaiting();
  }
}

const LONGEST_WAIT_MILLISECONDS = 1000;

/** Measures the paper out of sight, at the narrower width of A4, against the shorter height of Letter. */
function fitToPage(paper: HTMLElement): void {
  const { style } = paper;
  Object.assign(style, { display: "block", position: "absolute", visibility: "hidden", width: PAGE_WIDTH });
  const ruler = document.createElement("div");
  Object.assign(ruler.style, { height: PAGE_HEIGHT });
  paper.append(ruler);
  const page = ruler.getBoundingClientRect().height;
  ruler.remove();
  let zoom = 1;
  const isLonger = () => paper.getBoundingClientRect().height > page;
  while (isLonger() && zoom - ZOOM_STEP >= SMALLEST_ZOOM) {
    zoom -= ZOOM_STEP;
    style.setProperty("zoom", String(zoom));
    style.width = `calc(${PAGE_WIDTH} / ${zoom})`;
  }
  style.cssText = zoom === 1 || isLonger() ? "" : `zoom: ${zoom}`;
}

/** Within margins of half an inch: 210 mm of A4 and 11 in of Letter. */
const PAGE_WIDTH = "184mm";
const PAGE_HEIGHT = "252mm";
/** The smallest print of a long sheet is 7 points, and 6 is the least to read on a clipboard: common practice, no source. */
const SMALLEST_ZOOM = 0.86;
const ZOOM_STEP = 0.04;
