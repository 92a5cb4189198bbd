/** What drives a figure, as bars and in numbers. @module */
import * as Plot from "@observablehq/plot";
import {
  type DrivenEnd,
  type Driver,
  DRIVER_STEP,
  type FigureDrivers,
  figureDrivers,
  type StudyRun,
} from "../../study/mod.ts";
import { formatQuantity, showSi } from "../../units/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { figureTexts } from "./figures_table.ts";

/** Bars at most; the table behind the picture has them all. */
const BARS = 8;

const STEP = showSi(DRIVER_STEP, "share");

/** Change of the figure in per cent of its planned value. */
function percent({ figure: { value } }: FigureDrivers, end: DrivenEnd | null): number | null {
  return end === null || value === 0 ? null : 100 * (end.figure - value) / Math.abs(value);
}

/**
 * How far a tenth more or less of each number moves a figure, the strongest first.
 *
 * @param found from the study
 */
export function driversChart(found: FigureDrivers): DisplayItem {
  const { figure: planned, key, drivers, still } = found;
  const text = (value: number) => figureTexts(key, { ...planned, value })[0];
  const shown = drivers.slice(0, BARS);
  const bars = shown.flatMap((driver) =>
    (["lower", "higher"] as const).flatMap((side) => {
      const change = percent(found, driver[side]);
      return change === null ? [] : [{ key: driver.key, side, change }];
    })
  );
  const [first] = shown;
  return figure({
    height: 62 + Math.max(1, shown.length) * 34,
    marginLeft: 170,
    marginTop: 10,
    x: { label: "change of the figure, per cent", grid: true, nice: true },
    fy: { domain: shown.map((driver) => driver.key), label: null, axis: null },
    y: { domain: ["lower", "higher"], axis: null },
    marks: [
      Plot.barX(bars, {
        x: "change",
        y: "side",
        fy: "key",
        fill: ({ side }: typeof bars[number]) => side === "higher" ? PALETTE.warm : "white",
        stroke: ({ side }: typeof bars[number]) => side === "higher" ? PALETTE.warm : PALETTE.cold,
        strokeWidth: 1.5,
        insetTop: 1,
        insetBottom: 1,
      }),
      Plot.text(shown, {
        fy: "key",
        text: "key",
        frameAnchor: "left",
        textAnchor: "end",
        dx: -8,
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: `What drives this: ${planned.label}, ${text(planned.value)} as planned`,
    legend: [
      { label: `${STEP} more (filled)`, colour: PALETTE.warm },
      { label: `${STEP} less (open)`, colour: PALETTE.cold },
    ],
    alt: first === undefined
      ? `No number of these sections moves ${planned.label}.`
      : `Change of ${planned.label} where one number of the study is ${STEP} lower or higher, ` +
        `counts by one; most by ${first.key}: ${sidesText(first, text)}.`,
    note: `Each number alone, all else as planned; counts by one.${
      still.length === 0 ? "" : ` Tried without effect: ${still.join(", ")}.`
    }`,
    table: dataTable(drivers, [
      { head: "key", value: (row) => row.key },
      { head: "as planned", value: (row) => formatQuantity(row.planned, row.kind), right: true },
      { head: "lower", value: (row) => endText(row, row.lower), right: true },
      { head: `${planned.label}, lower`, value: (row) => figureText(row.lower, text), right: true },
      { head: "higher", value: (row) => endText(row, row.higher), right: true },
      {
        head: `${planned.label}, higher`,
        value: (row) => figureText(row.higher, text),
        right: true,
      },
    ]),
  });
}

function sidesText({ lower, higher }: Driver, text: (value: number) => string): string {
  return [lower, higher].filter((end) => end !== null).map((end) => text(end.figure)).join(" and ");
}

const endText = ({ kind }: Driver, end: DrivenEnd | null) =>
  end === null ? "not possible" : formatQuantity(end.input, kind);

const figureText = (end: DrivenEnd | null, text: (value: number) => string) =>
  end === null ? "–" : text(end.figure);

/**
 * What drives a figure of the tubes, the headers or the fan in this study.
 *
 * @example
 * ```ts ignore
 * await show(await drivers(run, "fan.airFlow"));
 * ```
 *
 * @param run of the study
 * @param key of the figure in results.json
 * @throws {RangeError} for a key that is no figure with a number of these chapters
 */
export async function drivers(run: StudyRun, key: string): Promise<DisplayItem> {
  return driversChart(await figureDrivers(run, key));
}
