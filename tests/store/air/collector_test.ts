import { assert, assertAlmostEquals, assertLess, assertThrows } from "@std/assert";
import {
  findGlazing,
  glazingOptics,
  houseModel,
  initialHouseState,
  planeSeries,
  stepHouse,
  usualCurtain,
  withHeater,
} from "../../../lib/house/mod.ts";
import type { HouseModel } from "../../../lib/house/types.ts";
import { beamTransmittance, hourlySun } from "../../../lib/sun/mod.ts";
import type { PlateCollector } from "../../../lib/store/mod.ts";
import { boxHeat, plateRadiation } from "../../../lib/store/air/collector_box.ts";
import { collectorHeat, collectorYear } from "../../../lib/store/air/collector_year.ts";
import { freshEngine, soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { runYear, startState } from "../../../lib/store/seasons/year.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { openBase } from "../../harness/every_field.ts";
import { openSmallStudy } from "../../harness/small_study.ts";
import { standInRequest } from "../stand_in.ts";

const PLATE: PlateCollector = {
  place: "inside",
  area: 9,
  tilt: 90,
  azimuth: undefined,
  cover: "single-glass",
  ductLength: 4,
  ductLoss: 0.6,
  holeDiameter: 0.0016,
  pitch: 0.017,
  absorptance: 0.95,
  emissivity: 0.9,
};
const PLACES = ["inside", "outside"] as const;

const request = standInRequest();
const { climate, houseInputs } = request;
const house = withHeater(houseModel(houseInputs, climate), 0);
const yearOf = (change: Partial<PlateCollector>) =>
  collectorYear(
    { plate: { ...PLATE, ...change }, climate, houseInputs, airFlow: request.fan.airFlow },
    house,
  );

/** W/m² on the plane of the plate outdoors. */
function sunOn(tilt: number): Float64Array {
  const light = planeSeries(climate, hourlySun(climate.place))({ tilt, azimuth: 180 });
  return light.beam.map((beam, hour) =>
    beam + light.skyDiffuse[hour]! + light.groundReflected[hour]!
  );
}

/** kWh a year at one temperature of the air drawn in. */
function collected(change: Partial<PlateCollector>, air = 20): number {
  const { collector } = yearOf(change);
  let sum = 0;
  for (let hour = 0; hour < 8760; hour++) sum += collectorHeat(collector, hour, air) / 1000;
  return sum;
}

for (const place of PLACES) {
  Deno.test(`a plate ${place} never gives more than sun on its plane × area × glazing`, () => {
    // Property: a bound of energy in every hour, at any temperature of the air drawn in
    const glazing = place === "inside" ? houseInputs.glazing : PLATE.cover;
    const through = beamTransmittance(glazingOptics(findGlazing(glazing)), 0);
    for (const tilt of [45, 90]) {
      const sun = sunOn(tilt);
      for (const area of [3, 9, 60]) {
        const { collector } = yearOf({ place, tilt, area });
        for (let hour = 0; hour < 8760; hour++) {
          for (const air of [-10, 10, 40]) {
            const heat = collectorHeat(collector, hour, air);
            assert(heat >= 0 && heat <= sun[hour]! * area * through + 1e-9, `${hour} ${heat}`);
          }
        }
      }
    }
  });

  Deno.test(`a plate ${place} collects more the larger it is, and less a square metre`, () => {
    // Property: direction; each doubling adds, and adds less for each m² than the one before
    const areas = [4.5, 9, 18, 36, 72];
    const heat = areas.map((area) => collected({ place, area }));
    heat.slice(1).forEach((more, k) => {
      assert(more > heat[k]!, `${areas[k]} m²: ${heat[k]} then ${more}`);
      assert(more / areas[k + 1]! < heat[k]! / areas[k]!, `${areas[k + 1]} m² does not saturate`);
    });
  });
}

Deno.test("what a plate inside takes, floor, crop and mass do not get", () => {
  // Property: the light of the house is shared out anew, none is made or lost
  const { house: shaded, collector } = yearOf({ area: 9 });
  const total = (model: HouseModel, hour: number) =>
    model.solarFloor[hour]! + model.solarCrop[hour]! + model.solarMass[hour]! +
    model.solarAir[hour]!;
  let taken = 0;
  for (let hour = 0; hour < 8760; hour++) {
    const before = total(house, hour);
    assertAlmostEquals(total(shaded, hour), before, 1e-9 * Math.max(1, before));
    assert(shaded.solarFloor[hour]! <= house.solarFloor[hour]!);
    assert(shaded.solarCrop[hour]! <= house.solarCrop[hour]!);
    if (before > 0) {
      const share = 1 - collector.most[hour]! / before;
      assertAlmostEquals(shaded.solarCrop[hour]!, share * house.solarCrop[hour]!, 1e-9 * before);
    }
    taken += collector.most[hour]!;
  }
  assert(taken > 0);
  assert(yearOf({ place: "outside" }).house === house, "a plate outdoors shades nothing");
});

Deno.test("a plate inside takes its light under a curtain that closes for the cold inside as well", () => {
  // Property: by day the curtain is open in both, so floor and crop get the same light in both
  const curtain = { ...usualCurtain(2), closeBelowInside: 6 };
  const cold = withHeater(houseModel({ ...houseInputs, curtain }, climate), 0);
  const given = { plate: PLATE, climate, houseInputs: cold.inputs, airFlow: request.fan.airFlow };
  const { house: shaded, collector } = collectorYear(given, cold);
  let compared = 0;
  for (let hour = 0; hour < 8760; hour++) {
    const [open, shut] = [cold.solarFloor[hour]!, cold.shut!.solarFloor[hour]!];
    if (open === 0 || open !== shut || collector.most[hour] === 0) continue;
    compared++;
    for (
      const key of ["solarFloor", "solarCrop", "solarMass", "solarRising", "solarAir"] as const
    ) {
      const both = shaded[key][hour]!;
      assertAlmostEquals(shaded.shut![key][hour]!, both, 1e-9 * Math.max(1, both), key);
    }
  }
  assert(compared > 1000, `${compared} hours`);
});

for (const place of PLACES) {
  Deno.test(`runYear() keeps the books with a plate ${place}`, () => {
    // Property: conservation: the house gets what walls, fan and, outdoors, the plate give
    const given = standInRequest({ store: { slices: 1, collector: { ...PLATE, place } } });
    const model = soilModel(given, house);
    const state = startState(model.site, freshEngine(model), initialHouseState(house));
    let [toHouse, walls, running, plate] = [0, 0, 0, 0];
    const ledger = runYear(
      {
        site: model.site,
        inputs: given.inputs,
        climate,
        wave: given.soil.wave,
        house,
        stepHouse,
        fan: true,
        from: 2000,
        hours: 1500,
      },
      state,
      (report) => {
        toHouse += report.house.flows.store * report.seconds;
        walls -= report.sensible * report.seconds;
        running += report.fanPower * report.seconds;
        plate += report.collected * report.seconds;
      },
    );
    assert(plate > 0.05 * ledger.heatIn, `${plate} of ${ledger.heatIn}`);
    assertAlmostEquals(ledger.collected, plate, 1e-9 * plate);
    const brought = place === "outside" ? plate : 0;
    assertAlmostEquals(
      toHouse + state.owed,
      walls + running + brought,
      1e-6 * Math.abs(walls),
    );
  });
}

Deno.test("a longer, barer duct brings less, a plane turned north less than half", () => {
  // Property: direction
  const outdoors = collected({ place: "outside" });
  assertLess(collected({ place: "outside", ductLength: 20, ductLoss: 3 }), 0.9 * outdoors);
  assertLess(collected({ place: "outside", azimuth: 0 }), 0.5 * outdoors);
  assert(collected({ place: "outside", cover: "double-glass" }, 40) > 0);
});

Deno.test("boxHeat() gives all the sun where nothing is lost, none without sun or difference", () => {
  // Property: limits of the balance, and one case solved by hand: r = 6, g = 3, o = 20, e = 30,
  // S = 600, air and outdoors at 0 degC: T_c = 6 T_p/29, 600 = (30 + 6 − 36/29) T_p
  const tight = { air: 30, gap: 0, radiation: 0, clear: 0, outside: 20 };
  assertAlmostEquals(boxHeat(tight, 600, 20, -10), 600, 1e-9);
  const box = { air: 30, gap: 3, radiation: 6, clear: 0, outside: 20 };
  assertAlmostEquals(boxHeat(box, 0, 5, 5), 0, 1e-9);
  const plate = 600 / (36 - 36 / 29);
  assertAlmostEquals(boxHeat(box, 600, 0, 0), 30 * plate + 3 * 6 * plate / 29, 1e-9);
  const radiation = plateRadiation(0.9, 0);
  assertAlmostEquals(radiation.radiation, 5.17, 0.02, "4σ·303.15³/(1/0.9 + 1/0.9 − 1)");
});

Deno.test("the glazed box reaches some 85 % at most, as Vaziri et al. 2015 measured", () => {
  // Source: Vaziri, Ilkan & Egelioglu 2015 [vaziri-2015]: black perforated glazed plate, up to 85 %;
  // area, wind and cover are not given, so this is a band about it
  const still = { ...plateRadiation(0.9, 0), air: 25, outside: 8 };
  const share = 0.95 * 0.9 * boxHeat(still, 800, 20, 20) / 800;
  assert(share > 0.5 && share < 0.9, String(share));
});

Deno.test("a plate too small for its air flow is refused, and the key is named", async () => {
  // Property: the message says which key, what was found and what would do
  const tiny = standInRequest({ store: { collector: { ...PLATE, area: 0.5 } } });
  const site = storeSite(tiny, 8, 72);
  assertThrows(
    () => collectorYear({ plate: tiny.inputs.collector!, climate, houseInputs, ...site }, house),
    Error,
    '"store.collector.area" of 0.5\u00a0m²',
  );
  const refused = await openSmallStudy((text) =>
    text.replace("store: {", "store: {collector: {area: 0.5 m2}, ")
  ).then(() => "", (error: Error) => error.message);
  assert(/small\.yaml:\d+:\d+: "store\.collector\.area" of 0\.5\u00a0m²/.test(refused), refused);
  assert((await openBase()).store.collector?.place === "outside");
});
