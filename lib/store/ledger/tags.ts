/** Heat tagged by the quarter it was put in, carried as temperature fields of their own. @module */
import { fromOthers, sliceHeat, tubeCouplings } from "../solver/coupling.ts";
import { quarterOf } from "./ledger.ts";
import { type ReducedEngine, reducedEngine } from "../solver/reduced/engine.ts";
import type { ReducedSlice } from "../solver/reduced/reduction.ts";
import type { StoreSite } from "../ground/site.ts";
import { type StepListener, YEAR_STEPS } from "../seasons/year.ts";

/** Fields: one for each quarter put in before, and the running quarter's own. */
const FIELDS = 5;
const RUNNING = 4;

/** Where the heat put in during each quarter went, J. */
export interface TagLedger {
  /** put in during each quarter */
  readonly putIn: Float64Array;
  /** back[given back in][put in during], and last the undisturbed ground */
  readonly back: readonly Float64Array[];
  /** of the running quarter's own heat, given back in the same quarter */
  readonly sameQuarter: Float64Array;
  /** by quarter put in: through the floor into the house, outside and below, still there (change) */
  readonly floor: Float64Array;
  readonly lost: Float64Array;
  readonly gained: Float64Array;
}

/** The tagged fields and their year. */
export interface Tags {
  readonly engine: ReducedEngine;
  readonly listen: StepListener;
  /** starts a new year: clears the sums */
  open(): void;
  /** ends a year: folds the running quarter in and returns the sums */
  close(): TagLedger;
}

function emptyTagLedger(): TagLedger {
  return {
    putIn: new Float64Array(4),
    back: Array.from({ length: 4 }, () => new Float64Array(5)),
    sameQuarter: new Float64Array(4),
    floor: new Float64Array(4),
    lost: new Float64Array(4),
    gained: new Float64Array(4),
  };
}

/**
 * Tagged fields on the same reduced soil.
 *
 * The soil is linear. What a charging pass puts in is a source of the running quarter's field. In a
 * discharging pass every field warms its own share of the air: tagged air enters at 0 K and
 * exchanges with the tagged wall as the whole does, evaporation by the secant of the whole
 * segment; the undisturbed ground has the rest (real air entering, floor, weather), so the columns
 * sum to the ledger exactly. A field loses heat through floor and surface against 0 K. At the end
 * of a quarter its running field is folded into that quarter's field of heat from before.
 */
export function tagFields(slice: ReducedSlice, site: StoreSite): Tags {
  /** no tagged heat reaches slices without tubes */
  const lanes = site.slices;
  const tubes = site.field.tubes;
  const slices = site.field.slices;
  const engine = reducedEngine(slice, FIELDS * lanes, YEAR_STEPS, false);
  const none = new Float64Array(FIELDS * lanes);
  const heat = new Float64Array(FIELDS * lanes * tubes);
  const couplings = tubeCouplings(engine, site.field, site.tubeLengthFactor);
  const { field } = site;
  let ledger = emptyTagLedger();
  let quarter = 0;
  let started = engine.content();

  const fold = (): void => {
    engine.merge(quarter * lanes, RUNNING * lanes, lanes);
  };

  /** Marches one tagged field's air; writes W/m of tube into `heat`, returns W into the soil. */
  const marchTag = (tag: number, step: number, reversed: boolean, slope: Float64Array): number => {
    const coupling = couplings[step]!;
    let total = 0;
    air.fill(0);
    for (let place = 0; place < slices; place++) {
      const lane = reversed ? slices - 1 - place : place;
      const first = (tag * lanes + lane) * tubes;
      for (let tube = 0; tube < tubes; tube++) {
        driving[tube] = air[tube]! - engine.blockTemperature[first + tube]! +
          latent[first + tube]! / field.sensible[tube]!;
      }
      sliceHeat(coupling, field, driving, now);
      for (let tube = 0; tube < tubes; tube++) {
        const a = field.sensible[tube]!;
        const phi = coupling.own[tube]!;
        const s = slope[lane * tubes + tube]!;
        const base = engine.blockTemperature[first + tube]! +
          fromOthers(coupling, tubes, tube, now);
        const wall = (base + phi * a * air[tube]!) / (1 + phi * (a + s));
        const sensible = a * (air[tube]! - wall);
        latent[first + tube] = -s * wall;
        heat[first + tube] = sensible - s * wall;
        air[tube]! -= sensible * field.segment / field.heatRate[tube]!;
        total += heat[first + tube]! * field.segment * field.copies;
      }
    }
    return total;
  };

  const air = new Float64Array(tubes);
  const driving = new Float64Array(tubes);
  const now = new Float64Array(tubes);
  const latent = new Float64Array(heat.length);
  const scaled = new Float64Array(heat.length);
  const listen: StepListener = (report) => {
    const current = quarterOf(report.hour);
    if (current !== quarter) {
      fold();
      quarter = current;
    }
    const running = report.mode !== 0;
    engine.predict(report.step, none, none, report.mode === -1);
    if (report.mode === -1) {
      const whole = -(report.sensible + report.latent) * report.seconds;
      let tagged = 0;
      for (let tag = 0; tag < FIELDS; tag++) {
        const reversed = report.reversed;
        const given = -marchTag(tag, report.step, reversed, report.latentSlope) * report.seconds;
        const column = tag === RUNNING ? quarter : tag;
        ledger.back[quarter]![column]! += given;
        if (tag === RUNNING) ledger.sameQuarter[quarter]! += given;
        tagged += given;
      }
      ledger.back[quarter]![4]! += whole - tagged;
    } else {
      heat.fill(0);
      latent.fill(0);
      if (report.mode === 1) {
        heat.set(report.heat, RUNNING * lanes * tubes);
        ledger.putIn[quarter]! += (report.sensible + report.latent) * report.seconds;
      }
    }
    for (let k = 0; k < heat.length; k++) scaled[k] = heat[k]! * site.tubeLengthFactor;
    engine.finish(report.step, scaled, none, running);
    for (let tag = 0; tag < FIELDS; tag++) {
      const column = tag === RUNNING ? quarter : tag;
      for (let lane = 0; lane < lanes; lane++) {
        const weight = site.lengths[lane]! * report.seconds;
        const k = tag * lanes + lane;
        ledger.floor[column]! -= engine.floorHeat[k]! * weight;
        ledger.lost[column]! -= (engine.outdoorHeat[k]! + engine.deepHeat[k]!) * weight;
      }
    }
  };

  return {
    engine,
    listen,
    open: () => {
      ledger = emptyTagLedger();
      quarter = 0;
      started = engine.content();
    },
    close: () => {
      fold();
      const ended = engine.content();
      for (let tag = 0; tag < 4; tag++) {
        for (let lane = 0; lane < lanes; lane++) {
          const k = tag * lanes + lane;
          ledger.gained[tag]! += (ended[k]! - started[k]!) * site.lengths[lane]!;
        }
      }
      return ledger;
    },
  };
}
