import { useState } from "preact/hooks";
import { Button } from "../../parts/form.tsx";
import type { ViewProps } from "../../view.ts";
import { BringBack } from "./bring-back.tsx";
import { TakeAlong } from "./take-along.tsx";
import { fieldCopyText } from "./text.ts";
import "./field-copy.css";

/** Chosen yards on another device for a day, and back. */
export function FieldCopyView(props: Pick<ViewProps, "program" | "workbook" | "write">) {
  const [open, show] = useState<"take" | "bring" | null>(null);
  const way = (which: "take" | "bring") => (
    <Button aria-expanded={open === which} onClick={() => show(open === which ? null : which)}>
      {fieldCopyText[which]}
    </Button>
  );
  return (
    <section aria-label={fieldCopyText.title}>
      <h2>{fieldCopyText.title}</h2>
      <p class="hint">{fieldCopyText.explain}</p>
      <div class="buttons">
        {way("take")}
        {way("bring")}
      </div>
      {open === "take" && <TakeAlong {...props} />}
      {open === "bring" && <BringBack {...props} />}
    </section>
  );
}
