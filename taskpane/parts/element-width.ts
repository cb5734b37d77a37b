import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";

/** The width an element has now, in CSS pixels, so that what is drawn in it keeps its letters at their size. 0 before it is laid out. */
export function useElementWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const observed = element.current;
    if (observed === null) return undefined;
    const observer = new ResizeObserver(() => setWidth(Math.floor(observed.clientWidth)));
    observer.observe(observed);
    setWidth(Math.floor(observed.clientWidth));
    return () => observer.disconnect();
  }, [element]);
  return width;
}
