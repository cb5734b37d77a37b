import { useEffect, useRef } from "preact/hooks";
import type { RefObject } from "preact";

/**
 * Keeps the keyboard where the person is: a form that opens takes the focus to its first field, and one that closes
 * gives it to the button that stands there again. A focus that is elsewhere by then is left alone.
 */
export function useFocusWhenOpened(open: boolean): RefObject<HTMLDivElement | null> {
  const container = useRef<HTMLDivElement>(null);
  const before = useRef(open);
  useEffect(() => {
    if (before.current === open) return;
    before.current = open;
    const { activeElement } = document;
    const lost = activeElement === null || activeElement === document.body;
    if (!lost && container.current?.contains(activeElement) !== true) return;
    container.current?.querySelector<HTMLElement>(open ? "input, select" : "fluent-button")?.focus();
  }, [open]);
  return container;
}

/** Takes the focus while shown, and gives it back to where it was. */
export function useFocusWhileShown(): RefObject<HTMLDivElement | null> {
  const shown = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    shown.current?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return shown;
}

/** For the heading of a page: takes the focus when the page was asked for in the pane, and never from the sheet. */
export function useFocusIfAsked(asked: { current: boolean }): RefObject<HTMLHeadingElement | null> {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (asked.current) heading.current?.focus();
    asked.current = false;
  }, []);
  return heading;
}
