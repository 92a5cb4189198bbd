/** A slice as the fast engine knows it, and what that engine can do. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingCurve } from "../../../soil/mod.ts";
import type { FreezingZone } from "../../ground/zones.ts";
import type { SoilEngine } from "../engine.ts";

/**
 * The slice in modal form: dx/dt = −λ∘x + Bᵀu, port value y = B·x + D·u. Ports: each tube
 * (W/m in, block temperature out), then floor, surface outside and deep end (K in, Σ g·T out), then
 * the zones whose water freezes (W/m in, mean temperature out).
 */
export interface ReducedSlice {
  readonly states: number;
  readonly tubes: number;
  readonly ports: number;
  /** the slice as it was, cell by cell */
  readonly operator: ConductionOperator;
  /** none where nothing freezes; their ports come last */
  readonly zones: readonly FreezingZone[];
  /**
   * where frozen soil conducts better than unfrozen: states and ports are the potential of
   * conduction with this curve; null: temperatures
   */
  readonly curve: FreezingCurve | null;
  /** share of the floor's resistance that lies in the soil, not in the film */
  readonly floorInSoil: number;
  /** 1/s */
  readonly rates: Float64Array;
  /** port·states + state */
  readonly gains: Float64Array;
  /** port·ports + port: what the left-out fast states would add at once */
  readonly direct: Float64Array;
  /** W/(m K): sum of conductances of floor, outdoor, deep */
  readonly conductances: readonly [number, number, number];
  /** heat content over 0 °C by state, J/m */
  readonly content: Float64Array;
  /** temperature between the tubes by state */
  readonly store: Float64Array;
  /** temperature between the tubes by port: part of the left-out fast states */
  readonly storeDirect: Float64Array;
  /** state·cells + cell: temperature of each cell by state */
  readonly shapes: Float64Array;
}

/** What modal states can do beyond any engine. */
export interface ReducedEngine extends SoilEngine {
  readonly slice: ReducedSlice;
  /**
   * Jumps to the periodic state: adds a/(1 − a) of the year's change to each state, a = e^(−λ·year).
   * Exact where inputs repeat.
   *
   * @param start states a year ago, as saved
   * @param seconds length of the period
   */
  jump(start: Float64Array, seconds: number): void;
  /** Adds the states of `count` lanes from one on to others and clears them. */
  merge(to: number, from: number, count: number): void;
  /** Temperatures of all cells of a lane, degC. */
  cells(lane: number): Float64Array;
  /** Heat the freezing soil under the floor has set free and not taken back, by lane, J/m. */
  ice(): Float64Array;
}
