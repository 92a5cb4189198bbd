/** A plain year of a store, made by hand, for the tests of the monitoring plan. */
import { HOURS_PER_YEAR, monthOfHour } from "../../../lib/basics/mod.ts";
import type { CertaintyRequest } from "../../../lib/measured/mod.ts";

const series = (value: (hour: number) => number) =>
  Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => value(hour));

/** Charges 8 h a day at 25 to 17 degC from April on, discharges 6 h a night at 3 to 9 degC in winter. */
export function madeYear(): CertaintyRequest {
  const winter = (hour: number) => [10, 11, 0, 1, 2].includes(monthOfHour(hour));
  const summer = (hour: number) => monthOfHour(hour) >= 3 && monthOfHour(hour) <= 8;
  const charges = (hour: number) => summer(hour) && hour % 24 >= 9 && hour % 24 < 17;
  const discharges = (hour: number) => winter(hour) && hour % 24 < 6;
  const share = (hour: number) => charges(hour) ? 1 : discharges(hour) ? -1 : 0;
  const year = {
    fanShare: series(share),
    fanPower: series((hour) => 500 * Math.abs(share(hour))),
    intakeTemperature: series((hour) => charges(hour) ? 25 : discharges(hour) ? 3 : NaN),
    outletTemperature: series((hour) => charges(hour) ? 17 : discharges(hour) ? 9 : NaN),
    airRate: series((hour) => 960 * Math.abs(share(hour))),
    condensate: series(() => 0),
    house: {
      airTemperature: series((hour) => charges(hour) ? 25 : 3),
      relativeHumidity: series((hour) => winter(hour) && hour % 24 < 12 ? 0.96 : 0.3),
      solar: series((hour) => hour % 24 >= 8 && hour % 24 < 16 ? 3000 : 0),
    },
  };
  return {
    year,
    outside: series((hour) => 5 - 20 * Math.cos(2 * Math.PI * (hour / 24 - 15) / 365)),
    pressure: 95000,
    airFlow: { charge: 0.8, discharge: 0.8 },
    ground: { amplitude: 14, diffusivity: 6e-7 },
  };
}
