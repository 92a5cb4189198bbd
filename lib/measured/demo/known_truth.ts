/** What a made-up winter is run with: the plan, changed by shares that are known. @module */
import { soilProperties } from "../../soil/mod.ts";
import type { StoreRequest } from "../../store/mod.ts";

/** How the house that was built differs from its plan, each as a ratio to the plan. */
export interface KnownTruth {
  /** ratio of the leakage at rest and with wind */
  readonly leakage: number;
  /** ratio of the soil's diffusivity; its heat capacity stays, so conductivity goes with it */
  readonly diffusivity: number;
  /** ratio of the air flow of the fans at the same power */
  readonly airFlow: number;
  /** ratio of the film coefficient inside the tubes; 1 unless given */
  readonly film?: number;
}

/** Truth of the demo's winter: leaks more, conducts worse, blows less than planned. */
export const DEMO_TRUTH: KnownTruth = { leakage: 1.3, diffusivity: 0.8, airFlow: 0.85 };

/** Soil inputs that conduct by a share better or worse: as measured, so that every soil of the store does. */
function conductingBy(
  inputs: StoreRequest["soilInputs"],
  share: number,
): StoreRequest["soilInputs"] {
  const measured = (make: Parameters<typeof soilProperties>[0]) => ({
    measuredConductivity: share * soilProperties(make).conductivity,
  });
  return {
    ...inputs,
    ...measured(inputs),
    layers: (inputs.layers ?? []).map((layer) => ({ ...layer, ...measured(layer) })),
  };
}

/** A store's request as the house was built. */
export function builtRequest(plan: StoreRequest, truth: KnownTruth): StoreRequest {
  const { soil: { properties, wave }, soilInputs, houseInputs, tubes, fan } = plan;
  const conductivity = properties.conductivity * truth.diffusivity;
  const slower = <Point extends { readonly airFlow: number }>(point: Point): Point => ({
    ...point,
    airFlow: point.airFlow * truth.airFlow,
  });
  return {
    ...plan,
    houseInputs: {
      ...houseInputs,
      leakage: houseInputs.leakage * truth.leakage,
      leakageWind: houseInputs.leakageWind * truth.leakage,
    },
    soilInputs: conductingBy(soilInputs, truth.diffusivity),
    tubes: { ...tubes, filmCoefficient: tubes.filmCoefficient * (truth.film ?? 1) },
    soil: {
      properties: {
        ...properties,
        conductivity,
        frozenConductivity: properties.frozenConductivity * truth.diffusivity,
        diffusivity: properties.diffusivity * truth.diffusivity,
      },
      wave: { ...wave, diffusivity: wave.diffusivity * truth.diffusivity },
    },
    fan: {
      ...slower(fan),
      ...(fan.charge === undefined ? {} : { charge: slower(fan.charge) }),
      ...(fan.discharge === undefined ? {} : { discharge: slower(fan.discharge) }),
    },
  };
}
