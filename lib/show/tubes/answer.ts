/** What the tubes chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showBoth, showNumber, showSi } from "../../units/mod.ts";
import type { HouseResult } from "../../house/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import type { TubesInputs, TubesResult } from "../../tubes/mod.ts";
import { answerCard } from "../kit/answer.ts";
import { numbers, table } from "../kit/table.ts";

// Gnielinski 1975 [gnielinski-1976] states about ±10 % for the film, Manning's n of one make is
// known to about ±7 %
const FILM_SPREAD = 0.1;
const FRICTION_SPREAD = 0.14;

// h: a long winter night at middle latitudes
const NIGHT_HOURS = 14;

/** The answer card; the range takes the published spread of film and friction. */
export function answer(result: TubesResult): DisplayItem {
  const share = (factor: number) => showSi(1 - Math.exp(-result.transferUnits * factor), "share");
  const friction = result.frictionFactor * result.length / result.diameter;
  const pressure = (factor: number) =>
    showBoth(
      result.pressureDrop * (1 + (factor - 1) * friction / result.lossCoefficient),
      "pressure",
    );
  return answerCard({
    answer: `${result.count} tube${result.count === 1 ? "" : "s"} of ${
      showBoth(result.diameter, "smallLength")
    }, ${showBoth(result.length, "length")} long, at ${
      showBoth(result.airSpeed, "speed")
    }: each has a pressure drop of ${
      showBoth(result.pressureDrop, "pressure")
    } and brings the air ${showSi(result.effectiveness, "share")} of the way to wall temperature.`,
    range: `Effectiveness ${share(1 - FILM_SPREAD)} to ${share(1 + FILM_SPREAD)} (film ±10 %), ` +
      `pressure ${pressure(1 - FRICTION_SPREAD)} to ${pressure(1 + FRICTION_SPREAD)} (friction ` +
      `±14 %).`,
    drivenBy:
      `the number of transfer units, ${showSi(result.transferUnits, "ratio")}, which grows with ` +
      `length and falls with air speed; the soil resists heat flow about as much as the air film does.`,
    changesWith: "the tubes were smooth (less pressure, same heat), fewer (faster air), crushed, " +
      "silted or full of water.",
  });
}

/** What the two ways to a number of tubes need. */
export interface TubeCountWords {
  /** result of the house chapter */
  readonly house: HouseResult;
  /** `tubes` section of the study */
  readonly inputs: TubesInputs;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** result of the store chapter */
  readonly store: StoreResult;
  /** degrees, north positive: decides which months are winter */
  readonly latitude: number;
}

/**
 * Number of tubes led by air flow and led by heat, side by side.
 *
 * The heat-led count takes the house's heat loss at the design temperature through a long night, and
 * the heat one metre took in on good days of the store run: the fifth best day of the three winter
 * months, and the tenth best of the year.
 */
export function countTable(words: TubeCountWords): DisplayItem {
  const { house, inputs, tubes, store } = words;
  const night = house.peakHeatLoss * NIGHT_HOURS / 1000;
  const winter = goodDay(store, 5, winterDays(words.latitude)) / tubes.totalLength;
  const year = goodDay(store, 10) / tubes.totalLength;
  const area = Math.PI * tubes.diameter ** 2 / 4;
  const byFlow = (changes: number, speed: number) =>
    house.geometry.volume * changes / 3600 / (speed * area);
  const byHeat = (share: number, perMetre: number) => share * night / (perMetre * tubes.length);
  const rows = [
    { way: "air flow: 5 house volumes an hour at 3 m/s", count: byFlow(5, 3) },
    { way: "air flow: 6 house volumes an hour at 2 m/s", count: byFlow(6, 2) },
    { way: "heat: a quarter of a design night, good days of the year", count: byHeat(0.25, year) },
    { way: "heat: a quarter of a design night, good winter days", count: byHeat(0.25, winter) },
    { way: "heat: all of a design night, good days of the year", count: byHeat(1, year) },
    { way: "this study", count: inputs.count },
  ].map((row) => ({ ...row, whole: row.count < 10_000 ? Math.ceil(row.count - 1e-9) : null }));
  return table(
    rows,
    [
      { head: "sized by", value: (row) => row.way },
      { head: "tubes", value: (row) => row.whole, kind: "count" },
      {
        head: "total length",
        value: (row) => row.whole === null ? null : row.whole * tubes.length,
        kind: "length",
      },
    ],
    `One metre took in ${showSi(year, "energy", 3)} on good days of the year, ${
      showSi(winter, "energy", 3)
    } on good winter days; a design night of ${NIGHT_HOURS} h costs ${showSi(night, "energy")}`,
  );
}

const NORTHERN_WINTER = (day: number) => day < 59 || day >= 334;
const SOUTHERN_WINTER = (day: number) => day >= 151 && day < 243;

function winterDays(latitude: number): (day: number) => boolean {
  return latitude < 0 ? SOUTHERN_WINTER : NORTHERN_WINTER;
}

/** kWh put in on the `rank`-th best of the chosen days. */
export function goodDay(
  store: StoreResult,
  rank: number,
  chosen: (day: number) => boolean = () => true,
): number {
  const { sensible, latent } = store.year;
  const sums: number[] = [];
  for (let day = 0; day < 365; day++) {
    if (!chosen(day)) continue;
    let sum = 0;
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      sum += Math.max(0, sensible[hour]! + latent[hour]!) / 1000;
    }
    sums.push(sum);
  }
  return sums.sort((a, b) => b - a)[rank - 1]!;
}

/** The tube and how it lies. */
export function summaryTable(result: TubesResult): DisplayItem {
  return numbers([
    { label: "tube", value: result.product.name, note: result.product.source },
    { label: "inside diameter", value: result.diameter, kind: "smallLength" },
    { label: "number", value: result.count, kind: "count" },
    { label: "length per tube", value: result.length, kind: "length" },
    { label: "total length", value: result.totalLength, kind: "length" },
    { label: "flow per tube", value: result.flowPerTube, kind: "tubeFlow" },
    { label: "air speed", value: result.airSpeed, kind: "speed" },
    { label: "Reynolds number", value: showNumber(result.reynolds, 0) },
    { label: "friction factor (Darcy)", value: showNumber(result.frictionFactor, 4) },
    { label: "film coefficient, dry", value: result.filmCoefficient, kind: "transmittance" },
    { label: "transfer units", value: result.transferUnits, kind: "ratio" },
    { label: "effectiveness", value: result.effectiveness, kind: "share" },
    { label: "pressure drop", value: result.pressureDrop, kind: "pressure" },
  ]);
}

/** The same air through more and fewer tubes. */
export function countEffects(rows: readonly TubesResult[]): DisplayItem {
  return table(rows, [
    { head: "tubes", value: (row) => row.count, kind: "count" },
    { head: "air speed", value: (row) => row.airSpeed, kind: "speed" },
    { head: "pressure drop", value: (row) => row.pressureDrop, kind: "pressure" },
    { head: "effectiveness", value: (row) => row.effectiveness, kind: "share" },
  ], "The same air through fewer and more tubes");
}
