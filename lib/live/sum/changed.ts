/** A study with some of its values moved. @module */
import type { Changes, GivenSections } from "../types.ts";

/**
 * The sections as the study file would give them with these values written in. What the file leaves
 * open follows from them as it does in any study.
 *
 * @param given sections of the study file
 * @param changes values moved
 */
export function changedSections(given: GivenSections, changes: Changes): GivenSections {
  const { soil, house, tubes, fan } = given;
  const { curtain } = house;
  return {
    ...given,
    soil: {
      ...soil,
      moisture: changes.moisture ?? soil.moisture,
      measuredConductivity: changes.conductivity ?? soil.measuredConductivity,
    },
    house: {
      ...house,
      leakage: changes.leakage ?? house.leakage,
      heatSetPoint: changes.setPoint ?? house.heatSetPoint,
      curtain: curtain === null
        ? null
        : { ...curtain, resistance: changes.curtain ?? curtain.resistance },
    },
    tubes: {
      ...tubes,
      length: changes.length ?? tubes.length,
      count: changes.count ?? tubes.count,
    },
    fan: { ...fan, speed: changes.speed ?? fan.speed },
  };
}
