/** The parameters of the model that logs can move, and what was believed of each. @module */
import { mean } from "d3-array";
import { type HouseInputs, leafAreaByHour } from "../../house/mod.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { Prior } from "../calibration/fitted_study.ts";
import type { JointParameter } from "../calibration/joint.ts";
import type { Believed, ModelFactors, StageRow, StageSetting } from "./types.ts";

/** A parameter of the model. */
export interface ModelParameter extends JointParameter {
  /** ratio of the model that it moves */
  readonly factor: keyof ModelFactors;
  /** value of the study, in its unit */
  readonly planned: number;
  /** ratio by which it is moved to either side of its start, to see how the days follow; above 1 */
  readonly by: number;
}

/**
 * Ratio to either side of the study's value that would have been believed without a log: soil estimated
 * from texture, cracks nobody measured, a fan on its curve, films of rough tube; common practice, no source.
 */
const BELIEVED = { conductivity: 2, leakage: 3, fanSpeed: 1.5, film: 3, leafArea: 3 } as const;

/**
 * Ratios of such moves: to either side of what readings of its own told of a parameter, and of a soil that
 * none told. Where the soil is far from its start, the longer move came nearer to the truth; where it is not,
 * a shorter one.
 */
const [MOVE, FAR_MOVE] = [1.15, 1.3];

const about = (value: number, ratio: number): Prior => ({
  low: value / ratio,
  high: value * ratio,
});

/** What the study believes of each key that a stage may give. */
export function believedOf(
  { setting, inputs }: { readonly setting: StageSetting; readonly inputs: HouseInputs },
): Believed[] {
  const of = (key: string, value: number, ratio: number) => ({
    key,
    value,
    ...about(value, ratio),
  });
  return [
    of("house.leakage", inputs.leakage, BELIEVED.leakage),
    of("house.leakageWind", inputs.leakageWind, BELIEVED.leakage),
    of("fan.speed", setting.fanSpeed, BELIEVED.fanSpeed),
    of("soil.measuredConductivity", setting.conductivity, BELIEVED.conductivity),
    of("house.leafArea", mean(leafAreaByHour(inputs.leafArea))!, BELIEVED.leafArea),
  ].filter(({ value }) => value > 0);
}

/** The parameters of the joint fit, each starting at what its own stage found, or at the study's value. */
export function modelParameters(
  { setting, inputs, plan, stages }: {
    readonly setting: StageSetting;
    readonly inputs: HouseInputs;
    readonly plan: StoreRequest;
    readonly stages: readonly StageRow[];
  },
): ModelParameter[] {
  const found = (key: string, { low, high }: Prior) =>
    stages.flatMap(({ stage }) => stage?.estimates ?? []).find((one) =>
      one.key === key && one.value > low && one.value < high && one.low > 0 &&
      one.high / one.low < high / low
    )?.value;
  const keyed = (
    words: Pick<ModelParameter, "name" | "unit" | "factor">,
    key: string,
    planned: number,
    ratio: number,
  ): ModelParameter => {
    const prior = about(planned, ratio);
    return { ...words, key, planned, prior, start: found(key, prior) ?? planned, by: MOVE };
  };
  // layers of soil have values of their own; one factor for all has no key
  const layered = (plan.soilInputs.layers ?? []).length > 0;
  const soil = keyed(
    { name: "soil conductivity", unit: "W/(m K)", factor: "diffusivity" },
    "soil.measuredConductivity",
    setting.conductivity,
    BELIEVED.conductivity,
  );
  const told = found("soil.measuredConductivity", soil.prior) !== undefined;
  return [
    { ...soil, key: layered ? null : soil.key, by: told ? MOVE : FAR_MOVE },
    ...(inputs.leakage > 0
      ? [keyed(
        { name: "leakage in calm air, with wind in proportion", unit: "1/h", factor: "leakage" },
        "house.leakage",
        inputs.leakage,
        BELIEVED.leakage,
      )]
      : []),
    keyed(
      { name: "fan speed", unit: "", factor: "airFlow" },
      "fan.speed",
      setting.fanSpeed,
      BELIEVED.fanSpeed,
    ),
    {
      name: "film of the tubes over the study's",
      key: null,
      unit: "",
      factor: "film",
      planned: 1,
      start: 1,
      by: MOVE,
      prior: about(1, BELIEVED.film),
    },
  ];
}
