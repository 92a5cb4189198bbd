/** The two pictures of a settled year, as SVG source: the same while publishing and in the page. @module */
import { MONTH_DAYS } from "../../basics/constants.ts";
import { MONTH_ABBREVIATIONS, MONTH_FIRST_DAYS } from "../../basics/series/calendar.ts";
import { PALETTE } from "../../show/kit/palette.ts";
import type { UnitSystem } from "../../units/quantity.ts";
import type { LiveDays, LivePart } from "../types.ts";
import { type Frame, frame, MARGIN, monthNames, picture } from "./frame.ts";
import { inUnit, shown, unitName } from "./text.ts";

/** What is drawn. */
export interface Drawn {
  /** year that is shown, as far as it is known */
  readonly year: LivePart;
  /** year of the study as it is, drawn behind; null where that is the one shown */
  readonly study: LivePart | null;
  readonly units: UnitSystem;
  /** px */
  readonly width: number;
}

/** A line or a bar in the key of a picture: told apart by its stroke too. */
export interface KeySign {
  readonly label: string;
  readonly colour: string;
  /** pattern of the stroke; "" for a whole one */
  readonly dash: string;
  /** px of its stroke */
  readonly width: number;
}

const STORE: KeySign = { label: "with the store", colour: PALETTE.warm, dash: "", width: 2.4 };
const NO_FAN: KeySign = { label: "fan always off", colour: PALETTE.ink, dash: "5 3", width: 1.3 };
const OUTDOORS: KeySign = { label: "outdoors", colour: PALETTE.cold, dash: "", width: 1 };
const STUDY: KeySign = {
  label: "with the store, this study",
  colour: PALETTE.latent,
  dash: "2 3",
  width: 2,
};

/** Signs of a picture's key. */
export function keyOf(what: "days" | "months", compared: boolean): readonly KeySign[] {
  const own = compared ? [{ ...STORE, label: "with the store, your case" }, STUDY] : [STORE];
  return what === "days" ? [...own, NO_FAN, OUTDOORS] : [...own, NO_FAN];
}

function stroke({ colour, dash, width }: KeySign): string {
  return `stroke="${colour}" stroke-width="${width}"` +
    (dash === "" ? "" : ` stroke-dasharray="${dash}"`);
}

const lowest = (series: readonly number[] | undefined) =>
  series === undefined ? undefined : Math.min(...series);

/** The coldest air of each day. */
export function dayChart({ year, study, units, width }: Drawn): string {
  const inReader = (value: number) => inUnit(value, "temperature", units);
  const lines: (readonly [KeySign, readonly number[] | undefined])[] = [
    [OUTDOORS, year.days.outdoors],
    [NO_FAN, year.days.noFan],
    [STUDY, study?.days.store],
    [STORE, year.days.store],
  ];
  const all = lines.flatMap(([, series]) => series ?? []).map(inReader);
  const around = frame(
    width,
    Math.min(...all),
    Math.max(...all),
    `Coldest hour of each day, ${unitName("temperature", units)}`,
  );
  const x = (day: number) => MARGIN.left + (width - MARGIN.left - MARGIN.right) * day / 365;
  const drawn = lines.map(([sign, series]) =>
    series === undefined
      ? ""
      : `<path fill="none" stroke-linejoin="round" ${stroke(sign)} d="M${
        series.map((value, day) => `${x(day + 0.5).toFixed(1)},${around.y(inReader(value))}`)
          .join("L")
      }"/>`
  );
  const names = monthNames(
    MONTH_ABBREVIATIONS,
    around,
    (month) => x(MONTH_FIRST_DAYS[month]! + MONTH_DAYS[month]! / 2),
  );
  return picture(around, drawn.join("") + names, dayWords(year.days, units));
}

function dayWords(days: Partial<LiveDays>, units: UnitSystem): string {
  const parts = ([["outdoors", days.outdoors], ["with the store", days.store], [
    "with the fan always off",
    days.noFan,
  ]] as const).flatMap(([name, series]) => {
    const coldest = lowest(series);
    return coldest === undefined ? [] : [`${name} ${shown(coldest, "temperature", units)}`];
  });
  return `Lines over the year, coldest hour of each day without a heater. Lowest: ${
    parts.join("; ")
  }. The table below gives every month.`;
}

/** Back-up heat by month. */
export function monthChart({ year, study, units, width }: Drawn): string {
  const inReader = (value: number) => inUnit(value, "energy", units);
  const bars: (readonly [KeySign, readonly number[] | undefined])[] = [
    [STORE, year.months.store],
    [STUDY, study?.months.store],
    [NO_FAN, year.months.noFan],
  ];
  const present = bars.filter(([, values]) => values !== undefined);
  const all = present.flatMap(([, values]) => values!).map(inReader);
  const around = frame(
    width,
    0,
    Math.max(1, ...all),
    `Back-up heat by month, ${unitName("energy", units)}`,
  );
  const month = (width - MARGIN.left - MARGIN.right) / 12;
  const bar = month * 0.8 / present.length;
  const drawn = present.flatMap(([sign, values], place) =>
    values!.map((value, k) =>
      barAt(sign, around, {
        x: MARGIN.left + month * (k + 0.1) + bar * place,
        width: bar,
        value: inReader(value),
      })
    )
  );
  const names = monthNames(
    MONTH_ABBREVIATIONS,
    around,
    (k) => MARGIN.left + month * (k + 0.5),
  );
  return picture(around, drawn.join("") + names, monthWords(year, units));
}

/** Filled for the case shown, an outline of its own for the others. */
function barAt(
  sign: KeySign,
  { y }: Frame,
  { x, width, value }: { readonly x: number; readonly width: number; readonly value: number },
): string {
  const fill = sign === STORE ? sign.colour : "white";
  const height = Math.max(0, y(0) - y(value));
  return `<rect x="${x.toFixed(1)}" y="${y(value)}" width="${(width * 0.9).toFixed(1)}" ` +
    `height="${height.toFixed(1)}" fill="${fill}" ${stroke({ ...sign, width: 1.3 })}/>`;
}

function monthWords({ figures }: LivePart, units: UnitSystem): string {
  const total = (value: number | undefined) =>
    value === undefined ? "being computed" : shown(value, "energy", units);
  return `Bars by month, heat to hold the set point. Over the year with the store ${
    total(figures.backupHeat)
  }, with the fan always off ${total(figures.backupHeatNoFan)}. The table below gives every month.`;
}
