import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputErrors } from "winterground/basics/mod.ts";
import { openStudy } from "winterground/study/mod.ts";
import { checkStudyText } from "winterground/study/file/check_study.ts";
import { planeSeries } from "winterground/house/skin/solar_gain.ts";
import { hourlySun } from "winterground/sun/mod.ts";

const SMALLEST = `
place:
  name: Somewhere
  latitude: 50 deg
  longitude: -101 deg
  elevation: 500 m
  timeZone: UTC-6
climate:
  normals: normals.csv
house: {length: 20 m, width: 25 ft}
`;

function withHorizon(text: string): string {
  return SMALLEST.replace("  timeZone: UTC-6\n", `  timeZone: UTC-6\n  horizon: ${text}\n`);
}

function refusal(text: string): string {
  return assertThrows(() => checkStudyText(text, "list.yaml"), InputErrors).message;
}

Deno.test("a skyline and layers of soil are read as lists, none of them where not given", () => {
  // Property: units of any system come out in degrees and SI; what is not given waits for its default
  assertEquals(checkStudyText(SMALLEST, "list.yaml").place.horizon, []);
  assertEquals(checkStudyText(SMALLEST, "list.yaml").soil.layers, []);
  assertEquals(checkStudyText(withHorizon("none"), "list.yaml").place.horizon, []);
  const study = checkStudyText(
    withHorizon(
      "[{ azimuth: 120 deg, elevation: 5 deg }, { azimuth: 240 deg, elevation: 9 deg }]",
    ) +
      "soil: { texture: clay, layers: [{ thickness: 1 ft, texture: peat, moisture: 50 % }] }\n",
    "list.yaml",
  );
  const corners = study.place.horizon.map((one) => [one.azimuth, one.elevation].map(Math.round));
  assertEquals(corners, [[120, 5], [240, 9]]);
  const [layer] = study.soil.layers;
  assertEquals([layer!.thickness, layer!.texture, layer!.moisture], [0.3048, "peat", 0.5]);
  assertEquals([layer!.dryDensity, layer!.measuredConductivity], [undefined, null]);
});

Deno.test("a fault in a list is told with its entry, counted from one, its line and the known keys", () => {
  // Property: shape, unknown key, missing key and limit of an entry
  assert(refusal(withHorizon("12 deg")).includes("expected none, or a list"));
  const misspelled = refusal(withHorizon("[{ azimut: 120 deg, elevation: 5 deg }]"));
  assert(misspelled.includes('did you mean "azimuth"'), misspelled);
  const high = refusal(withHorizon("\n    - { azimuth: 10 deg, elevation: 95 deg }"));
  assert(high.includes("between 0 deg and 90 deg") && high.includes("list.yaml:9"), high);
  const soil = refusal(SMALLEST + "soil: { layers: [{ texture: loam }, { thickness: 1 m }] }\n");
  assert(soil.includes('"soil.layers.thickness" is missing'), soil);
  assert(soil.includes('"soil.layers.2.texture"') || soil.includes("soil.layers.texture"), soil);
});

async function openWith(change: (text: string) => string) {
  const folder = await Deno.makeTempDir();
  try {
    const demo = new URL("../../data/climates/aldersett_normals.csv", import.meta.url);
    await Deno.copyFile(demo, `${folder}/normals.csv`);
    await Deno.writeTextFile(`${folder}/study.yaml`, change(SMALLEST));
    return await openStudy(`${folder}/study.yaml`);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("the skyline of the study takes sun from the house and from nothing else", async () => {
  // Property: same weather, less sun inside with a skyline, none of the beam behind a wall of 90°
  const open = await openWith((text) => text);
  const hidden = await openWith(() => withHorizon("[{ azimuth: 180 deg, elevation: 20 deg }]"));
  const walled = await openWith(() => withHorizon("[{ azimuth: 180 deg, elevation: 90 deg }]"));
  assertEquals(open.climate.globalHorizontal, hidden.climate.globalHorizontal);
  assertEquals(open.place.horizon, undefined);
  const south = { tilt: 90, azimuth: 180 };
  const total = (series: Float64Array) => series.reduce((all, value) => all + value, 0);
  const [free, less, none] = [open, hidden, walled].map((study) =>
    planeSeries(study.climate, hourlySun(study.place))(south)
  );
  assert(total(less!.beam) < 0.9 * total(free!.beam));
  assert(total(less!.skyDiffuse) < total(free!.skyDiffuse));
  assertEquals(total(none!.beam) + total(none!.skyDiffuse), 0);
  assertEquals(total(less!.groundReflected), total(free!.groundReflected));
});

Deno.test("layers take the typical values of their texture, and each is listed as a default", async () => {
  // Property: the row of data/soils/soils.csv, key counted from one
  const study = await openWith((text) =>
    text + "soil: { layers: [{ thickness: 30 cm, texture: peat }] }\n"
  );
  assertEquals(study.soil.layers?.[0]?.dryDensity, 250);
  const keys = study.defaults.map(({ key }) => key);
  assert(keys.includes("soil.layers.1.moisture"), keys.join(", "));
  assert(!keys.includes("soil.layers"));
  assert(keys.includes("place.horizon"));
});
