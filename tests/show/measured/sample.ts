/** A made-up log. */
import { type LogCheck, logMeans } from "../../../lib/measured/mod.ts";
import { made } from "../made.ts";

const logged = (level: number, swing: number) =>
  Float64Array.from({ length: 288 * 3 }, (_, i) => level + swing * Math.sin(i / 46));
const log = { stepSeconds: 300, airTemperature: logged(20, 4), airHumidity: logged(0.7, 0.1) };
const prediction = { airTemperature: logged(21, 4), relativeHumidity: logged(0.68, 0.1) };
export const logCheck = made<LogCheck>({
  log,
  prediction,
  means: logMeans(log, prediction),
  unseen: { temperatureError: 1, temperatureBias: 1, humidityError: 0.02, humidityBias: -0.02 },
});
