/** What the fan chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { FanInputs, FanPoint, FanResult, SummarisedFan } from "../../fan/mod.ts";
import { answerCard, type Light } from "../kit/answer.ts";
import { numbers } from "../kit/table.ts";

/** The answer card; the range takes the resistance a fifth lower and higher. */
export function answer(result: SummarisedFan, inputs: FanInputs): DisplayItem {
  const light: Light = result.stalled || result.flowRatio < 0.7
    ? "no"
    : result.flowRatio < 0.95
    ? "partly"
    : "yes";
  const flow = (point: FanPoint | null) =>
    point === null ? "no operating point on the curve" : shownBoth(point.airFlow, "airFlow");
  return answerCard({
    light,
    answer:
      `${inputs.count} × ${result.curve.name} ${inputs.count === 1 ? "delivers" : "deliver"} ${
        shownBoth(result.airFlow, "airFlow")
      } at ${shownBoth(result.pressure, "pressure")}, ${
        shown(result.flowRatio, "share")
      } of the design flow, for ${showNumber(result.power, 0)} W: ${
        shownBoth(result.specificPower, "specificPower")
      } at an efficiency of ${shown(result.efficiency, "share")}.` +
      (result.stalled
        ? " The operating point is to the left of the pressure peak: the fan stalls there."
        : ""),
    range: `With the resistance a fifth higher ${
      flow(result.summary.moreResistance)
    }, a fifth lower ${flow(result.summary.lessResistance)}; with a dirty filter ${
      flow(result.dirtyFilter)
    }.`,
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
