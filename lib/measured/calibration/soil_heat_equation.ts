/**
 * Stage: diffusivity of the soil by the heat equation between two driving depths; long because the
 * equation, its fit and what the parts of a record say of it stand or fall together.
 *
 * @module
 */
import jstat from "jstat";
import { halve, InputError } from "../../basics/mod.ts";
import { type Estimate, serialOf, type Stage } from "./estimate.ts";
import { showNumber, showPower } from "../../units/mod.ts";

/** Temperatures at rising depths. */
export interface SoilProfile {
  /** s, times of all, rising, at even steps */
  readonly seconds: ArrayLike<number>;
  /** m, from the uppermost, which drives, to the lowest, which drives too: 3 or more */
  readonly depths: readonly number[];
  /** degC by depth; gaps are not numbers */
  readonly temperatures: readonly ArrayLike<number>[];
  /** number of readings at the start that are not compared; 20 unless given */
  readonly leftOut?: number;
  /** m, cells of the column; 0.05 unless given */
  readonly cell?: number;
  /**
   * true where each probe may be off by an error that lasts, so that only how the misfit changes at a depth
   * counts and not its mean; false unless given
   */
  readonly ownLevels?: boolean;
}

/** limits and steps of the search, m²/s and a count */
const LEAST = 5e-8;
const MOST = 5e-6;
const STEPS = 24;

/**
 * Misfit of one diffusivity: measured depths between the driven ends against dT/dt = a·d²T/dz²,
 * backward Euler.
 *
 * @returns computed less measured, K, depth by depth in order of time
 */
function misfits(
  profile: SoilProfile,
  diffusivity: number,
): { list: number[]; runs: number[]; records: number[] } {
  const { seconds, depths, temperatures, leftOut = 20, cell = 0.05 } = profile;
  const [top, bottom] = [depths[0]!, depths.at(-1)!];
  const cells = Math.max(4, Math.round((bottom - top) / cell));
  const size = (bottom - top) / cells;
  const inner = cells - 1;
  const [upper, lower] = [temperatures[0]!, temperatures.at(-1)!].map(bridged) as [
    Float64Array,
    Float64Array,
  ];
  const field = Float64Array.from(
    { length: inner },
    (_, i) => startAt(profile, top + (i + 1) * size),
  );
  const [reduced, right] = [new Float64Array(inner), new Float64Array(inner)];
  const byDepth = depths.slice(1, -1).map(() => [] as (readonly [number, number])[]);
  for (let record = 1; record < seconds.length; record++) {
    const k = diffusivity * (seconds[record]! - seconds[record - 1]!) / size ** 2;
    for (let i = 0; i < inner; i++) {
      const pivot = 1 + 2 * k + (i === 0 ? 0 : k * reduced[i - 1]!);
      let source = field[i]!;
      if (i === 0) source += k * upper[record]!;
      if (i === inner - 1) source += k * lower[record]!;
      reduced[i] = -k / pivot;
      right[i] = (source + (i === 0 ? 0 : k * right[i - 1]!)) / pivot;
    }
    for (let i = inner - 1; i >= 0; i--) {
      field[i] = right[i]! - (i === inner - 1 ? 0 : reduced[i]! * field[i + 1]!);
    }
    if (record < leftOut) continue;
    depths.slice(1, -1).forEach((depth, d) => {
      const measured = temperatures[d + 1]![record]!;
      if (!Number.isFinite(measured)) return;
      const place = (depth - top) / size - 1;
      const low = Math.min(inner - 2, Math.max(0, Math.floor(place)));
      const share = place - low;
      const computed = field[low]! * (1 - share) + field[low + 1]! * share;
      byDepth[d]!.push([computed - measured, record]);
    });
  }
  return {
    list: byDepth.flatMap((one) => one.map(([gap]) => gap)),
    runs: byDepth.flatMap((one, d) => one.map(() => d)),
    records: byDepth.flatMap((one) => one.map(([, record]) => record)),
  };
}

/** Straight lines over gaps of a driving series. */
function bridged(series: ArrayLike<number>): Float64Array {
  const known = Array.from(series, (_, i) => i).filter((i) => Number.isFinite(series[i]!));
  let after = 0;
  return Float64Array.from(series, (value, i) => {
    if (Number.isFinite(value)) return value;
    while (after < known.length && known[after]! < i) after++;
    const [a, b] = [known[after - 1], known[after]];
    if (a === undefined || b === undefined) return series[(a ?? b)!]!;
    return series[a]! + (i - a) / (b - a) * (series[b]! - series[a]!);
  });
}

function startAt({ depths, temperatures }: SoilProfile, depth: number): number {
  const first = temperatures.map((series) =>
    Array.from(series).find((one) => Number.isFinite(one))!
  );
  const k = Math.min(depths.length - 2, depths.findLastIndex((one) => one <= depth));
  const share = (depth - depths[k]!) / (depths[k + 1]! - depths[k]!);
  return first[k]! * (1 - share) + first[k + 1]! * share;
}

/** Result of the fit with what stands behind it. */
export interface HeatEquationStage extends Stage {
  /** K by inner depth, root of the mean square of computed less measured at the best fit */
  readonly errors: readonly number[];
  /** K by inner depth, mean of computed less measured */
  readonly biases: readonly number[];
  /** K, root of the mean square over all inner depths */
  readonly error: number;
}

/**
 * Fits one diffusivity to the depths between the uppermost and the lowest, whose series drive the column.
 * The interval holds every value whose sum of squares is within F(0.95; 1, n − 1)/(n − 1) of the least,
 * n the number of readings that hang together as little as independent ones would: residuals of a soil
 * record last for weeks, so n is small and the interval wide.
 *
 * @param profile record
 * @returns stage with the diffusivity in m²/s
 * @throws InputError for too few depths or readings
 */
export function soilHeatEquation(profile: SoilProfile): HeatEquationStage {
  const { depths, temperatures, seconds } = profile;
  const rising = depths.every((one, i) => i === 0 || one > depths[i - 1]!);
  if (
    depths.length < 3 || temperatures.length !== depths.length || !rising || seconds.length < 40
  ) {
    throw new InputError(
      `soil record: ${depths.length} depths (${
        depths.join(", ")
      } m) and ${seconds.length} readings; ` +
        "expected 3 depths or more, rising, and 40 readings or more",
    );
  }
  const grid = Array.from({ length: STEPS + 1 }, (_, i) => GRID.from + i * GRID.width);
  const seen = profile.ownLevels === true ? aboutTheirMean : (all: Misfits) => all;
  const of = (diffusivity: number) => seen(misfits(profile, diffusivity));
  const tried = grid.map((log) => of(Math.exp(log)));
  const fit = fitOne(of, tried);
  const parts = partsOf(profile).map((part) => onGrid(tried.map((all) => seen(part(all)))));
  const agree = agreeing(parts);
  const [low, high] = agree ? [fit.low, fit.high] : [
    Math.min(fit.low, ...parts.map(({ value }) => value)),
    Math.max(fit.high, ...parts.map(({ value }) => value)),
  ];
  const { list, runs } = misfits(profile, fit.value);
  const estimate: Estimate = {
    name: "soil diffusivity",
    key: null,
    unit: "m2/s",
    value: fit.value,
    standardUncertainty: fit.value * Math.log(high / low) / 2 / fit.student,
    low,
    high,
  };
  const byDepth = depths.slice(1, -1).map((_, d) => list.filter((_, i) => runs[i] === d));
  const root = (one: readonly number[]) =>
    Math.sqrt(one.reduce((sum, value) => sum + value * value, 0) / one.length);
  return {
    name: "soil, heat equation",
    estimates: [estimate],
    correlation: [[1]],
    used: `${list.length} readings at ${depths.slice(1, -1).join(", ")} m, driven by those at ` +
      `${depths[0]} and ${depths.at(-1)} m; they tell as much as ${
        showNumber(fit.effectiveCount, 0)
      } independent ones`,
    count: list.length,
    places: [],
    errors: byDepth.map(root),
    biases: byDepth.map((one) => one.reduce((sum, value) => sum + value, 0) / one.length),
    error: root(list),
    cannotTell: [
      ...agree ? [] : [
        "Parts of the record (each depth, each half of the time) give " +
        `${showPower(Math.min(...parts.map(({ value }) => value)))} to ` +
        `${
          showPower(Math.max(...parts.map(({ value }) => value)))
        } m2/s, further apart than their ` +
        "scatter allows: the ground is not one soil that only conducts, and the interval holds them all.",
      ],
      ...high / low > 2
        ? [
          `The record cannot pin the diffusivity better than a factor of ${
            showNumber(high / low, 1)
          }.`,
        ]
        : [],
      "Conductivity and heat capacity are told only as their ratio; layers are taken as one soil.",
      "Water that freezes between the probes is not in this equation: leave the frozen weeks out.",
    ],
  };
}

type Misfits = ReturnType<typeof misfits>;

interface OneFit {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly student: number;
  readonly effectiveCount: number;
}

/** logarithms of the diffusivities tried first, m²/s */
const GRID = { from: Math.log(LEAST), width: Math.log(MOST / LEAST) / STEPS };

/**
 * The misfits about their mean at each depth. What a probe is off by lasts, and so does what those that
 * drive the column are off by: without a term of its own it passes for a slower or faster soil.
 */
function aboutTheirMean({ list, runs, records }: Misfits): Misfits {
  const sums = new Map<number, { sum: number; count: number }>();
  runs.forEach((run, i) => {
    const { sum, count } = sums.get(run) ?? { sum: 0, count: 0 };
    sums.set(run, { sum: sum + list[i]!, count: count + 1 });
  });
  const mean = (run: number) => sums.get(run)!.sum / sums.get(run)!.count;
  return { list: list.map((one, i) => one - mean(runs[i]!)), runs, records };
}

const squaresOf = ({ list }: Misfits) => list.reduce((sum, one) => sum + one * one, 0);

/** The least squares in one diffusivity, with the interval that the ties of the residuals leave. */
function fitOne(of: (diffusivity: number) => Misfits, tried: readonly Misfits[]): OneFit {
  const squares = (log: number) => squaresOf(of(Math.exp(log)));
  const { from, width } = GRID;
  const found = tried.map(squaresOf);
  const near = from + found.indexOf(Math.min(...found)) * width;
  const best = goldenLeast(squares, near - width, near + width);
  const { list, runs } = of(Math.exp(best));
  const { effectiveCount } = serialOf(list, runs);
  const freedom = Math.max(1, effectiveCount - 1);
  const student = jstat.studentt.inv(0.975, freedom);
  const limit = squares(best) * (1 + student ** 2 / freedom);
  const edge = (side: -1 | 1) => {
    let inside = best;
    let outside = best + side * width / 2;
    while (squares(outside) < limit) {
      if (outside < from || outside > from + STEPS * width) return side < 0 ? LEAST : MOST;
      [inside, outside] = [outside, outside + side * width / 2];
    }
    return Math.exp(halve((log) => squares(log) < limit, inside, outside, width / 200).holds);
  };
  return { value: Math.exp(best), low: edge(-1), high: edge(1), student, effectiveCount };
}

/** A part's own diffusivity: logarithm of it and its deviation, by the parabola about its least square. */
interface PartFit {
  readonly value: number;
  readonly deviation: number;
}

function onGrid(tried: readonly Misfits[]): PartFit {
  const found = tried.map(squaresOf);
  const place = Math.min(STEPS - 1, Math.max(1, found.indexOf(Math.min(...found))));
  const [before, here, after] = [found[place - 1]!, found[place]!, found[place + 1]!];
  const bend = (before - 2 * here + after) / GRID.width ** 2;
  const { list, runs } = tried[place]!;
  const { effectiveCount } = serialOf(list, runs);
  return {
    value: Math.exp(GRID.from + place * GRID.width + (before - after) / (2 * GRID.width) / bend),
    deviation: bend > 0 ? Math.sqrt(2 * here / Math.max(1, effectiveCount - 1) / bend) : Infinity,
  };
}

/** Parts of the record that a single soil would agree on: each inner depth, each half of the time. */
function partsOf({ depths }: SoilProfile): ((all: Misfits) => Misfits)[] {
  const pick = (all: Misfits, keeps: (i: number) => boolean): Misfits => {
    const places = all.list.map((_, i) => i).filter(keeps);
    const of = (list: readonly number[]) => places.map((i) => list[i]!);
    return { list: of(all.list), runs: of(all.runs), records: of(all.records) };
  };
  // half of the readings that are compared on either side: a gap may fill half of the time
  const middle = ({ records }: Misfits) => records.toSorted((a, b) => a - b)[records.length >> 1]!;
  return [
    ...depths.length > 3
      ? depths.slice(1, -1).map((_, d) => (all: Misfits) => pick(all, (i) => all.runs[i] === d))
      : [],
    (all) => pick(all, (i) => all.records[i]! < middle(all)),
    (all) => pick(all, (i) => all.records[i]! >= middle(all)),
  ];
}

/** chance at which parts of one soil would differ as much */
const BY_CHANCE = 0.002;

/** Whether the parts agree within their own intervals (chi square of the logarithms). */
function agreeing(parts: readonly PartFit[]): boolean {
  const logs = parts.map(({ value }) => Math.log(value));
  const weights = parts.map(({ deviation }) => 1 / Math.max(1e-9, deviation) ** 2);
  const all = weights.reduce((sum, one) => sum + one, 0);
  const mean = logs.reduce((sum, one, i) => sum + weights[i]! * one, 0) / all;
  const square = logs.reduce((sum, one, i) => sum + weights[i]! * (one - mean) ** 2, 0);
  return 1 - jstat.chisquare.cdf(square, parts.length - 1) > BY_CHANCE;
}

/** Least of a function between two ends by the golden section. */
function goldenLeast(of: (at: number) => number, from: number, to: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [atC, atD] = [of(c), of(d)];
  for (let pass = 0; pass < 15; pass++) {
    if (atC < atD) {
      [b, d, atD] = [d, c, atC];
      c = b - share * (b - a);
      atC = of(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + share * (b - a);
      atD = of(d);
    }
  }
  return (a + b) / 2;
}
