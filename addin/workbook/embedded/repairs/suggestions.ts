import type { Injector } from "@univerjs/core";
import { IShortcutService, KeyCode } from "@univerjs/preset-sheets-core";
import type { IShortcutItem } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

const LIST_OF_FUNCTIONS = "sheet.formula-embedding-editor.search_function.";

/** The keys that end a cell. */
const CONFIRMING: readonly unknown[] = [KeyCode.ENTER, KeyCode.TAB];

/**
 * While the list of functions stands beside a formula, the grid takes its first entry for Enter and for Tab: a formula that
 * was typed whole becomes another one, and what is typed on after Tab falls into the middle of the name, since the cursor
 * follows a moment later. Here both keys confirm what was typed, as they do without the list; a click takes an entry.
 */
export function confirmWhatWasTyped(injector: Injector): void {
  const shortcuts = reach<Pick<IShortcutService, "registerShortcut">>(injector.get(IShortcutService), "keyboard", ["registerShortcut"]);
  const register = shortcuts.registerShortcut.bind(shortcuts);
  shortcuts.registerShortcut = (shortcut: IShortcutItem) =>
    shortcut.id.startsWith(LIST_OF_FUNCTIONS) && CONFIRMING.includes(shortcut.binding) ? { dispose: () => undefined } : register(shortcut);
}
