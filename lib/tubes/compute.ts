/**
 * The tubes chapter: pressure, speed and dry heat transfer of one tube at the design air flow.
 *
 * @module
 */
import { showBoth, showRange, showSi } from "../units/mod.ts";
import { airProperties } from "../air/mod.ts";
import { type Notice, notice, requireInRange } from "../basics/mod.ts";
import { effectiveness, filmCoefficient, transferUnits } from "./film.ts";
import { EXIT_LOSS, FLUSH_INLET_LOSS, tubeLoss } from "./pressure.ts";
import { floorExtents, type FloorSize, tubePositions } from "./positions.ts";
import { findTube } from "./products.ts";
import type { TubesInputs, TubesResult } from "./types.ts";

/** What the tubes need from elsewhere. */
export interface TubesSurroundings {
  /** floor of the house, m */
  readonly house: FloorSize;
  /** Pa */
  readonly pressure: number;
  /** degC of the air in the tubes */
  readonly airTemperature: number;
}

/**
 * Works out one tube of the field at the design air flow, shared evenly.
 *
 * @param inputs `tubes` section of the study
 * @param surroundings house, air pressure and air temperature
 * @returns the chapter's result
 * @throws {InputError} where the tube is unknown
 * @throws {OutOfRangeError} where a count, length or flow makes no sense
 */
export function tubesChapter(inputs: TubesInputs, surroundings: TubesSurroundings): TubesResult {
  checkInputs(inputs);
  const product = findTube(inputs.tube);
  const air = airProperties(surroundings.airTemperature, surroundings.pressure);
  const flowPerTube = inputs.airFlow / inputs.count;
  const { length, extraLosses } = inputs;
  const loss = tubeLoss({ product, length, airFlow: flowPerTube, extraLosses, air });
  const diameter = product.insideDiameter;
  const film = filmCoefficient(loss.airSpeed, diameter, air);
  const units = transferUnits({
    filmCoefficient: film,
    diameter,
    length,
    airFlow: flowPerTube,
    air,
  });
  const result = {
    product,
    count: inputs.count,
    length,
    totalLength: inputs.count * length,
    diameter,
    positions: tubePositions(inputs),
    airSpeed: loss.airSpeed,
    flowPerTube,
    reynolds: loss.reynolds,
    frictionFactor: loss.frictionFactor,
    pressureDrop: loss.pressureDrop,
    lossCoefficient: loss.lossCoefficient,
    inletLoss: FLUSH_INLET_LOSS,
    exitLoss: EXIT_LOSS,
    filmCoefficient: film,
    transferUnits: units,
    effectiveness: effectiveness(units),
  };
  return { ...result, notices: tubesNotices(inputs, result, surroundings) };
}

function checkInputs(inputs: TubesInputs): void {
  requireInRange("tube count", inputs.count, 1, 5000, "tubes");
  requireInRange("tube length", inputs.length, 0.5, 500, "m");
  requireInRange("tube layers", inputs.layers, 1, Math.min(20, inputs.count), "layers");
  requireInRange("air flow", inputs.airFlow, 1e-4, 1000, "m³/s");
  requireInRange("extra losses", inputs.extraLosses, 0, 100, "velocity heads");
}

/** m/s; air moves slower than this in most tube fields: common practice, no source. */
const MOST_USUAL_SPEED = 3;

function tubesNotices(
  inputs: TubesInputs,
  tube: Omit<TubesResult, "notices">,
  surroundings: TubesSurroundings,
): readonly Notice[] {
  const { house } = surroundings;
  const list: Notice[] = [];
  const warn = (text: string): void => void list.push(notice("warning", "tubes", text));
  const { along, across } = floorExtents(house, inputs.direction);
  const half = Math.max(...tube.positions.map(({ x }) => Math.abs(x)));
  const fieldWidth = 2 * half + tube.product.outsideDiameter;
  if (inputs.length > along + 0.01) {
    warn(
      `The tubes are ${showBoth(inputs.length, "length")} long, but the floor only ${
        showBoth(along, "length")
      }.`,
    );
  }
  if (fieldWidth > across + 0.01) {
    warn(
      `The tube field is ${showBoth(fieldWidth, "length")} wide, but the floor only ${
        showBoth(across, "length")
      }.`,
    );
  }
  if (inputs.spacing < tube.product.outsideDiameter && inputs.count > inputs.layers) {
    warn("The tubes overlap: their spacing is below the outside diameter.");
  }
  if (inputs.layers > 1 && inputs.layerSpacing < tube.product.outsideDiameter) {
    warn("The layers overlap: their spacing is below the outside diameter.");
  }
  if (inputs.depth < tube.product.outsideDiameter / 2) {
    warn("The upper tubes rise above the floor.");
  }
  if (tube.airSpeed > MOST_USUAL_SPEED) {
    warn(
      `The air moves at ${showBoth(tube.airSpeed, "speed")} in the tubes, ${
        showBoth(tube.flowPerTube, "tubeFlow")
      } each. Growers run a perforated 4-inch tube at 10 to 20 cfm, ${
        showRange(0.6, 1.2, "speed")
      }; designers ` +
        `use ${
          showRange(1.5, MOST_USUAL_SPEED, "speed")
        } (common practice, no source). Above that, pressure becomes ` +
        "costly: use more or wider tubes.",
    );
  } else if (tube.airSpeed < 0.5) {
    warn(
      `The air moves at ${
        showBoth(tube.airSpeed, "speed")
      } in the tubes: laminar or nearly so, with little ` +
        "heat transfer, and a puddle can block it.",
    );
  }
  const leastSlope = tube.product.wall === "smooth" ? 0.02 : 0.01;
  if (inputs.slope < leastSlope) {
    list.push(notice(
      "caution",
      "tubes",
      `The tubes fall ${showSi(inputs.slope, "sharePrecise")}; below ${
        showSi(leastSlope, "share")
      } condensate ` +
        "stands in them, and mould and Legionella grow in standing warm water (common practice, no " +
        "source). Lay them to a drained low point.",
    ));
  }
  return list;
}
