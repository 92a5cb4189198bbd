/** Random studies that the schema of the study file allows. @module */
import fc from "fast-check";
import { FANS } from "winterground/fan/mod.ts";
import { FIELDS } from "winterground/study/file/fields.ts";
import { NESTED_KEYS } from "winterground/study/file/schema.ts";
import { legalValue, type Plain, type Reach } from "./values.ts";

/** A study file as plain data. */
export type StudyData = { readonly [section: string]: Plain };

/** Changes of a study, by dotted key. */
type Changes = Readonly<Record<string, Plain>>;

/** Keys that name files or people, that set the cost of a run, or that are drawn together. */
const SET_APART = new Set([
  "climate.file",
  "climate.columns",
  "climate.normals",
  "climate.measuredYears",
  "climate.seed",
  "climate.mendShift",
  "place.name",
  "place.latitude",
  "place.longitude",
  "place.timeZone",
  "house.length",
  "house.width",
  "study.name",
  "fan.curves",
  "worth.prices",
  "measured.logMap",
  "measured.logs",
  "worth.winters",
  "store.slices",
  "store.spinUpYears",
  "store.outsideSoil",
  "store.meshDepth",
]);

const LISTS = [...NESTED_KEYS].filter(([, form]) => form === "list").map(([key]) => key);
const PARTS = [...NESTED_KEYS].filter(([, form]) => form === "part").map(([key]) => key);

const within = (key: string, outer: readonly string[]) =>
  outer.some((one) => key === one || key.startsWith(`${one}.`));

/** Keys with a value of their own that may be left out. */
const FREE_KEYS = [...FIELDS.keys()].filter((key) =>
  !SET_APART.has(key) && !within(key, LISTS) && !within(key, PARTS) && key !== "fan.fan"
);

/** A mesh and a course that cost little. */
const COARSE: Changes = {
  "store.slices": 1,
  "store.spinUpYears": 0,
  "store.outsideSoil": "1 m",
  "worth.winters": 0,
};

/** Studies that people may have and that lie at an end of what can be computed. */
export const CORNERS: Readonly<Record<string, Changes>> = {
  "one hectare": { "house.length": "200 m", "house.width": "50 m" },
  "one kilometre": { "house.length": "1000 m", "house.width": "8 m" },
  "one metre": { "house.length": "1 m", "house.width": "1 m" },
  "one tube": { "tubes.count": 1 },
  "four hundred tubes": { "tubes.count": 400, "house.width": "40 m", "house.length": "60 m" },
  "a hundred fans": { "fan.count": 100, "fan.fan": "duct-315" },
  "least flow": { "tubes.airFlow": "0.001 m3/s" },
  "facing north": { "house.facing": "0 deg" },
  "dry soil": { "soil.moisture": 0 },
  "no insulation": {
    "house.northWall": "glazed",
    "house.kneeWall": "10 W/(m2 K)",
    "house.glazing": "single-film",
    "house.leakage": "20 1/h",
  },
  "full insulation": {
    "house.northWall": "0.05 W/(m2 K)",
    "house.kneeWall": "0.05 W/(m2 K)",
    "house.endWalls": "0.05 W/(m2 K)",
    "house.northRoof": "0.05 W/(m2 K)",
    "house.leakage": "0 1/h",
    "house.leakageWind": "0 ach/(m/s)",
    "house.edgeInsulation": "10 m2 K/W",
    "house.edgeInsulationDepth": "5 m",
  },
  "fifteen tubes in two layers": {
    "tubes.count": 15,
    "tubes.layers": 2,
    "tubes.spacing": "0.13 m",
  },
  "ten-inch tubes": { "tubes.tube": "corrugated-10in" },
  "tubes across": { "tubes.direction": "across" },
};

/** A place whose clock fits its longitude. */
const place: fc.Arbitrary<Changes> = fc.record({
  latitude: fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 30, max: 60 }) },
    { weight: 1, arbitrary: fc.integer({ min: -90, max: 90 }) },
  ),
  zone: fc.integer({ min: -11, max: 12 }),
}).map(({ latitude, zone }) => ({
  "place.latitude": `${latitude} deg`,
  "place.longitude": `${zone * 15} deg`,
  "place.timeZone": zone,
}));

/** Some of the keys, each with a value it may have. */
function someKeys(count: number, reach: Reach): fc.Arbitrary<Changes> {
  return fc.subarray(FREE_KEYS, { maxLength: count }).chain((keys) => valuesOf(keys, reach));
}

function valuesOf(keys: readonly string[], reach: Reach): fc.Arbitrary<Changes> {
  return fc.record(Object.fromEntries(keys.map((key) => [key, legalValue(key, reach)])));
}

function keysWithin(outer: string): readonly string[] {
  return [...FIELDS.keys()].filter((key) => key.startsWith(`${outer}.`));
}

/** Keys of a part or of an entry of a list: those without a default, and some of the others. */
function entry(outer: string, reach: Reach): fc.Arbitrary<{ readonly [key: string]: Plain }> {
  const name = (key: string) => key.slice(outer.length + 1);
  const keys = keysWithin(outer);
  const needed = keys.filter((key) => {
    const { default: usual, source } = FIELDS.get(key)!;
    return usual === "" && source === "";
  });
  const others = keys.filter((key) => !needed.includes(key));
  return fc.subarray(others).chain((more) =>
    fc.record(
      Object.fromEntries([...needed, ...more].map((key) => [name(key), legalValue(key, reach)])),
    )
  );
}

/** Curtain, collector, gravel bed, layers and skyline, mostly absent. */
function parts(reach: Reach): fc.Arbitrary<Changes> {
  const rarely = (key: string, value: fc.Arbitrary<Plain>): fc.Arbitrary<Changes> =>
    fc.oneof(
      { weight: 3, arbitrary: fc.constant({}) },
      { weight: 1, arbitrary: value.map((one) => ({ [key]: one })) },
    );
  const all = [
    ...PARTS.map((key) => rarely(key, entry(key, reach))),
    ...LISTS.filter((key) => !SET_APART.has(key))
      .map((key) => rarely(key, fc.array(entry(key, reach), { minLength: 1, maxLength: 3 }))),
  ];
  return fc.tuple(...all).map((found) => Object.assign({}, ...found) as Changes);
}

/** House, field and fan of one size: what one person would build. */
const coherent: fc.Arbitrary<Changes> = fc.record({
  length: fc.integer({ min: 5, max: 60 }),
  width: fc.integer({ min: 3, max: 15 }),
  count: fc.integer({ min: 1, max: 60 }),
  layers: fc.integer({ min: 1, max: 4 }),
  tube: legalValue("tubes.tube", "usual"),
  direction: legalValue("tubes.direction", "usual"),
  layout: legalValue("headers.layout", "usual"),
  fan: fc.constantFrom(...FANS.map(({ id }) => id)),
  own: fc.boolean(),
  ownFan: fc.boolean(),
}).map(({ length, width, count, layers, tube, direction, layout, fan, own, ownFan }) => ({
  "house.length": `${length} m`,
  "house.width": `${width} m`,
  ...(own
    ? { "tubes.count": Math.max(count, layers), "tubes.layers": layers, "tubes.tube": tube }
    : {}),
  ...(ownFan ? { "fan.fan": fan } : {}),
  "tubes.direction": direction,
  "headers.layout": layout,
}));

const anyHouse: fc.Arbitrary<Changes> = valuesOf(["house.length", "house.width"], "limits");

/** Changes of one study. */
const changes: fc.Arbitrary<readonly Changes[]> = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(place, coherent, someKeys(20, "usual"), parts("usual")) },
  { weight: 3, arbitrary: fc.tuple(place, coherent, someKeys(6, "limits"), parts("limits")) },
  { weight: 1, arbitrary: fc.tuple(place, anyHouse, someKeys(4, "limits")) },
  {
    weight: 2,
    arbitrary: fc.tuple(
      place,
      coherent,
      fc.constantFrom(...Object.values(CORNERS)),
      fc.oneof(fc.constant({}), fc.constantFrom(...Object.values(CORNERS))),
    ),
  },
);

/** Random studies that the schema allows, on a coarse mesh; their normals lie beside them. */
export const LEGAL_STUDIES: fc.Arbitrary<StudyData> = fc.tuple(
  changes,
  fc.boolean(),
  fc.integer({ min: 0, max: 1e9 }),
).map(([list, prices, seed]) =>
  studyOf(
    Object.assign(
      {},
      ...list,
      { "climate.seed": seed },
      prices ? { "worth.prices": "prices.csv" } : {},
    ) as Changes,
  )
);

/** The study with these changes and nothing else but the coarse mesh. */
export function studyOf(given: Changes): StudyData {
  const all: Changes = {
    "place.name": "Testfield",
    "place.latitude": "49 deg",
    "place.longitude": "-105 deg",
    "place.elevation": "500 m",
    "place.timeZone": -7,
    "climate.normals": "normals.csv",
    "house.length": "12 m",
    "house.width": "6 m",
    ...COARSE,
    "store.meshDepth": `${deepest(given) + 2} m`,
    ...given,
  };
  const data: Record<string, Record<string, Plain>> = {};
  for (const [key, value] of Object.entries(all)) {
    const [section, name] = key.split(".") as [string, string];
    (data[section] ??= {})[name] = value;
  }
  return data;
}

/** m, below the lowest layer of tubes that the changes ask for. */
function deepest(given: Changes): number {
  const metres = (key: string, otherwise: number) =>
    given[key] === undefined ? otherwise : Number.parseFloat(String(given[key]));
  const layers = metres("tubes.layers", 2);
  const depth = metres("tubes.depth", 0.6) + (layers - 1) * metres("tubes.layerSpacing", 0.4);
  return Math.min(48, Math.ceil(depth));
}

/** Text of a study file, one key a line. */
export function studyText(data: StudyData): string {
  return `${JSON.stringify(data, null, 1)}\n`;
}

/**
 * The studies of a seed.
 *
 * @param count how many
 * @param seed the same seed gives the same studies
 */
export function legalStudies(count: number, seed: number): readonly StudyData[] {
  return fc.sample(LEGAL_STUDIES, { numRuns: count, seed });
}
