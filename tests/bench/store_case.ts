/** The benchmark's slice, tubes and inputs: dry air, sixteen slices, hourly steps. */
import { marchAir } from "../../lib/store/air/air_march.ts";
import { marchOutput } from "../../lib/store/air/march_buffers.ts";
import { tubeCouplings } from "../../lib/store/air/coupling.ts";
import type { SoilEngine } from "../../lib/store/solver/engine.ts";
import { type StoreSite, storeSite } from "../../lib/store/site.ts";
import { standInRequest } from "../store/stand_in.ts";

/** Slices run side by side. */
export const SLICES = 16;

/** The store of the tests with sixteen slices. */
export function benchSite(): StoreSite {
  const request = standInRequest({ store: { slices: SLICES }, tubes: { length: 12 } });
  return storeSite(request, 8, 72);
}

/** A slice of a house as wide as its tubes in two layers need; half of it is in the mesh. */
export function siteOf(tubes: number): StoreSite {
  const width = Math.max(6, tubes / 2 * 0.45 + 1);
  const request = standInRequest({
    tubes: { count: tubes, layers: 2, airFlow: 0.0225 * tubes },
    house: { width, ridgeHeight: 1.8 + 0.3 * width },
    store: { slices: 2 },
  });
  return storeSite(request, 8, width * request.houseInputs.length);
}

/** Inputs of one hour, by formula. */
export interface HourInputs {
  /** degC */
  readonly outdoor: number;
  readonly floor: number;
  readonly inlet: number;
  readonly fan: boolean;
}

/** Inputs of an hour: charging by day, discharging by night, rest between. */
export function hourInputs(hour: number): HourInputs {
  const day = hour % 24;
  const sun = Math.max(0, Math.sin(2 * Math.PI * (day - 7) / 24));
  return {
    outdoor: 3 - 12 * Math.cos(2 * Math.PI * (hour / 24 - 20) / 365),
    floor: 6 + 16 * sun,
    inlet: day >= 10 && day < 16 ? 18 + 12 * sun : 5,
    fan: (day >= 10 && day < 16) || day < 6,
  };
}

/** The same in a house that freezes by night in winter. */
export function freezingInputs(hour: number): HourInputs {
  const inputs = hourInputs(hour);
  const winter = (1 + Math.cos(2 * Math.PI * (hour / 24 - 20) / 365)) / 2;
  return { ...inputs, floor: inputs.floor - 11 * winter, inlet: inputs.inlet - 6 * winter };
}

/** Runs an engine over hours; each hour in as many steps as the engine's step asks. */
export function runHours(
  site: StoreSite,
  engine: SoilEngine,
  hours: number,
  inputsOf: (hour: number) => HourInputs = hourInputs,
): Float64Array {
  const { field } = site;
  const [coupling] = tubeCouplings(engine, field, 1);
  const output = marchOutput(field);
  const water = new Float64Array(field.slices * field.tubes);
  const outdoor = new Float64Array(engine.lanes);
  const floor = new Float64Array(engine.lanes);
  const seconds = engine.steps[0]!;
  const parts = Math.round(3600 / seconds);
  const outlets = new Float64Array(hours).fill(NaN);
  for (let hour = 0; hour < hours; hour++) {
    const inputs = inputsOf(hour);
    outdoor.fill(inputs.outdoor);
    floor.fill(inputs.floor);
    let mean = 0;
    for (let part = 0; part < parts; part++) {
      engine.predict(0, outdoor, outdoor, inputs.fan);
      if (inputs.fan) {
        marchAir({
          field,
          saturation: site.saturation,
          block: engine.blockTemperature,
          coupling: coupling!,
          temperature: inputs.inlet,
          ratio: 0,
          reversed: false,
          water,
          seconds,
        }, output);
        mean += output.outletTemperature / parts;
      }
      engine.finish(0, output.heat, floor, inputs.fan);
    }
    if (inputs.fan) outlets[hour] = mean;
  }
  return outlets;
}

/** Root mean square of the difference where both have a value. */
export function rootMeanSquare(a: ArrayLike<number>, b: ArrayLike<number>, from: number): number {
  let sum = 0;
  let count = 0;
  for (let k = from; k < a.length; k++) {
    const difference = a[k]! - b[k]!;
    if (Number.isNaN(difference)) continue;
    sum += difference * difference;
    count++;
  }
  return Math.sqrt(sum / count);
}
