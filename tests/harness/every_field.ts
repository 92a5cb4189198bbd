/** A small study in which every key of the study file does something, changed key by key. @module */
import { openStudy, type Study } from "winterground/study/mod.ts";
import { type FieldRow, FIELDS } from "winterground/study/file/fields.ts";

type Plain = { [key: string]: Plain | string | number };

/** Every part there, every set point of its own. */
const BASE: Plain = {
  place: {
    name: "Testfield",
    latitude: "49 deg",
    longitude: "-100 deg",
    elevation: "500 m",
    timeZone: "UTC-6",
    horizon: [{ azimuth: "150 deg", elevation: "10 deg" }, {
      azimuth: "200 deg",
      elevation: "5 deg",
    }] as unknown as Plain,
  },
  climate: { normals: "normals.csv" },
  soil: {
    waterTableDepth: "2.5 m",
    layers: [{ thickness: "0.3 m", texture: "silt" }] as unknown as Plain,
  },
  house: {
    length: "12 m",
    width: "6 m",
    northWall: "0.4 W/(m2 K)",
    northRoof: "0.4 W/(m2 K)",
    endWalls: "0.5 W/(m2 K)",
    glazingSnow: "cleared",
    snowDepth: "30 cm",
    curtain: { coverage: "80 %" },
    edgeInsulation: "1.5 m2 K/W",
    edgeInsulationDepth: "0.6 m",
    edgeInsulationWing: "0.3 m",
    footingDepth: "0.5 m",
    northEarthHeight: "0.5 m",
    pathShare: "20 %",
    waterVolume: "1 m3",
    masonryVolume: "1 m3",
    masonrySurface: "5 m2",
    summerShade: "30 %",
    heaterPower: "3 kW",
  },
  tubes: { count: 6, layers: 1, airFlow: "250 cfm", depth: "0.8 m" },
  headers: { inlet: "protruding", insertion: "10 mm" },
  fan: { fan: "duct-315", count: 1, speed: 0.4 },
  store: {
    slices: 1,
    spinUpYears: 0,
    outsideSoil: "1 m",
    meshDepth: "3 m",
    flatBoardResistance: "1 m2 K/W",
    flatBoardDepth: "1.5 m",
    collector: { place: "outside", area: "4 m2" },
    gravelBed: { margin: "0.15 m" },
  },
};

/** Another value for keys whose row has no numbers to choose from. */
const OTHER: Readonly<Record<string, string>> = {
  "place.latitude": "48.8 deg",
  "place.longitude": "-99 deg",
  "place.elevation": "700 m",
  "place.timeZone": "UTC-7",
  "house.shape": "hoop",
  "house.glazing": "twin-wall-16mm",
  "house.crop": "spinach",
  "house.glazingSnow": "lies",
  "house.bedCover": "straw",
  "house.pathCover": "gravel",
  "house.leafArea": "3",
  "store.spinUpYears": "1",
  "store.slices": "2",
  "soil.texture": "clay",
  "soil.layers.texture": "clay",
  "soil.frozenConductivity": "as unfrozen",
  "tubes.tube": "corrugated-3in",
  "tubes.direction": "across",
  "headers.layout": "Z",
  "headers.inlet": "rounded",
  "headers.junctions": "partial",
  "climate.mendShift": "yes",
  "store.reverse": "yes",
  "store.ventsFirst": "yes",
  "store.groundWaterMoves": "yes",
  "house.curtain.clock": "16:00 to 9:00",
  "house.curtain.dullDays": "balance",
  "house.heatSeason": "1 Mar to 30 Nov",
  "store.fanSeason": "15 Aug to 30 Apr",
  "store.chargeSeason": "15 Aug to 30 Apr",
  "store.collector.place": "inside",
  "store.collector.cover": "double-glass",
  "worth.fuel": "wood",
  "worth.labour": "own",
  "worth.search": "yes",
  "study.units": "US",
  "measured.holdOut": "1 Mar to 14 Mar",
  "measured.fanOff": "3 Feb to 16 Feb",
  "measured.fanBetweenProbes": "no",
};

/** Keys that only name a file, or a part whose own keys are changed one by one. */
const NOT_VALUES = [
  "worth.prices",
  "climate.file",
  "climate.columns",
  "climate.normals",
  "climate.measuredYears",
  "climate.measuredYears.file",
  "fan.fan",
  "fan.curves",
  "place.horizon",
  "soil.layers",
  "house.curtain",
  "store.collector",
  "store.gravelBed",
  "measured.logMap",
  "measured.logs",
  "measured.logs.file",
];

/** Keys of the study file that have a value of their own. */
export const VALUE_KEYS: readonly string[] = [...FIELDS.keys()].filter((key) =>
  !NOT_VALUES.includes(key)
);

/** Opens the study with every key as it stands. */
export function openBase(): Promise<Study> {
  return openData(BASE);
}

/**
 * Opens the study with one key changed to another value that fits the rest.
 *
 * @param key dotted path of the key
 * @throws {Error} where no value of the row of the key fits
 */
export async function openChanged(key: string): Promise<Study> {
  const faults: string[] = [];
  for (const value of candidates(FIELDS.get(key)!)) {
    try {
      return await openData(withValue(BASE, key.split("."), value));
    } catch (error) {
      faults.push(`${value}: ${(error as Error).message}`);
    }
  }
  throw new Error(`no other value of "${key}" fits:\n${faults.join("\n")}`);
}

function candidates(row: FieldRow): readonly string[] {
  const { key, kind, least, most, usualLeast, usualMost } = row;
  if (OTHER[key] !== undefined) return [OTHER[key]];
  if (kind === "text") return ["another-word"];
  return [nearby(usualLeast, usualMost), usualMost, usualLeast, nearby(least, most), most, least]
    .filter((value) => value !== "");
}

/** A value between two of the same unit, closer to the lower; "" where there are no two. */
function nearby(low: string, high: string): string {
  const [, from, unit] = /^(-?[\d.]+(?:e\d+)?)(.*)$/.exec(low) ?? [];
  const [, to, same] = /^(-?[\d.]+(?:e\d+)?)(.*)$/.exec(high) ?? [];
  if (from === undefined || to === undefined || unit !== same) return "";
  const value = Number(from) + 0.37 * (Number(to) - Number(from));
  const whole = !low.includes(".") && unit === "" && Number(to) >= 2;
  return `${whole ? Math.ceil(value) : Number(value.toPrecision(4))}${unit}`;
}

function withValue(data: Plain, [first, ...rest]: readonly string[], value: string): Plain {
  const part = data[first!];
  if (rest.length === 0) return { ...data, [first!]: value };
  if (Array.isArray(part)) {
    const [head, ...others] = part as unknown as Plain[];
    return { ...data, [first!]: [withValue(head!, rest, value), ...others] as unknown as Plain };
  }
  return { ...data, [first!]: withValue((part ?? {}) as Plain, rest, value) };
}

async function openData(data: Plain): Promise<Study> {
  const folder = await Deno.makeTempDir();
  try {
    await Deno.copyFile(
      new URL("../../data/climates/aldersett_normals.csv", import.meta.url),
      `${folder}/normals.csv`,
    );
    await Deno.writeTextFile(`${folder}/every-field.yaml`, JSON.stringify(data));
    return await openStudy(`${folder}/every-field.yaml`);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
