/** Stage: leaf area from the water of a logged house. @module */
import {
  HEAT_OF_VAPORISATION,
  humidityRatioFromRelativeHumidity,
  saturationHumidityRatio,
} from "../../air/mod.ts";
import { HOUR } from "../../basics/mod.ts";
import { findCrop, type HouseModel, houseModel } from "../../house/mod.ts";
import { leakageRate } from "../../house/skin/leakage.ts";
import type { Stage } from "../calibration/estimate.ts";
import { leafAreaOf } from "../calibration/leaf_area.ts";
import { unheld } from "./logged_house.ts";
import type { StagesQuestion } from "./stages_question.ts";

/** K below the vents' set point, and share below the purge limit, from which on they may be open */
const [VENT_ROOM, PURGE_ROOM] = [2, 0.03];
/** W/m² of sun from which on the light of study and log can be set in proportion */
const LIGHT = 20;

/** kg/s that the wet floor gives off at the temperature of the uppermost probe under it. */
function bedWater(
  { house, setting }: StagesQuestion,
  model: HouseModel,
  ratios: Float64Array,
): Float64Array {
  const [upper] = house.ground.filter(({ zone }) => zone === "floor")
    .sort((a, b) => a.depth - b.depth);
  return ratios.map((ratio, hour) => {
    const surface = upper?.values[hour] ?? house.series.inside![hour]!;
    return Number.isFinite(surface + ratio)
      ? model.floorVapour * (saturationHumidityRatio(surface, setting.pressure) - ratio)
      : NaN;
  });
}

/**
 * Leaf area from the hours with light, shut vents and a dry cover. Light on the crop is the house
 * model's, in proportion to the sun that was logged.
 *
 * @param question log and study
 * @param leaking leakage at rest, 1/h, and with wind, 1/h for each m/s
 * @throws InputError where the hours are too few
 */
export function leafStage(
  question: StagesQuestion,
  leaking: { readonly leakage: number; readonly leakageWind: number },
): Stage {
  const { house, setting, inputs, plan } = question;
  const { inside, insideHumidity, outside, outsideHumidity, sun, wind, vents } = house.series;
  const model = houseModel(inputs, plan.climate);
  const crop = findCrop(inputs.crop);
  const count = inside!.length;
  const make = (value: (hour: number, ofYear: number) => number) =>
    Float64Array.from({ length: count }, (_, hour) => {
      const ofYear = house.hourOfYear[hour]!;
      return ofYear < 0 ? NaN : value(hour, ofYear);
    });
  const ratios = make((hour) => {
    const [warm, damp] = [inside![hour]!, insideHumidity![hour]!];
    return Number.isFinite(warm + damp)
      ? humidityRatioFromRelativeHumidity(warm, Math.min(1, damp), setting.pressure)
      : NaN;
  });
  const { floorArea } = model.geometry;
  const light = make((hour, ofYear) => {
    const planned = plan.climate.globalHorizontal[ofYear]!;
    if (!(planned > LIGHT) || !(sun![hour]! > LIGHT)) return NaN;
    const caught = 1 - Math.exp(-crop.lightExtinction * model.leafArea[ofYear]!);
    return model.solarCrop[ofYear]! / floorArea / caught * sun![hour]! / planned;
  });
  const beds = bedWater(question, model, ratios);
  const latent = house.heat?.flows;
  return leafAreaOf({
    step: HOUR,
    inside: unheld(house, inside!),
    insideHumidity: insideHumidity!,
    outside: outside!,
    outsideHumidity: outsideHumidity!,
    light,
    airChange: make((hour) =>
      leakageRate(leaking, inside![hour]! - outside![hour]!, wind?.[hour] ?? 0)
    ),
    otherWater: make((hour) => {
      const tubes = latent === undefined
        ? 0
        : -(latent.latentIn[hour]! - latent.latentOut[hour]!) / HEAT_OF_VAPORISATION;
      return beds[hour]! + tubes;
    }),
    cover: make((hour, ofYear) => {
      const share = model.glazingConductance[ofYear]! / (model.coverArea * model.coverFilm);
      return inside![hour]! - Math.min(1, share) * (inside![hour]! - outside![hour]!);
    }),
    vents: vents ?? make((hour) =>
      inside![hour]! > inputs.ventSetPoint - VENT_ROOM ||
        insideHumidity![hour]! > inputs.purgeHumidity - PURGE_ROOM
        ? 1
        : 0
    ),
  }, {
    dryAirMass: model.dryAirMass,
    floorArea,
    pressure: setting.pressure,
    crop,
  });
}
