/** The tubes as the air sees them: flow, film and length of a segment for each modelled tube. @module */
import { HEAT_OF_VAPORISATION, massTransferCoefficient } from "../../air/mod.ts";
import { InputError } from "../../basics/mod.ts";
import type { ConductionOperator } from "../ground/operator.ts";

/** One modelled tube. */
export interface FieldTube {
  /** air heat capacity rate, W/K */
  readonly heatRate: number;
  /** dry air, kg/s */
  readonly airRate: number;
  /** W/(m K): film coefficient times inside perimeter */
  readonly film: number;
}

/** All modelled tubes with what one segment (a slice) exchanges. */
export interface TubeField {
  readonly tubes: number;
  /** slices with tubes in them */
  readonly slices: number;
  /** m of tube in a slice */
  readonly segment: number;
  /** whole tubes one modelled tube stands for (2 in half a slice, where the cut tube has half) */
  readonly copies: number;
  readonly heatRate: Float64Array;
  readonly airRate: Float64Array;
  /** W/(m K) between air entering a segment and the wall, sensible */
  readonly sensible: Float64Array;
  /** W/m for each kg/kg of humidity between entering air and wall, latent */
  readonly latent: Float64Array;
  /** m K/W between wall and block */
  readonly soilSide: Float64Array;
  /** kg of water a segment can hold on its wall before it drains */
  readonly waterHeld: Float64Array;
}

/** How a tube field is made. */
export interface TubeFieldInputs {
  readonly operator: ConductionOperator;
  readonly slices: number;
  /** m */
  readonly length: number;
  /** the mesh holds only x ≥ 0 */
  readonly half: boolean;
  /** each modelled tube as if whole */
  readonly tubes: readonly FieldTube[];
  /** m², inside wall of one metre of tube */
  readonly perimeter: number;
  /** kg/m² of wall that stays as film and in the corrugations */
  readonly filmWater: number;
  /** Pa */
  readonly pressure: number;
}

/**
 * degC of the film in the tubes at which the Lewis rule is taken, a middle of charging and
 * discharging: from 0 to 30 degC the mass transfer moves by 0.3 % either way.
 */
const FILM_TEMPERATURE = 15;

/**
 * Works out the segment constants: with N = h·P·Δx/ṁc the air gives
 * ṁc(1 − e^(−N)) of the difference between entering air and wall; vapour likewise with the dry air
 * flow and the mass transfer coefficient of {@link massTransferCoefficient}, N = g·P·Δx/ṁ.
 *
 * @throws {InputError} where film and block together would give a negative resistance
 */
export function tubeField(inputs: TubeFieldInputs): TubeField {
  const { operator, slices, tubes } = inputs;
  const segment = inputs.length / slices;
  const part = operator.tubes.map((port) => port.part);
  const units = tubes.map((tube) => tube.film * segment / tube.heatRate);
  const vapourUnits = tubes.map((tube) =>
    massTransferCoefficient(tube.film, FILM_TEMPERATURE, inputs.pressure) * segment / tube.airRate
  );
  const soilSide = Float64Array.from(operator.tubes, (port) => port.resistance / port.part);
  tubes.forEach((tube, k) => {
    if (1 / tube.film + operator.tubes[k]!.resistance <= 0) {
      throw new InputError(
        "the soil mesh is too coarse for the high heat transfer in the tubes: use finer blocks",
      );
    }
  });
  const each = (of: (tube: FieldTube, k: number) => number) =>
    Float64Array.from(tubes, (tube, k) => part[k]! * of(tube, k));
  return {
    tubes: tubes.length,
    slices,
    segment,
    copies: inputs.half ? 2 : 1,
    heatRate: each((tube) => tube.heatRate),
    airRate: each((tube) => tube.airRate),
    sensible: each((tube, k) => -tube.heatRate * Math.expm1(-units[k]!) / segment),
    latent: each((tube, k) =>
      -tube.airRate * HEAT_OF_VAPORISATION * Math.expm1(-vapourUnits[k]!) / segment
    ),
    soilSide,
    waterHeld: each(() => inputs.perimeter * inputs.filmWater * segment),
  };
}

/** Film with mass flow (Dittus & Boelter 1930 [dittus-boelter-1930]). */
const FILM_POWER = 0.8;

/** What a segment exchanges for each metre at another flow: N goes with the film over the flow. */
function exchangeAt(segment: number, given: number, stream: number, ratio: number): number {
  const units = -Math.log1p(-given * segment / stream) * ratio ** (FILM_POWER - 1);
  return -ratio * stream * Math.expm1(-units) / segment;
}

/**
 * The same tubes with another mass flow: of another density, or of a fan at another speed.
 *
 * @param field at its own flow
 * @param ratio new mass flow over it
 */
export function atFlow(field: TubeField, ratio: number): TubeField {
  const { segment, heatRate, airRate } = field;
  return {
    ...field,
    heatRate: heatRate.map((rate) => rate * ratio),
    airRate: airRate.map((rate) => rate * ratio),
    sensible: field.sensible.map((value, k) => exchangeAt(segment, value, heatRate[k]!, ratio)),
    latent: field.latent.map((value, k) =>
      exchangeAt(segment, value, airRate[k]! * HEAT_OF_VAPORISATION, ratio)
    ),
  };
}
