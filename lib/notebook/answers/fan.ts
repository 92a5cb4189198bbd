/** What the fan chapter answers. @module */
import { type DisplayItem, showBoth, showSi } from "../../charts/mod.ts";
import type { FanCurve, FanInputs, FanResult } from "../../fan/types.ts";
import { movedFanCurve } from "../../charts/mod.ts";
import type { TubesInputs } from "../../tubes/types.ts";
import { answer, type Light } from "../answer.ts";
import { numbers } from "../table.ts";

/** What is known of the fan. */
export interface FanWords {
  readonly result: FanResult;
  readonly inputs: FanInputs;
  readonly curve: FanCurve;
  readonly tubes: TubesInputs;
}

/** Flow at which the fan meets a system of `factor` times the resistance, m³/s; linear between points. */
export function flowAgainst(words: FanWords, factor: number): number {
  const { result } = words;
  const curve = movedFanCurve(words);
  const gap = (index: number) =>
    curve[index]!.y - factor * result.systemCoefficient * curve[index]!.x ** result.systemExponent;
  for (let index = curve.length - 1; index > 0; index--) {
    if (gap(index) > 0 || gap(index - 1) <= 0) continue;
    const share = gap(index - 1) / (gap(index - 1) - gap(index));
    return curve[index - 1]!.x + share * (curve[index]!.x - curve[index - 1]!.x);
  }
  return gap(curve.length - 1) > 0 ? curve[curve.length - 1]!.x : 0;
}

/** The answer card; the range takes the resistance a fifth lower and higher. */
export function fanAnswer(words: FanWords): DisplayItem {
  const { result, inputs, curve, tubes } = words;
  const ratio = result.airFlow / tubes.airFlow;
  const light: Light = result.stalled || ratio < 0.7 ? "no" : ratio < 0.95 ? "partly" : "yes";
  return answer({
    light,
    answer:
      `${inputs.count} × ${curve.name} ${inputs.count === 1 ? "delivers" : "deliver"} ${
        showBoth(result.airFlow, "airFlow")
      } at ${showBoth(result.pressure, "pressure")}, ${
        showSi(ratio, "share")
      } of the design flow, for ${showSi(result.power, "power")} (${
        showBoth(result.specificPower, "specificPower")
      }, efficiency ${showSi(result.efficiency, "share")}).` +
      (result.stalled ? " The point lies left of the curve's peak: the fan stalls." : ""),
    range: `${showBoth(flowAgainst(words, 1.2), "airFlow")} to ${
      showBoth(flowAgainst(words, 0.8), "airFlow")
    } with the resistance a fifth higher or lower.`,
    drivenBy: "the pressure of the tubes: a fan's free-air figure says nothing about this point.",
    changesWith:
      "the filter clogged, a tube flooded, the speed were lowered (power goes with about " +
      "the cube), or the place were higher.",
  });
}

/** The operating point in numbers. */
export function fanTable(words: FanWords): DisplayItem {
  const { result, inputs, curve } = words;
  return numbers([
    { label: "fan", value: `${inputs.count} × ${curve.name}`, note: curve.source },
    { label: "speed over rated", value: inputs.speed, kind: "share" },
    { label: "air flow", value: result.airFlow, kind: "airFlow" },
    { label: "fan static pressure", value: result.pressure, kind: "pressure" },
    { label: "electric power", value: `${result.power.toFixed(0)} W` },
    { label: "efficiency, wire to air", value: result.efficiency, kind: "share" },
    { label: "specific power", value: result.specificPower, kind: "specificPower" },
    { label: "air density used", value: result.density, kind: "density" },
    { label: "filter or screen, clean", value: inputs.filterPressure, kind: "pressure" },
  ]);
}
