import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import {
  edgeLoss,
  floorColumn,
  houseChapter,
  houseGeometry,
  type HouseInputs,
  houseModel,
  initialHouseState,
  lossParts,
  runHouseYear,
  stepHouse,
  withHeater,
} from "../../../lib/house/mod.ts";
import { HOUSE, NO_FLOOR, simpleSoil, simpleYear } from "../fixtures.ts";

const air = (hour: number) =>
  3 - 18 * Math.cos(2 * Math.PI * (hour / 8760 - 0.05)) -
  4 * Math.cos(2 * Math.PI * (hour % 24 - 4) / 24);
const coldYear = simpleYear({
  temperature: air,
  sun: 0.7,
  longwave: (hour) => 5.67e-8 * (air(hour) + 273.15) ** 4 - 50 - 40 * Math.sin(hour / 70),
});

/** One model and one column for all tests of the plain house in this year. */
const coldModel = houseModel(HOUSE, coldYear);
const coldColumn = floorColumn({
  geometry: coldModel.geometry,
  edge: HOUSE,
  ...simpleSoil(4, 12),
});

Deno.test("runHouseYear(): heat and vapour balances close to 1e-6 of the throughput", () => {
  // Property: conservation over a year of sun, vents, purge, curtain, heater, condensation.
  const film = houseModel({ ...HOUSE, glazing: "single-film" }, coldYear);
  for (const model of [coldModel, withHeater(film, 8000)]) {
    const run = runHouseYear(model, coldColumn);
    assert(Math.abs(run.ledger.residual) < 1e-6, `heat ${run.ledger.residual}`);
    assert(Math.abs(run.water.residual) < 1e-6, `water ${run.water.residual}`);
    assert(
      run.water.condensed > 100 && Math.abs(run.ledger.vent) > 100,
      `the year exercises the balance: ${JSON.stringify(run.ledger)}`,
    );
    assert(run.drift < 0.05, `floor soil drifts by ${run.drift} K`);
    for (
      const key of [
        "solar",
        "glazing",
        "opaque",
        "leakage",
        "vent",
        "heater",
        "evaporation",
      ] as const
    ) {
      const hours = run.year[key].reduce((sum, value) => sum + value, 0) / 1000;
      assertAlmostEquals(hours, run.ledger[key], 1e-6 * run.ledger.solar, `hours of ${key}`);
    }
    // what the periodic floor takes leaves sideways, but for the drift that is left
    assertAlmostEquals(run.ledger.edge, run.ledger.floor, 0.02 * Math.abs(run.ledger.floor));
  }
});

Deno.test("stepHouse() closes its balance for any step, weather and boundary", () => {
  // Property: solar + glazing + opaque + leakage + vent + heater − floor + store + evaporation + mass = air.
  const model = withHeater(coldModel, 5000);
  fc.assert(
    fc.property(
      fc.record({
        hour: fc.integer({ min: 0, max: 8759 }),
        air: fc.double({ min: -20, max: 45, noNaN: true }),
        ratio: fc.double({ min: 0.0005, max: 0.02, noNaN: true }),
        mass: fc.double({ min: -5, max: 40, noNaN: true }),
        seconds: fc.constantFrom(60, 900, 3600),
        floorTemperature: fc.double({ min: -10, max: 35, noNaN: true }),
        storeHeat: fc.double({ min: -20000, max: 20000, noNaN: true }),
        storeVapour: fc.double({ min: -0.003, max: 0.003, noNaN: true }),
      }),
      ({ hour, air, ratio, mass, seconds, ...boundary }) => {
        const start = {
          airTemperature: air,
          humidityRatio: ratio,
          massTemperature: mass,
          masonryTemperature: mass,
          ventOpening: 0,
        };
        const step = stepHouse(model, start, hour, seconds, {
          ...boundary,
          floorConductance: 600,
          storeSlope: -400,
          storeReference: air,
        });
        const f = step.flows;
        const sum = f.solar + f.glazing + f.opaque + f.leakage + f.vent + f.heater + f.floor +
          f.store + f.evaporation + f.mass;
        const size = Math.abs(f.solar) + Math.abs(f.glazing) + Math.abs(f.air) + Math.abs(f.vent) +
          1000;
        assert(Math.abs(sum - f.air) < 1e-9 * size, `heat ${sum} ${f.air}`);
        const stored = model.dryAirMass * (step.state.humidityRatio - ratio) / seconds;
        const water = f.evaporated - f.condensed - f.ventedVapour + boundary.storeVapour;
        assert(Math.abs(water - stored) < 1e-10, `water ${water} ${stored}`);
        assert(step.state.humidityRatio >= 0 && f.heater >= 0 && f.heater <= 5000, "limits");
      },
    ),
    { numRuns: 400 },
  );
});

/** Heater power that the hourly model settles to in endless constant weather, floor kept dry. */
function steadyHeater(inputs: HouseInputs, outside: number, wind: number, seen: number): number {
  const climate = simpleYear({ temperature: () => outside, wind });
  const house = withHeater(houseModel(inputs, climate), Infinity);
  const model = { ...house, floorVapour: 0, floorView: house.floorView.map((w) => seen * w) };
  const column = floorColumn({ geometry: model.geometry, edge: inputs, ...simpleSoil(outside) });
  return runHouseYear(model, column).year.heater.at(-1)!;
}

Deno.test("the hourly model's steady state equals the hand balance within 0.5 %", () => {
  // Property: constant weather, no sun, dry house, design wind, sky as cold as the air; the
  // hand balance has one temperature inside, and a bare floor is colder than the air
  const dry = {
    ...HOUSE,
    crop: "bare",
    leafArea: 0,
    ...{ heatSetPoint: 10, heatSetPointDay: 10, leakageWind: 0.05 },
  };
  for (const curtain of [null, HOUSE.curtain]) {
    for (const glazing of ["twin-wall-8mm", "single-glass"]) {
      const inputs = { ...dry, curtain, glazing };
      const outside = -15;
      const geometry = houseGeometry(inputs);
      const model = houseModel(inputs, simpleYear({ temperature: () => outside, wind: 6.7 }));
      const parts = lossParts({
        inputs,
        geometry,
        dryAirMass: model.dryAirMass,
        edgeLossFactor: edgeLoss(geometry, inputs, 1.5).perMetre,
        difference: 25,
        windSpeed: 6.7,
      });
      const hand = 25 * parts.reduce((sum, part) => sum + part.conductance, 0);
      const heater = steadyHeater(inputs, outside, 6.7, 0);
      assertAlmostEquals(heater, hand, 0.005 * hand, `${glazing} ${heater} ${hand}`);
      const bare = steadyHeater(inputs, outside, 6.7, 1);
      assert(bare < heater && bare > 0.9 * heater, `${glazing} ${bare} ${heater}`);
    }
  }
});

const still = { ...HOUSE, crop: "bare", leafArea: 0, waterVolume: 0, curtain: null };

Deno.test("without glazing and sun the house only knows walls, leakage and floor", () => {
  // Property: limit; glazing flow is 0 and the house stays close to a sealed box.
  const climate = simpleYear({ temperature: () => -10, sun: 0.7 });
  const model = houseModel({ ...still, leakage: 0, leakageWind: 0 }, climate);
  const blind = {
    ...model,
    glazingConductance: new Float64Array(8760),
    solarFloor: new Float64Array(8760),
    solarAir: new Float64Array(8760),
    solarCrop: new Float64Array(8760),
  };
  const step = stepHouse(
    blind,
    { ...initialHouseState(model), airTemperature: 5 },
    12,
    3600,
    NO_FLOOR,
  );
  assertEquals(Math.abs(step.flows.glazing), 0);
  assertEquals(step.flows.solar, 0);
  assertEquals(Math.abs(step.flows.leakage), 0);
  assert(step.state.airTemperature < 5 && step.state.airTemperature > -10);
});

Deno.test("without leakage and vents vapour leaves only by condensation", () => {
  // Property: limit; over a year evaporation = condensation + the little that stays in the air.
  const inputs = { ...HOUSE, leakage: 0, leakageWind: 0, ventCapacity: 0 };
  const model = houseModel(inputs, coldYear);
  const column = floorColumn({ geometry: model.geometry, edge: inputs, ...simpleSoil(4) });
  const { water } = runHouseYear(model, column);
  assertAlmostEquals(water.condensed, water.evaporated - water.stored, 1e-9 * water.evaporated);
  assertAlmostEquals(water.vented, 0, 1e-9);
});

Deno.test("a perfect curtain takes the glazing's loss away while it is closed", () => {
  // Property: limit R → ∞, full coverage, no edge leak.
  const climate = simpleYear({ temperature: () => -10 });
  const curtain = {
    resistance: 1e9,
    coverage: 1,
    edgeLeak: 0,
    closeBelow: 20,
    closeBelowOutside: 7,
  };
  const model = houseModel({ ...still, glazing: "single-film", curtain }, climate);
  const start = { ...initialHouseState(model), airTemperature: 10 };
  const step = stepHouse(model, start, 0, 3600, NO_FLOOR);
  assert(Math.abs(step.flows.glazing) < 1e-3, `${step.flows.glazing} W`);
});

Deno.test("with endless mass the house stays at the mass's temperature", () => {
  // Property: limit; capacity and surface without bound.
  const climate = simpleYear({ temperature: (hour) => -10 + 5 * Math.sin(hour), sun: 0.5 });
  const model = houseModel({ ...still, waterVolume: 1e9, waterSurface: 1e7 }, climate);
  let state = {
    ...initialHouseState(model),
    airTemperature: 12,
    massTemperature: 12,
    masonryTemperature: 12,
  };
  for (let hour = 0; hour < 200; hour++) {
    state = stepHouse(model, state, hour, 3600, NO_FLOOR).state;
  }
  assertAlmostEquals(state.airTemperature, 12, 0.01);
  assertAlmostEquals(state.massTemperature, 12, 0.01);
});

Deno.test("without sun and heater a dry house settles at the temperature outside", () => {
  // Property: limit; constant weather, sky and ground as cold as the air.
  const climate = simpleYear({ temperature: () => -7 });
  const model = { ...houseModel(still, climate), floorVapour: 0 };
  const column = floorColumn({ geometry: model.geometry, edge: still, ...simpleSoil(-7) });
  const { year } = runHouseYear(model, column);
  assertAlmostEquals(year.airTemperature.at(-1)!, -7, 0.02);
});

Deno.test("a clear sky makes the house colder, most of all under open film", () => {
  // Property: sign and order of the sky's pull.
  const drop = (glazing: string) => {
    const after = (longwave: number) => {
      const climate = simpleYear({ temperature: () => 0, longwave: () => longwave });
      const model = houseModel({ ...still, glazing }, climate);
      let state = initialHouseState(model);
      for (let hour = 0; hour < 48; hour++) {
        state = stepHouse(model, state, hour, 3600, NO_FLOOR).state;
      }
      return state.airTemperature;
    };
    return after(315) - after(220);
  };
  const [film, glass] = [drop("single-film"), drop("single-glass")];
  assert(glass > 0.5 && film > 1.5 * glass, `film ${film} K, glass ${glass} K`);
});

Deno.test("the floor column loses in the steady state what the plane section loses", () => {
  // Property: the column is the section averaged over the floor's width.
  const climate = simpleYear({ temperature: () => 0 });
  const model = houseModel({ ...still, heatSetPoint: 10, heatSetPointDay: 10 }, climate);
  const column = floorColumn({ geometry: model.geometry, edge: still, ...simpleSoil(0) });
  const covered = { floorVapour: 0, floorView: new Float64Array(8760) };
  const run = runHouseYear({ ...withHeater(model, Infinity), ...covered }, column);
  const section = edgeLoss(model.geometry, still, 1.5).perMetre * model.geometry.perimeter * 10;
  assertAlmostEquals(run.year.floor.at(-1)!, -section, 0.005 * section);
});

Deno.test("houseChapter() orders its figures as physics demands", () => {
  // Property: sealing, curtain and insulation each lower the demand; heat demand by month adds up.
  const soil = simpleSoil(4, 12);
  const base = houseChapter(HOUSE, coldYear, soil);
  const demand = (change: Partial<HouseInputs>) => {
    const inputs = { ...HOUSE, ...change };
    const model = withHeater(houseModel(inputs, coldYear), Infinity);
    const column = floorColumn({ geometry: model.geometry, edge: inputs, ...soil });
    return runHouseYear(model, column).ledger.heater;
  };
  assert(base.heatDemand > 1000);
  assert(demand({ leakage: 0.25, leakageWind: 0.04 }) < base.heatDemand);
  assert(demand({ curtain: null }) > base.heatDemand);
  assert(demand({ edgeInsulation: 0 }) > base.heatDemand);
  const months = base.heatDemandByMonth.reduce((sum, value) => sum + value, 0);
  assertAlmostEquals(months, base.heatDemand, 1e-9 * months);
  const water = base.condensateByMonth.reduce((sum, value) => sum + value, 0);
  assertAlmostEquals(water, base.freeRunningWater.condensed, 1e-6 * water);
  const sorted = coldYear.dryBulb.toSorted();
  // 99.6 % of 8760 hours are warmer than the 36th
  assertAlmostEquals(
    base.peakHeatLoss / base.lossCoefficient,
    HOUSE.heatSetPoint - sorted[35]!,
    0.1,
  );
  assert(base.coldestHour > -20 && base.coldestHour < 2);
  assertAlmostEquals(
    base.heated.airTemperature.reduce((least, value) => Math.min(least, value), 99),
    HOUSE.heatSetPoint,
    1e-6,
  );
});

Deno.test("runHouseYear() comes to a limit as the step shrinks", () => {
  // Property: half-hour steps are within 1 % of heat and 0.3 K of the coldest hour.
  const model = withHeater(coldModel, Infinity);
  const heat = (steps: number) => runHouseYear(model, coldColumn, steps).ledger.heater;
  const [one, two, eight] = [heat(1), heat(2), heat(8)];
  assert(Math.abs(two - eight) < 0.6 * Math.abs(one - eight), `${one} ${two} ${eight}`);
  assertAlmostEquals(two, eight, 0.01 * eight);
});
