/**
 * The headers chapter: shares of the tubes and pressure of headers and tubes at the design air flow.
 *
 * @module
 */
import { showBoth, showSi } from "../units/mod.ts";
import { airProperties } from "../air/mod.ts";
import { InputError, type Notice, notice, requireInRange } from "../basics/mod.ts";
import { crossSection, type TubesResult } from "../tubes/mod.ts";
import { groupNetwork, type HeaderGroup, splitGroups } from "./build.ts";
import { evenness, heatFactor } from "./evenness.ts";
import { bendLosses } from "./in_ground.ts";
import { stubObstruction } from "./inlets.ts";
import { solveParallel } from "./parallel.ts";
import type { HeadersInputs, HeadersResult } from "./types.ts";

/** State of the air in the headers. */
export interface AirState {
  /** Pa */
  readonly pressure: number;
  /** degC */
  readonly airTemperature: number;
}

/** Flows of the system curve over the design flow. */
const CURVE_FLOWS = [0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.7, 2] as const;

/**
 * Groups of tubes on header pairs, ready to become networks.
 *
 * @param inputs `headers` section of the study
 * @param tubes result of the tubes chapter
 * @param state air in the headers
 * @returns the groups, and the tubes of each as indices into `tubes.positions`
 */
export function headerGroups(
  inputs: HeadersInputs,
  tubes: TubesResult,
  state: AirState,
): readonly { readonly group: HeaderGroup; readonly members: readonly number[] }[] {
  requireInRange("header groups", inputs.groups, 1, tubes.count, "groups");
  requireInRange("header diameter", inputs.diameter, 0.02, 10, "m");
  requireInRange("return header diameter", inputs.returnDiameter, 0.02, 10, "m");
  requireInRange("taper of the headers", inputs.taper, 0.1, 1, "(0.1 to 1)");
  checkTubeEnds(inputs, tubes);
  const air = airProperties(state.airTemperature, state.pressure);
  const friction = tubes.frictionFactor * tubes.length / tubes.diameter;
  const extraLosses = tubes.lossCoefficient - friction - tubes.inletLoss - tubes.exitLoss;
  const bends = bendLosses({ tubes, headers: inputs });
  return splitGroups(tubes.positions, inputs.groups).map((members) => ({
    members,
    group: {
      inputs,
      product: tubes.product,
      length: tubes.length,
      extraLosses: Math.max(0, extraLosses),
      exitLoss: tubes.exitLoss,
      places: members.map((tube) => tubes.positions[tube]!.x),
      added: members.map((tube) => bends[tube]!),
      air,
    },
  }));
}

/** Tube ends must find room in the header. */
function checkTubeEnds(inputs: HeadersInputs, tubes: TubesResult): void {
  const narrowest = Math.min(inputs.diameter, inputs.returnDiameter) * inputs.taper;
  const outside = tubes.product.outsideDiameter;
  const millimetres = (value: number): string => showBoth(value, "smallLength");
  if (outside >= narrowest) {
    throw new InputError(
      `Cannot put tubes of ${millimetres(outside)} outside diameter into the side of a header of ` +
        `${millimetres(narrowest)}: choose a larger header, or tees`,
    );
  }
  const insertion = inputs.inlet === "protruding" ? inputs.insertion : 0;
  const blocked = outside * insertion / (Math.PI * narrowest ** 2 / 4);
  if (insertion >= 0.9 * narrowest || blocked >= 0.9) {
    throw new InputError(
      `Cannot insert tube ends ${millimetres(insertion)} into a header of ${
        millimetres(narrowest)
      }: ` +
        "they would close it",
    );
  }
}

/**
 * Solves the headers of the field.
 *
 * @param inputs `headers` section of the study
 * @param tubes result of the tubes chapter
 * @param state air in the headers
 * @returns the chapter's result
 * @throws {InputError} where the tube ends find no room in the header
 * @throws {OutOfRangeError} where a size makes no sense
 * @throws {NotConvergedError} where no balance is found
 */
export function headersChapter(
  inputs: HeadersInputs,
  tubes: TubesResult,
  state: AirState,
): HeadersResult {
  const groups = headerGroups(inputs, tubes, state);
  const networks = groups.map(({ group }) => groupNetwork(group));
  const designFlow = tubes.flowPerTube * tubes.count;
  const solved = solveParallel(networks, designFlow);
  const shares = new Float64Array(tubes.count);
  const supplyPressure = new Float64Array(tubes.count);
  const returnPressure = new Float64Array(tubes.count);
  const groupOf = new Array<number>(tubes.count).fill(0);
  groups.forEach(({ members }, g) =>
    members.forEach((tube, i) => {
      shares[tube] = solved[g]!.flows[i]! / tubes.flowPerTube;
      supplyPressure[tube] = solved[g]!.supplyPressure[i]!;
      returnPressure[tube] = solved[g]!.returnPressure[i]!;
      groupOf[tube] = g;
    })
  );
  const most = Math.max(...groups.map(({ members }) => members.length));
  const areaRatio = most * crossSection(tubes.diameter) / crossSection(inputs.diameter);
  const air = airProperties(state.airTemperature, state.pressure);
  const summary = evenness(shares);
  const result = {
    diameter: inputs.diameter,
    areaRatio,
    shares,
    ...summary,
    pressureDrop: solved[0]!.pressureDrop,
    supplyPressure,
    returnPressure,
    groups: groupOf,
    systemCurve: CURVE_FLOWS.map((factor) => ({
      airFlow: factor * designFlow,
      pressure: factor === 1
        ? solved[0]!.pressureDrop
        : solveParallel(networks, factor * designFlow)[0]!.pressureDrop,
    })),
    heatFactor: heatFactor(shares.map((share) => share * tubes.flowPerTube), {
      product: tubes.product,
      length: tubes.length,
      air,
    }),
  };
  return { ...result, notices: headersNotices(inputs, tubes, result) };
}

function headersNotices(
  inputs: HeadersInputs,
  tubes: TubesResult,
  result: Omit<HeadersResult, "notices">,
): readonly Notice[] {
  const list: Notice[] = [];
  const percent = (value: number): string => showSi(value, "share");
  if (result.flowMin <= 0) {
    list.push(notice(
      "warning",
      "headers",
      "At least one tube has no flow or reversed flow: the headers are too small.",
    ));
  } else if (result.flowMin < 0.9 || result.flowMax > 1.1) {
    list.push(notice(
      "warning",
      "headers",
      `The tubes get ${percent(result.flowMin)} to ${percent(result.flowMax)} of the mean flow ` +
        `(area ratio ${
          showSi(result.areaRatio, "ratio")
        }). A larger header evens this out; a larger fan ` +
        "does not, because all losses grow in proportion.",
    ));
  }
  if (inputs.inlet === "protruding" && inputs.insertion > 0) {
    const { blocked } = stubObstruction({
      outsideDiameter: tubes.product.outsideDiameter,
      insertion: inputs.insertion,
      headerDiameter: Math.min(inputs.diameter, inputs.returnDiameter),
    });
    if (blocked > 0.1) {
      list.push(notice(
        "warning",
        "headers",
        `Each protruding tube end blocks ${percent(blocked)} of the header's cross-section.`,
      ));
    }
  }
  if (tubes.product.outsideDiameter >= 0.7 * inputs.diameter) {
    list.push(notice(
      "warning",
      "headers",
      "The holes are wider than 0.7 of the header diameter: little wall is left to hold the pipe together " +
        "(common practice, no source). Use a tee or a box.",
    ));
  }
  return list;
}
