/** Heat tagged by the quarter it was put in, carried as temperature fields of their own. @module */
import { HOUR } from "../../basics/mod.ts";
import { quarterOf } from "./ledger.ts";
import { type ReducedEngine, reducedEngine } from "../solver/reduced/engine.ts";
import { withoutZones } from "../solver/reduced/assembly.ts";
import type { ReducedSlice } from "../solver/reduced/reduction.ts";
import type { StoreSite } from "../site.ts";
import type { StepListener, StepReport } from "../step_report.ts";
import { SETTLING_STEPS, YEAR_STEPS } from "../step_report.ts";
import { emptyTagLedger, type TagLedger } from "./tag_ledger.ts";
import { marchTag, type TagScratch, tagScratch } from "./tag_march.ts";
export type { TagLedger } from "./tag_ledger.ts";

/** Fields: one for each quarter put in before, and the running quarter's own. */
const FIELDS = 5;
const RUNNING = 4;

/** s: steps of the fields: those of the years, and one for hours in which the fan rests. */
const TAG_STEPS: readonly number[] = [...YEAR_STEPS, ...SETTLING_STEPS, 4 * HOUR];
const LONGEST_FIRST = TAG_STEPS.map((_, step) => step).toSorted((a, b) =>
  TAG_STEPS[b]! - TAG_STEPS[a]!
);

/** The tagged fields and their year. */
export interface Tags {
  readonly engine: ReducedEngine;
  readonly listen: StepListener;
  /** starts a new year: clears the sums */
  open(): void;
  /** ends a year: folds the running quarter in and returns the sums */
  close(): TagLedger;
}

/** Fields, sums and buffers of a year. Lanes are field·lanes + slice. */
class TaggedFields implements Tags {
  readonly engine: ReducedEngine;
  readonly #site: StoreSite;
  /** no tagged heat reaches slices without tubes */
  readonly #lanes: number;
  readonly #none: Float64Array;
  readonly #heat: Float64Array;
  readonly #latent: Float64Array;
  readonly #scaled: Float64Array;
  readonly #scratch: TagScratch;
  #ledger = emptyTagLedger();
  #quarter = 0;
  /** s that the fan has rested and the fields are behind */
  #rested = 0;
  #started: Float64Array;

  constructor(slice: ReducedSlice, site: StoreSite) {
    const segments = FIELDS * site.slices * site.field.tubes;
    this.engine = reducedEngine(withoutZones(slice), FIELDS * site.slices, TAG_STEPS, false);
    this.#site = site;
    this.#lanes = site.slices;
    this.#none = new Float64Array(FIELDS * site.slices);
    this.#heat = new Float64Array(segments);
    this.#latent = new Float64Array(segments);
    this.#scaled = new Float64Array(segments);
    this.#scratch = tagScratch(site.field.tubes);
    this.#started = this.engine.content();
  }

  /** Quarter a field's heat was put in. */
  #columnOf(tag: number): number {
    return tag === RUNNING ? this.#quarter : tag;
  }

  #fold(): void {
    this.engine.merge(this.#quarter * this.#lanes, RUNNING * this.#lanes, this.#lanes);
  }

  readonly listen = (report: StepReport): void => {
    const current = quarterOf(report.hour);
    if (current !== this.#quarter) {
      this.#catchUp();
      this.#fold();
      this.#quarter = current;
    }
    if (report.mode === 0) {
      this.#rested += report.seconds;
      this.#latent.fill(0);
      return;
    }
    this.#catchUp();
    const step = TAG_STEPS.indexOf(report.seconds);
    this.engine.predict(step, this.#none, this.#none, report.mode === -1);
    if (report.mode === -1) this.#discharge(report);
    else this.#charge(report);
    const { tubeLengthFactor } = this.#site;
    for (let k = 0; k < this.#heat.length; k++) this.#scaled[k] = this.#heat[k]! * tubeLengthFactor;
    this.engine.finish(step, this.#scaled, this.#none, true);
    this.#bookSurfaces(report.seconds);
  };

  /** With no air in the tubes nothing drives the fields, so steps of any length are exact. */
  #catchUp(): void {
    for (const step of LONGEST_FIRST) {
      const seconds = TAG_STEPS[step]!;
      for (; this.#rested >= seconds; this.#rested -= seconds) {
        this.engine.predict(step, this.#none, this.#none, false);
        this.engine.finish(step, this.#scaled, this.#none, false);
        this.#bookSurfaces(seconds);
      }
    }
  }

  /** Every field warms its share of the air; the undisturbed ground has the rest. */
  #discharge(report: StepReport): void {
    const { field } = report.air!;
    const coupling = report.air!.coupling(report.step);
    const row = this.#ledger.back[this.#quarter]!;
    let tagged = 0;
    for (let tag = 0; tag < FIELDS; tag++) {
      const pass = {
        field,
        coupling,
        block: this.engine.blockTemperature,
        first: tag * this.#lanes * field.tubes,
        reversed: report.reversed,
        slope: report.latentSlope,
      };
      const out = { heat: this.#heat, latent: this.#latent };
      const given = -marchTag(pass, out, this.#scratch) * report.seconds;
      row[this.#columnOf(tag)]! += given;
      if (tag === RUNNING) this.#ledger.sameQuarter[this.#quarter]! += given;
      tagged += given;
    }
    row[4]! += -(report.sensible + report.latent) * report.seconds - tagged;
  }

  /** What a charging pass puts in is a source of the running quarter's field. */
  #charge(report: StepReport): void {
    this.#heat.fill(0);
    this.#latent.fill(0);
    this.#heat.set(report.heat, RUNNING * this.#lanes * this.#site.field.tubes);
    this.#ledger.putIn[this.#quarter]! += (report.sensible + report.latent) * report.seconds;
  }

  #bookSurfaces(seconds: number): void {
    const { floorHeat, outdoorHeat, deepHeat } = this.engine;
    for (let tag = 0; tag < FIELDS; tag++) {
      const column = this.#columnOf(tag);
      for (let lane = 0; lane < this.#lanes; lane++) {
        const weight = this.#site.lengths[lane]! * seconds;
        const k = tag * this.#lanes + lane;
        this.#ledger.floor[column]! -= floorHeat[k]! * weight;
        this.#ledger.lost[column]! -= (outdoorHeat[k]! + deepHeat[k]!) * weight;
      }
    }
  }

  open(): void {
    this.#ledger = emptyTagLedger();
    this.#quarter = 0;
    this.#started = this.engine.content();
  }

  close(): TagLedger {
    this.#catchUp();
    this.#fold();
    const ended = this.engine.content();
    for (let tag = 0; tag < 4; tag++) {
      for (let lane = 0; lane < this.#lanes; lane++) {
        const k = tag * this.#lanes + lane;
        const gained = ended[k]! - this.#started[k]!;
        this.#ledger.gained[tag]! += gained * this.#site.lengths[lane]!;
      }
    }
    return this.#ledger;
  }
}

/**
 * Tagged fields on the same reduced soil.
 *
 * Conduction is linear, and the latent heat of freezing is a source like any other: it belongs to the
 * undisturbed ground, so the fields know nothing of it. What a charging pass puts in is a source of the running quarter's field. In a
 * discharging pass every field warms its own share of the air: tagged air enters at 0 K and
 * exchanges with the tagged wall as the whole does, evaporation by the secant of the whole
 * segment; the undisturbed ground has the rest (real air entering, floor, weather), so the columns
 * sum to the ledger exactly. A field loses heat through floor and surface against 0 K. At the end
 * of a quarter its running field is folded into that quarter's field of heat from before.
 */
export function tagFields(slice: ReducedSlice, site: StoreSite): Tags {
  return new TaggedFields(slice, site);
}
