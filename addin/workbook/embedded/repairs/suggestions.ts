import type { Injector } from "@univerjs/core";
import { IShortcutService, KeyCode } from "@univerjs/preset-sheets-core";
import type { IShortcutItem } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

const LIST_OF_FUNCTIONS = "sheet.formula-embedding-editor.search_function.";

/**
 * While the list of functions stands beside a formula, the grid takes its first entry for Enter, so that on a slow machine
 * a formula that was typed whole becomes another one. Here Enter confirms what was typed; Tab and a click take an entry.
 */
export function confirmWhatWasTyped(injector: Injector): void {
  const shortcuts = reach<Pick<IShortcutService, "registerShortcut">>(injector.get(IShortcutService), "keyboard", ["registerShortcut"]);
  const register = shortcuts.registerShortcut.bind(shortcuts);
  shortcuts.registerShortcut = (shortcut: IShortcutItem) =>
    shortcut.id.startsWith(LIST_OF_FUNCTIONS) && shortcut.binding === KeyCode.ENTER ? { dispose: () => undefined } : register(shortcut);
}
