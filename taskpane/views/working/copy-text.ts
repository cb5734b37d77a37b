/** Puts the text on the clipboard; false where the page may not. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // A pane inside another program's frame is often refused the clipboard, but may still copy a selection.
    return copySelection(text);
  }
}

function copySelection(text: string): boolean {
  const area = document.createElement("textarea");
  const before = document.activeElement;
  area.value = text;
  area.setAttribute("aria-hidden", "true");
  area.style.position = "fixed";
  area.style.opacity = "0";
  document.body.append(area);
  area.select();
  try {
    return document.execCommand("copy");
  } catch {
    return false;
  } finally {
    area.remove();
    if (before instanceof HTMLElement) before.focus();
  }
}
