import { useEffect, useState } from "preact/hooks";
import { Button, ChoiceField, MessageBar, NumberField } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import {
  clockFace,
  elapsedMinutes,
  isReadingDue,
  minutesFace,
  nextReadingMinutes,
  READING_INTERVALS_MINUTES,
  USUAL_INTERVAL_MINUTES,
  type Clock,
} from "./clock.ts";
import { hasRoom, lastReadingMinutes, type HoleDraft } from "./hole-draft.ts";
import { holeTestText } from "./text.ts";

const words = holeTestText.clock;

/** Start, a large clock, and one press a reading. */
export function TimerCard({
  draft,
  clock,
  units,
  onWater,
  onStart,
  onInterval,
  onStop,
  onReading,
}: {
  readonly draft: HoleDraft;
  readonly clock: Clock | null;
  readonly units: UnitSystem;
  readonly onWater: (typed: string) => void;
  readonly onStart: (clock: Clock) => void;
  readonly onInterval: (clock: Clock, minutes: number) => void;
  readonly onStop: () => void;
  /** The water typed belongs to this minute. */
  readonly onReading: (minutes: number) => void;
}) {
  const [interval, chooseInterval] = useState<number>(USUAL_INTERVAL_MINUTES);
  const now = useNow(clock !== null);
  const down = draft.measured === "down";
  const last = lastReadingMinutes(draft);

  const waterField = (
    <NumberField
      big
      label={down ? words.downNow : words.waterNow}
      unit={shownUnit("depth", units)}
      value={draft.waterNow}
      onInput={onWater}
    />
  );
  const intervalChoice = (
    <ChoiceField
      label={words.interval}
      value={String(clock?.intervalMinutes ?? interval)}
      choices={READING_INTERVALS_MINUTES.map((minutes) => ({ value: String(minutes), says: words.minutes(minutes) }))}
      onChoose={(minutes) => (clock === null ? chooseInterval(Number(minutes)) : onInterval(clock, Number(minutes)))}
    />
  );

  if (clock === null) {
    if (draft.readings.length > 0) return <p class="hint">{words.notForTyped}</p>;
    const start = () => onStart({ startedAtMilliseconds: Date.now(), intervalMinutes: interval });
    return (
      <section class="card timer" aria-label={words.title}>
        <h2>{words.title}</h2>
        <p class="hint">{words.startHint}</p>
        {intervalChoice}
        {waterField}
        <Button kind="primary" onClick={start}>
          {words.start}
        </Button>
      </section>
    );
  }

  const due = isReadingDue(clock, last, now);
  const add = () => onReading(elapsedMinutes(clock, Date.now()));
  return (
    <section class={due ? "card timer timer-due" : "card timer"} aria-label={words.title}>
      <h2>{words.title}</h2>
      <p class="clock-face" role="timer" aria-label={words.face(clockFace(clock, now))}>
        {clockFace(clock, now)}
      </p>
      <p class="clock-next">{words.next(minutesFace(nextReadingMinutes(clock, last)))}</p>
      <div role="status" class="reading-due">
        {due && <MessageBar kind="info">{words.due(draft.readings.length + 1)}</MessageBar>}
      </div>
      {hasRoom(draft) && waterField}
      <div class="buttons">
        {hasRoom(draft) && (
          <Button kind="primary" onClick={add}>
            {words.add}
          </Button>
        )}
        <Button kind="quiet" onClick={onStop}>
          {words.stop}
        </Button>
      </div>
      {intervalChoice}
    </section>
  );
}

/** The time now, kept fresh while a clock runs. */
function useNow(running: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!running) return undefined;
    setNow(Date.now());
    const ticking = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(ticking);
  }, [running]);
  return now;
}
