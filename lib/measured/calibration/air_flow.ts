/** Stage: air flow of the store from air speeds in the tubes, or from a pressure drop. @module */
import { InputError } from "../../basics/mod.ts";
import { estimates as inputs, propagate } from "../uncertainty/propagate.ts";
import { estimateOf, serialOf, type Stage } from "./estimate.ts";
import { showNumber } from "../../units/mod.ts";

/** Air speeds measured in tubes. */
export interface SpeedTraverse {
  /** m/s, mean over the cross-section of each tube measured */
  readonly speeds: readonly number[];
  /** number of tubes of the field */
  readonly tubes: number;
  /** m², cross-section of one tube */
  readonly area: number;
  /** standard uncertainty of one reading over its value, by itself, 0 to 1; 0.05 unless given */
  readonly readingDoubt?: number;
  /** standard uncertainty of the probe over its value, common to all readings; 0.03 unless given */
  readonly probeDoubt?: number;
}

/**
 * Air flow of the field from the speeds in its tubes: sum of those measured, the rest taken as their
 * mean with their spread. Readings err by themselves and with the probe (GUM [gum-2008] 5.2.2).
 *
 * @param traverse at least 3 tubes, or all of fewer
 * @returns stage with the air flow in m³/s
 * @throws InputError for too few tubes or a speed that is not above 0
 */
export function flowFromSpeeds(traverse: SpeedTraverse): Stage {
  const { speeds, tubes, area, readingDoubt = 0.05, probeDoubt = 0.03 } = traverse;
  const odd = speeds.findIndex((one) => !(one > 0));
  if (odd >= 0 || speeds.length < Math.min(3, tubes) || speeds.length > tubes || !(area > 0)) {
    throw new InputError(
      `air flow: ${speeds.length} speeds of ${tubes} tubes` +
        (odd >= 0 ? `, speed ${odd + 1} is ${speeds[odd]}` : "") +
        "; expected 3 tubes or more, no more than there are, each above 0 m/s: a blocked tube is a " +
        "fault to mend, not a speed",
    );
  }
  const count = speeds.length;
  const mean = speeds.reduce((sum, one) => sum + one, 0) / count;
  const spread = count > 1
    ? Math.sqrt(speeds.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (count - 1))
    : 0;
  // of the tubes not measured, and of the readings of those that were
  const unseen = spread * Math.sqrt((1 / count) * (1 - count / tubes));
  const own = Math.hypot(unseen, readingDoubt * mean / Math.sqrt(count));
  const found = propagate(
    inputs([mean, 1], [own, probeDoubt]),
    ([speed, probe]) => [tubes * area * speed! * probe!],
  );
  return flowStage(found.values[0]!, found.uncertainties[0]!, {
    used: `air speeds of ${count} of ${tubes} tubes`,
    count,
    cannotTell: [
      ...count < tubes
        ? [
          `The ${
            tubes - count
          } tubes not measured are taken as like the others; a blocked one among them cannot be told.`,
        ]
        : [],
      "Air that leaves between fan and tubes (leaking headers) is not in it.",
    ],
  });
}

/** Readings of an air flow meter. */
export interface FlowReadings {
  /** m³/s, readings with the fan on */
  readonly flows: readonly number[];
  /** standard uncertainty of the meter over its value, common to all readings; 0.1 unless given */
  readonly meterDoubt?: number;
}

/**
 * Air flow from a meter: mean of the readings with the fan on, with their scatter, which hangs together
 * in time, and the meter's own doubt, which does not fall with more readings.
 *
 * @param readings at least 12
 * @returns stage with the air flow in m³/s
 * @throws InputError for too few readings
 */
export function flowFromMeter({ flows, meterDoubt = 0.1 }: FlowReadings): Stage {
  if (flows.length < FEWEST_FLOWS) {
    throw new InputError(
      `air flow: ${flows.length} readings with the fan on; expected ${FEWEST_FLOWS} or more`,
    );
  }
  const mean = flows.reduce((sum, one) => sum + one, 0) / flows.length;
  const off = flows.map((one) => one - mean);
  const { effectiveCount } = serialOf(off);
  const variance = off.reduce((sum, one) => sum + one * one, 0) / (flows.length - 1);
  return flowStage(mean, Math.hypot(Math.sqrt(variance / effectiveCount), meterDoubt * mean), {
    used: `${flows.length} readings of the flow meter with the fan on`,
    count: flows.length,
    cannotTell: [
      "A meter that is off is off in every reading: only a traverse beside it tells by how much.",
    ],
  });
}

const FEWEST_FLOWS = 12;

/** Pressure drop over something whose drop at a known flow is known. */
export interface PressureDrop {
  /** Pa, readings with the fan on */
  readonly pressure: readonly number[];
  /** Pa at `knownFlow`: nozzle, header or the whole field, as calibrated once */
  readonly knownPressure: number;
  /** m³/s at which that was */
  readonly knownFlow: number;
  /** exponent of the flow in the pressure: 2 for a nozzle, 1.75 to 2 for tubes; 2 unless given */
  readonly exponent?: number;
  /** standard uncertainty of the known flow over its value; 0.05 unless given */
  readonly knownDoubt?: number;
}

/**
 * Air flow from a pressure drop: Q = Q_known·(Δp/Δp_known)^(1/n).
 *
 * @param drop readings, at least 2
 * @returns stage with the air flow in m³/s
 * @throws InputError for too few readings or one that is not above 0
 */
export function flowFromPressure(drop: PressureDrop): Stage {
  const { pressure, knownPressure, knownFlow, exponent = 2, knownDoubt = 0.05 } = drop;
  const odd = pressure.findIndex((one) => !(one > 0));
  if (pressure.length < 2 || odd >= 0 || !(knownPressure > 0 && knownFlow > 0 && exponent > 0)) {
    throw new InputError(
      `air flow: ${pressure.length} pressures` +
        (odd >= 0 ? `, number ${odd + 1} is not above 0` : "") +
        "; expected 2 or more above 0 Pa, and a known flow with its pressure: check the tapping hoses",
    );
  }
  const count = pressure.length;
  const mean = pressure.reduce((sum, one) => sum + one, 0) / count;
  const spread = Math.sqrt(
    pressure.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (count * (count - 1)),
  );
  const found = propagate(
    inputs([mean, knownFlow], [spread, knownDoubt * knownFlow]),
    ([now, known]) => [known! * (now! / knownPressure) ** (1 / exponent)],
  );
  return flowStage(found.values[0]!, found.uncertainties[0]!, {
    used: `${count} pressures, mean ${showNumber(mean, 1)} Pa`,
    count,
    cannotTell: [
      "One pressure tells the flow only while nothing changes behind it: a tube that fills with water and " +
      "a leaking header move the pressure opposite ways.",
    ],
  });
}

function flowStage(
  value: number,
  uncertainty: number,
  rest: Pick<Stage, "used" | "count" | "cannotTell">,
): Stage {
  const what = { name: "air flow", key: null, unit: "m3/s" };
  return {
    name: "air flow",
    estimates: [estimateOf(what, value, uncertainty, 1.96 * uncertainty)],
    correlation: [[1]],
    places: [],
    ...rest,
  };
}

/**
 * The fan's speed that moves the measured air flow: flow goes with speed where the pressure goes with
 * its square (fan laws, ASHRAE Fundamentals 2017 [ashrae-2017], from memory; near enough for 20 %).
 *
 * @param flow stage of the air flow
 * @param computed m³/s that the fan chapter works out at `speed`
 * @param speed the study's `fan.speed`, a ratio
 */
export function fanSpeedOf(flow: Stage, computed: number, speed: number): Stage {
  const { value, standardUncertainty, low, high } = flow.estimates[0]!;
  const scale = speed / computed;
  return {
    ...flow,
    estimates: [...flow.estimates, {
      name: "fan speed",
      key: "fan.speed",
      unit: "",
      value: value * scale,
      standardUncertainty: standardUncertainty * scale,
      low: low * scale,
      high: high * scale,
    }],
    correlation: [[1, 1], [1, 1]],
    cannotTell: [
      ...flow.cannotTell,
      "Whether the fan turns slower or the way resists more cannot be told from the flow: the speed stands for both.",
    ],
  };
}
