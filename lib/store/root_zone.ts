/** Temperature of the beds where roots and seeds are, with the store and with the fan always off. @module */
import { mean, min } from "d3-array";
import { alone, piece, type Steps, type Task, together } from "../basics/mod.ts";
import { type Crop, findCrop, initialHouseState } from "../house/mod.ts";
import { baselineRequest, inOneLane } from "./baseline.ts";
import { ownHouse } from "./own_house.ts";
import { baselineTask, type ReducedStore, reducedStores } from "./runs.ts";
import { sectionCamera } from "./seasons/section.ts";
import { settledSetting } from "./seasons/settled_year.ts";
import { freshEngine, soilModel } from "./seasons/soil_model.ts";
import { type SoilField, stateFromField } from "./seasons/soil_field.ts";
import { runYear, startState } from "./seasons/year.ts";
import type { StoreRequest } from "./site.ts";
import type { SoilSection } from "./types.ts";

/** m below the surface of the beds: where seeds lie, and where most roots are. */
export const ROOT_DEPTHS = [0.05, 0.2] as const;

/** Soil of the beds at one depth through a year. */
export interface BedYear {
  /** degC on each day of {@link RootZone.days}, mean across the house */
  readonly temperatures: readonly number[];
  /** degC, mean from November to February */
  readonly winterMean: number;
  /** degC, lowest of the pictures */
  readonly coldest: number;
  /** pictures, one a week, colder than where the crop's seeds come up soon; null where none are sown */
  readonly weeksTooCold: number | null;
}

/** One depth of the beds, with the store and with the fan always off. */
export interface BedDepth {
  /** m */
  readonly depth: number;
  /** with the store */
  readonly withStore: BedYear;
  /** with the fan always off */
  readonly noStore: BedYear;
  /** K that the dark months are warmer with the store */
  readonly winterGain: number;
}

/** The beds through the free-running year. */
export interface RootZone {
  /** what is grown, and where its seeds come up */
  readonly crop: Pick<Crop, "name" | "sprouting">;
  /** days of the year from 0 */
  readonly days: readonly number[];
  /** {@link ROOT_DEPTHS} */
  readonly depths: readonly BedDepth[];
}

/** Mean of a row between the walls of the house, straight between the middles of cells, degC. */
function acrossHouse(section: SoilSection, row: ArrayLike<number>, half: number): number {
  const { x } = section;
  let [sum, width] = [0, 0];
  for (let k = 0; k < x.length; k++) {
    const left = k === 0 ? x[0]! : (x[k - 1]! + x[k]!) / 2;
    const right = k === x.length - 1 ? x[k]! : (x[k]! + x[k + 1]!) / 2;
    const own = Math.max(0, Math.min(half, right) - Math.max(-half, left));
    sum += own * row[k]!;
    width += own;
  }
  return sum / width;
}

/**
 * Mean temperature of the soil under the floor at a depth, in each picture of a section.
 *
 * @param section pictures across the tubes
 * @param half half the house across the slice, m
 * @param depth m, between the first and the last row of the section
 * @returns degC
 */
export function bedTemperatures(section: SoilSection, half: number, depth: number): number[] {
  const { depths, x } = section;
  let row = 0;
  while (row < depths.length - 2 && depths[row + 1]! < depth) row++;
  const share = Math.max(0, (depth - depths[row]!) / (depths[row + 1]! - depths[row]!));
  return section.temperatures.map((cells) => {
    const mean = (at: number) =>
      acrossHouse(section, cells.subarray(at * x.length, (at + 1) * x.length), half);
    return mean(row) + share * (mean(row + 1) - mean(row));
  });
}

/** First day of March and of November, from 0. */
const [SPRING, AUTUMN] = [59, 304];

function bedYear(
  days: readonly number[],
  temperatures: readonly number[],
  low: number | undefined,
): BedYear {
  return {
    temperatures,
    winterMean: mean(temperatures.filter((_, k) => days[k]! < SPRING || days[k]! >= AUTUMN))!,
    coldest: min(temperatures)!,
    weeksTooCold: low === undefined ? null : temperatures.filter((value) => value < low).length,
  };
}

/** A house whose fan is always off, and the soil it has settled to. */
interface BareQuestion extends ReducedStore {
  readonly field: SoilField;
}

function bareSection({ request, slice, field }: BareQuestion): SoilSection {
  const house = ownHouse(request, false);
  const model = inOneLane(soilModel(request, house, slice));
  const engine = freshEngine(model);
  engine.load(stateFromField(model, field));
  const camera = sectionCamera(model.site, engine);
  const state = startState(model.site, engine, initialHouseState(house));
  const setting = settledSetting({ request, model, house, fan: false });
  runYear(setting, state); // a field holds no ice and no house: a year brings both
  runYear(setting, state, camera.listen);
  return camera.section();
}

/** Weekly pictures of the ground of a house whose fan is always off. */
export const bareSectionTask: Task<BareQuestion, SoilSection> = {
  name: "store.bareSection",
  run: bareSection,
};

/**
 * The beds of the free-running house, week by week.
 *
 * @param request the store's request
 * @param sections of the store's year
 */
export function rootZone(request: StoreRequest, sections: SoilSection): RootZone {
  return alone(rootZoneSteps(request, sections));
}

/** The beds in pieces. Parameters and result are those of {@link rootZone}. */
export function* rootZoneSteps(request: StoreRequest, sections: SoilSection): Steps<RootZone> {
  const [bare] = yield* reducedStores([baselineRequest(request)]);
  const [{ field }] = yield* together(piece(baselineTask, { ...bare!, heated: false }));
  const [without] = yield* together(piece(bareSectionTask, { ...bare!, field }));
  const { length, width, crop } = request.houseInputs;
  const half = (request.tubesInputs.direction === "along" ? width : length) / 2;
  const { name, sprouting } = findCrop(crop);
  return {
    crop: { name, sprouting },
    days: sections.days,
    depths: ROOT_DEPTHS.map((depth) => {
      const [withStore, noStore] = [sections, without].map((section) =>
        bedYear(section.days, bedTemperatures(section, half, depth), sprouting?.low)
      ) as [BedYear, BedYear];
      return { depth, withStore, noStore, winterGain: withStore.winterMean - noStore.winterMean };
    }),
  };
}
