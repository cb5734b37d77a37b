import { useState } from "preact/hooks";
import { minutesOfToday, today } from "../../../addin/actions/dates.ts";
import { NOTICE_KINDS, whatIsNext, type Notice, type NoticeKind, type Urgency } from "../../../addin/actions/program/what-is-next.ts";
import { Fold } from "../../parts/fold.tsx";
import { ChoiceField, TextField, VerdictBadge, type ShownVerdict } from "../../parts/form.tsx";
import { showTabNext } from "../../yard-page.tsx";
import { nameOf } from "../../yard-button.tsx";
import type { ViewProps } from "../../view.ts";
import { showStageNext } from "../visits/visits-view.tsx";
import { boardOf, tabOf } from "./board.ts";
import { StandingLine } from "./standing-line.tsx";
import { nextText } from "./text.ts";
import "./next.css";

const BADGES: Readonly<Record<Urgency, ShownVerdict>> = {
  stop: "stop",
  overdue: "fail",
  soon: "refer",
  next: "watch",
  waiting: "not measured",
  "on record": "not measured",
};
/** What does not wait stands open. */
const FOR_NOW: ReadonlySet<Urgency> = new Set(["overdue", "soon"]);
const KINDS = NOTICE_KINDS.map((kind) => ({ value: kind, says: nextText.kinds[kind] }));

/** What is next across the program; a line opens its yard where the thing is done. */
export function NextView({
  program,
  workbook,
  write,
  onPick,
}: Pick<ViewProps, "program" | "workbook" | "write"> & { readonly onPick: (siteId: string) => void }) {
  const [kind, setKind] = useState<NoticeKind | null>(null);
  const [search, setSearch] = useState("");
  const notices = whatIsNext(program, today(), minutesOfToday());
  const groups = boardOf(notices, kind, search);
  const shown = groups.flatMap(({ yards }) => yards.flatMap((each) => each.notices)).length;
  const open = (notice: Notice) => {
    if (notice.yard === null) return;
    showTabNext(tabOf(notice));
    const stage = notice.at?.stage ?? notice.stage;
    if (stage !== null) showStageNext(notice.yard.siteId, stage, notice.at?.step);
    onPick(notice.yard.siteId);
  };
  return (
    <>
      <section class="side-by-side" aria-label={nextText.title}>
        <TextField label={nextText.search} value={search} onInput={setSearch} />
        <ChoiceField label={nextText.show} value={kind} choices={KINDS} blank={nextText.everything} onChoose={setKind} />
      </section>
      <p role="status" class="hint">
        {notices.length === 0 ? nextText.none : shown === 0 ? nextText.noMatch : nextText.count(shown, notices.length)}
      </p>
      {groups.map(({ urgency, yards }, place) => (
        <Fold
          key={urgency}
          title={nextText.urgencies[urgency]}
          says={nextText.yards(yards.length)}
          badge={<VerdictBadge verdict={BADGES[urgency]} says={nextText.urgencies[urgency]} />}
          needed={kind !== null || search.trim() !== "" || place === 0 || FOR_NOW.has(urgency)}
        >
          <div class="board-group">
            <ul class="yard-list">
              {yards.map(({ yard, notices: lines }) => (
                <li key={yard?.siteId ?? ""} class="board-yard">
                  <h3>
                    <span class="yard-id">{yard?.siteId ?? nextText.program}</span> {yard !== null && nameOf(yard)}
                  </h3>
                  <ul class="yard-list">
                    {lines.map((notice) => (
                      <li key={`${notice.kind} ${notice.sentence}`}>
                        <Line notice={notice} under={urgency} onOpen={() => open(notice)} />
                      </li>
                    ))}
                  </ul>
                </li>
              ))}
            </ul>
          </div>
        </Fold>
      ))}
      <StandingLine program={program} workbook={workbook} write={write} />
    </>
  );
}

/** A line tells its own urgency where it is not the one that it stands under. */
function Line({
  notice: { yard, sentence, urgency },
  under,
  onOpen,
}: {
  readonly notice: Notice;
  readonly under: Urgency;
  readonly onOpen: () => void;
}) {
  const says = (
    <>
      {urgency !== under && <VerdictBadge verdict={BADGES[urgency]} says={nextText.urgencies[urgency]} />}
      <span>{sentence}</span>
    </>
  );
  if (yard === null) return <p class="board-line">{says}</p>;
  return (
    <button type="button" class="yard-button board-line" onClick={onOpen}>
      <span class="unseen">{nextText.open(yard.siteId)}</span>
      {says}
    </button>
  );
}
