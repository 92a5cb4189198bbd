/** The same store built or run otherwise. @module */
import { min } from "d3-array";
import { alone, each, hoursBelow, kilowattHours, ratio, type Steps } from "../../basics/mod.ts";
import { fitWave, soilProperties } from "../../soil/mod.ts";
import type { StoreRequest } from "../site.ts";
import { type ReducedStore, reducedStores, settledTask } from "../runs.ts";
import type { SettledYear } from "../seasons/settled_year.ts";

/** A change to a study's store. */
export interface StoreVariant {
  /** what is changed, as a row heading */
  readonly name: string;
  /** the study with the change made */
  readonly change: (request: StoreRequest) => StoreRequest;
}

/**
 * Year of one variant against the plan. Variants run on fewer slices: their values are the plan's own
 * with the difference that the change makes on these slices.
 */
export interface ComparedVariant extends VariantRow {
  /** kWh a year of back-up heat less than with the plan */
  readonly saved: number;
  /** K that the coldest hour is warmer than with the plan */
  readonly coldestHourGain: number;
  /** kWh a year that fewer slices move the plan's back-up heat: smaller effects are not resolved */
  readonly savedResolution: number;
  /** K that fewer slices move the plan's coldest hour: smaller effects are not resolved */
  readonly gainResolution: number;
  /** whether the saving is larger than its resolution */
  readonly savedResolved: boolean;
  /** whether the gain is larger than its resolution */
  readonly gainResolved: boolean;
}

/** Year of one variant. */
export interface VariantRow {
  /** name of the variant */
  readonly name: string;
  /** kWh a year into the tube walls */
  readonly heatIn: number;
  /** kWh a year out of them */
  readonly heatOut: number;
  /** kWh a year of the heat in that is latent */
  readonly latentIn: number;
  /** kWh a year */
  readonly fanEnergy: number;
  /** ratio heatOut / heatIn; null where nothing is put in */
  readonly recovery: number | null;
  /** ratio heatOut / fanEnergy; null where the fan never runs */
  readonly cop: number | null;
  /** degC in the free-running house */
  readonly coldestHour: number;
  /** h a year in the free-running house */
  readonly hoursBelowFreezing: number;
  /** kWh a year to hold the heating set point */
  readonly backupHeat: number;
}

/** m by which the deeper variant lies deeper; share by which the longer one is longer. */
const DEEPER = 0.3;
const LONGER = 1.25;
/** K of the intake over the mean of the house in full sun, a common guess (no source). */
const WARM_INTAKE = 3;
/** m³/m³ of water more or less; m² K/W of the board below */
const WATER = 0.08;
const BOARD = 1.76;
/** dry gravel between 0.4 and 0.9 W/(m K), 1.3 to 1.6 MJ/(m³ K): VDI 4640-1 [vdi-4640-2010], from memory */
export const WASHED_GRAVEL = { margin: 0.15, conductivity: 0.5, heatCapacity: 1.5e6 } as const;

function withMoisture(request: StoreRequest, more: number): StoreRequest {
  const porosity = request.soil.properties.porosity;
  const moisture = Math.min(
    porosity * 0.99,
    Math.max(0.02, request.soilInputs.moisture + more),
  );
  const soilInputs = { ...request.soilInputs, moisture, measuredConductivity: null };
  const properties = soilProperties(soilInputs);
  const wave = { ...request.soil.wave, diffusivity: properties.diffusivity };
  const before = fitWave(request.climate, request.soil.properties, soilInputs.snowDepth);
  const after = fitWave(request.climate, properties, soilInputs.snowDepth);
  return {
    ...request,
    soilInputs,
    soil: {
      properties,
      wave: {
        ...wave,
        mean: wave.mean + after.mean - before.mean,
        amplitude: wave.amplitude + after.amplitude - before.amplitude,
      },
    },
  };
}

function deeper(request: StoreRequest): StoreRequest {
  const positions = request.tubes.positions.map(({ x, depth }) => ({ x, depth: depth + DEEPER }));
  return { ...request, tubes: { ...request.tubes, positions } };
}

function flatBoard(request: StoreRequest): StoreRequest {
  const depth = Math.max(...request.tubes.positions.map((tube) => tube.depth)) + 0.35;
  return {
    ...request,
    inputs: { ...request.inputs, flatBoardResistance: BOARD, flatBoardDepth: depth },
  };
}

/** The intake so much warmer in full sun than the mean of the house, K, instead of estimated. */
function withIntake(request: StoreRequest, stratification: number): StoreRequest {
  return { ...request, inputs: { ...request.inputs, stratification } };
}

/** Washed gravel in place of the soil round the tubes; air flows through the tubes alone. */
function gravelBed(request: StoreRequest): StoreRequest {
  return { ...request, inputs: { ...request.inputs, gravelBed: WASHED_GRAVEL } };
}

/** Questions everybody asks; air flow and fan power stay as they are. */
export const STORE_VARIANTS: readonly StoreVariant[] = [
  { name: "as planned", change: (request) => request },
  {
    name: "flow reversed for discharge",
    change: (request) => ({
      ...request,
      inputs: { ...request.inputs, reverse: !request.inputs.reverse },
    }),
  },
  { name: "0.3 m deeper", change: deeper },
  {
    name: "tubes 25 % longer",
    change: (request) => ({
      ...request,
      tubes: { ...request.tubes, length: request.tubes.length * LONGER },
    }),
  },
  { name: "wetter soil (8 % by volume)", change: (request) => withMoisture(request, WATER) },
  { name: "drier soil (8 % by volume)", change: (request) => withMoisture(request, -WATER) },
  { name: "air drawn as warm as the house", change: (request) => withIntake(request, 0) },
  {
    name: "air drawn 3 K warmer in full sun",
    change: (request) => withIntake(request, WARM_INTAKE),
  },
  { name: "tubes bedded in washed gravel", change: gravelBed },
  { name: "board of 1.76 m² K/W below the tubes", change: flatBoard },
  {
    name: "edge insulation to below the tubes",
    change: (request) => ({
      ...request,
      houseInputs: {
        ...request.houseInputs,
        edgeInsulation: Math.max(BOARD, request.houseInputs.edgeInsulation),
        edgeInsulationDepth: Math.max(...request.tubes.positions.map((tube) => tube.depth)) + 0.3,
      },
    }),
  },
];

/** One variant by its two years that repeat, running free and heated. */
function variantRow(name: string, free: SettledYear, heated: SettledYear): VariantRow {
  const { ledger, year } = free;
  const fanEnergy = kilowattHours(ledger.fanEnergy);
  return {
    name,
    heatIn: kilowattHours(ledger.heatIn),
    heatOut: kilowattHours(ledger.heatOut),
    latentIn: kilowattHours(ledger.latentIn),
    fanEnergy,
    recovery: ratio(ledger.heatOut, ledger.heatIn),
    cop: ratio(kilowattHours(ledger.heatOut), fanEnergy),
    coldestHour: min(year.airTemperature)!,
    hoursBelowFreezing: hoursBelow(year.airTemperature, 0),
    backupHeat: kilowattHours(heated.ledger.heater),
  };
}

/**
 * All variants against the plan, the plan first.
 *
 * @param request the store's request, on as few slices as the comparison may take
 * @param plan the plan's own year, on all its slices; that on these slices unless given
 * @param variants what each changes; the first is the plan
 * @returns heat and fan energy in kWh a year, coldest hour in degC, hours below 0 degC
 */
export function storeVariants(
  request: StoreRequest,
  plan?: Omit<VariantRow, "name">,
  variants: readonly StoreVariant[] = STORE_VARIANTS,
): ComparedVariant[] {
  return alone(variantSteps(request, plan, variants));
}

/**
 * The variants in pieces: their soils, then the plan's years, then all others, which settle from the
 * plan's soil. Parameters and result are those of {@link storeVariants}.
 */
export function* variantSteps(
  request: StoreRequest,
  plan?: Omit<VariantRow, "name">,
  variants: readonly StoreVariant[] = STORE_VARIANTS,
): Steps<ComparedVariant[]> {
  const stores = yield* reducedStores(variants.map(({ change }) => change(request)));
  const pair = (store: ReducedStore) => [false, true].map((heated) => ({ ...store, heated }));
  const [asPlanned, ...others] = stores;
  if (asPlanned === undefined) return variantsCompared([], plan);
  const first = yield* each(
    settledTask,
    pair(asPlanned).map((question) => ({ ...question, keepField: true })),
  );
  const rest = yield* each(
    settledTask,
    others.flatMap((store) =>
      pair(store).map((question, k) => ({ ...question, from: first[k]!.field! }))
    ),
  );
  const years = [...first, ...rest];
  const rows = variants.map(({ name }, k) => variantRow(name, years[2 * k]!, years[2 * k + 1]!));
  return variantsCompared(rows, plan);
}

/** Values that a change moves; the ratios follow from them. */
const MOVED = [
  "heatIn",
  "heatOut",
  "latentIn",
  "fanEnergy",
  "coldestHour",
  "hoursBelowFreezing",
  "backupHeat",
] as const;

/**
 * What each variant saves against the plan, and what the coldest hour gains.
 *
 * @param rows years on the slices of the comparison, the plan first
 * @param own the plan's own year, on all its slices; the first row unless given
 */
export function variantsCompared(
  rows: readonly VariantRow[],
  own?: Omit<VariantRow, "name">,
): ComparedVariant[] {
  const [plan] = rows;
  if (plan === undefined) throw new RangeError("Cannot compare stores: give at least the plan");
  const shown = own ?? plan;
  const savedResolution = Math.abs(plan.backupHeat - shown.backupHeat);
  const gainResolution = Math.abs(plan.coldestHour - shown.coldestHour);
  return rows.map((row) => {
    const saved = plan.backupHeat - row.backupHeat;
    const coldestHourGain = row.coldestHour - plan.coldestHour;
    return {
      ...moved(row, plan, shown),
      saved,
      coldestHourGain,
      savedResolution,
      gainResolution,
      savedResolved: Math.abs(saved) > savedResolution,
      gainResolved: Math.abs(coldestHourGain) > gainResolution,
    };
  });
}

/** The plan as shown, moved by the difference between two coarse rows. */
function moved(row: VariantRow, plan: VariantRow, shown: Omit<VariantRow, "name">): VariantRow {
  const values: { -readonly [K in keyof VariantRow]: VariantRow[K] } = { ...row };
  for (const key of MOVED) values[key] = shown[key] + (row[key] - plan[key]);
  const { heatIn, heatOut, fanEnergy } = values;
  return {
    ...values,
    recovery: ratio(heatOut, heatIn),
    cop: ratio(heatOut, fanEnergy),
  };
}
