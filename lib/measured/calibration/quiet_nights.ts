/** Stage: heat loss of the house from quiet dark nights. @module */
import { HOUR, InputError } from "../../basics/mod.ts";
import {
  type Estimate,
  estimateOf,
  type Stage,
  TOLD_TOGETHER,
  toldTogether,
  withCommonDoubt,
} from "./estimate.ts";
import { fitLinear, type LinearFit } from "./linear_fit.ts";
import { type HouseRecord, quietHours, type QuietRule } from "./quiet_hours.ts";
import { showNumber } from "../../units/mod.ts";

/** What is asked of the nights. */
export interface QuietQuestion extends QuietRule {
  /**
   * standard uncertainty of heater and difference together over their values, which all hours have in
   * common; 0.02 unless given
   */
  readonly commonDoubt?: number;
}

/** A term of the balance. */
interface Term {
  readonly name: string;
  readonly unit: string;
  readonly column: readonly number[];
  /** words where it had to be left out */
  readonly without: string;
}

/** fewest quiet entries, and nights, that are fitted */
const FEWEST = 12;
const FEWEST_NIGHTS = 3;
/** s over which the balance is closed: probes' noise hardly shows in the change over so long */
const WINDOW = 4 * HOUR;
/** a term whose 95 % interval is wider than so many times its value is left out */
const TOO_WIDE = 2;
/** W of known heat below which it counts as none */
const NO_HEAT = 1;

/**
 * Heat balance of the quiet hours, heater + floor = UA·(T_i − T_o) + k_v·v·(T_i − T_o) + B·S + F·(T_i − T_g)
 * + C·dT_i/dt, by least squares: loss coefficient, its growth by wind, loss to the sky, loss to the ground
 * around the house, and heat held by air and light structure. Terms whose series is not logged, or which
 * these nights cannot tell from the rest, are left out and named. Co-heating in the manner of the trade
 * (common practice, no source).
 *
 * Without heat that is known (no heater ran, floor heat not measured) only the time constant C/UA is given.
 *
 * @param record of the house, hourly or finer
 * @param question what counts as quiet
 * @returns stage with UA in W/K, leakage and floor edge in it, or the time constant in h
 * @throws InputError where the quiet hours are too few
 */
export function quietNights(record: HouseRecord, question: QuietQuestion = {}): Stage {
  const { places, nights } = quietHours(record, question);
  const spans = new Set(nights).size;
  if (places.length < FEWEST || spans < FEWEST_NIGHTS) {
    throw new InputError(
      `quiet nights: ${places.length} quiet entries in ${spans} nights; expected ${FEWEST} or more in ` +
        `${FEWEST_NIGHTS} nights: hold the fan off for some nights and keep the vents shut`,
    );
  }
  const windows = windowsOf(places, nights, Math.max(1, Math.round(WINDOW / record.step)));
  const given: Nights = {
    record,
    windows,
    nights: windows.map(({ night }) => night),
    heat: meansOf(windows, (i) => record.heater[i]! + (record.floorHeat?.[i] ?? 0)),
    difference: meansOf(windows, (i) => record.inside[i]! - record.outside[i]!),
    change: windows.map(({ from, to }) =>
      (record.inside[to - 1]! + record.inside[to]! - record.inside[from - 1]! -
        record.inside[from]!) / (2 * (to - from) * record.step)
    ),
  };
  const { heat, difference } = given;
  const used = `${places.length} quiet entries in ${spans} nights, house ` +
    `${showNumber(Math.min(...difference), 1)} to ${
      showNumber(Math.max(...difference), 1)
    } K warmer than outside`;
  const found = heat.every((one) => Math.abs(one) < NO_HEAT)
    ? timeConstant(given)
    : lossCoefficient(given, question);
  return { name: "quiet nights", used, count: places.length, places, ...found };
}

type Found = Pick<Stage, "estimates" | "correlation" | "cannotTell">;

interface Nights {
  readonly record: HouseRecord;
  readonly windows: readonly Window[];
  readonly nights: readonly number[];
  readonly heat: readonly number[];
  readonly difference: readonly number[];
  readonly change: readonly number[];
}

/** Entries of one night next to each other: first place, and the one after the last. */
interface Window {
  readonly from: number;
  readonly to: number;
  readonly night: number;
}

/** Quiet entries in stretches of a length; what is left of a night counts from half of it on. */
function windowsOf(
  places: readonly number[],
  nights: readonly number[],
  length: number,
): Window[] {
  const windows: Window[] = [];
  for (let k = 0; k < places.length;) {
    let end = k;
    while (end < places.length && nights[end] === nights[k] && end - k < length) end++;
    if (2 * (end - k) >= length) {
      windows.push({ from: places[k]!, to: places[end - 1]! + 1, night: nights[k]! });
    }
    k = end;
  }
  return windows;
}

function meansOf(windows: readonly Window[], value: (place: number) => number): number[] {
  return windows.map(({ from, to }) => {
    let sum = 0;
    for (let i = from; i < to; i++) sum += value(i);
    return sum / (to - from);
  });
}

function terms({ record, windows, change }: Nights): Term[] {
  const all: Term[] = [
    {
      name: "heat held by air and structure",
      unit: "J/K",
      column: change,
      without:
        "What air and structure hold cannot be told: the house hardly cools in these nights.",
    },
  ];
  if (record.skyLoss !== undefined) {
    all.push({
      name: "loss to the sky",
      unit: "m2",
      column: meansOf(windows, (i) => record.skyLoss![i]!),
      without: "What clear sky adds cannot be told from these nights: their skies are too alike.",
    });
  }
  if (record.wind !== undefined) {
    all.push({
      name: "loss coefficient by wind",
      unit: "W/K per m/s",
      column: meansOf(windows, (i) => record.wind![i]! * (record.inside[i]! - record.outside[i]!)),
      without:
        "What wind adds to the loss cannot be told from these nights: UA is that of their winds.",
    });
  }
  if (record.ground !== undefined) {
    all.push({
      name: "edge loss",
      unit: "W/K",
      column: meansOf(windows, (i) => record.inside[i]! - record.ground![i]!),
      without: "What the floor's edge loses cannot be told from these nights: it stands in UA.",
    });
  }
  return all;
}

/** The term that is told worst, if badly enough to go. */
function worst(fit: LinearFit, kept: readonly Term[]): number {
  let [place, most] = [-1, 1];
  kept.forEach((_, k) => {
    const j = k + 1;
    const wide = fit.halfWidths[j]! / (TOO_WIDE * Math.abs(fit.parameters[j]!));
    const tied = Math.abs(fit.correlation[0]![j]!) / TOLD_TOGETHER;
    // nothing holds less than no heat: such a term makes up for something that was not measured
    const believable = kept[k]!.unit !== "J/K" || fit.parameters[j]! > 0;
    const bad = believable && Number.isFinite(wide) && Number.isFinite(tied)
      ? Math.max(wide, tied)
      : Infinity;
    if (bad > most) [place, most] = [k, bad];
  });
  return place;
}

function lossCoefficient(given: Nights, question: QuietQuestion): Found {
  const { difference, heat, nights } = given;
  let kept = terms(given);
  const left: Term[] = [];
  const fitted = () => fitLinear([difference, ...kept.map(({ column }) => column)], heat, nights);
  let fit = fitted();
  for (let place = worst(fit, kept); place >= 0; place = worst(fit, kept)) {
    left.push(kept[place]!);
    kept = kept.filter((_, k) => k !== place);
    fit = fitted();
  }
  const what = [{ name: "loss coefficient", unit: "W/K" }, ...kept];
  const estimates = what.map(({ name, unit }, j): Estimate =>
    withCommonDoubt(
      estimateOf(
        { name, unit, key: null },
        fit.parameters[j]!,
        fit.standardDeviations[j]!,
        fit.halfWidths[j]!,
      ),
      question.commonDoubt ?? 0.02,
    )
  );
  return {
    estimates,
    correlation: fit.correlation,
    cannotTell: [
      ...toldTogether(what.map(({ name }) => name), fit.correlation),
      ...left.map(({ without }) => without),
      ...given.record.floorHeat === undefined
        ? [
          "What the floor gives by night was not measured: UA is too low by that heat over the difference.",
        ]
        : [],
      "Glazing, walls, leakage" + (given.record.ground === undefined ? " and floor edge" : "") +
      " stand in one loss coefficient: take the leakage off by a tracer decay.",
    ],
  };
}

/** C/UA of nights without known heat: dT/dt = −(T_i − T_o)/τ. */
function timeConstant({ difference, change, nights }: Nights): Found {
  const fit = fitLinear([difference], change.map((one) => -one * HOUR), nights);
  const [rate, deviation, half] = [
    fit.parameters[0]!,
    fit.standardDeviations[0]!,
    fit.halfWidths[0]!,
  ];
  if (!(rate - half > 0)) {
    throw new InputError(
      "quiet nights: no heat is known in them and the house does not cool towards the outside; " +
        "expected a heater that is metered, heat flow plates on the floor, or nights that cool",
    );
  }
  const found: Estimate = {
    name: "time constant",
    key: null,
    unit: "h",
    value: 1 / rate,
    standardUncertainty: deviation / rate ** 2,
    low: 1 / (rate + half),
    high: 1 / (rate - half),
  };
  return {
    estimates: [found],
    correlation: [[1]],
    cannotTell: [
      "No heat in these nights is known (the heater was off, the floor's heat was not measured): only the " +
      "ratio of heat held to loss coefficient is told, UA itself is not. Meter an electric heater for " +
      "some nights.",
    ],
  };
}
