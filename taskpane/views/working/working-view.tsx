import { useEffect, useRef, useState } from "preact/hooks";
import type { Working } from "../../../addin/actions/working/show-working.ts";
import { Button } from "../../parts/form.tsx";
import { layOutInstead } from "../../parts/lay-out-instead.ts";
import type { ViewProps } from "../../view.ts";
import { copyText } from "./copy-text.ts";
import { printSheet } from "./print-sheet.tsx";
import { workingText as words } from "./text.ts";
import { workingAsText } from "./working-lines.ts";
import { WorkingSheet } from "./working-sheet.tsx";
import "./working.css";

/** The working of one cell, instead of the page that was in the pane. */
export function WorkingView({
  working,
  onBack,
  ...view
}: Pick<ViewProps, "workbook" | "write"> & { readonly working: Working; readonly onBack: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [said, say] = useState("");
  const [byHand, showByHand] = useState<string | null>(null);
  useEffect(() => heading.current?.focus(), []);
  useEffect(() => {
    say("");
    showByHand(null);
  }, [working.address]);

  const copy = async () => {
    const text = workingAsText(working, today());
    const copied = await copyText(text);
    showByHand(copied ? null : text);
    say(copied ? words.copied : words.copyByHand);
  };
  const print = async () => {
    say("");
    await layOutInstead(view, words.sheetName(working.address), await printSheet(working, today()));
  };
  return (
    <section class="page working" aria-label={words.title(working.address)}>
      <h1 ref={heading} tabIndex={-1}>
        {words.title(working.address)}
      </h1>
      <div class="buttons">
        <Button kind="quiet" onClick={onBack}>
          {`‹ ${words.back}`}
        </Button>
        <Button onClick={copy}>{words.copy}</Button>
        <Button onClick={print}>{words.print}</Button>
      </div>
      <p role="status" class="working-said">
        {said}
      </p>
      {byHand !== null && <textarea class="input working-text" readOnly rows={8} aria-label={words.copyText} value={byHand} />}
      <WorkingSheet working={working} linked />
      <p class="hint">{words.footer}</p>
    </section>
  );
}

/** Offers the working of the selected cell; takes no room while there is none. */
export function WorkingBar({
  working,
  takesFocus,
  onOpen,
}: {
  readonly working: Working | null;
  readonly takesFocus: { current: boolean };
  readonly onOpen: () => void;
}) {
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (takesFocus.current) bar.current?.querySelector<HTMLElement>("fluent-button")?.focus();
    takesFocus.current = false;
  }, []);
  if (working === null) return null;
  return (
    <div ref={bar} class="working-bar">
      <span class="working-place">{working.address}</span>
      <Button onClick={onOpen}>{words.bar}</Button>
    </div>
  );
}

function today(): string {
  return new Date().toLocaleDateString("en-CA");
}
