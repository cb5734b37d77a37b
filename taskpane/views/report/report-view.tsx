import { useState } from "preact/hooks";
import { dayNumberOf, isoDate, today } from "../../../addin/actions/dates.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { reportOf, type Report, type ReportQuestion } from "../../../addin/actions/report/report.ts";
import { saveReportCharts } from "../../../addin/actions/report/save-report-charts.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, ChoiceField, DateField, MessageBar } from "../../parts/form.tsx";
import { printPaper } from "../../parts/print-paper.tsx";
import type { GoTo } from "../../parts/slip-list.tsx";
import type { ViewProps } from "../../view.ts";
import { copyText } from "../working/copy-text.ts";
import { drawCharts } from "./draw-charts.tsx";
import { ReportChart, type Chart } from "./report-chart.tsx";
import { ReportPaper } from "./report-paper.tsx";
import { ReportTable } from "./report-table.tsx";
import { pastedReport } from "./report-words.ts";
import { reportText as words } from "./text.ts";
import "./report.css";

interface Asked {
  readonly from: string;
  readonly to: string;
  readonly funder: string | null;
}

/** The program's totals for a period and a funder, what stands behind them, and the ways they leave the pane. */
export function ReportView({
  program,
  workbook,
  write,
  goTo,
}: Pick<ViewProps, "program" | "workbook" | "write"> & { readonly goTo: GoTo }) {
  const asked = useDraft<Asked>("program/report", { from: "", to: "", funder: null });
  const [said, say] = useState("");
  const { from, to, funder } = asked.value;
  const { question, faults } = readQuestion(asked.value);
  const report = reportOf(program, question, today());
  const set = (changed: Partial<Asked>) => asked.set((current) => ({ ...current, ...changed }));
  const charts = chartsOf(report);
  const title = titleOf(asked.value);
  const select = (yard: Yard) => goTo(yard.site.at("siteId"));
  return (
    <div class="report">
      <h2 class="unseen">{words.title}</h2>
      <div class="report-days">
        <DateField label={words.from} value={from} fault={faults.from} onInput={(day) => set({ from: day })} />
        <DateField label={words.to} value={to} fault={faults.to} onInput={(day) => set({ to: day })} />
        <ChoiceField
          label={words.funder}
          value={funder}
          blank={words.everyFunder}
          choices={report.funders.map((name) => ({ value: name, says: name }))}
          onChoose={(name) => set({ funder: name })}
        />
      </div>
      <ReportTable lines={report.lines.filter(({ figure }) => isKey(figure.key))} select={select} />
      {charts.length === 0 ? (
        <p class="hint">{words.nothingToDraw}</p>
      ) : (
        charts.slice(0, 1).map((chart) => <ReportChart key={chart.title} chart={chart} />)
      )}
      <Remarks report={report} />
      <div class="folds">
        <Fold title={words.others} says={String(report.lines.length - KEY_FIGURES.length)}>
          <ReportTable lines={report.lines.filter(({ figure }) => !isKey(figure.key))} select={select} />
        </Fold>
        {charts.length > 1 && (
          <Fold
            title={charts
              .slice(1)
              .map(({ title: says }) => says)
              .join(", ")}
          >
            {charts.slice(1).map((chart) => (
              <ReportChart key={chart.title} chart={chart} />
            ))}
          </Fold>
        )}
        <Fold title={words.counting}>
          <p>{words.explain}</p>
          <p>{words.periodHint}</p>
          <p>{words.funderHint}</p>
        </Fold>
      </div>
      <div class="buttons">
        <Button onClick={async () => say((await copyReport(report)) ? words.copied : words.cannotCopy)}>{words.copy}</Button>
        <Button
          onClick={async () => {
            const paper = <ReportPaper report={report} charts={charts} title={title} date={isoDate(today())} />;
            say((await printPaper(paper, "report")) === null ? "" : words.cannotPrint);
          }}
        >
          {words.print}
        </Button>
        {charts.length > 0 && (
          <Button onClick={() => write(async () => saveReportCharts(workbook, await drawCharts(charts)), words.chartsSaved)}>
            {words.saveChart}
          </Button>
        )}
      </div>
      <p role="status" class="hint">
        {said}
      </p>
    </div>
  );
}

/** What a funder asks for first. */
const KEY_FIGURES: readonly string[] = ["yards", "contributingArea", "storage", "hours", "cash"];

function isKey(key: string): boolean {
  return KEY_FIGURES.includes(key);
}

async function copyReport(report: Report): Promise<boolean> {
  const { pastedTable } = await import("../../../addin/actions/export/csv-file.ts");
  return copyText(pastedTable(pastedReport(report)));
}

function readQuestion({ from, to, funder }: Asked): { question: ReportQuestion; faults: { from: string | null; to: string | null } } {
  const day = (typed: string) => (typed === "" ? null : dayNumberOf(typed));
  const [first, last] = [day(from), day(to)];
  const isBackwards = first !== null && last !== null && first > last;
  const fault = (typed: string, read: number | null) => (typed !== "" && read === null ? words.notADay : null);
  // A period that cannot be is said, and the whole program shown meanwhile.
  const period = isBackwards ? { from: null, to: null } : { from: first, to: last };
  return { question: { ...period, funder }, faults: { from: fault(from, first), to: isBackwards ? words.backwards : fault(to, last) } };
}

function Remarks({ report }: { readonly report: Report }) {
  const { notYet, undated, overdue } = report;
  const remarks = [
    ...(notYet.length === 0 ? [] : [words.notYet(notYet.length)]),
    ...(undated.length === 0 ? [] : [words.undated(undated.map(({ yard }) => yard.siteId).join(", "))]),
    ...(overdue.length === 0 ? [] : [words.overdue(overdue.length)]),
    words.noYard,
  ];
  return (
    <div role="status">
      <MessageBar kind={undated.length > 0 ? "warning" : "info"}>
        {remarks.map((remark) => (
          <p key={remark}>{remark}</p>
        ))}
      </MessageBar>
    </div>
  );
}

function chartsOf({ cashByFunder, areaByYear }: Report): readonly Chart[] {
  return [
    { title: words.chartYear, parts: areaByYear },
    { title: words.chartFunder, parts: cashByFunder },
  ].filter(({ parts }) => parts.length > 0);
}

function titleOf({ from, to, funder }: Asked): string {
  const period = from === "" && to === "" ? words.whole : words.between(from === "" ? words.start : from, to === "" ? words.today : to);
  return funder === null ? period : `${period}, ${funder}`;
}
