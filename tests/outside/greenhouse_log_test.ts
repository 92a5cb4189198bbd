import { assert, assertAlmostEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/basics/mod.ts";
import { checkLog, readGreenhouseLog } from "../../lib/house/mod.ts";

const folder = Deno.env.get("OPEN_DATA");
const skipped = folder === undefined ? " [skipped: OPEN_DATA is not set]" : "";
const here = folder === undefined ? null : `${folder}/greenhouse`;

Deno.test({
  name:
    `checkLog(): the step fitted on February predicts March in a logged glass compartment (autonomous-greenhouse experiment 2022)${skipped}`,
  ignore: here === null,
  fn: () => {
    // Source: five-minute log of a glass compartment, 1 Feb to 15 Mar 2022, open data of the
    // autonomous-greenhouse experiment. First half fitted, second half never seen by the fit.
    const log = readGreenhouseLog(
      Deno.readTextFileSync(`${here}/weather.csv`),
      Deno.readTextFileSync(`${here}/reference_climate.csv`),
    );
    const { fitted, unseen, baseline, parameters } = checkLog(log);
    // the figures of docs/house.md
    assertAlmostEquals(fitted.temperatureError, 1.1, 0.02, "fitted half, K");
    assertAlmostEquals(unseen.temperatureError, 1.37, 0.03, "unseen half, K");
    assertAlmostEquals(unseen.temperatureBias, 0.06, 0.05, "unseen half, bias, K");
    assertAlmostEquals(fitted.humidityError, 0.053, 0.003, "fitted half, humidity");
    assertAlmostEquals(unseen.humidityError, 0.074, 0.003, "unseen half, humidity");
    assertAlmostEquals(unseen.humidityBias, -0.051, 0.003, "unseen half, humidity bias");
    // far better than the mean for temperature, no better for humidity: said so in the docs
    assert(unseen.temperatureError < 0.5 * baseline.temperatureError);
    // what was fitted stays physical
    assert(parameters.solarShare < 0.8 && parameters.coverArea > 0.5 && parameters.coverArea < 3);
  },
});

Deno.test("readGreenhouseLog() refuses logs whose stamps differ and names the line", () => {
  // Property: bad input
  const weather = "Date,Tout ,Rhout,Iglob,Windsp,Pyrgeo \n1,5,70,0,3,-50\n2,5,70,0,3,-50\n";
  const inside = "Date,Tair,Rhair,VentLee,VentWind,EnScr,BlckScr,Tpipe,PARin\n" +
    "1,15,70,0,0,0,0,0,0\n3,15,70,0,0,0,0,0,0\n";
  assertThrows(
    () => readGreenhouseLog(weather, inside),
    InputError,
    "reference_climate.csv:3",
  );
  assertThrows(() => readGreenhouseLog("Date\n1\n3\n", inside), InputError, 'column "Tout"');
});
