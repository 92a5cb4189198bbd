/** Which sensors, where, how many, how sure, how often: before the first one is bought. @module */
import type { TubesResult } from "../../tubes/types.ts";
import { findPrice, type PriceList } from "../../worth/prices/price_list.ts";
import { logQuantity } from "../log/quantities.ts";
import { sensorColumn } from "../log/sensor_words.ts";
import {
  type ListedSensor,
  type SensorListTable,
  sensorListTable,
  writeSensorList,
} from "../log/sensor_list.ts";
import type { SensorColumn } from "../log/map.ts";
import { findSensorKind, type SensorKind } from "./sensor_kinds.ts";
import { roundToDecimals } from "../../basics/round.ts";

/** What the places of sensors follow from. */
export interface SensorPlanRequest {
  /** where tubes lie, how many, how long */
  readonly tubes: Pick<TubesResult, "positions" | "length" | "count">;
  /** flow of each tube over the mean, a ratio, in the order of the positions */
  readonly shares: ArrayLike<number>;
  /** m of the house along the tubes */
  readonly houseAlong: number;
  /** h east of UTC of the place */
  readonly timeZone: number;
  /** prices of the study; null where there are none */
  readonly prices: PriceList | null;
}

/** One sensor of the plan. */
export interface PlannedSensor {
  /** the sensor with its column */
  readonly column: SensorColumn;
  /** kind it is of */
  readonly kind: SensorKind;
  /** what it is there for */
  readonly why: string;
  /** money in the currency of the price list; null where the list does not price it */
  readonly price: number | null;
}

/** The sensors of a study. */
export interface SensorPlan {
  /** in the order of the list */
  readonly sensors: readonly PlannedSensor[];
  /** money for those that are priced, in the currency of the list */
  readonly cost: number;
  /** currency of the list; null where there is none */
  readonly currency: string | null;
  /** ids that the price list lacks, as "sensor:humidity" */
  readonly unpriced: readonly string[];
  /** the sensor list, CSV, which `parseSensorList` takes as a log map */
  readonly list: string;
  /** the same as a table */
  readonly table: SensorListTable;
}

/** Depths of the probes in undisturbed ground, m, besides those of the tubes. */
const UNDISTURBED = [0.3, 0.6, 1, 1.5];
/** Shares of the way along the tubes at which the store is probed. */
const ALONG = [0.1, 0.5, 0.9];

interface Wanted {
  readonly name: string;
  readonly logger: "duct" | "house" | "soil";
  readonly kind: string;
  readonly zone: string;
  readonly why: string;
  readonly bath?: string;
  readonly depth?: number;
  readonly along?: number;
  readonly across?: number;
}

/**
 * The sensors of a study: the air path in one logger, the house and the weather in a second, the
 * soil in a third. Two in each place that must be beyond doubt, so that drift shows.
 *
 * @param request tubes, headers, house and prices
 */
export function sensorPlan(request: SensorPlanRequest): SensorPlan {
  const { prices, timeZone } = request;
  const missing = new Set<string>();
  const sensors = wanted(request).map((one): PlannedSensor => {
    const kind = findSensorKind(one.kind);
    const id = `sensor:${kind.id}`;
    const price = prices === null ? null : findPrice(prices, id, "pieces")?.price ?? null;
    if (price === null) missing.add(id);
    const column = sensorColumn({
      name: one.name,
      logger: one.logger,
      column: one.name,
      quantity: kind.quantity,
      unit: kind.unit,
      zone: one.zone,
      accuracy: accuracyWords(kind),
      correlatedWith: one.bath,
      depth: one.depth,
      x: one.along,
      y: one.across,
    });
    return { column, kind, why: one.why, price };
  });
  const listed = sensors.map(({ column, kind, why, price }): ListedSensor => ({
    column,
    timeZone,
    remarks: {
      interval: `${kind.interval / 60} min`,
      sensor_kind: kind.name,
      shield: kind.shield,
      why,
      price: price === null ? "not in the price list" : String(price),
    },
  }));
  return {
    sensors,
    cost: sensors.reduce((sum, { price }) => sum + (price ?? 0), 0),
    currency: prices?.currency ?? null,
    unpriced: [...missing],
    list: writeSensorList(listed),
    table: sensorListTable(listed),
  };
}

/** A fixed part in the SI unit of the quantity and a share of the reading. */
function accuracyWords({ accuracy, relative, quantity }: SensorKind): string | number {
  if (!(relative > 0)) return accuracy;
  const share = `${roundToDecimals(100 * relative, 6)} %`;
  return accuracy > 0 ? `${accuracy} ${logQuantity(quantity).unit} + ${share}` : share;
}

function wanted(request: SensorPlanRequest): Wanted[] {
  return [...ductSensors(), ...tubeSensors(request), ...houseSensors(), ...soilSensors(request)];
}

function ductSensors(): Wanted[] {
  const heat = "heat flow, sensible and latent; COP";
  const both = { logger: "duct", kind: "air-temperature", bath: "bath 1", why: heat } as const;
  const damp = { logger: "duct", kind: "humidity", bath: "salt 1", why: heat } as const;
  return [
    { ...both, name: "intake_t", zone: "intake" },
    { ...damp, name: "intake_rh", zone: "intake" },
    { ...both, name: "outlet_t", zone: "outlet" },
    { ...damp, name: "outlet_rh", zone: "outlet" },
    {
      name: "air_flow",
      logger: "duct",
      kind: "air-flow",
      zone: "duct",
      why: `${heat}; shut tubes`,
    },
    {
      name: "header_dp",
      logger: "duct",
      kind: "pressure",
      zone: "supply header",
      why: "supply against return header: shut and flooded tubes",
    },
    { name: "fan_power", logger: "duct", kind: "fan-power", zone: "fan", why: "fan energy; COP" },
  ];
}

/** Outlets of the tubes that get least and most air, and of one in the middle. */
function tubeSensors({ shares, tubes }: SensorPlanRequest): Wanted[] {
  const order = Array.from(shares, (share, tube) => ({ share, tube }))
    .sort((a, b) => a.share - b.share || a.tube - b.tube);
  const picked = [...new Set([order[0]!, order[order.length >> 1]!, order.at(-1)!])];
  return picked.map(({ tube }) => ({
    name: `tube_${tube + 1}_end`,
    logger: "duct",
    kind: "air-temperature",
    zone: `tube ${tube + 1}`,
    bath: "bath 1",
    why: "one tube does not stand for all: least, middle and most air",
    depth: tubes.positions[tube]!.depth,
    across: tubes.positions[tube]!.x,
  }));
}

function houseSensors(): Wanted[] {
  const air = { logger: "house", kind: "air-temperature", zone: "inside", bath: "bath 2" } as const;
  const out = {
    logger: "house",
    kind: "outdoor-temperature",
    zone: "outside",
    bath: "bath 2",
  } as const;
  const pair = "heat balance of the house, frost; two, so that sun and drift show";
  return [
    { ...air, name: "inside_a", why: pair },
    { ...air, name: "inside_b", why: pair },
    { name: "inside_rh", logger: "house", kind: "humidity", zone: "inside", why: "vapour balance" },
    {
      name: "ridge_t",
      logger: "house",
      kind: "air-temperature",
      zone: "ridge",
      bath: "bath 2",
      why: "what the intake could draw: layers of warm air",
    },
    {
      name: "control_t",
      logger: "house",
      kind: "air-temperature",
      zone: "control house",
      bath: "bath 2",
      why: "lift against a like house without a store; without one, weeks with the fan off",
    },
    { ...out, name: "outside_a", why: "losses; two, so that sun and drift show" },
    { ...out, name: "outside_b", why: "losses; two, so that sun and drift show" },
    {
      name: "sun",
      logger: "house",
      kind: "radiation",
      zone: "outside",
      why: "gains; sun-hit sensors",
    },
    { name: "wind", logger: "house", kind: "wind", zone: "outside", why: "leakage" },
  ];
}

function soilSensors({ tubes, houseAlong }: SensorPlanRequest): Wanted[] {
  const probe = { logger: "soil", kind: "soil-temperature", bath: "bath 3" } as const;
  const layers = [...new Set(tubes.positions.map(({ depth }) => depth))].sort((a, b) => a - b);
  const between = betweenTubes(tubes.positions);
  const store = layers.flatMap((depth) =>
    ALONG.map((share, k): Wanted => ({
      ...probe,
      name: `store_${layers.indexOf(depth) + 1}${"abc"[k]}`,
      zone: "store",
      depth,
      along: (share - 0.5) * tubes.length,
      across: between,
      why: "change of the heat stored; film, edge loss",
    }))
  );
  const depths = [...new Set([...UNDISTURBED, layers[0]!])].sort((a, b) => a - b);
  const garden = depths.map((depth): Wanted => ({
    ...probe,
    name: `garden_${Math.round(100 * depth)}`,
    zone: "garden",
    depth,
    along: houseAlong / 2 + 3 * depths.at(-1)!,
    across: 0,
    why: "soil diffusivity before start-up; undisturbed ground",
  }));
  const damp: Wanted = {
    name: "soil_moisture",
    logger: "soil",
    kind: "soil-moisture",
    zone: "store",
    depth: layers[0]!,
    across: between,
    along: 0,
    why: "conductivity and heat capacity change with it",
  };
  return [...store, ...garden, damp];
}

/** m across: half way between the two tubes nearest the middle of the upper layer. */
function betweenTubes(
  positions: readonly { readonly x: number; readonly depth: number }[],
): number {
  const top = Math.min(...positions.map(({ depth }) => depth));
  const row = positions.filter(({ depth }) => depth === top).map(({ x }) => x).sort((a, b) =>
    a - b
  );
  if (row.length < 2) return (row[0] ?? 0) + 0.3;
  const middle = Math.max(1, row.findIndex((x) => x > 0));
  return (row[middle - 1]! + row[middle]!) / 2;
}
