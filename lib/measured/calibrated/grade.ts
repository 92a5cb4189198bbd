/** Grades a calibration of made-up logs by their truth, and faults found by those planted. @module */
import { InputError, readDataTable } from "../../basics/mod.ts";
import { DAY } from "../../basics/mod.ts";
import type { Estimate } from "../calibration/estimate.ts";
import type { LogTexts } from "../fields.ts";
import type { Finding } from "../log/types.ts";
import type { LogText } from "../log_texts.ts";

/** A true value of made-up logs. */
export interface KnownValue {
  /** key of the study, or of what else is true, such as "change.airFlow" */
  readonly key: string;
  /** in the unit of `unit` */
  readonly value: number;
  /** as in the study file; "1" for a ratio */
  readonly unit: string;
  /** what it is */
  readonly meaning: string;
}

/** An estimate beside the truth. */
export interface GradedValue {
  /** key, or name where it has none */
  readonly name: string;
  /** value found, in the unit of `unit` */
  readonly found: number;
  /** lower end of its interval, in the unit of `unit` */
  readonly low: number;
  /** upper end of its interval, in the unit of `unit` */
  readonly high: number;
  /** true value, in the unit of `unit` */
  readonly truth: number;
  /** of all of them; "" for a ratio */
  readonly unit: string;
  /** true where the interval holds the truth */
  readonly inside: boolean;
}

/** A planted fault, and whether the reader of the log found it. */
export interface GradedFault {
  /** kind, such as "drift" */
  readonly kind: string;
  /** sensor or logger */
  readonly channel: string;
  /** s since 1970 UTC */
  readonly from: number;
  /** s since 1970 UTC */
  readonly to: number;
  /** true where a finding of the kind meets it in channel and time */
  readonly found: boolean;
}

/** A graded calibration. */
export interface Grade {
  /** why nothing is graded; null where something is */
  readonly reason: string | null;
  /** what is true; empty without a file */
  readonly known: readonly KnownValue[];
  /** estimates whose truth is known */
  readonly values: readonly GradedValue[];
  /** true values that no stage gave */
  readonly notGiven: readonly KnownValue[];
  /** planted faults; empty without a file */
  readonly faults: readonly GradedFault[];
  /** number of faults that were found where none was planted, lost rows left out */
  readonly unplanted: number;
}

/** days by which the ends of a finding may be off: drift and sun show only after a while */
const WITHIN: Readonly<Record<string, number>> = { drift: 12, sunHit: 2 };
const ELSE_WITHIN = 0.2;

/** Names under which estimates without a key of the study stand in the truth. */
const BY_NAME: Readonly<Record<string, string>> = {
  "soil diffusivity": "soil.diffusivity",
  "loss coefficient": "quiet.lossCoefficient",
  "film of the tubes over the study's": "change.film",
};
/** Keys of the study whose truth stands under another. */
const BY_KEY: Readonly<Record<string, string>> = {
  "soil.measuredConductivity": "soil.conductivity",
};

/** Truth of a file with the heads key, value, unit, meaning. */
export function knownValues({ name, text }: LogText): KnownValue[] {
  return readDataTable(text, name, ["key"]).map((row) => ({
    key: row.text("key"),
    value: row.number("value"),
    unit: row.text("unit"),
    meaning: row.text("meaning"),
  }));
}

const plain = (unit: string) => unit === "1" ? "" : unit;

/**
 * Estimates beside the truth; those whose truth is not known are left out.
 *
 * @param estimates of a calibration
 * @param known true values
 * @param fanSpeed the study's `fan.speed`, a ratio: the truth of the air flow is told over the plan's
 */
export function gradedValues(
  estimates: readonly Estimate[],
  known: readonly KnownValue[],
  fanSpeed: number,
): GradedValue[] {
  const truthOf = ({ key, name }: Estimate): number | undefined => {
    const at = (wanted: string) => known.find((one) => one.key === wanted)?.value;
    if (key === "fan.speed") {
      const change = at("change.airFlow");
      return change === undefined ? undefined : change * fanSpeed;
    }
    return key === null ? at(BY_NAME[name] ?? "") : at(BY_KEY[key] ?? key);
  };
  return estimates.flatMap((one) => {
    const truth = truthOf(one);
    if (truth === undefined) return [];
    const { value, low, high, unit } = one;
    const name = one.key ?? one.name;
    return [{ name, found: value, low, high, truth, unit, inside: low <= truth && truth <= high }];
  });
}

/** An answer of a learner: value and interval in the unit of the truth. */
export type LearnersValue = readonly [value: number, low: number, high: number];

/**
 * Grades values that somebody found by hand.
 *
 * @param grade of the run, for its true values
 * @param mine value, lower and upper end for each key of the truth, in the unit of the truth
 * @throws {InputError} for a key that the truth does not have, or ends out of order
 */
export function gradeMine(
  { known }: Pick<Grade, "known">,
  mine: Readonly<Record<string, LearnersValue>>,
): GradedValue[] {
  return Object.entries(mine).map(([key, [found, low, high]]) => {
    const truth = known.find((one) => one.key === key);
    if (truth === undefined) {
      throw new InputError(
        `Cannot grade "${key}": the truth holds ${known.map((one) => one.key).join(", ")}`,
      );
    }
    if (!(low <= found && found <= high)) {
      throw new InputError(
        `Cannot grade "${key}": expected value, lower end, upper end in the unit ` +
          `"${truth.unit}", such as [0.6, 0.5, 0.7]; found [${found}, ${low}, ${high}]`,
      );
    }
    const { value, unit } = truth;
    return {
      name: key,
      found,
      low,
      high,
      truth: value,
      unit: plain(unit),
      inside: low <= value && value <= high,
    };
  });
}

function gradedFaults({ name, text }: LogText, findings: readonly Finding[]) {
  const meant = new Set<Finding>();
  const faults = readDataTable(text, name, ["kind", "channel"]).map((row): GradedFault => {
    const [kind, channel] = [row.text("kind"), row.text("channel")];
    const [from, to] = ["from", "to"].map((head) => Date.parse(row.text(head)) / 1000) as [
      number,
      number,
    ];
    const within = (WITHIN[kind] ?? ELSE_WITHIN) * DAY;
    const one = findings.find((finding) =>
      finding.kind === kind && [channel, row.text("other")].includes(finding.channel) &&
      Math.abs(finding.from - from) <= within && Math.abs(finding.to - to) <= within
    );
    if (one !== undefined) meant.add(one);
    return { kind, channel, from, to, found: one !== undefined };
  });
  const others = findings.filter((one) => !meant.has(one) && one.kind !== "gap");
  return { faults, unplanted: others.length };
}

/** What is graded. */
export interface GradeRequest {
  /** texts of the study; null without logs */
  readonly texts: Pick<LogTexts, "truth" | "plantedFaults"> | null;
  /** estimates of the run's own calibration */
  readonly estimates: readonly Estimate[];
  /** the study's `fan.speed`, a ratio */
  readonly fanSpeed: number;
  /** faults that were found */
  readonly findings: readonly Finding[];
}

/**
 * Grades the run's own calibration of made-up logs.
 *
 * @param request estimates, findings, and the texts that say what is true
 */
export function gradeCalibration(request: GradeRequest): Grade {
  const { texts, estimates, fanSpeed, findings } = request;
  const known = texts?.truth === undefined ? [] : knownValues(texts.truth);
  const values = gradedValues(estimates, known, fanSpeed);
  const given = new Set(values.map(({ name }) => BY_KEY[name] ?? BY_NAME[name] ?? name));
  const faults = texts?.plantedFaults === undefined
    ? { faults: [], unplanted: 0 }
    : gradedFaults(texts.plantedFaults, findings);
  const nothing = known.length === 0 && faults.faults.length === 0;
  return {
    reason: nothing
      ? 'the study names no truth (keys "measured.truth" and "measured.plantedFaults"): only ' +
        "made-up logs have one"
      : null,
    known,
    values,
    notGiven: known.filter(({ key }) => /^(house|soil|quiet)\./.test(key) && !given.has(key)),
    ...faults,
  };
}
