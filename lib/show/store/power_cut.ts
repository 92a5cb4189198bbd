/** The power cut: how the house cools, how long it takes, and what that means. @module */
import type { CutCourse, CutStart, CutWay, PowerCut } from "../../store/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { hourName } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { lineLegend, type TimeLine, timePlot } from "../kit/lines.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph, table } from "../kit/table.ts";
import { NO_CROP } from "./crop_words.ts";

const WAYS: Readonly<Record<CutWay, { readonly words: string; readonly colour: string }>> = {
  "store": { words: "with the store, fan stopped", colour: PALETTE.warm },
  "fan kept running": { words: "with the store, fan on a battery", colour: PALETTE.soil },
  "no store": { words: "without the store", colour: PALETTE.ink },
};

function hoursText(hours: number | null, cut: PowerCut): string {
  if (hours === null) return `not within ${showNumber(cut.hours / 24, 0)} days`;
  return hours === 0 ? "already below" : `${showNumber(hours, 1)} h`;
}

const freezing = (): string => shown(0, "temperature", 0);

const heating = (heated: boolean): string => heated ? "heater until the cut" : "no heater";

/** How long each house lasts. */
export function powerCutTable(cut: PowerCut): DisplayItem {
  const limit = cut.cropLimit <= NO_CROP ? null : shownBoth(cut.cropLimit, "temperature");
  return table(cut.courses, [
    { head: "power fails at", value: (row) => `${row.start}, ${hourName(row.hour)}` },
    { head: "heating", value: (row) => heating(row.heated) },
    { head: "after the cut", value: (row) => WAYS[row.way].words },
    { head: "house at the cut", value: (row) => row.air[0]!, kind: "temperature" },
    { head: `until ${freezing()}`, value: (row) => hoursText(row.toFreezing, cut), right: true },
    ...(limit === null ? [] : [{
      head: `until plants die, ${limit}`,
      value: (row: CutCourse) => hoursText(row.toCropLimit, cut),
      right: true,
    }]),
    { head: "lowest", value: (row) => row.lowest, kind: "temperature" },
  ], "When the power fails");
}

/** The houses after one start. */
function coursesFrom(cut: PowerCut, start: CutStart, heated: boolean): readonly CutCourse[] {
  return cut.courses.filter((row) => row.start === start && row.heated === heated);
}

/**
 * Temperatures after the cut, in houses that were heated and in houses that never were.
 *
 * @param cut of the extra `powerCut`
 * @param start when the power fails; the coldest hour outdoors unless given
 */
export function powerCutChart(cut: PowerCut, start: CutStart = "coldest hour"): DisplayItem {
  const outdoors = cut.outdoors.find((row) => row.start === start)!;
  const { hour } = coursesFrom(cut, start, true)[0]!;
  // the series begin at the cut, whatever hour of the year that is
  const atHour = (air: Float64Array) => {
    const year = new Float64Array(8760).fill(NaN);
    air.subarray(0, cut.hours).forEach((value, after) => year[(hour + after) % 8760] = value);
    return year;
  };
  const outside: TimeLine = {
    label: "outdoors",
    colour: PALETTE.cold,
    series: atHour(outdoors.air),
    dashed: true,
  };
  const lines = (heated: boolean): TimeLine[] => [
    ...coursesFrom(cut, start, heated).map((row) => ({
      label: WAYS[row.way].words,
      colour: WAYS[row.way].colour,
      series: atHour(row.air),
      dashed: row.way === "no store",
    })),
    outside,
  ];
  const limits = cut.cropLimit <= NO_CROP ? [0] : [0, cut.cropLimit];
  const window = { start: hour, hours: cut.hours, limits };
  const heated = coursesFrom(cut, start, true);
  return figure([
    timePlot({ ...window, lines: lines(true), axis: "heater until the cut, degC" }),
    timePlot({ ...window, lines: lines(false), axis: "no heater, degC" }),
  ], {
    title: `The power fails at the ${start}, ${hourName(hour)}`,
    alt: `House temperatures in the ${cut.hours} hours after a power cut. Heated until then: ${
      heated.map((row) =>
        `${WAYS[row.way].words} ${hoursText(row.toFreezing, cut)} to ${freezing()}`
      )
        .join("; ")
    }.`,
    note: `Lines across: ${freezing()}` +
      (limits.length > 1
        ? ` and ${shownBoth(cut.cropLimit, "temperature")}, where ${cut.crop} die`
        : "") +
      ". Where a curve runs along a line, tenths of a kelvin decide when it crosses: read hours as a range.",
    legend: lineLegend(lines(true)),
    table: dataTable(heated, [
      { head: "heated until the cut", value: (row) => WAYS[row.way].words },
      { head: `until ${freezing()}`, value: (row) => hoursText(row.toFreezing, cut) },
      { head: "until plants die", value: (row) => hoursText(row.toCropLimit, cut) },
      { head: "lowest", value: (row) => row.lowest, kind: "temperature" },
    ]),
  });
}

/** The power cut in two sentences, with what to have ready. */
export function powerCutWords(cut: PowerCut): DisplayItem {
  const [store, fan, none] = (["store", "fan kept running", "no store"] as const)
    .map((way) => coursesFrom(cut, "coldest hour", true).find((row) => row.way === way)!);
  const frozen = (row: CutCourse | undefined) => hoursText(row!.toFreezing, cut);
  const crop = cut.cropLimit <= NO_CROP
    ? ""
    : ` The crop's killing limit of ${shownBoth(cut.cropLimit, "temperature")} comes after: ${
      hoursText(store!.toCropLimit, cut)
    } with the store, ${hoursText(none!.toCropLimit, cut)} without, ${
      hoursText(fan!.toCropLimit, cut)
    } with the fan on a battery.`;
  return paragraph(
    `If the power fails at the coldest hour, the heated house reaches ${freezing()} after: ${
      frozen(store)
    } with the store, ${frozen(none)} without, ${frozen(fan)} with the fan on a battery.` +
      crop +
      " Without power the store's heat stays in the ground: have a frost alarm with a battery, and a " +
      "way to heat that needs no mains. Run a generator outdoors only, far from doors and vents: its " +
      "exhaust holds carbon monoxide, which kills without a smell; fit a carbon monoxide alarm. Never " +
      "connect a generator or battery to the house wiring without a transfer switch fitted by a " +
      "licensed electrician; never burn fuel unvented in the house.",
  );
}
