/**
 * The fan chapter: what the chosen fans give against this tube field, and what that takes.
 *
 * @module
 */
import { showBoth, showSi } from "../units/mod.ts";
import { airDensity, DRY_AIR_HEAT_CAPACITY } from "../air/mod.ts";
import { InputError, type Notice, notice, requireInRange } from "../basics/mod.ts";
import type { HeadersResult } from "../headers/mod.ts";
import type { TubesInputs } from "../tubes/mod.ts";
import { changeFan, fansInParallel, STANDARD_DENSITY } from "./laws.ts";
import { operatingPoint, type PointReached } from "./operating_point.ts";
import { FANS, findFan } from "./products.ts";
import { type AirPath, systemPressure } from "./system.ts";
import type { FanCurve, FanInputs, FanPoint, FanResult } from "./types.ts";

/** Fans that reach less than this share of the design flow are too weak: common practice, no source. */
export const LEAST_FLOW_RATIO = 0.9;
/**
 * K by which a fan may warm its air: as much as the usual lead of the air on the soil at which charging
 * starts. Common practice, no source.
 */
const MOST_RISE = 5;

/** What the fan needs from elsewhere. */
export interface FanSurroundings {
  /** of the tubes section of the study: m³/s of the design air flow */
  readonly tubesInputs: Pick<TubesInputs, "airFlow">;
  /** of the headers chapter: the pressure that headers and tubes need, by air flow */
  readonly headers: Pick<HeadersResult, "systemCurve">;
  /** Pa */
  readonly pressure: number;
  /** degC at the fan */
  readonly airTemperature: number;
  /** fans to choose from; the user's own and those of the library where not given */
  readonly fans?: readonly FanCurve[];
}

/** The fan of the study: of the caller's list, the user's own file, or the library, in this order. */
function chosenFan(inputs: FanInputs, surroundings: FanSurroundings): FanCurve {
  return findFan(inputs.fan, surroundings.fans ?? [...inputs.ownFans ?? [], ...FANS]);
}

/**
 * Air path of the study as the fans see it.
 *
 * @param inputs `fan` section of the study
 * @param surroundings tubes, headers and air
 * @returns the path
 */
export function fanAirPath(inputs: FanInputs, surroundings: FanSurroundings): AirPath {
  return {
    field: surroundings.headers.systemCurve,
    riserDiameter: inputs.riserDiameter,
    riserLosses: inputs.riserLosses,
    filterPressure: inputs.filterPressure,
    designFlow: surroundings.tubesInputs.airFlow,
    fanCount: inputs.count,
    outletArea: chosenFan(inputs, surroundings).outletArea,
    density: airDensity(surroundings.airTemperature, 0, surroundings.pressure),
  };
}

/**
 * Finds the operating point of the chosen fans on this field.
 *
 * @param inputs `fan` section of the study
 * @param surroundings tubes, headers and air
 * @returns the chapter's result
 * @throws {InputError} where the fan is unknown or its curve does not meet the system's: the message
 * says which of both is too strong
 */
export function fanChapter(inputs: FanInputs, surroundings: FanSurroundings): FanResult {
  requireInRange("number of fans", inputs.count, 1, 100, "fans");
  requireInRange("fan speed", inputs.speed, 0.2, 1.2, "times the rated speed");
  requireInRange("riser diameter", inputs.riserDiameter, 0.02, 10, "m");
  requireInRange("riser losses", inputs.riserLosses, 0, 1000, "velocity heads");
  requireInRange("filter pressure", inputs.filterPressure, 0, 10000, "Pa");
  const path = fanAirPath(inputs, surroundings);
  const rated = chosenFan(inputs, surroundings);
  const ratios = { speed: inputs.speed, density: path.density / STANDARD_DENSITY };
  const curve = fansInParallel(changeFan(rated, ratios), inputs.count);
  const system = systemPressure(path);
  const point = operatingPoint(curve, system);
  if (!point.reached) throw new InputError(`${rated.name}: ${point.reason}`);
  const at = (key: "chargeSpeed" | "dischargeSpeed") =>
    pointAtShare(curve, system, inputs[key] ?? 1, `fan.${key}`);
  const dirty = operatingPoint(curve, systemPressure(path, inputs.filterDirty));
  const exponent = systemSlope(system, point.airFlow);
  const most = curve.airFlow.at(-1)!;
  const result = {
    airFlow: point.airFlow,
    pressure: point.pressure,
    power: point.power,
    efficiency: point.airFlow * point.pressure / point.power,
    specificPower: point.power / point.airFlow,
    systemCoefficient: point.pressure / point.airFlow ** exponent,
    systemExponent: exponent,
    stalled: point.stalled,
    density: path.density,
    curve,
    systemCurve: Array.from({ length: 41 }, (_, i) => {
      const airFlow = most * i / 40;
      return { airFlow, pressure: system(airFlow) };
    }),
    flowRatio: point.airFlow / path.designFlow,
    charge: at("chargeSpeed"),
    discharge: at("dischargeSpeed"),
    dirtyFilter: dirty.reached ? pointOnly(dirty) : null,
  };
  return { ...result, notices: fanNotices(result, point, path.filterPressure > 0) };
}

/** Where the fans meet the field at a share of their speed, by the fan laws. */
function pointAtShare(
  curve: FanCurve,
  system: (airFlow: number) => number,
  share: number,
  key: string,
): FanPoint {
  requireInRange(key, share, 0.2, 1, "of the fan's speed");
  const point = operatingPoint(share === 1 ? curve : changeFan(curve, { speed: share }), system);
  if (!point.reached) {
    throw new InputError(`"${key}" of ${showSi(share, "share")}: ${point.reason}`);
  }
  return pointOnly(point);
}

function pointOnly({ airFlow, pressure, power }: PointReached): FanPoint {
  return { airFlow, pressure, power };
}

/** Exponent of the power law that touches the system curve: d ln p / d ln Q. */
function systemSlope(system: (airFlow: number) => number, airFlow: number): number {
  const above = system(airFlow * 1.05);
  const below = system(airFlow / 1.05);
  return Math.log(above / below) / (2 * Math.log(1.05));
}

function fanNotices(
  result: Omit<FanResult, "notices">,
  point: PointReached,
  hasFilter: boolean,
): readonly Notice[] {
  const list: Notice[] = [];
  const warn = (text: string): void => void list.push(notice("warning", "fan", text));
  const percent = (value: number): string => showSi(value, "share");
  if (result.flowRatio < LEAST_FLOW_RATIO) {
    warn(
      `The fan moves ${
        percent(result.flowRatio)
      } of the design air flow against this field. Never ` +
        "choose a fan by its free-air figure.",
    );
  } else if (result.flowRatio > 1.15) {
    warn(
      `The fan moves ${
        percent(result.flowRatio)
      } of the design air flow: a lower speed saves power.`,
    );
  }
  if (point.stalled) {
    warn("The fan works to the left of its pressure peak: there it stalls, hunts and roars.");
  } else if (point.crossings.length > 1) {
    warn("The system curve meets the fan's curve more than once: the fan may hunt.");
  }
  if (result.efficiency > 0.65) {
    warn(
      `A wire-to-air static efficiency of ${percent(result.efficiency)} is more than such fans ` +
        "reach (common practice, no source): check the points of the curve.",
    );
  }
  const rise = result.specificPower / (result.density * DRY_AIR_HEAT_CAPACITY);
  if (rise > MOST_RISE) {
    warn(
      `The fan's own power warms its air by ${
        showBoth(rise, "temperatureDifference")
      }: what it then ` +
        "puts into the soil is paid as electricity and not taken from the house. Fewer or smaller fans, " +
        "a lower speed, or a field that lets more air through.",
    );
  }
  if (hasFilter && result.dirtyFilter === null) {
    warn("With a dirty filter the fan can no longer drive air through the field.");
  }
  list.push(notice(
    "caution",
    "fan",
    "The fan starts by itself in a wet place: fit guards on both sides, a lockable isolator beside " +
      "it, a motor rated for wet air and residual-current protection; mains wiring by a licensed electrician " +
      "to local code.",
  ));
  list.push(notice("info", "fan", "Noise is not computed: ask the maker for sound data."));
  return list;
}
