/** How the glass of a logged compartment lets sun through by its height. @module */
import {
  beamTransmittance,
  diffuseTransmittance,
  extraterrestrialNormal,
  splitGlobal,
  sunPosition,
} from "../sun/mod.ts";
import { DEGREE, InputError } from "../basics/mod.ts";

/** Bleiswijk, the Netherlands: of the experiment, from memory; degrees and hours. */
const PLACE = { latitude: 52, longitude: 4.5, timeZone: 1 };
/** Clear single glass of 4 mm (from memory). */
const GLASS = { refractiveIndex: 1.526, extinction: 10, thickness: 0.004, sheets: 1 };
/** degrees; a refined 90 would divide by nothing */
const LOWEST_SUN = 89;

/**
 * Share of the global radiation that level clear glass lets through, over that of diffuse light: beam
 * and diffuse apart, the beam by the height of the sun.
 *
 * @param stamps local standard time of the place, as in the log
 * @param globalRadiation W/m² outside
 * @returns about 1; below it for a low sun
 * @throws {InputError} for a stamp that is not a time, with its line
 */
export function glassLight(
  stamps: readonly string[],
  globalRadiation: Float64Array,
): Float64Array {
  const even = diffuseTransmittance(GLASS);
  return globalRadiation.map((global, i) => {
    if (global <= 0) return 1;
    const time = new Date(Date.parse(`${stamps[i]} UTC`) - PLACE.timeZone * 3600_000);
    if (!Number.isFinite(time.getTime())) {
      throw new InputError(
        `Cannot read the time "${stamps[i]}": give it as month/day/year hour:minute`,
        { file: "reference_climate.csv", line: i + 2 },
      );
    }
    const { zenith } = sunPosition({ time, ...PLACE });
    const up = zenith < LOWEST_SUN;
    const cosZenith = up ? Math.cos(zenith * DEGREE) : 0;
    const day = (time.getTime() - Date.UTC(time.getUTCFullYear(), 0, 1)) / 86400_000 + 1;
    const { diffuseHorizontal } = splitGlobal({
      globalHorizontal: global,
      cosZenith,
      upShare: up ? 1 : 0,
      extraterrestrialNormal: extraterrestrialNormal(day),
    });
    const beam = global - diffuseHorizontal;
    return (beam * beamTransmittance(GLASS, Math.min(90, zenith)) / even + diffuseHorizontal) /
      global;
  });
}
