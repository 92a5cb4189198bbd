/**
 * Search over tube, count, length, spacing, layers and depth: which fields are worth a second look?
 *
 * A field is kept where none other gives at least as much heat for no more fan energy and no more
 * money, and better in one of the three.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { tubeHeat } from "./marginal.ts";
import { soilRadius } from "./periodic.ts";
import { floorFit, type FloorLimits } from "./floor_fit.ts";
import { crossSection, type TubeLoss, tubeLoss } from "./pressure.ts";
import { findTube } from "./products.ts";
import { type Pit, pitVolume } from "./pit.ts";
import type { FieldLayout } from "./positions.ts";
import type { TubeProduct } from "./types.ts";

/** What may be chosen. */
export interface SearchChoices {
  /** ids in data/tubes */
  readonly tubes: readonly string[];
  /** numbers of tubes */
  readonly counts: readonly number[];
  /** m */
  readonly lengths: readonly number[];
  /** centre to centre, m */
  readonly spacings: readonly number[];
  /** numbers of layers */
  readonly layers: readonly number[];
  /** m to the upper layer */
  readonly depths: readonly number[];
}

/** What a field must keep to. */
export interface SearchLimits {
  /** m/s in the tubes */
  readonly airSpeedMin: number;
  /** m/s in the tubes */
  readonly airSpeedMax: number;
  /** Pa of a tube */
  readonly pressureMax: number;
  /** ground that may be dug */
  readonly floor: FloorLimits;
}

/** A field to be dug in. */
export interface DugField extends FieldLayout {
  /** m of one tube */
  readonly length: number;
  /** the tube */
  readonly product: TubeProduct;
}

/** The pit that a field needs, with its headers. */
export type PitOf = (field: DugField) => Pit;

/** What the search needs to know besides. */
export interface SearchSetting {
  /** m³/s of the whole field */
  readonly airFlow: number;
  /** properties of the air */
  readonly air: AirProperties;
  /** W/(m K) and J/(m³ K) */
  readonly soil: { readonly conductivity: number; readonly heatCapacity: number };
  /** m between layers */
  readonly layerSpacing: number;
  /** velocity heads besides inlet and exit */
  readonly extraLosses: number;
  /** amplitude of the intake air about the soil's mean, K, and its period, s */
  readonly swing: number;
  /** s */
  readonly period: number;
  /** Pa of everything besides the tubes at the design flow */
  readonly otherPressure: number;
  /** fan and motor, wire to air, 0 to 1 */
  readonly fanEfficiency: number;
  /** hours that the fan runs in a day */
  readonly fanHours: number;
  /** prices of tubes and digging */
  readonly prices: SearchPrices;
  /** the pit that a field needs, tubes and headers */
  readonly pit: PitOf;
}

/** Prices, in any one currency. */
export interface SearchPrices {
  /** per metre, by tube id */
  readonly tubePerMetre: Readonly<Record<string, number>>;
  /** both ends of one tube: connectors, holes, labour; in the currency of the prices */
  readonly perTube: number;
  /** per m³ dug and put back */
  readonly excavation: number;
}

/** One field. */
export interface FieldCandidate {
  /** id in data/tubes */
  readonly tube: string;
  /** number of tubes */
  readonly count: number;
  /** m of one tube */
  readonly length: number;
  /** centre to centre, m */
  readonly spacing: number;
  /** number of layers */
  readonly layers: number;
  /** m to the upper layer */
  readonly depth: number;
  /** m of all tubes */
  readonly totalLength: number;
  /** m/s in the tubes */
  readonly airSpeed: number;
  /** Pa of a tube */
  readonly pressureDrop: number;
  /** kWh that go into the soil in a half wave */
  readonly heat: number;
  /** kWh of fan electricity a day */
  readonly fanEnergy: number;
  /** in the currency of the prices */
  readonly cost: number;
}

/** Outcome of the search. */
export interface SearchResult {
  /** the fields that no other one beats, by rising cost */
  readonly front: readonly FieldCandidate[];
  /** number of fields that keep to the limits */
  readonly allowed: number;
  /** number of fields refused, by the first limit they break */
  readonly refused: Readonly<Record<string, number>>;
}

type Choice = Pick<
  FieldCandidate,
  "tube" | "count" | "length" | "spacing" | "layers" | "depth"
>;

/**
 * Tries every combination and keeps those that no other one beats.
 *
 * @param choices what may be chosen
 * @param limits what must be kept
 * @param setting air, soil, swing, fan and prices
 * @returns the front, and how many were refused for what
 * @throws {InputError} where a tube is unknown
 */
export function searchFields(
  choices: SearchChoices,
  limits: SearchLimits,
  setting: SearchSetting,
): SearchResult {
  const refused: Record<string, number> = {};
  const allowed: FieldCandidate[] = [];
  const heats = new Map<string, number>();
  for (const choice of combinations(choices)) {
    const product = findTube(choice.tube);
    const found = examined(choice, { product, limits, setting });
    if (typeof found === "string") refused[found] = (refused[found] ?? 0) + 1;
    else allowed.push(candidate(choice, { product, setting, heats, ...found }));
  }
  return { front: paretoFront(allowed), allowed: allowed.length, refused };
}

function* combinations(choices: SearchChoices): Generator<Choice> {
  for (const tube of choices.tubes) {
    for (const count of choices.counts) {
      for (const length of choices.lengths) {
        for (const spacing of choices.spacings) {
          for (const layers of choices.layers) {
            for (const depth of choices.depths) {
              if (layers <= count) yield { tube, count, length, spacing, layers, depth };
            }
          }
        }
      }
    }
  }
}

/** What a field within the limits loses, and its pit. */
interface Examined {
  readonly loss: TubeLoss;
  readonly pit: Pit;
}

/** The first limit that a field breaks; else its loss and its pit. */
function examined(
  choice: Choice,
  given: {
    readonly product: TubeProduct;
    readonly limits: SearchLimits;
    readonly setting: SearchSetting;
  },
): string | Examined {
  const { product, limits, setting } = given;
  const airFlow = setting.airFlow / choice.count;
  const speed = airFlow / crossSection(product.insideDiameter);
  if (speed < limits.airSpeedMin) return "air too slow";
  if (speed > limits.airSpeedMax) return "air too fast";
  const { length } = choice;
  const { air, extraLosses } = setting;
  const loss = tubeLoss({ product, length, airFlow, extraLosses, air });
  if (loss.pressureDrop > limits.pressureMax) return "pressure too high";
  const field = { ...choice, layerSpacing: setting.layerSpacing, product };
  const pit = setting.pit(field);
  return floorFit(field, limits.floor, pit) ?? { loss, pit };
}

function candidate(
  choice: Choice,
  given: Examined & {
    readonly product: TubeProduct;
    readonly setting: SearchSetting;
    readonly heats: Map<string, number>;
  },
): FieldCandidate {
  const { product, setting, heats, loss, pit } = given;
  const airFlow = setting.airFlow / choice.count;
  const { air, extraLosses, swing, period } = setting;
  const height = choice.layers > 1 ? setting.layerSpacing : 2 * choice.depth;
  const key = [choice.tube, choice.count, choice.length, choice.spacing, height].join();
  let heat = heats.get(key);
  if (heat === undefined) {
    const outerRadius = Math.max(
      soilRadius(choice.spacing, height),
      0.51 * product.insideDiameter,
    );
    const soil = { ...setting.soil, outerRadius, outside: "adiabatic" } as const;
    heat = choice.count *
      tubeHeat({ product, soil, airFlow, air, extraLosses, swing, period }, choice.length);
    heats.set(key, heat);
  }
  const power = setting.airFlow * (loss.pressureDrop + setting.otherPressure) /
    setting.fanEfficiency;
  return {
    ...choice,
    totalLength: choice.count * choice.length,
    airSpeed: loss.airSpeed,
    pressureDrop: loss.pressureDrop,
    heat,
    fanEnergy: power * setting.fanHours / 1000,
    cost: fieldCost(choice, { product, pit, prices: setting.prices }),
  };
}

/** Tubes, ends and digging the pit. */
function fieldCost(
  choice: Choice,
  { product, pit, prices }: {
    readonly product: TubeProduct;
    readonly pit: Pit;
    readonly prices: SearchPrices;
  },
): number {
  const perMetre = prices.tubePerMetre[product.id] ?? Infinity;
  return choice.count * (choice.length * perMetre + prices.perTube) +
    pitVolume(pit) * prices.excavation;
}

/**
 * Fields that no other one beats in heat, fan energy and cost, by rising cost.
 *
 * @param fields any fields
 * @returns the front
 */
export function paretoFront(fields: readonly FieldCandidate[]): readonly FieldCandidate[] {
  const sorted = [...fields].sort((a, b) =>
    a.cost - b.cost || b.heat - a.heat || a.fanEnergy - b.fanEnergy
  );
  const front: FieldCandidate[] = [];
  for (const field of sorted) {
    // all in front cost no more: beaten where one of them has as much heat for no more energy
    const beaten = front.some((kept) =>
      kept.heat >= field.heat && kept.fanEnergy <= field.fanEnergy
    );
    if (!beaten) front.push(field);
  }
  return front;
}
