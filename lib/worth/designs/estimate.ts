/** What a design would bring at a rough guess, before any year is run. @module */
import { airProperties } from "../../air/mod.ts";
import { DAY } from "../../basics/mod.ts";
import { findTube, INLET_SWING, soilRadius, tubeHeat } from "../../tubes/mod.ts";
import { ownChoice } from "./choices.ts";
import type { DesignChoice, DesignQuestion, DesignYear } from "./types.ts";

/** A rough year of a design whose fans draw so many W. */
export type RoughYear = (choice: DesignChoice, power: number) => DesignYear;

/**
 * The quick search's heat of a daily wave, set to the own design's year: heat given back in
 * proportion, which saves at most the heat that is needed.
 *
 * @param question the study
 */
export function roughYears(question: DesignQuestion): RoughYear {
  const { own, worth } = question;
  const most = Math.max(1, worth.energy.backupHeatNoFan);
  const share = Math.min(0.95, Math.max(0.01, own.saved / most));
  const ownHeat = waveHeat(ownChoice(question), question);
  return (choice, power) => {
    const ratio = waveHeat(choice, question) / ownHeat;
    const saved = most * (1 - (1 - share) ** ratio);
    return {
      saved,
      cropHoursAvoided: own.cropHoursAvoided * saved / (most * share),
      fanEnergy: own.power > 0 ? own.fanEnergy * power / own.power : own.fanEnergy,
    };
  };
}

/** kWh in a half wave of a day. */
function waveHeat(choice: DesignChoice, { tubes, request, air }: DesignQuestion): number {
  const product = findTube(choice.tube);
  const height = choice.layers > 1 ? tubes.layerSpacing : 2 * choice.depth;
  const outerRadius = Math.max(soilRadius(choice.spacing, height), 0.51 * product.insideDiameter);
  const { conductivity, heatCapacity } = request.soil.properties;
  return choice.count * tubeHeat({
    product,
    soil: { conductivity, heatCapacity, outerRadius, outside: "adiabatic" },
    airFlow: choice.airFlow / choice.count,
    air: airProperties(air.airTemperature, air.pressure),
    extraLosses: tubes.extraLosses,
    swing: INLET_SWING,
    period: DAY,
  }, choice.length);
}
