/**
 * The sums of the reduced step over four lanes at once; long because the loops for one row, two rows and
 * one lane are written out, which the machine needs to run them fast. Each coefficient is loaded once for four
 * lanes and, where two rows go together, each state or input once for two rows; the sums stay in
 * registers. That is why the bodies are written out by hand.
 *
 * Layout: state k of a block at (block·states + k)·4 + lane, input q at (block·ports + q)·4 + lane.
 *
 * @module
 */
import { addAlone, moveAlone, readAlone, readTwoAlone } from "./kernel_alone.ts";
import { BLOCK, type InputRun, inputRun, type StateMove } from "./kernel_layout.ts";
export { BLOCK, type InputRun, inputRun, type StateMove };

/**
 * out ← Σₖ row[k]·x[k] for four lanes: 8 flops a state.
 *
 * @param row coefficients by state
 * @param first index of the row's first coefficient
 * @param states how many
 * @param x states
 * @param start index of the block's first state
 * @param out four values
 * @param lanes of the block that are not there to fill it up; where one is, the rest is left alone
 */
export function readStates(
  row: Float64Array,
  first: number,
  states: number,
  x: Float64Array,
  start: number,
  out: Float64Array,
  lanes: number,
): void {
  if (lanes === 1) {
    out[0] = readAlone(row, first, states, x, start);
    return;
  }
  let at = start;
  let a0 = 0, a1 = 0, a2 = 0, a3 = 0;
  for (let k = 0; k < states; k++) {
    const m = row[first + k]!;
    a0 += m * x[at]!;
    a1 += m * x[at + 1]!;
    a2 += m * x[at + 2]!;
    a3 += m * x[at + 3]!;
    at += BLOCK;
  }
  out[0] = a0;
  out[1] = a1;
  out[2] = a2;
  out[3] = a3;
}

/** {@link readStates} for two rows, into eight values: 16 flops a state. */
export function readStatesTwice(
  row: Float64Array,
  first: number,
  second: number,
  states: number,
  x: Float64Array,
  start: number,
  out: Float64Array,
  lanes: number,
): void {
  if (lanes === 1) return readTwoAlone(row, first, second, states, x, start, out);
  let at = start;
  let a0 = 0, a1 = 0, a2 = 0, a3 = 0, b0 = 0, b1 = 0, b2 = 0, b3 = 0;
  for (let k = 0; k < states; k++) {
    const m = row[first + k]!;
    const n = row[second + k]!;
    const x0 = x[at]!;
    const x1 = x[at + 1]!;
    const x2 = x[at + 2]!;
    const x3 = x[at + 3]!;
    a0 += m * x0;
    a1 += m * x1;
    a2 += m * x2;
    a3 += m * x3;
    b0 += n * x0;
    b1 += n * x1;
    b2 += n * x2;
    b3 += n * x3;
    at += BLOCK;
  }
  out[0] = a0;
  out[1] = a1;
  out[2] = a2;
  out[3] = a3;
  out[4] = b0;
  out[5] = b1;
  out[6] = b2;
  out[7] = b3;
}

/**
 * out ← out + Σ_q row[q]·input[q] for four lanes over a run of ports: 8 flops a port.
 *
 * @param row coefficients, port·ports + port
 * @param port row wanted
 * @param run ports summed over
 * @param input inputs
 * @param start index of the block's first input
 * @param out four values
 * @param lanes as above
 */
export function addInputs(
  row: Float64Array,
  port: number,
  run: InputRun,
  input: Float64Array,
  start: number,
  out: Float64Array,
  lanes: number,
): void {
  if (lanes === 1) {
    out[0] = addAlone(row, port, run, input, start, out[0]!);
    return;
  }
  const first = port * run.ports;
  let at = start + run.from * BLOCK;
  let a0 = out[0]!, a1 = out[1]!, a2 = out[2]!, a3 = out[3]!;
  for (let q = run.from; q < run.to; q++) {
    const r = row[first + q]!;
    a0 += r * input[at]!;
    a1 += r * input[at + 1]!;
    a2 += r * input[at + 2]!;
    a3 += r * input[at + 3]!;
    at += BLOCK;
  }
  for (let i = 0; i < run.count; i++) {
    const q = run.listed[i]!;
    const r = row[first + q]!;
    at = start + q * BLOCK;
    a0 += r * input[at]!;
    a1 += r * input[at + 1]!;
    a2 += r * input[at + 2]!;
    a3 += r * input[at + 3]!;
  }
  out[0] = a0;
  out[1] = a1;
  out[2] = a2;
  out[3] = a3;
}

/** {@link addInputs} for the rows of two ports, to eight values: 16 flops a port. */
export function addInputsTwice(
  row: Float64Array,
  port: number,
  other: number,
  run: InputRun,
  input: Float64Array,
  start: number,
  out: Float64Array,
  lanes: number,
): void {
  if (lanes === 1) {
    out[0] = addAlone(row, port, run, input, start, out[0]!);
    out[BLOCK] = addAlone(row, other, run, input, start, out[BLOCK]!);
    return;
  }
  const { ports } = run;
  let at = start + run.from * BLOCK;
  let a0 = out[0]!, a1 = out[1]!, a2 = out[2]!, a3 = out[3]!;
  let b0 = out[4]!, b1 = out[5]!, b2 = out[6]!, b3 = out[7]!;
  for (let q = run.from; q < run.to; q++) {
    const r = row[port * ports + q]!;
    const t = row[other * ports + q]!;
    const u0 = input[at]!;
    const u1 = input[at + 1]!;
    const u2 = input[at + 2]!;
    const u3 = input[at + 3]!;
    a0 += r * u0;
    a1 += r * u1;
    a2 += r * u2;
    a3 += r * u3;
    b0 += t * u0;
    b1 += t * u1;
    b2 += t * u2;
    b3 += t * u3;
    at += BLOCK;
  }
  for (let i = 0; i < run.count; i++) {
    const q = run.listed[i]!;
    const r = row[port * ports + q]!;
    const t = row[other * ports + q]!;
    at = start + q * BLOCK;
    const u0 = input[at]!;
    const u1 = input[at + 1]!;
    const u2 = input[at + 2]!;
    const u3 = input[at + 3]!;
    a0 += r * u0;
    a1 += r * u1;
    a2 += r * u2;
    a3 += r * u3;
    b0 += t * u0;
    b1 += t * u1;
    b2 += t * u2;
    b3 += t * u3;
  }
  out[0] = a0;
  out[1] = a1;
  out[2] = a2;
  out[3] = a3;
  out[4] = b0;
  out[5] = b1;
  out[6] = b2;
  out[7] = b3;
}

/**
 * x ← decay·x + growth·(gains·input) for four lanes over a run of ports: 8 flops a state and port,
 * 16 a state.
 *
 * @param move of the step length
 * @param run ports that carry anything
 * @param input inputs
 * @param inputStart index of the block's first input
 * @param x states
 * @param start index of the block's first state
 * @param lanes as above
 */
export function moveStates(
  move: StateMove,
  run: InputRun,
  input: Float64Array,
  inputStart: number,
  x: Float64Array,
  start: number,
  lanes: number,
): void {
  if (lanes === 1) return moveAlone(move, run, input, inputStart, x, start);
  const states = move.decay.length;
  const paired = states - states % 2;
  for (let k = 0; k < paired; k += 2) {
    moveTwo(move, k, run, input, inputStart, x, start + k * BLOCK);
  }
  if (paired < states) moveOne(move, paired, run, input, inputStart, x, start + paired * BLOCK);
}

/** Two states share each load of the inputs. */
function moveTwo(
  move: StateMove,
  k: number,
  run: InputRun,
  input: Float64Array,
  inputStart: number,
  x: Float64Array,
  at: number,
): void {
  const { gains, decay, growth } = move;
  const { ports } = run;
  const row = k * ports;
  let a0 = 0, a1 = 0, a2 = 0, a3 = 0, b0 = 0, b1 = 0, b2 = 0, b3 = 0;
  let known = inputStart + run.from * BLOCK;
  for (let q = run.from; q < run.to; q++) {
    const g = gains[row + q]!;
    const h = gains[row + ports + q]!;
    const u0 = input[known]!;
    const u1 = input[known + 1]!;
    const u2 = input[known + 2]!;
    const u3 = input[known + 3]!;
    a0 += g * u0;
    a1 += g * u1;
    a2 += g * u2;
    a3 += g * u3;
    b0 += h * u0;
    b1 += h * u1;
    b2 += h * u2;
    b3 += h * u3;
    known += BLOCK;
  }
  for (let i = 0; i < run.count; i++) {
    const q = run.listed[i]!;
    const g = gains[row + q]!;
    const h = gains[row + ports + q]!;
    known = inputStart + q * BLOCK;
    const u0 = input[known]!;
    const u1 = input[known + 1]!;
    const u2 = input[known + 2]!;
    const u3 = input[known + 3]!;
    a0 += g * u0;
    a1 += g * u1;
    a2 += g * u2;
    a3 += g * u3;
    b0 += h * u0;
    b1 += h * u1;
    b2 += h * u2;
    b3 += h * u3;
  }
  const e = decay[k]!;
  const f = growth[k]!;
  x[at] = e * x[at]! + f * a0;
  x[at + 1] = e * x[at + 1]! + f * a1;
  x[at + 2] = e * x[at + 2]! + f * a2;
  x[at + 3] = e * x[at + 3]! + f * a3;
  const v = decay[k + 1]!;
  const w = growth[k + 1]!;
  x[at + 4] = v * x[at + 4]! + w * b0;
  x[at + 5] = v * x[at + 5]! + w * b1;
  x[at + 6] = v * x[at + 6]! + w * b2;
  x[at + 7] = v * x[at + 7]! + w * b3;
}

/** The last of an odd number of states. */
function moveOne(
  move: StateMove,
  k: number,
  run: InputRun,
  input: Float64Array,
  inputStart: number,
  x: Float64Array,
  at: number,
): void {
  const { gains, decay, growth } = move;
  for (let l = 0; l < BLOCK; l++) {
    let sum = 0;
    for (let q = run.from; q < run.to; q++) {
      sum += gains[k * run.ports + q]! * input[inputStart + q * BLOCK + l]!;
    }
    for (let i = 0; i < run.count; i++) {
      const q = run.listed[i]!;
      sum += gains[k * run.ports + q]! * input[inputStart + q * BLOCK + l]!;
    }
    x[at + l] = decay[k]! * x[at + l]! + growth[k]! * sum;
  }
}

/** True where all inputs of a block over a run of ports are 0, as in tagged fields at rest. */
export function allSilent(input: Float64Array, start: number, run: InputRun): boolean {
  const end = start + run.to * BLOCK;
  for (let k = start + run.from * BLOCK; k < end; k++) if (input[k] !== 0) return false;
  return true;
}
