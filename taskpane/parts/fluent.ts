/**
 * The Fluent elements that the pane uses, each defined by its own import so that no other is bundled.
 * Fields are native inputs in Fluent's colors: a description cannot reach an input inside a shadow root.
 */
import "@fluentui/web-components/button.js";
import "@fluentui/web-components/message-bar.js";
import "@fluentui/web-components/spinner.js";
import "@fluentui/web-components/tab.js";
import "@fluentui/web-components/tablist.js";
import { setTheme } from "@fluentui/web-components/theme/set-theme.js";
import { webDarkTheme, webLightTheme } from "@fluentui/tokens";

export type PaneTheme = "light" | "dark" | "auto";

/** Applies the theme, and follows the system while it is "auto". */
export function applyTheme(theme: PaneTheme): () => void {
  const systemDark = matchMedia("(prefers-color-scheme: dark)");
  const apply = () => {
    const dark = theme === "dark" || (theme === "auto" && systemDark.matches);
    setTheme(dark ? webDarkTheme : webLightTheme);
    document.documentElement.classList.toggle("soakbook-dark", dark);
  };
  apply();
  systemDark.addEventListener("change", apply);
  return () => systemDark.removeEventListener("change", apply);
}
