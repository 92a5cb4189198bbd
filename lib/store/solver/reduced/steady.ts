/** Steady answers of a slice, less what its states answer in the end: what is added at once. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import { type BandedFactor, solveBandedMany } from "./banded_cholesky.ts";
import { balancedInputs, leakOf, type Port, seenBy, spreadInputs, weightOf } from "./ports.ts";

/** States as far as steady answers need them. */
export interface SteadyStates {
  /** 1/s */
  readonly rates: Float64Array;
  /** port·states + state */
  readonly gains: Float64Array;
}

/** Port fields solved together: no more of them are held at a time. */
const GROUP = 32;

/**
 * What is left out of the states, as steady answers.
 *
 * A slice that is nearly sealed warms by far more than what is sought, so the warming as a whole is
 * taken out of both answers before they are subtracted: inputs are balanced by the surfaces, and
 * both fields are moved by a constant until no heat passes the surfaces together. The states hold
 * the constant field, so what is taken out is the same in both.
 */
export class LeftOut {
  readonly #size: number;
  readonly #tubes: number;
  readonly #ports: readonly Port[];
  readonly #weights: readonly number[];
  readonly #states: SteadyStates;
  readonly #atRest: BandedFactor;
  /** heat through all surfaces by state */
  readonly #leaking: Float64Array;

  constructor(
    operator: ConductionOperator,
    ports: readonly Port[],
    states: SteadyStates,
    atRest: BandedFactor,
  ) {
    this.#size = operator.capacity.length;
    this.#tubes = operator.tubes.length;
    this.#ports = ports;
    this.#weights = ports.map(weightOf);
    this.#states = states;
    this.#atRest = atRest;
    const count = states.rates.length;
    this.#leaking = Float64Array.from({ length: count }, (_, k) => {
      let sum = 0;
      for (let s = 0; s < 3; s++) sum += states.gains[(this.#tubes + s) * count + k]!;
      return sum;
    });
  }

  /** Final states for balanced inputs, and the constant that keeps their heat at the surfaces 0. */
  #inStates(balanced: Float64Array): { readonly end: Float64Array; readonly shift: number } {
    const { rates, gains } = this.#states;
    const count = rates.length;
    const end = new Float64Array(count);
    balanced.forEach((input, p) => {
      if (input === 0) return;
      for (let k = 0; k < count; k++) end[k]! += input * gains[p * count + k]!;
    });
    let lost = 0;
    for (let k = 0; k < count; k++) {
      end[k]! /= rates[k]!;
      lost += this.#leaking[k]! * end[k]!;
    }
    return { end, shift: -lost / leakOf(this.#tubes, this.#weights) };
  }

  /** Steady fields for balanced inputs, moved so that no heat passes the surfaces. */
  #steady(balanced: readonly Float64Array[]): Float64Array[] {
    const surfaces = this.#ports.slice(this.#tubes, this.#tubes + 3);
    const leak = leakOf(this.#tubes, this.#weights);
    const heats = balanced.map((inputs) => spreadInputs(this.#size, this.#ports, inputs));
    return solveBandedMany(this.#atRest, heats).map((field) => {
      const shift = -surfaces.reduce((sum, port) => sum + seenBy(port, field), 0) / leak;
      return field.map((value) => value + shift);
    });
  }

  /** What each of the seers sees of every port's left-out answer, seer·ports + port. */
  seen(seers: readonly Port[], seerGains: Float64Array): Float64Array {
    const ports = this.#ports.length;
    const result = new Float64Array(seers.length * ports);
    const seerWeights = seers.map(weightOf);
    for (let first = 0; first < ports; first += GROUP) {
      const balanced = this.#ports.slice(first, first + GROUP).map((_, k) =>
        balancedInputs(this.#tubes, this.#weights, unit(ports, first + k))
      );
      this.#steady(balanced).forEach((field, k) => {
        const { end, shift } = this.#inStates(balanced[k]!);
        seers.forEach((seer, s) => {
          let slow = shift * seerWeights[s]!;
          for (let j = 0; j < end.length; j++) slow += seerGains[s * end.length + j]! * end[j]!;
          result[s * ports + first + k] = seenBy(seer, field) - slow;
        });
      });
    }
    return result;
  }

  /**
   * Left-out answer by cell for inputs at the ports.
   *
   * @param shapes state·cells + cell
   * @param inputs by port
   */
  field(shapes: Float64Array, inputs: Float64Array): Float64Array {
    const balanced = balancedInputs(this.#tubes, this.#weights, inputs);
    const { end, shift } = this.#inStates(balanced);
    const field = this.#steady([balanced])[0]!;
    end.forEach((factor, k) => {
      const from = k * field.length;
      for (let c = 0; c < field.length; c++) field[c]! -= factor * shapes[from + c]!;
    });
    return field.map((value) => value - shift);
  }
}

/** 1 at one place of many. */
function unit(length: number, place: number): Float64Array {
  const values = new Float64Array(length);
  values[place] = 1;
  return values;
}
