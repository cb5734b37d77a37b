import { render, type ComponentChildren } from "preact";

/**
 * Prints what is given alone; false where the page may not print. `kind` names the paper for its style sheet.
 * With `onePage` what is longer than a page is made smaller until it fits, on Letter as on A4. What would then be too small
 * to read keeps its size and goes on over the page.
 */
export function printPaper(content: ComponentChildren, kind = "working", onePage = false): boolean {
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
  try {
    window.print();
    return true;
  } catch {
    finish();
    return false;
  }
}

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
