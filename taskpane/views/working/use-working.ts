import { useEffect, useRef, useState } from "preact/hooks";
import type { Working } from "../../../addin/actions/working/show-working.ts";
import type { Workbook } from "../../../addin/workbook/port.ts";
import { WorkingWatch } from "./working-watch.ts";

export interface WorkingInPane {
  /** The working of the selected cell, when one of our functions gave it its value. */
  readonly offered: Working | null;
  /** The working that is read now instead of the page. */
  readonly open: Working | null;
  /** Whether the page comes back because the working was closed: then its bar takes the focus. */
  readonly returning: { current: boolean };
  readonly show: () => void;
  readonly close: () => void;
}

/** An open working follows the selection from formula to formula, and stays while other cells are looked at. */
export function useWorking(workbook: Workbook): WorkingInPane {
  const [offered, offer] = useState<Working | null>(null);
  const [isOpen, setOpen] = useState(false);
  const last = useRef<Working | null>(null);
  const returning = useRef(false);
  useEffect(() => new WorkingWatch(workbook, offer).start(), [workbook]);
  if (offered !== null) last.current = offered;
  return {
    offered,
    open: isOpen ? last.current : null,
    returning,
    show: () => {
      returning.current = false;
      setOpen(true);
    },
    close: () => {
      returning.current = true;
      setOpen(false);
    },
  };
}
