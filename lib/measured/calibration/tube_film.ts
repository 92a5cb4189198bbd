/** Stage: film and wetness of the tubes from intake, outlet and wall. @module */
import jstat from "jstat";
import {
  DRY_AIR_HEAT_CAPACITY,
  HEAT_OF_VAPORISATION,
  humidityRatioFromRelativeHumidity,
  massTransferCoefficient,
  moistVolume,
  saturationHumidityRatio,
  VAPOUR_HEAT_CAPACITY,
} from "../../air/mod.ts";
import { InputError } from "../../basics/mod.ts";
import { fitLeastSquares } from "../fit/least_squares.ts";
import {
  certaintyWithTies,
  type Estimate,
  estimateOf,
  serialOf,
  type Stage,
  withCommonDoubt,
} from "./estimate.ts";

/** Series of one length; gaps are not numbers. */
export interface TubeRecord {
  /** degC of the air at the intake */
  readonly intake: Float64Array;
  /** 0 to 1, humidity there */
  readonly intakeHumidity: Float64Array;
  /** degC of the air at the outlet */
  readonly outlet: Float64Array;
  /** 0 to 1, humidity there */
  readonly outletHumidity: Float64Array;
  /** degC of the tubes' wall, mean along them */
  readonly wall: Float64Array;
  /** m³/s at the intake, 0 while the fan rests */
  readonly airFlow: Float64Array;
  /** Pa */
  readonly pressure: number;
  /** standard uncertainty of the air flow over its value, common to all entries; 0.08 unless given */
  readonly flowDoubt?: number;
}

/** K between intake and wall below which an entry tells nothing */
const LEAST_LIFT = 2;
/** kg/kg between air and saturation at the wall below which an entry tells nothing of water */
const LEAST_DEPTH = 0.5e-3;
const FEWEST = 20;

interface Entry {
  readonly place: number;
  readonly lift: number;
  readonly wall: number;
  readonly outlet: number;
  readonly rate: number;
  readonly dryAir: number;
  readonly inRatio: number;
  readonly outRatio: number;
  readonly wallRatio: number;
  readonly lewis: number;
}

function entriesOf(record: TubeRecord): Entry[] {
  const { pressure } = record;
  return Array.from(record.intake, (intake, place): Entry | null => {
    const [outlet, wall, flow] = [
      record.outlet[place]!,
      record.wall[place]!,
      record.airFlow[place]!,
    ];
    const humidities = record.intakeHumidity[place]! + record.outletHumidity[place]!;
    if (!Number.isFinite(intake + outlet + wall + flow + humidities) || !(flow > 0)) return null;
    if (Math.abs(intake - wall) < LEAST_LIFT) return null;
    const ratio = (temperature: number, humidity: number) =>
      humidityRatioFromRelativeHumidity(temperature, Math.min(1, humidity), pressure);
    const inRatio = ratio(intake, record.intakeHumidity[place]!);
    const dryAir = flow / moistVolume(intake, inRatio, pressure);
    return {
      place,
      lift: intake - wall,
      wall,
      outlet,
      rate: dryAir * (DRY_AIR_HEAT_CAPACITY + inRatio * VAPOUR_HEAT_CAPACITY),
      dryAir,
      inRatio,
      outRatio: ratio(outlet, record.outletHumidity[place]!),
      wallRatio: saturationHumidityRatio(wall, pressure),
      lewis: massTransferCoefficient(1, (intake + wall) / 2, pressure),
    };
  }).filter((one) => one !== null);
}

/**
 * Conductance of all tubes from how far the outlet comes to the wall, T_out = T_w + (T_in − T_w)·exp(−G/ṁc),
 * and the wet share of the wall from the humidity of the outlet while water evaporates,
 * w_out = w_s(T_w) + (w_in − w_s)·exp(−s·g(G)/ṁ) with the Lewis rule of the tubes chapter
 * (Chilton & Colburn 1934 [chilton-colburn-1934]). Water condenses on any wall, so hours that condense do
 * not tell the wet share.
 *
 * @param record of the store
 * @returns stage with the conductance in W/K, the wet share where it is told, and the share of the heat
 * left in the soil that came with condensate, 0 to 1
 * @throws InputError where fewer than 20 entries have a lift of 2 K
 */
export function tubeFilm(record: TubeRecord): Stage {
  const entries = entriesOf(record);
  if (entries.length < FEWEST) {
    throw new InputError(
      `tubes: ${entries.length} entries with the fan on and ${LEAST_LIFT} K between intake and wall; ` +
        `expected ${FEWEST} or more`,
    );
  }
  const doubt = record.flowDoubt ?? 0.08;
  const runs = entries.map(({ place }, k) => place - k);
  const fit = conductanceFit(entries);
  const sure = certaintyWithTies(
    fit,
    entries.length,
    1,
    serialOf(outletMisfit(entries)(fit.parameters), runs),
  );
  const conductance = withCommonDoubt(
    estimateOf(
      { name: "conductance of the tubes", key: null, unit: "W/K" },
      fit.parameters[0]!,
      sure.standardDeviations[0]!,
      sure.halfWidths[0]!,
    ),
    doubt,
  );
  const drying = entries.filter(evaporates);
  const wet = drying.length < FEWEST ? null : wetShare(entries, fit.parameters[0]!);
  const condensate = condensateShare(entries);
  const estimates = [
    conductance,
    ...wet === null ? [] : [wet],
    ...condensate === null ? [] : [condensate],
  ];
  return {
    name: "tubes",
    estimates,
    correlation: estimates.map((_, a) => estimates.map((_, b) => a === b ? 1 : NaN)),
    used: `${entries.length} entries with the fan on, ${drying.length} of them evaporating`,
    count: entries.length,
    places: entries.map(({ place }) => place),
    cannotTell: [
      "The conductance goes with the air flow: an air flow that is a tenth too high makes it a tenth too high.",
      "Film and wall stand in one conductance, and the wall is taken as of one temperature along the tube.",
      ...wet === null
        ? [
          `The wet share of the wall cannot be told from ${drying.length} evaporating entries: the study's rule stays.`,
        ]
        : [],
    ],
  };
}

const outletMisfit = (entries: readonly Entry[]) => ([conductance]: readonly number[]) =>
  entries.map((one) => one.wall + one.lift * Math.exp(-conductance! / one.rate) - one.outlet);

function conductanceFit(entries: readonly Entry[]) {
  const meanRate = entries.reduce((sum, { rate }) => sum + rate, 0) / entries.length;
  return fitLeastSquares(outletMisfit(entries), [1.5 * meanRate]);
}

/**
 * Wet share of the wall while water evaporates, with the conductance just fitted. Its deviation is that of
 * two fits one after the other that share readings: each entry's pull on both, added up (influence of a
 * two-step estimate, Huber 1967 [huber-1967], from memory).
 */
function wetShare(entries: readonly Entry[], conductance: number): Estimate {
  const drying = entries.filter(evaporates);
  const keptAt = (one: Entry, share: number) =>
    (one.inRatio - one.wallRatio) * Math.exp(-share * conductance * one.lewis / one.dryAir);
  const fit = fitLeastSquares(
    ([share]) => drying.map((one) => one.wallRatio + keptAt(one, share!) - one.outRatio),
    [0.5],
  );
  const value = fit.parameters[0]!;
  const misfits = outletMisfit(entries)([conductance]);
  const byFilm = entries.map((one) => -one.lift * Math.exp(-conductance / one.rate) / one.rate);
  const byShare = (one: Entry) => -keptAt(one, value) * conductance * one.lewis / one.dryAir;
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  const own = sum(drying.map((one) => byShare(one) ** 2));
  const film = sum(byFilm.map((one) => one * one));
  const both = sum(drying.map((one) => byShare(one) ** 2 * value / conductance));
  const pulls = entries.map((one, i) => {
    const gap = one.wallRatio + keptAt(one, value) - one.outRatio;
    return ((evaporates(one) ? byShare(one) * gap : 0) - both / film * byFilm[i]! * misfits[i]!) /
      own;
  });
  const { tied } = serialOf(pulls, entries.map(({ place }, k) => place - k));
  const spread = Math.sqrt(tied * sum(pulls.map((one) => one * one)));
  const student = jstat.studentt.inv(0.975, Math.max(1, drying.length / tied - 1));
  const what = { name: "wet share of the wall", key: null, unit: "" };
  return estimateOf(what, value, spread, student * spread);
}

const evaporates = (one: Entry) => one.wallRatio - one.inRatio > LEAST_DEPTH;

/** Share of the heat left in the soil that came as condensate; its spread by the entries. */
function condensateShare(entries: readonly Entry[]): Estimate | null {
  const charging = entries.filter((one) => one.lift > 0);
  if (charging.length < FEWEST) return null;
  const latent = charging.map((one) =>
    one.dryAir * Math.max(0, one.inRatio - one.outRatio) * HEAT_OF_VAPORISATION
  );
  const all = charging.map((one, k) => latent[k]! + one.rate * (one.lift + one.wall - one.outlet));
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  const share = sum(latent) / sum(all);
  const off = latent.map((one, k) => one - share * all[k]!);
  const runs = charging.map(({ place }, k) => place - k);
  const { effectiveCount } = serialOf(off, runs);
  const spread = Math.sqrt(sum(off.map((one) => one * one)) / charging.length) /
    (sum(all) / charging.length) / Math.sqrt(effectiveCount);
  return estimateOf(
    { name: "condensate share of the heat stored", key: null, unit: "" },
    share,
    spread,
    1.96 * spread,
  );
}
