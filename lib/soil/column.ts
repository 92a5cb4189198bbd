/** One-dimensional soil column with freezing, solved by a conservative enthalpy scheme. @module */
import { InputError, requireInRange, straightBetween } from "../basics/mod.ts";
import { apparentCapacity, conductivityAt, heatContent, temperatureOf } from "./enthalpy.ts";
import type { SoilProperties } from "./types.ts";

/** One layer of a column, top first. */
export interface SoilLayer {
  /** m; the last layer reaches down to the bottom whatever its thickness */
  readonly thickness: number;
  /** thermal properties of the layer */
  readonly properties: SoilProperties;
}

/** Fineness of the cells. */
export interface ColumnMesh {
  /** m, depth of the bottom */
  readonly depth: number;
  /** m, thickness of the top cell */
  readonly firstCell: number;
  /** ratio of the thickness of each cell to the one above; 1 gives even cells */
  readonly growth: number;
  /** m, no cell is thicker */
  readonly largestCell: number;
}

/** Cells of a column. */
export interface SoilColumn {
  /** m, thickness of each cell */
  readonly thickness: Float64Array;
  /** m, depth of each cell's middle */
  readonly depth: Float64Array;
  /** soil of each cell */
  readonly soil: readonly SoilProperties[];
}

/** What stands at one end of a column. */
export interface ColumnEnd {
  /** degC outside the end */
  readonly temperature: number;
  /** W/(m² K) between there and the soil's face; Infinity fixes the face, 0 insulates it */
  readonly conductance: number;
}

/** Heat that crossed the ends in one step, J/m², positive into the soil. */
export interface ColumnFlow {
  /** through the surface */
  readonly surface: number;
  /** through the bottom */
  readonly base: number;
}

/** Changing part of a column. */
export interface ColumnState {
  /** J/m³, heat content of each cell above 0 °C unfrozen */
  readonly content: Float64Array;
  /** degC of each cell */
  readonly temperature: Float64Array;
}

const MOST_ITERATIONS = 30;
/** K */
const TEMPERATURE_TOLERANCE = 1e-7;
/** K below 0 degC that rounding alone may bring about in ground held at 0 degC. */
const FROST_NOISE = 1e-3;

/**
 * Divides a column of layers into cells.
 *
 * @throws {InputError} without a layer
 */
export function buildColumn(layers: readonly SoilLayer[], mesh: ColumnMesh): SoilColumn {
  const last = layers.at(-1);
  if (last === undefined) throw new InputError("A soil column needs at least one layer");
  requireInRange("first cell of the soil column", mesh.firstCell, 1e-4, mesh.depth, "m");
  requireInRange("growth of the soil cells", mesh.growth, 1, 2, "");
  const thickness: number[] = [];
  let reached = 0;
  let next = mesh.firstCell;
  while (reached < mesh.depth - 1e-9) {
    const cell = mesh.depth - reached < 1.5 * next ? mesh.depth - reached : next;
    thickness.push(cell);
    reached += cell;
    next = Math.min(next * mesh.growth, mesh.largestCell);
  }
  let top = 0;
  const depth = thickness.map((cell) => (top += cell) - cell / 2);
  const soil = depth.map((middle) => {
    let bottom = 0;
    const layer = layers.find((candidate) => (bottom += candidate.thickness) > middle);
    return (layer ?? last).properties;
  });
  return { thickness: Float64Array.from(thickness), depth: Float64Array.from(depth), soil };
}

/**
 * State of a column at given temperatures.
 *
 * @param temperatureAt degC by depth in m
 */
export function startColumn(
  column: SoilColumn,
  temperatureAt: (depth: number) => number,
): ColumnState {
  const temperature = column.depth.map(temperatureAt);
  const content = temperature.map((value, i) => heatContent(column.soil[i]!, value));
  return { content, temperature };
}

/** Heat in the whole column above 0 °C unfrozen, J/m². */
export function columnHeat(column: SoilColumn, state: ColumnState): number {
  return state.content.reduce((sum, content, i) => sum + content * column.thickness[i]!, 0);
}

/** Temperature at any depth, degC, straight lines between cell middles. */
export function temperatureAtDepth(
  column: SoilColumn,
  temperature: ArrayLike<number>,
  depth: number,
): number {
  return straightBetween(column.depth, temperature, depth);
}

/** Deepest 0 degC of a profile, m; 0 where nothing is below 0 degC. */
export function frostFront(column: SoilColumn, temperature: ArrayLike<number>): number {
  let cell = column.depth.length - 1;
  while (cell >= 0 && temperature[cell]! > -FROST_NOISE) cell--;
  if (cell < 0) return 0;
  if (cell === column.depth.length - 1) return column.depth[cell]!;
  if (temperature[cell + 1]! <= 0) return column.depth[cell]! + column.thickness[cell]! / 2;
  const share = temperature[cell]! / (temperature[cell]! - temperature[cell + 1]!);
  return column.depth[cell]! + share * (column.depth[cell + 1]! - column.depth[cell]!);
}

/** Conductance of an end in series with half a cell, W/(m² K). */
function endConductance(end: ColumnEnd, halfCell: number): number {
  return end.conductance === 0 ? 0 : 1 / (1 / end.conductance + halfCell);
}

/** Work arrays of one column, so that a step allocates nothing. */
interface Workspace {
  readonly between: Float64Array;
  readonly content: Float64Array;
  readonly guess: Float64Array;
  readonly solved: Float64Array;
  readonly upper: Float64Array;
  readonly right: Float64Array;
}

/**
 * Makes a function that advances a column in place by one step.
 *
 * Backward Euler on C dT/dt = d/dz(k dT/dz) with the heat content H(T) of freezing soil, Newton on
 * the heat contents, conductivities of the step's start. The heat contents are then moved by the
 * very fluxes that crossed the cell faces, so heat is conserved to rounding whatever the iteration
 * left over, and the temperatures follow from the contents. Source: enthalpy method, Voller & Cross
 * 1981 [voller-cross-1981]; Patankar 1980 [patankar-1980] ch. 4 (harmonic mean conductivity).
 *
 * @returns function of state, surface, base and step in s, giving the heat through both ends
 */
export function columnStepper(
  column: SoilColumn,
): (state: ColumnState, surface: ColumnEnd, base: ColumnEnd, seconds: number) => ColumnFlow {
  const count = column.depth.length;
  const work: Workspace = {
    between: new Float64Array(count + 1),
    content: new Float64Array(count),
    guess: new Float64Array(count),
    solved: new Float64Array(count),
    upper: new Float64Array(count),
    right: new Float64Array(count),
  };
  return (state, surface, base, seconds) => {
    faceConductances(column, state, surface, base, work.between);
    work.content.set(state.content);
    work.guess.set(state.temperature);
    const ends = { surface: surface.temperature, base: base.temperature, seconds };
    let change = Infinity;
    for (let pass = 0; pass < MOST_ITERATIONS && change > TEMPERATURE_TOLERANCE; pass++) {
      change = improve(column, state, work, ends);
    }
    return moveHeat(column, state, work, ends);
  };
}

/** Temperatures beyond both ends, degC, and the step, s. */
interface Ends {
  readonly surface: number;
  readonly base: number;
  readonly seconds: number;
}

/** Conductance across every face, surface first, W/(m² K). */
function faceConductances(
  column: SoilColumn,
  state: ColumnState,
  surface: ColumnEnd,
  base: ColumnEnd,
  between: Float64Array,
): void {
  const { thickness, soil } = column;
  const count = thickness.length;
  let above = 0;
  for (let i = 0; i < count; i++) {
    const half = thickness[i]! / 2 / conductivityAt(soil[i]!, state.temperature[i]!);
    between[i] = i === 0 ? endConductance(surface, half) : 1 / (above + half);
    above = half;
  }
  between[count] = endConductance(base, above);
}

/** One Newton pass (a tridiagonal solve); gives the largest change of temperature. */
function improve(
  column: SoilColumn,
  state: ColumnState,
  work: Workspace,
  ends: Ends,
): number {
  const { thickness, soil } = column;
  const { between, content, guess, solved, upper, right } = work;
  const count = thickness.length;
  for (let i = 0; i < count; i++) {
    const per = thickness[i]! / ends.seconds;
    const capacity = apparentCapacity(soil[i]!, guess[i]!) * per;
    const top = between[i]!;
    const bottom = between[i + 1]!;
    let source = capacity * guess[i]! + (state.content[i]! - content[i]!) * per;
    if (i === 0) source += top * ends.surface;
    if (i === count - 1) source += bottom * ends.base;
    const lower = i === 0 ? 0 : -top;
    const pivot = capacity + top + bottom - (i === 0 ? 0 : lower * upper[i - 1]!);
    upper[i] = (i === count - 1 ? 0 : -bottom) / pivot;
    right[i] = (source - (i === 0 ? 0 : lower * right[i - 1]!)) / pivot;
  }
  let change = 0;
  for (let i = count - 1; i >= 0; i--) {
    solved[i] = right[i]! - (i === count - 1 ? 0 : upper[i]! * solved[i + 1]!);
    const moved = solved[i]! - guess[i]!;
    content[i]! += apparentCapacity(soil[i]!, guess[i]!) * moved;
    guess[i] = temperatureOf(soil[i]!, content[i]!);
    change = Math.max(change, Math.abs(moved));
  }
  return change;
}

/** Moves the heat across the faces and reads the temperatures off the contents. */
function moveHeat(
  column: SoilColumn,
  state: ColumnState,
  work: Workspace,
  ends: Ends,
): ColumnFlow {
  const { thickness, soil } = column;
  const { between, solved } = work;
  const { surface, base, seconds } = ends;
  const count = thickness.length;
  const first = between[0]! === 0 ? 0 : between[0]! * (surface - solved[0]!) * seconds;
  let into = first;
  for (let i = 0; i < count; i++) {
    const below = i === count - 1 ? base : solved[i + 1]!;
    const out = between[i + 1]! === 0 ? 0 : between[i + 1]! * (solved[i]! - below) * seconds;
    state.content[i]! += (into - out) / thickness[i]!;
    state.temperature[i] = temperatureOf(soil[i]!, state.content[i]!);
    into = out;
  }
  return { surface: first, base: -into };
}
