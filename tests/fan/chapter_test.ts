import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError, OutOfRangeError } from "../../lib/basics/mod.ts";
import {
  changeFan,
  curveValue,
  fanAirPath,
  fanChapter,
  fanEnergy,
  type FanInputs,
  findFan,
  readFans,
  shapedCurve,
  speedForFlow,
  speedSweep,
  systemPressure,
} from "../../lib/fan/mod.ts";
import { headersChapter } from "../../lib/headers/mod.ts";
import { field, HEADERS, STATE, TUBES } from "../headers/fields.ts";
import { DEFAULTS } from "../harness/defaults.ts";

const INPUTS: FanInputs = {
  ...DEFAULTS.fan,
  fan: "duct-315",
  count: 1,
  speed: 0.7,
  riserDiameter: 0.315,
  riserLosses: 2,
  filterPressure: 15,
  filterDirty: 2,
  note: "",
};
const tubes = field();
const surroundings = {
  tubes,
  tubesInputs: TUBES,
  headers: headersChapter({ ...HEADERS, layout: "U" }, tubes, STATE),
  ...STATE,
};

Deno.test("fanChapter() puts the point on the fan's and on the system's curve", () => {
  // Property: definition; the power law touches the system curve at the point
  const result = fanChapter(INPUTS, surroundings);
  const fan = shapedCurve(result.curve.airFlow, result.curve.staticPressure);
  assertAlmostEquals(curveValue(fan, result.airFlow), result.pressure, 1e-9);
  const system = systemPressure(fanAirPath(INPUTS, surroundings));
  assertAlmostEquals(system(result.airFlow), result.pressure, 1e-6);
  const law = result.systemCoefficient * result.airFlow ** result.systemExponent;
  assertAlmostEquals(law, result.pressure, 1e-9);
  assertAlmostEquals(result.efficiency, result.airFlow * result.pressure / result.power, 1e-12);
  assertAlmostEquals(result.specificPower * result.airFlow, result.power, 1e-9);
  assertEquals(result.stalled, false);
});

Deno.test("fanChapter() moves less air with the dirty filter and with worse headers", () => {
  // Property: a stiffer path
  const clean = fanChapter(INPUTS, surroundings);
  assert(clean.dirtyFilter!.airFlow < clean.airFlow);
  const headers = headersChapter(
    { ...HEADERS, diameter: 0.203, returnDiameter: 0.203 },
    tubes,
    STATE,
  );
  assert(fanChapter(INPUTS, { ...surroundings, headers }).airFlow < clean.airFlow);
});

Deno.test("fanChapter() keeps the air flow and scales power with density at high elevation", () => {
  // Property: fan and a corrugated square-law field scale alike with density, so the flow stays
  const path = { ...INPUTS, filterPressure: 0 };
  const at = (pressure: number) => {
    const state = { pressure, airTemperature: STATE.airTemperature };
    const rough = { ...HEADERS, layout: "U" } as const;
    return fanChapter(path, {
      ...surroundings,
      ...state,
      headers: headersChapter(rough, tubes, state),
    });
  };
  const low = at(101325);
  const high = at(70000);
  assertAlmostEquals(high.airFlow / low.airFlow, 1, 1e-6);
  assertAlmostEquals(high.power / low.power, high.density / low.density, 1e-6);
  assertAlmostEquals(high.pressure / low.pressure, high.density / low.density, 1e-6);
});

Deno.test("fanChapter() refuses with a sentence where the fan cannot serve the field", () => {
  // Property: a clear answer, not a number
  const weak = { ...findFan("booster-250"), id: "weak" };
  const cut = {
    ...weak,
    airFlow: weak.airFlow.slice(3),
    staticPressure: weak.staticPressure.slice(3).map((pressure) => pressure / 5),
    power: weak.power.slice(3),
  };
  const long = field({ length: 22, airFlow: 0.5 });
  const headers = headersChapter(HEADERS, long, STATE);
  assertThrows(
    () =>
      fanChapter({ ...INPUTS, fan: "weak", speed: 1 }, {
        ...surroundings,
        headers,
        fans: [cut],
      }),
    InputError,
    "too weak for the field",
  );
});

Deno.test("fanChapter() warns of a shortfall, and of wet electrics always", () => {
  // Property: notices follow the result
  const short = fanChapter({ ...INPUTS, fan: "booster-250", speed: 1 }, surroundings);
  assert(short.flowRatio < 0.9);
  assert(short.notices.some(({ level, text }) => level === "warning" && text.includes("free-air")));
  assert(
    short.notices.some(({ level, text }) => level === "caution" && text.includes("electrician")),
  );
});

Deno.test("fanChapter() warns of fans that warm their air with their own power", () => {
  // First law: the rise is P/(ρ q c); many large fans on a small field stall, and heat what little moves
  const warned = (changed: Partial<FanInputs>) => {
    const inputs = { ...INPUTS, ...changed };
    const { notices, specificPower, density } = fanChapter(inputs, surroundings);
    const rise = specificPower / (density * 1006);
    const said = notices.some(({ text }) => text.includes("warms its air"));
    assertEquals(said, rise > 5, `${rise} K`);
    return said;
  };
  assert(!warned({}));
  assert(warned({ fan: "propeller-500", speed: 1, count: 20 }));
});

Deno.test("fanChapter() lists the known fans for an unknown one and refuses a wild speed", () => {
  // Property: bad input
  assertThrows(() => fanChapter({ ...INPUTS, fan: "no" }, surroundings), InputError, "duct-315");
  assertThrows(
    () => fanChapter({ ...INPUTS, speed: 3 }, surroundings),
    OutOfRangeError,
    "fan speed",
  );
});

Deno.test("speedForFlow() inverts the operating point", () => {
  // Property: inverse
  const curve = changeFan(findFan("duct-400"), { density: 0.93 });
  const system = (airFlow: number): number => 400 * airFlow ** 2;
  const [half] = speedSweep(curve, system, [0.5]);
  assert(half!.point.reached);
  const found = speedForFlow(curve, system, half!.point.airFlow);
  assertAlmostEquals(found.speed, 0.5, 1e-6);
  assertThrows(() => speedForFlow(curve, system, 50), InputError, "Cannot move");
});

Deno.test("fanEnergy() sums running and standby hours", () => {
  // Property: definition: 3 h at 200 W, 1 h of it backwards, and 1 h of standby at 5 W
  assertAlmostEquals(fanEnergy(200, [1, 0.5, -1, 0.5, 0], 5), 0.6 + 0.01, 1e-12);
});

Deno.test("readFans() tells file, line and column of a faulty point", () => {
  // Property: bad input
  const head = "id,name,air_flow_m3_per_s,static_pressure_Pa,power_W,outlet_area_m2,source\n";
  const good = "a,A,0,100,50,0.1,me\na,A,0.1,90,55,0.1,me\na,A,0.2,0,60,0.1,me\n";
  assertEquals(readFans(head + good, "f.csv")[0]!.airFlow, [0, 0.1, 0.2]);
  const bad = (text: string, part: string): unknown =>
    assertThrows(() => readFans(text, "f.csv"), InputError, part);
  bad("", "f.csv: Cannot read the table: it is empty");
  bad(head, "it has no rows");
  bad(head.replace("power_W,", "") + good, 'f.csv:1: Cannot find the column "power_W"');
  bad(head + good.replace("0.1,90", "0.3,90"), 'f.csv:4 (column "air_flow_m3_per_s")');
  bad(
    head + good.replace("90,55", "much,55"),
    'f.csv:3 (column "static_pressure_Pa"): Cannot read "much"',
  );
  bad(head + good.replace("90,55", "90,-5"), "f.csv:3");
  bad(head + good.replace(",0.1,me\n", ",0,me\n"), "outlet area");
  bad(head + good.split("\n").slice(0, 2).join("\n"), "at least 3 points");
  bad(head + good.replace("90,55,", "90,"), "6 cells");
});

Deno.test("two fans on risers of their own are one fan on half the field", () => {
  // Property: symmetry: both halves of a field are alike, so two fans at twice the flow of one need the
  // pressure of one and twice its power
  const half = [0.1, 0.2, 0.4, 0.8].map((airFlow) => ({ airFlow, pressure: 150 * airFlow ** 2 }));
  const whole = half.map(({ airFlow, pressure }) => ({ airFlow: 2 * airFlow, pressure }));
  const one = fanChapter({ ...INPUTS, count: 1 }, {
    ...surroundings,
    headers: { ...surroundings.headers, systemCurve: half },
  });
  const two = fanChapter({ ...INPUTS, count: 2 }, {
    ...surroundings,
    tubesInputs: { ...TUBES, airFlow: 2 * TUBES.airFlow },
    headers: { ...surroundings.headers, systemCurve: whole },
  });
  assertAlmostEquals(two.airFlow, 2 * one.airFlow, 1e-9);
  assertAlmostEquals(two.pressure, one.pressure, 1e-7);
  assertAlmostEquals(two.power, 2 * one.power, 1e-7);
});

Deno.test("systemPressure() counts filter and riser by the square of the flow, and the riser of each fan", () => {
  // Property: hand arithmetic: 15 Pa at the design flow, 2 heads of a riser, outlet as wide as the riser
  const path = {
    field: [0.25, 0.5, 1].map((airFlow) => ({ airFlow, pressure: 100 * airFlow ** 2 })),
    riserDiameter: 0.4,
    riserLosses: 2,
    filterPressure: 15,
    designFlow: 0.5,
    fanCount: 2,
    outletArea: Math.PI * 0.4 ** 2 / 4,
    density: 1.2,
  };
  const head = (airFlow: number) => 0.6 * (airFlow / 2 / (Math.PI * 0.04)) ** 2;
  for (const airFlow of [0.25, 0.5, 1]) {
    const wanted = 100 * airFlow ** 2 + 15 * (airFlow / 0.5) ** 2 + 2 * head(airFlow);
    assertAlmostEquals(systemPressure(path)(airFlow), wanted, 1e-9);
    assertAlmostEquals(systemPressure(path, 3)(airFlow) - wanted, 30 * (airFlow / 0.5) ** 2, 1e-9);
  }
});

Deno.test("fanChapter() finds the point of each mode as if the fan had been given that speed", () => {
  // Property: fan laws through the same air path; not the cube of the speed
  const both = fanChapter({ ...INPUTS, chargeSpeed: 1, dischargeSpeed: 0.6 }, surroundings);
  const slow = fanChapter({ ...INPUTS, speed: 0.6 * INPUTS.speed }, surroundings);
  assertEquals(both.charge, {
    airFlow: both.airFlow,
    pressure: both.pressure,
    power: both.power,
  });
  for (const key of ["airFlow", "pressure", "power"] as const) {
    assertAlmostEquals(both.discharge[key] / slow[key], 1, 1e-9, key);
  }
  const plain = fanChapter(INPUTS, surroundings);
  assertEquals([both.airFlow, both.power], [plain.airFlow, plain.power]);
  assertEquals([plain.charge, plain.discharge], [both.charge, both.charge]);
});
