/**
 * The sums of the reduced step for a block that holds a single lane, as that of a house whose fan is
 * always off. Rows stand in for lanes: several go together, so that no sum waits for its last term.
 * Each sum has the terms of four lanes' kernel in the same order, so the answers agree to the bit.
 *
 * @module
 */
import { BLOCK, type InputRun, type StateMove } from "./kernel_layout.ts";

/** Σₖ row[k]·x[k] of the block's first lane. */
export function readAlone(
  row: Float64Array,
  first: number,
  states: number,
  x: Float64Array,
  start: number,
): number {
  let at = start;
  let sum = 0;
  for (let k = 0; k < states; k++) {
    sum += row[first + k]! * x[at]!;
    at += BLOCK;
  }
  return sum;
}

/** {@link readAlone} for two rows, into the places of the first lane in eight values. */
export function readTwoAlone(
  row: Float64Array,
  first: number,
  second: number,
  states: number,
  x: Float64Array,
  start: number,
  out: Float64Array,
): void {
  let at = start;
  let a = 0, b = 0;
  for (let k = 0; k < states; k++) {
    const value = x[at]!;
    a += row[first + k]! * value;
    b += row[second + k]! * value;
    at += BLOCK;
  }
  out[0] = a;
  out[BLOCK] = b;
}

/** Σ_q row[q]·input[q] of the block's first lane over a run of ports, added to a value. */
export function addAlone(
  row: Float64Array,
  port: number,
  run: InputRun,
  input: Float64Array,
  start: number,
  value: number,
): number {
  const first = port * run.ports;
  let at = start + run.from * BLOCK;
  let sum = value;
  for (let q = run.from; q < run.to; q++) {
    sum += row[first + q]! * input[at]!;
    at += BLOCK;
  }
  for (let i = 0; i < run.count; i++) {
    const q = run.listed[i]!;
    sum += row[first + q]! * input[start + q * BLOCK]!;
  }
  return sum;
}

/** Moves the states of the block's first lane, four at a time. */
export function moveAlone(
  move: StateMove,
  run: InputRun,
  input: Float64Array,
  inputStart: number,
  x: Float64Array,
  start: number,
): void {
  const { gains, decay, growth } = move;
  const { ports, from, to, listed, count } = run;
  const states = decay.length;
  const fours = states - states % 4;
  for (let k = 0; k < fours; k += 4) {
    const row = k * ports;
    let known = inputStart + from * BLOCK;
    let a = 0, b = 0, c = 0, d = 0;
    for (let q = from; q < to; q++) {
      const u = input[known]!;
      a += gains[row + q]! * u;
      b += gains[row + ports + q]! * u;
      c += gains[row + 2 * ports + q]! * u;
      d += gains[row + 3 * ports + q]! * u;
      known += BLOCK;
    }
    for (let i = 0; i < count; i++) {
      const q = listed[i]!;
      const u = input[inputStart + q * BLOCK]!;
      a += gains[row + q]! * u;
      b += gains[row + ports + q]! * u;
      c += gains[row + 2 * ports + q]! * u;
      d += gains[row + 3 * ports + q]! * u;
    }
    const at = start + k * BLOCK;
    x[at] = decay[k]! * x[at]! + growth[k]! * a;
    x[at + BLOCK] = decay[k + 1]! * x[at + BLOCK]! + growth[k + 1]! * b;
    x[at + 2 * BLOCK] = decay[k + 2]! * x[at + 2 * BLOCK]! + growth[k + 2]! * c;
    x[at + 3 * BLOCK] = decay[k + 3]! * x[at + 3 * BLOCK]! + growth[k + 3]! * d;
  }
  for (let k = fours; k < states; k++) {
    const at = start + k * BLOCK;
    const sum = addAlone(gains, k, run, input, inputStart, 0);
    x[at] = decay[k]! * x[at]! + growth[k]! * sum;
  }
}
