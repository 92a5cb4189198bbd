/** Short gaps filled and listed, long ones refused. @module */
import { describeHour, HOURS_PER_YEAR, type Notice, notice } from "../../basics/mod.ts";
import type { HourlySun } from "../../sun/mod.ts";
import { findGaps, LONGEST_GAP } from "../gaps.ts";
import { firstRowOf, type HourRows } from "../read/hour_rows.ts";
import { type ClimateQuantity, QUANTITY_RULES } from "../read/quantities.ts";
import type { FaultList, TableLayout } from "../read/table.ts";

/** Hourly values by quantity; NaN where missing. */
export type HourSeries = Partial<Record<ClimateQuantity, Float64Array>>;

/** What completing a year works on. */
export interface Completion {
  readonly layout: TableLayout;
  readonly hours: HourRows;
  readonly sun: HourlySun;
  readonly series: HourSeries;
  readonly notices: Notice[];
  readonly faults: FaultList;
  /** true where radiation that certainly stands in the wrong hours is moved back */
  readonly mendShift: boolean;
}

/** Notes what was done for the reader. */
export function tell(context: Completion, text: string, level: "info" | "warning" = "info"): void {
  context.notices.push(notice(level, "climate", text));
}

/** True where a series has any value. */
export function hasValues(series: Float64Array | undefined): boolean {
  return series?.some((value) => !Number.isNaN(value)) ?? false;
}

/** Fills short gaps straight between the neighbours; notes long ones as faults. */
export function fillStraight(
  context: Completion,
  quantity: ClimateQuantity,
): Float64Array | undefined {
  const values = context.series[quantity];
  if (values === undefined) return undefined;
  const runs = findGaps((hour) => Number.isNaN(values[hour]!));
  const filled = values.slice();
  for (const run of runs) {
    if (run.length > LONGEST_GAP) {
      longGap(context, quantity, run);
      continue;
    }
    const before = values[(run.start + HOURS_PER_YEAR - 1) % HOURS_PER_YEAR]!;
    const after = values[(run.start + run.length) % HOURS_PER_YEAR]!;
    const from = Number.isNaN(before) ? after : before;
    const to = Number.isNaN(after) ? before : after;
    for (let step = 0; step < run.length; step++) {
      filled[run.start + step] = from + (to - from) * (step + 1) / (run.length + 1);
    }
  }
  listFilled(context, quantity, runs.filter((run) => run.length <= LONGEST_GAP));
  return filled;
}

/** Notes a gap too long to fill. */
export function longGap(
  context: Completion,
  quantity: ClimateQuantity,
  run: { start: number; length: number },
): void {
  const row = firstRowOf(context.hours, run.start);
  const plan = context.layout.columns.find((column) => column.quantity === quantity);
  context.faults.add(
    `Cannot fill the gap: ${
      QUANTITY_RULES[quantity].words
    } is missing for ${run.length} hours from ` +
      `${
        describeHour(run.start)
      }; at most ${LONGEST_GAP} are filled in; complete the file from a ` +
      "neighbouring station or another year",
    {
      file: context.layout.file,
      line: context.layout.firstLine + Math.max(0, row),
      ...(plan === undefined ? {} : { column: plan.head }),
    },
  );
}

/** Lists the gaps that were filled. */
export function listFilled(
  context: Completion,
  quantity: ClimateQuantity,
  runs: readonly { start: number; length: number }[],
): void {
  if (runs.length === 0) return;
  const hours = runs.reduce((sum, run) => sum + run.length, 0);
  const shown = runs.slice(0, 8).map((run) =>
    run.length === 1 ? describeHour(run.start) : `${describeHour(run.start)} (${run.length} h)`
  );
  const more = runs.length > shown.length ? ` and ${runs.length - shown.length} more` : "";
  tell(
    context,
    `${QUANTITY_RULES[quantity].words}: ${hours} missing ${
      hours === 1 ? "hour" : "hours"
    } filled in: ` +
      `${shown.join(", ")}${more}`,
    "warning",
  );
}
