/** A made-up house. */
import { cropYear, findCrop, summariseHouse } from "../../../lib/house/mod.ts";
import type { HouseResult, HouseYear } from "../../../lib/house/types.ts";
import { HOUSE } from "../../house/fixtures.ts";
import { climateYear, outdoors, radiation, zeros } from "../climate/sample.ts";
import { daytime, hourly, made, season } from "../made.ts";

export const houseYear = (lift: number): HouseYear =>
  made<HouseYear>({
    airTemperature: hourly((hour) => outdoors[hour]! + lift + 12 * daytime(hour)),
    relativeHumidity: hourly(() => 0.8),
    heater: zeros,
    solar: radiation,
    vent: zeros,
    floor: hourly((hour) => -300 * season(hour)),
    glazing: hourly((hour) => -2000 + 1500 * season(hour)),
    opaque: hourly(() => -100),
    leakage: hourly(() => -200),
    evaporation: hourly((hour) => -100 * daytime(hour)),
    condensed: hourly(() => 1e-5),
    evaporated: hourly(() => 2e-5),
  });

export const houseResult = summariseHouse(
  HOUSE,
  climateYear,
  made<HouseResult>({
    geometry: { parts: [], floorOutline: [], floorArea: 192, volume: 600, perimeter: 64 },
    lossParts: [
      { id: "glazing", name: "glazing", conductance: 420 },
      { id: "walls", name: "north wall & roof <insulated>", conductance: 40 },
      { id: "leakage", name: "leakage", conductance: 110 },
    ],
    lossCoefficient: 570,
    peakHeatLoss: 20000,
    heatDemand: 30000,
    coldestHour: -14,
    crop: cropYear(houseYear(4).airTemperature, findCrop("spinach")),
    cropOutdoors: cropYear(outdoors, findCrop("spinach")),
    freeRunning: houseYear(4),
    heated: houseYear(6),
    heatDemandByMonth: [6000, 5000, 3000, 1000, 0, 0, 0, 0, 0, 1000, 3000, 6000],
    condensateByMonth: Array.from({ length: 12 }, () => 26),
    notices: [],
  }),
);
