/** A year as a carpet: day along, hour of the day up, colour classes. @module */
import { blocksMark } from "./blocks.ts";
import { axisDate, monthTicks } from "./calendar.ts";
import { type DataTable } from "./data_table.ts";
import { type DisplayItem, figure } from "./figure.ts";
import type { LegendEntry } from "./picture.ts";
import { kindOfAxis } from "./readers_axes.ts";
import { readersScale, readersUnits } from "./reader.ts";

/** Colour classes of a field. */
export interface ColourClasses {
  /** limits between the classes, rising */
  readonly thresholds: readonly number[];
  /** one colour more than limits */
  readonly colours: readonly string[];
}

/** What a carpet needs. */
export interface CarpetInput {
  /** 8760 values */
  readonly series: ArrayLike<number>;
  /** colour classes */
  readonly classes: ColourClasses;
  /** SI unit of the series; the legend shows the reader's */
  readonly unit: string;
  /** heading of the picture */
  readonly title: string;
  /** the picture in words */
  readonly alt: string;
  /** remark under the picture */
  readonly note?: string;
  /** the numbers behind the picture */
  readonly table?: DataTable;
}

/** One block of hours of a day in the same class. */
interface Run {
  readonly day: number;
  readonly from: number;
  readonly to: number;
  readonly colour: string;
}

/** Index of the class a value falls in; a value on a limit belongs to the class above. */
export function classOf(value: number, thresholds: readonly number[]): number {
  let index = 0;
  while (index < thresholds.length && value >= thresholds[index]!) index++;
  return index;
}

/** Legend entries of colour classes: "< −30", "−30 to −20", … "≥ 30 degC", as the reader sees them. */
export function classLegend(classes: ColourClasses, siUnit: string): LegendEntry[] {
  const kind = kindOfAxis(`, ${siUnit}`)?.kind;
  const scale = kind === undefined || readersUnits() === "SI" ? null : readersScale(kind);
  const unit = scale?.unit ?? siUnit;
  const digits = scale?.factor !== undefined && scale.factor < 1 ? 1 : 0;
  const sign = (value: number) => value < 0 ? `−${-value}` : String(value);
  const limits = classes.thresholds.map((limit) =>
    scale === null ? limit : Number((limit * scale.factor + scale.offset).toFixed(digits))
  );
  return classes.colours.map((colour, index) => {
    if (index === 0) return { colour, label: `< ${sign(limits[0]!)}` };
    if (index === limits.length) return { colour, label: `≥ ${sign(limits[index - 1]!)} ${unit}` };
    return { colour, label: `${sign(limits[index - 1]!)} to ${sign(limits[index]!)}` };
  });
}

/** Hours of each day joined into runs of the same class, so that the picture stays small. */
export function carpetRuns(series: ArrayLike<number>, classes: ColourClasses): Run[] {
  const runs: Run[] = [];
  const days = Math.floor(series.length / 24);
  for (let day = 0; day < days; day++) {
    let from = 0;
    for (let hour = 1; hour <= 24; hour++) {
      const index = classOf(series[day * 24 + from]!, classes.thresholds);
      const next = hour < 24 ? classOf(series[day * 24 + hour]!, classes.thresholds) : -1;
      if (next === index) continue;
      runs.push({ day, from, to: hour, colour: classes.colours[index]! });
      from = hour;
    }
  }
  return runs;
}

/** Draws the carpet. */
export function carpet(input: CarpetInput): DisplayItem {
  const blocks = carpetRuns(input.series, input.classes).map((run) => ({
    left: axisDate(run.day * 24).getTime(),
    right: axisDate(run.day * 24 + 24).getTime(),
    bottom: run.from,
    top: run.to,
    colour: run.colour,
  }));
  return figure({
    height: 260,
    x: {
      type: "utc",
      label: "day of the year",
      domain: [axisDate(0), axisDate(input.series.length)],
      ticks: monthTicks(),
      tickFormat: "%b",
    },
    y: { label: "hour of the day, h", domain: [0, 24], ticks: [0, 6, 12, 18, 24] },
    marks: [blocksMark(blocks)],
  }, {
    title: input.title,
    alt: input.alt,
    legend: classLegend(input.classes, input.unit),
    ...(input.note === undefined ? {} : { note: input.note }),
    ...(input.table === undefined ? {} : { table: input.table }),
  });
}
