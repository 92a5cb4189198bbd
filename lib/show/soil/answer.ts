/** What the soil chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { shownBoth, shownRange } from "../kit/reader.ts";
import {
  GROUND_PRIOR,
  type GroundRanges,
  type SoilResult,
  type SummarisedSoil,
} from "../../soil/mod.ts";
import { answerCard } from "../kit/answer.ts";
import { numbers, table } from "../kit/table.ts";

/** What measured stations say of the column: 95 % ranges of the extremes and the frost depth. */
function stationWords({ lowest, highest, frostDepth }: GroundRanges): string {
  return ` By the column's errors at ${GROUND_PRIOR.stations} measured stations, 95 of 100 places ` +
    `have their lowest within ${shownRange(...lowest, "temperature")} and their highest within ${
      shownRange(...highest, "temperature")
    }` +
    (frostDepth === null ? "." : `, and frost within ${shownRange(...frostDepth, "depth")}.`);
}

/** The answer card; the range comes from the changed soils of the chapter and from measured stations. */
export function answer(result: SummarisedSoil): DisplayItem {
  const { range, penetration } = result.summary;
  const { cleared } = range;
  const { lowest, highest, frostDepth: frost } = range.soils;
  const ofYear = penetration.at(-1)!.depth;
  return answerCard({
    answer: `At the tube depth of ${shownBoth(result.tubeDepth, "depth")} the undisturbed ground ` +
      `swings between ${shownBoth(result.temperatureAtTubeDepthMin, "temperature")} and ${
        shownBoth(result.temperatureAtTubeDepthMax, "temperature")
      } over the year; ` +
      (result.frostDepth > 0
        ? `frost reaches ${shownBoth(result.frostDepth, "depth")}.`
        : "it does not freeze."),
    range: `With soil conductivity and moisture varied within plausible limits, the lowest ` +
      `lies between ${shownBoth(lowest[0], "temperature")} and ${
        shownBoth(lowest[1], "temperature")
      }, the highest between ${shownBoth(highest[0], "temperature")} and ${
        shownBoth(highest[1], "temperature")
      }` +
      (frost[1] > 0
        ? `, frost depth between ${shownBoth(frost[0], "depth")} and ${
          shownBoth(frost[1], "depth")
        }.`
        : ".") +
      (cleared === null || cleared.frostDepth === 0
        ? ""
        : ` On bare ground kept clear of snow, the lowest would be ${
          shownBoth(cleared.minAtTubeDepth, "temperature")
        } and frost would reach ${shownBoth(cleared.frostDepth, "depth")}.`) +
      stationWords(result.summary.stations),
    drivenBy:
      `the annual mean at the surface, ${shownBoth(result.wave.mean, "temperature")}, and how ` +
      `deep the annual wave reaches, ${shownBoth(ofYear, "depth")}.`,
    changesWith:
      "there were no snow or deeper snow, the soil were wetter or drier, groundwater moved " +
      "through it, or a house had stood there for years: soil under a house is several kelvin " +
      "warmer than the open ground shown here (common practice, no source).",
  });
}

/** Properties of the soil. */
export function propertyTable(result: SoilResult): DisplayItem {
  const { properties: soil } = result;
  const [low, high] = soil.conductivityRange;
  return numbers([
    {
      label: "conductivity, unfrozen",
      value: soil.conductivity,
      kind: "conductivity",
      note: `plausible from ${shownBoth(low, "conductivity")} to ${
        shownBoth(high, "conductivity")
      }`,
    },
    { label: "conductivity, frozen", value: soil.frozenConductivity, kind: "conductivity" },
    { label: "heat capacity, unfrozen", value: soil.heatCapacity, kind: "volumetricHeatCapacity" },
    {
      label: "heat capacity, frozen",
      value: soil.frozenHeatCapacity,
      kind: "volumetricHeatCapacity",
    },
    { label: "diffusivity", value: soil.diffusivity, kind: "diffusivity" },
    { label: "latent heat of freezing", value: soil.latentHeat, kind: "latentHeat" },
    { label: "pores", value: soil.porosity, kind: "share" },
    { label: "pores filled with water", value: soil.saturation, kind: "share" },
  ]);
}

/** How deep waves of a day, of ten days and of a year reach. */
export function penetrationTable(result: SummarisedSoil): DisplayItem {
  return table(result.summary.penetration, [
    { head: "period", value: ({ days }) => days, kind: "days" },
    { head: "depth where 37 % is left", value: ({ depth }) => depth, kind: "depth" },
    { head: "depth where 5 % is left", value: (row) => row.depthOfTwentieth, kind: "depth" },
  ], "How deep each wave reaches");
}

/** The ground with one quantity changed at a time. */
export function sensitivityTable(result: SoilResult): DisplayItem {
  return table(result.sensitivity, [
    { head: "soil", value: (row) => row.change },
    { head: "conductivity", value: (row) => row.conductivity, kind: "conductivity", us: false },
    { head: "moisture", value: (row) => row.moisture, kind: "share" },
    { head: "frost depth", value: (row) => row.frostDepth, kind: "depth" },
    { head: "lowest at tubes", value: (row) => row.minAtTubeDepth, kind: "temperature" },
    { head: "highest at tubes", value: (row) => row.maxAtTubeDepth, kind: "temperature" },
  ], "The same ground with one thing changed");
}
