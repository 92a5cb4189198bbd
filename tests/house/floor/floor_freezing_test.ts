import { assert, assertAlmostEquals, assertEquals, assertLess } from "@std/assert";
import { floorColumn } from "../../../lib/house/floor/floor_column.ts";
import { floorContent, floorIce, floorStepper } from "../../../lib/house/floor/floor_stepper.ts";
import { houseGeometry } from "../../../lib/house/skin/geometry.ts";
import { soilProperties } from "../../../lib/soil/mod.ts";
import type { SoilProperties } from "../../../lib/soil/types.ts";
import { neumannFront } from "../../support/neumann.ts";
import { HOUSE } from "../fixtures.ts";

const loam = soilProperties({
  texture: "loam",
  dryDensity: 1450,
  moisture: 0.25,
  quartz: 0.4,
  measuredConductivity: null,
});
const wave = { mean: 4, amplitude: 12, minimumDay: 40, diffusivity: loam.diffusivity };
const geometry = houseGeometry(HOUSE);
const edge = { edgeInsulation: 0, edgeInsulationDepth: 0 };
const deep = { thickness: Infinity, properties: loam };

/** A winter of the floor driven by a cold wave; returns heat in, lost sideways, layers and ice. */
function winter(column: ReturnType<typeof floorColumn>, seconds: number, days: number) {
  const soil = new Float64Array(column.depths.length).fill(5);
  const ice = floorIce(column, soil);
  const before = floorContent(column, soil, ice);
  const stepper = floorStepper(column, seconds, ice);
  let [heat, lost] = [0, 0];
  for (let step = 0; step < days * 86400 / seconds; step++) {
    const hour = Math.floor(step * seconds / 3600) % 8760;
    const driving = -9 + 4 * Math.sin(2 * Math.PI * hour / 24);
    const into = stepper.conductance * (driving - stepper.prepare(soil, hour));
    lost += stepper.finish(soil, into, hour) * seconds;
    heat += into * seconds;
  }
  return { soil, ice, heat, lost, gained: floorContent(column, soil, ice) - before };
}

Deno.test("floorStepper() closes the heat balance with latent heat to 1e-9", () => {
  // Property: heat in − heat lost = change of sensible and latent content
  const column = floorColumn({ geometry, edge, properties: loam, wave, layers: [deep] });
  const { ice, heat, lost, gained } = winter(column, 1800, 90);
  const latent = ice!.content.reduce((sum, value) => sum + value, 0);
  assertLess(Math.abs(heat - lost - gained) / Math.abs(heat), 1e-9);
  assert(latent < -0.1 * Math.abs(heat), "the winter freezes the ground");
});

Deno.test("floorStepper() without water gives the linear result to rounding", () => {
  // Property: no water, no latent heat
  const dry: SoilProperties = { ...loam, latentHeat: 0 };
  const inputs = { geometry, edge, properties: loam, wave };
  const linear = winter(floorColumn(inputs), 1800, 60);
  const layers = [{ thickness: Infinity, properties: dry }];
  const frozen = winter(floorColumn({ ...inputs, layers }), 1800, 60);
  linear.soil.forEach((value, i) => assertAlmostEquals(frozen.soil[i]!, value, 1e-9));
  assertAlmostEquals(frozen.heat / linear.heat, 1, 1e-12);
});

Deno.test("floorColumn() takes each layer's water from its own soil", () => {
  // Property: gravel without water over loam: the gravel's layers hold no latent heat
  const gravel: SoilProperties = {
    ...loam,
    latentHeat: 0,
    frozenConductivity: loam.conductivity,
    frozenHeatCapacity: loam.heatCapacity,
  };
  const layers = [{ thickness: 0.3, properties: gravel }, deep];
  const { water } = floorColumn({ geometry, edge, properties: loam, wave, layers });
  assertEquals(Array.from(water!.latent.subarray(0, 4)), [0, 0, 0, 0]);
  const area = geometry.floorArea;
  // from 0.27 to 0.42 m: 0.12 m of it loam; a few hundredths make up for what ice holds less
  assertAlmostEquals(water!.latent[4]! / (0.12 * area * loam.latentHeat), 1, 0.06);
  assertAlmostEquals(water!.latent[6]! / (0.28 * area * loam.latentHeat), 1, 0.06);
});

Deno.test("floorColumn() conducts and holds heat as each layer's own soil does", () => {
  // Property: half a metre of sand over loam; conductances between layers are in series
  const sand: SoilProperties = { ...loam, conductivity: 3 * loam.conductivity, heatCapacity: 1e6 };
  const layers = [{ thickness: 0.62, properties: sand }, deep];
  const inputs = { geometry, edge, properties: loam, wave };
  const [alone, both] = [floorColumn(inputs), floorColumn({ ...inputs, layers })];
  for (let i = 0; i < 6; i++) {
    assertAlmostEquals(both.capacity[i]! / alone.capacity[i]!, 1e6 / loam.heatCapacity, 1e-9);
    if (i < 5) assertAlmostEquals(both.downward[i]! / alone.downward[i]!, 3, 1e-9);
  }
  assertAlmostEquals(both.capacity[6]! / alone.capacity[6]!, 1, 1e-9);
  assertAlmostEquals(both.downward[6]! / alone.downward[6]!, 1, 1e-9);
  // the layers meet at 0.62 m, from 0.52 to 0.76 m between the middles: 10 cm and 14 cm
  assertAlmostEquals(alone.downward[5]! / both.downward[5]!, (0.1 / 3 + 0.14) / 0.24, 1e-9);
  assertAlmostEquals(both.surface / alone.surface, 3, 1e-9);
  assert(both.sideways[1]! > 1.5 * alone.sideways[1]!, "more leaves sideways near the top");
  const more = Math.abs(both.sideways[12]! / alone.sideways[12]! - 1);
  assertLess(more, 0.2, "and little is changed far below");
});

Deno.test("floorStepper() freezes as Neumann says", () => {
  // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi), two phases; layers 3 to 28 cm thick
  const properties = { ...loam, freezingRange: 0.2 };
  const column = {
    ...floorColumn({
      geometry,
      edge,
      properties,
      wave,
      layers: [{ thickness: Infinity, properties }],
    }),
    film: Infinity,
  };
  column.sideways.fill(0);
  const soil = new Float64Array(column.depths.length).fill(5);
  const ice = floorIce(column, soil);
  const stepper = floorStepper(column, 3600, ice);
  let heat = 0;
  for (let hour = 0; hour < 30 * 24; hour++) {
    const into = stepper.conductance * (-10 - stepper.prepare(soil, hour));
    stepper.finish(soil, into, hour);
    heat += into * 3600;
  }
  const exact = neumannFront({
    frozen: { conductivity: loam.frozenConductivity, heatCapacity: loam.frozenHeatCapacity },
    unfrozen: loam,
    latentHeat: loam.latentHeat,
    surface: -10,
    start: 5,
  }, 30 * 86400);
  const area = geometry.floorArea;
  assertAlmostEquals(-heat / area / exact.taken, 1, 0.03, "heat taken");
  const frozen = -ice!.content.reduce((sum, value) => sum + value, 0) / area / loam.latentHeat;
  assertAlmostEquals(frozen, exact.front, 0.05, "front");
});
