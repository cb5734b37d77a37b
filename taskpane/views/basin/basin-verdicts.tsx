import type { Remedy, RoomCheck } from "../../../addin/actions/basin/basin-room.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, MessageBar, VerdictBadge } from "../../parts/form.tsx";
import { remedyWords, type BasinCheck } from "./basin-checks.ts";
import { basinText } from "./text.ts";

/** What would fit where this basin does not, and the inputs for it in one tap. */
export function RoomRemedy({
  room,
  units,
  onUse,
}: {
  readonly room: RoomCheck;
  readonly units: UnitSystem;
  readonly onUse: (remedy: Remedy) => void;
}) {
  if (room.verdict !== "too large") return null;
  const { remedy } = room;
  const words = basinText.room;
  if (remedy === null) return <MessageBar kind="warning">{words.none}</MessageBar>;
  return (
    <MessageBar kind="warning" actions={<Button onClick={() => onUse(remedy)}>{words.use}</Button>}>
      {remedyWords(remedy, units)}
    </MessageBar>
  );
}

/** What does not pass stands open; what passes is folded to a line. */
export function Checks({ checks }: { readonly checks: readonly BasinCheck[] }) {
  const words = basinText.checks;
  const passing = checks.filter(({ verdict }) => verdict === "pass");
  const others = checks.filter(({ verdict }) => verdict !== "pass");
  return (
    <section aria-label={words.title}>
      <CheckList checks={others} />
      <div class="folds">
        <Fold title={words.passing(passing.length, checks.length)} badge={others.length === 0 && <VerdictBadge verdict="pass" />}>
          <CheckList checks={passing} />
          <p class="hint">{words.localCodes}</p>
        </Fold>
      </div>
    </section>
  );
}

function CheckList({ checks }: { readonly checks: readonly BasinCheck[] }) {
  if (checks.length === 0) return null;
  return (
    <ul class="checks">
      {checks.map(({ name, words: says, verdict }) => (
        <li key={name}>
          <div>
            <span class="check-name">{name}</span>
            <span>{says}</span>
          </div>
          <VerdictBadge verdict={verdict} />
        </li>
      ))}
    </ul>
  );
}

/** Each in sight: what the numbers alone do not say. */
export function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section aria-label={basinText.cautions.title}>
      <MessageBar kind="warning">
        {cautions.length === 1 ? (
          cautions[0]
        ) : (
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        )}
      </MessageBar>
    </section>
  );
}
