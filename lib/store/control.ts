/** Charge and discharge: thresholds, hysteresis, minimum run, lock-out. @module */
import type { StoreInputs } from "./types.ts";

/** +1 charging, −1 discharging, 0 at rest. */
export type FanMode = -1 | 0 | 1;

/** What season and ground let the fan do. */
export type Allowed = "nothing" | "discharge" | "both";

/** What the thermostat sees. */
export interface ControlSight {
  /** what the season lets it do in this hour */
  readonly allowed: Allowed;
  /** degC at the intake when charging */
  readonly intake: number;
  /** degC between the tubes */
  readonly store: number;
  /** degC and relative humidity of the house air */
  readonly air: number;
  readonly humidity: number;
  /** 0 to 1, how far the vents stand open */
  readonly vents: number;
}

/** Mode and how long it has lasted. */
export interface ControlState {
  mode: FanMode;
  /** s since the mode last changed */
  lasted: number;
}

/** K between start and stop of the intake limit, common practice, no source. */
export const INTAKE_BAND = 1;
/** K by which the house must pass the discharge limit before discharge stops, common practice, no source. */
export const HOUSE_BAND = 1.5;
/** K below the store's highest temperature at which charging starts again, common practice, no source. */
export const STORE_BAND = 1;
/** s, what the clock of a fan's control counts by, common practice, no source. */
const CLOCK = 1;
/** degC of the house below which humidity no longer holds the discharge back. */
export const NEAR_FREEZING = 2;

/** Whether the store may get warmer: up to its highest temperature, and again a band below it. */
function belowMaximum(inputs: StoreInputs, sight: ControlSight, running: boolean): boolean {
  const { maximumStore } = inputs;
  return maximumStore === undefined || sight.store < maximumStore - (running ? 0 : STORE_BAND);
}

function mayCharge(inputs: StoreInputs, sight: ControlSight, running: boolean): boolean {
  const lift = sight.intake - sight.store;
  if (sight.allowed !== "both" || !belowMaximum(inputs, sight, running)) return false;
  if (inputs.ventsFirst === true && sight.vents > 0.05) return false;
  return running
    ? lift > inputs.chargeStop && sight.intake > inputs.chargeAbove - INTAKE_BAND
    : lift >= inputs.chargeStart && sight.intake > inputs.chargeAbove;
}

function mayDischarge(inputs: StoreInputs, sight: ControlSight, running: boolean): boolean {
  const lift = sight.store - sight.air;
  const tooHumid = sight.humidity > inputs.humidityLockOut && sight.air > NEAR_FREEZING;
  if (tooHumid) return false;
  return running
    ? lift > inputs.dischargeStop && sight.air < inputs.dischargeBelow + HOUSE_BAND
    : lift >= inputs.dischargeStart && sight.air < inputs.dischargeBelow;
}

/**
 * Decides the mode of the coming step. A mode is kept at least `minimumRun`, to the second; a differential
 * thermostat with separate start and stop in both directions. Out of season the fan stops at once.
 *
 * @param inputs thresholds
 * @param state changed in place
 * @param sight measured now
 * @param seconds length of the coming step
 * @returns mode of the step
 */
export function decideMode(
  inputs: StoreInputs,
  state: ControlState,
  sight: ControlSight,
  seconds: number,
): FanMode {
  const settled = state.lasted >= inputs.minimumRun - CLOCK;
  let mode = sight.allowed === "nothing" ? 0 : state.mode;
  if (settled && sight.allowed !== "nothing") {
    if (mode === 1 && !mayCharge(inputs, sight, true)) mode = 0;
    if (mode === -1 && !mayDischarge(inputs, sight, true)) mode = 0;
    if (mode === 0) {
      if (mayCharge(inputs, sight, false)) mode = 1;
      else if (mayDischarge(inputs, sight, false)) mode = -1;
    }
  }
  state.lasted = mode === state.mode ? state.lasted + seconds : seconds;
  state.mode = mode;
  return mode;
}
