/** What must hold in the results of every study that runs. @module */
import type { Figure, Figures, ResultTable } from "winterground/basics/mod.ts";
import type { ChapterResults } from "winterground/study/chapters.ts";
import { tableCsv } from "winterground/study/results/tables.ts";

/** Share of the throughput to which a balance must close. */
export const CLOSED = 1e-9;

/** Rounding between two sums of the same things. */
const SAME = 1e-9;

/** Reynolds number above which all tubes of a field with a sound spread are turbulent. */
const TURBULENT = 10_000;

const NOT_A_NUMBER = /(?<![A-Za-z])(NaN|-?Infinity|undefined|null)(?![A-Za-z])/;

/** Figures that are no finite number and do not say why. */
export function figureFaults(figures: Figures): readonly string[] {
  return Object.entries(figures).flatMap(([key, { value, label, low, high }]: [string, Figure]) => {
    const faults: string[] = [];
    if (typeof value === "number" && !Number.isFinite(value)) faults.push(`${key} is ${value}`);
    if (value === null && !label.includes(":")) faults.push(`${key} is null and does not say why`);
    if (NOT_A_NUMBER.test(label)) faults.push(`${key} is called "${label}"`);
    for (const end of [low, high]) {
      if (end !== undefined && !Number.isFinite(end)) faults.push(`${key} has an end of ${end}`);
    }
    if (low !== undefined && high !== undefined && low > high) {
      faults.push(`${key}: low above high`);
    }
    return faults;
  });
}

/** Words in a text that only a fault leaves there. */
export function textFaults(name: string, text: string): readonly string[] {
  const line = text.split("\n").find((one) => NOT_A_NUMBER.test(one));
  return line === undefined ? [] : [`${name}: ${line.slice(0, 200)}`];
}

/** Tables with words that only a fault leaves there. */
export function tableFaults(tables: readonly ResultTable[]): readonly string[] {
  return tables.flatMap((table) => textFaults(table.name, tableCsv(table)));
}

/** Numbers that are not finite in the hours and the lists of a result, by their path. */
export function hourFaults(name: string, value: unknown, besides: readonly RegExp[]): string[] {
  if (besides.some((one) => one.test(name))) return [];
  if (value instanceof Float64Array) {
    const hour = value.findIndex((one) => !Number.isFinite(one));
    return hour < 0 ? [] : [`${name}[${hour}] is ${value[hour]}`];
  }
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${name} is ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    hourFaults(`${name}.${key}`, part, besides)
  );
}

type Check = readonly [what: string, holds: boolean];

const near = (one: number, other: number, scale = Math.max(Math.abs(one), Math.abs(other))) =>
  Math.abs(one - other) <= SAME * Math.max(scale, 1e-12);
const rising = (...values: readonly number[]) =>
  values.every((value, index) => index === 0 || values[index - 1]! <= value * (1 + SAME) + 1e-12);
const hours = (value: number) => value >= 0 && value <= 8760;
const share = (value: number) => value >= 0 && value <= 1 + SAME;

/** A ratio is that of its two parts, and none where the second is nothing. */
const isRatio = (ratio: number | null, above: number, below: number) =>
  ratio === null ? below <= 0 : below > 0 && near(ratio * below, above, above + below);

function failed(checks: readonly Check[]): readonly string[] {
  return checks.filter(([, holds]) => !holds).map(([what]) => `does not hold: ${what}`);
}

/** Contradictions between figures of the chapters without a year. */
export function designFaults(
  { soil, tubes, headers, fan }: Pick<ChapterResults, "soil" | "tubes" | "headers" | "fan">,
): readonly string[] {
  const [low, high] = soil.properties.conductivityRange;
  const mean = headers.shares.reduce((sum, one) => sum + one, 0) / headers.shares.length;
  return failed([
    ["least conductivity <= conductivity <= most", rising(low, soil.properties.conductivity, high)],
    [
      "coldest <= warmest ground at the tubes",
      rising(soil.temperatureAtTubeDepthMin, soil.temperatureAtTubeDepthMax),
    ],
    ["frost depth >= 0", soil.frostDepth >= 0],
    ["total length = count x length", near(tubes.totalLength, tubes.count * tubes.length)],
    ["a place for each tube", tubes.positions.length === tubes.count],
    ["a share for each tube", headers.shares.length === tubes.count],
    ["shares of the tubes have the mean 1", near(mean, 1)],
    [
      "least share <= 1 <= greatest share",
      rising(headers.flowMin, 1, headers.flowMax),
    ],
    ["effectiveness within 0 to 1", share(tubes.effectiveness)],
    [
      "heat factor within 0 to 1 (turbulent)",
      headers.heatFactor > 0 && (headers.heatFactor <= 1 + SAME || tubes.reynolds < TURBULENT),
    ],
    ["pressure drop of a tube > 0", tubes.pressureDrop > 0],
    [
      "speed x section = flow",
      near(
        tubes.airSpeed * Math.PI / 4 * tubes.diameter ** 2,
        tubes.flowPerTube,
      ),
    ],
    ["fan flow >= 0, power >= 0", fan.airFlow >= 0 && fan.power >= 0],
    ["specific power = power / flow", near(fan.specificPower * fan.airFlow, fan.power)],
    ["efficiency within 0 to 1", share(fan.efficiency)],
  ]);
}

/** Contradictions between figures of the house's screening year. */
export function houseFaults({ house }: Pick<ChapterResults, "house">): readonly string[] {
  const parts = house.lossParts.reduce((sum, { conductance }) => sum + conductance, 0);
  const months = house.heatDemandByMonth.reduce((sum, one) => sum + one, 0);
  const { freezing, damage, killing } = house.crop;
  return failed([
    ["balance of the free house closes", Math.abs(house.freeRunningLedger.residual) <= CLOSED],
    ["balance of the heated house closes", Math.abs(house.heatedLedger.residual) <= CLOSED],
    ["balance of water closes", Math.abs(house.freeRunningWater.residual) <= CLOSED],
    ["loss coefficient = sum of its parts", near(parts, house.lossCoefficient)],
    ["heat demand = sum of its months", near(months, house.heatDemand)],
    ["heat demand >= 0", house.heatDemand >= 0],
    ["hours within the year", [freezing, damage, killing].every((one) => hours(one.hours))],
    ["humidity within 0 to 1", house.freeRunning.relativeHumidity.every(share)],
  ]);
}

/** Contradictions between figures of the store's year. */
export function storeFaults({ store }: Pick<ChapterResults, "store">): readonly string[] {
  const { months, crop, cropNoFan } = store;
  const total = (of: (month: typeof months[number]) => number) =>
    months.reduce((sum, month) => sum + of(month), 0);
  // heat out is negative where a fan warms its air by more than the house is colder than the soil
  const moved = Math.abs(store.heatIn) + Math.abs(store.heatOut);
  return failed([
    [
      `balance of the soil closes (${store.balanceResidual})`,
      Math.abs(store.balanceResidual) <= CLOSED,
    ],
    [
      "heat saved = back-up heat without - with",
      near(
        store.savedHeat,
        store.backupHeatNoFan - store.backupHeat,
        store.backupHeatNoFan + store.backupHeat,
      ),
    ],
    ["recovery = out / in", isRatio(store.recovery, store.heatOut, store.heatIn)],
    ["cop = out / fan", isRatio(store.cop, store.heatOut, store.fanEnergy)],
    ["heat in = sum of its months", near(total((month) => month.heatIn), store.heatIn, moved)],
    ["heat out = sum of its months", near(total((month) => month.heatOut), store.heatOut, moved)],
    ["fan energy = sum of its months", near(total((month) => month.fanEnergy), store.fanEnergy)],
    [
      "back-up heat = sum of its months",
      near(total((month) => month.backupHeat), store.backupHeat),
    ],
    ["fan energy, back-up heat >= 0", store.fanEnergy >= 0 && store.backupHeat >= 0],
    ["fan shares within -1 to 1", store.year.fanShare.every((one) => share(Math.abs(one)))],
    [
      "hours within the year",
      [crop, cropNoFan].every(({ freezing, damage, killing }) =>
        hours(freezing.hours) && hours(damage.hours) && hours(killing.hours)
      ) && hours(store.chargeHours + store.dischargeHours) && hours(store.damp.humid),
    ],
    ["humidity within 0 to 1", store.year.house.relativeHumidity.every(share)],
    [
      "carried across seasons within 0 to 1",
      store.carriedAcrossSeasons === null || share(store.carriedAcrossSeasons),
    ],
    ["tagged return within 0 to 1", store.taggedReturn === null || share(store.taggedReturn)],
  ]);
}
