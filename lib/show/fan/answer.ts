/** What the fan chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showBoth, showNumber, showSi } from "../../units/mod.ts";
import {
  changeFan,
  type FanInputs,
  type FanPoint,
  type FanResult,
  operatingPoint,
} from "../../fan/mod.ts";
import { answerCard, type Light } from "../kit/answer.ts";
import { numbers, table } from "../kit/table.ts";

function systemOf(result: FanResult, factor: number): (airFlow: number) => number {
  return (airFlow) => factor * result.systemCoefficient * airFlow ** result.systemExponent;
}

/** Point at which the fans meet `factor` times the resistance; null where they do not. */
export function pointAgainst(result: FanResult, factor: number): FanPoint | null {
  const point = operatingPoint(result.curve, systemOf(result, factor));
  return point.reached ? point : null;
}

/** The answer card; the range takes the resistance a fifth lower and higher. */
export function answer(result: FanResult, inputs: FanInputs): DisplayItem {
  const light: Light = result.stalled || result.flowRatio < 0.7
    ? "no"
    : result.flowRatio < 0.95
    ? "partly"
    : "yes";
  const flow = (point: FanPoint | null) =>
    point === null ? "no operating point on the curve" : showBoth(point.airFlow, "airFlow");
  return answerCard({
    light,
    answer:
      `${inputs.count} × ${result.curve.name} ${inputs.count === 1 ? "delivers" : "deliver"} ${
        showBoth(result.airFlow, "airFlow")
      } at ${showBoth(result.pressure, "pressure")}, ${
        showSi(result.flowRatio, "share")
      } of the design flow, for ${showNumber(result.power, 0)} W: ${
        showBoth(result.specificPower, "specificPower")
      } at an efficiency of ${showSi(result.efficiency, "share")}.` +
      (result.stalled
        ? " The operating point is to the left of the pressure peak: the fan stalls there."
        : ""),
    range: `With the resistance a fifth higher ${flow(pointAgainst(result, 1.2))}, a fifth lower ${
      flow(pointAgainst(result, 0.8))
    }; with a dirty filter ${flow(result.dirtyFilter)}.`,
    drivenBy:
      "the pressure drop of tubes, headers, riser and filter: a fan's free-air figure says " +
      "nothing about this point.",
    changesWith:
      "a tube flooded, the filter clogged, the speed were lowered (power varies with about " +
      "the cube), or the site were higher.",
  });
}

/** The operating point in numbers. */
export function summaryTable(result: FanResult, inputs: FanInputs): DisplayItem {
  return numbers([
    { label: "fan", value: `${inputs.count} × ${result.curve.name}`, note: result.curve.source },
    { label: "speed over rated", value: inputs.speed, kind: "share" },
    { label: "air flow", value: result.airFlow, kind: "airFlow" },
    { label: "fan static pressure", value: result.pressure, kind: "pressure" },
    { label: "electric power", value: `${showNumber(result.power, 0)} W` },
    { label: "efficiency, wire to air", value: result.efficiency, kind: "share" },
    { label: "specific power", value: result.specificPower, kind: "specificPower" },
    { label: "air density", value: result.density, kind: "density" },
    { label: "filter or screen, clean", value: inputs.filterPressure, kind: "pressure" },
  ]);
}

/** One line of the speed table. */
interface SpeedRow {
  readonly speed: number;
  readonly point: FanPoint | null;
}

/** The same fans at other speeds against the same field. */
export function speedTable(
  result: FanResult,
  inputs: FanInputs,
  speeds: readonly number[] = [1, 0.8, 0.6, 0.5],
): DisplayItem {
  const rows = speeds.map((speed): SpeedRow => {
    const changed = changeFan(result.curve, { speed: speed / inputs.speed });
    const point = operatingPoint(changed, systemOf(result, 1));
    return { speed, point: point.reached ? point : null };
  });
  return table(rows, [
    { head: "speed over rated", value: (row) => row.speed, kind: "share" },
    { head: "air flow", value: (row) => row.point?.airFlow ?? null, kind: "airFlow" },
    { head: "pressure", value: (row) => row.point?.pressure ?? null, kind: "pressure" },
    { head: "electric power", value: (row) => row.point?.power ?? null, kind: "power", us: false },
    {
      head: "power for 1 m³/s",
      value: (row) => row.point === null ? null : row.point.power / row.point.airFlow,
      kind: "specificPower",
      us: false,
    },
  ], "The same fans slowed down");
}
