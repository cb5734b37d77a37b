import { useState } from "preact/hooks";
import { today } from "../../addin/actions/dates.ts";
import type { Program } from "../../addin/actions/read-program.ts";
import { NOTICE_KINDS, whatIsNext } from "../../addin/actions/what-is-next.ts";
import type { Notice, NoticeKind, Urgency } from "../../addin/actions/what-is-next.ts";
import { ChoiceField, TextField, VerdictBadge } from "../form.tsx";
import type { ShownVerdict } from "../form.tsx";
import { showTabNext } from "../yard-page.tsx";
import { YardButton } from "../yard-button.tsx";
import { showStageNext } from "../visits/visits-view.tsx";
import { boardOf, tabOf } from "./board.ts";
import { nextText } from "./text.ts";
import "./next.css";

const BADGES: Readonly<Record<Urgency, ShownVerdict>> = { stop: "stop", overdue: "fail", soon: "refer", next: "watch", waiting: "not measured", "on record": "not measured" };
const KINDS = NOTICE_KINDS.map((kind) => ({ value: kind, says: nextText.kinds[kind] }));

/** What is next across the program; a line opens its yard where the thing is done. */
export function NextView({ program, onPick }: { readonly program: Program; readonly onPick: (siteId: string) => void }) {
  const [kind, setKind] = useState<NoticeKind | null>(null);
  const [search, setSearch] = useState("");
  const notices = whatIsNext(program, today());
  const groups = boardOf(notices, kind, search);
  const shown = groups.reduce((sum, group) => sum + group.notices.length, 0);
  const open = (notice: Notice) => {
    if (notice.yard === null) return;
    showTabNext(tabOf(notice));
    if (notice.stage !== null) showStageNext(notice.yard.siteId, notice.stage);
    onPick(notice.yard.siteId);
  };
  return (
    <>
      <section>
        <h2>{nextText.title}</h2>
        <p class="hint">{nextText.explain}</p>
        <ChoiceField label={nextText.show} value={kind} choices={KINDS} blank={nextText.everything} onChoose={setKind} />
        <TextField label={nextText.search} hint={nextText.searchHint} value={search} onInput={setSearch} />
        <p role="status" class="hint">
          {notices.length === 0 ? nextText.none : shown === 0 ? nextText.noMatch : nextText.count(shown, notices.length)}
        </p>
      </section>
      {groups.map(({ urgency, notices: lines }) => (
        <section key={urgency} class="board-group" aria-label={nextText.urgencies[urgency]}>
          <h3>
            <VerdictBadge verdict={BADGES[urgency]} says={nextText.urgencies[urgency]} />
          </h3>
          <ul class="yard-list">
            {lines.map((notice) => (
              <li key={`${notice.kind} ${notice.yard?.siteId ?? ""} ${notice.sentence}`}>
                <Line notice={notice} onOpen={() => open(notice)} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function Line({ notice, onOpen }: { readonly notice: Notice; readonly onOpen: () => void }) {
  const { yard, sentence } = notice;
  if (yard === null) {
    return (
      <div class="board-line">
        <span class="yard-id">{nextText.program}</span>
        <span>{sentence}</span>
      </div>
    );
  }
  return <YardButton yard={yard} says={sentence} onPick={onOpen} />;
}
