const NARROWEST_PIXELS = 320;
const WIDEST_PIXELS = 640;
const STARTING_PIXELS = 400;
const STEP_PIXELS = 16;
const WIDTH_KEY = "soakbook.pane.width";
const CLOSED_KEY = "soakbook.pane.closed";

export interface SplitterParts {
  /** Carries the pane's width as the custom property --pane-width. */
  readonly frame: HTMLElement;
  readonly separator: HTMLElement;
  readonly pane: HTMLElement;
  /** Opens and closes the pane. */
  readonly button: HTMLButtonElement;
}

/** Lets the pane be made wider, narrower or be closed, with the pointer or the keyboard, and remembers it. */
export function makeResizable({ frame, separator, pane, button }: SplitterParts): void {
  let width = between(Number(recall(WIDTH_KEY) ?? STARTING_PIXELS));
  let closed = recall(CLOSED_KEY) === "yes";

  const show = (): void => {
    frame.style.setProperty("--pane-width", `${width}px`);
    frame.classList.toggle("pane-closed", closed);
    pane.hidden = closed;
    separator.hidden = closed;
    separator.setAttribute("aria-valuenow", String(width));
    button.setAttribute("aria-expanded", String(!closed));
    button.textContent = closed ? "Show the pane" : "Hide the pane";
  };
  const resize = (pixels: number): void => {
    width = between(pixels);
    remember(WIDTH_KEY, String(width));
    show();
  };

  separator.setAttribute("aria-valuemin", String(NARROWEST_PIXELS));
  separator.setAttribute("aria-valuemax", String(WIDEST_PIXELS));
  separator.addEventListener("keydown", (event) => {
    const wanted = { ArrowLeft: width + STEP_PIXELS, ArrowRight: width - STEP_PIXELS, Home: WIDEST_PIXELS, End: NARROWEST_PIXELS }[
      event.key
    ];
    if (wanted === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    resize(wanted);
  });
  separator.addEventListener("pointerdown", (event) => {
    separator.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  separator.addEventListener("pointermove", (event) => {
    if (separator.hasPointerCapture(event.pointerId)) resize(frame.getBoundingClientRect().right - event.clientX);
  });
  button.addEventListener("click", () => {
    closed = !closed;
    remember(CLOSED_KEY, closed ? "yes" : "no");
    show();
  });
  show();
}

function between(pixels: number): number {
  const whole = Number.isFinite(pixels) ? Math.round(pixels) : STARTING_PIXELS;
  return Math.min(WIDEST_PIXELS, Math.max(NARROWEST_PIXELS, whole));
}

// A browser that keeps nothing still shows the pane; it starts at its usual width each time.
function recall(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function remember(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    return;
  }
}
