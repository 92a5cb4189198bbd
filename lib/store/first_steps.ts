/** Insulation or store first? What each saves. @module */
import type { RankedMeasure } from "./ranking.ts";
import type { HouseWay } from "./variants/ways.ts";

/** One thing money can be spent on. */
export interface FirstStep {
  /** short name */
  readonly name: string;
  /** a change of the house still to be made, the store, or what the study has already */
  readonly kind: "house" | "store" | "present";
  /** kWh a year of heat to hold the set point */
  readonly saved: number;
  /** K that the coldest hour gains without heater */
  readonly coldestHourGain: number;
  /** kWh a year of electricity it takes */
  readonly electricity: number;
  /** kWh a year of heat saved less electricity taken */
  readonly net: number;
}

/** What the steps are taken from. */
export interface FirstStepsQuestion {
  /** true where the study has a night curtain */
  readonly curtain: boolean;
  /** kWh a year saved, and taken by the fans in the same year, K gained */
  readonly store: {
    readonly savedHeat: number;
    readonly coldestHourGain: number;
    readonly fanEnergy: number;
  };
  /** improvements of the house, with the house as it is and the store among them */
  readonly ranking: readonly Pick<
    RankedMeasure,
    "name" | "kind" | "saved" | "coldestHourGain"
  >[];
  /** with and without store and curtain */
  readonly ways: readonly Pick<HouseWay, "store" | "curtain" | "backupHeat" | "coldestHour">[];
}

/** The curtain the study has already, against the same house without it; no store in either. */
function presentCurtain(ways: FirstStepsQuestion["ways"]): FirstStep | undefined {
  const bare = ways.find((way) => !way.store && !way.curtain);
  const curtained = ways.find((way) => !way.store && way.curtain);
  if (bare === undefined || curtained === undefined) return undefined;
  const saved = bare.backupHeat - curtained.backupHeat;
  return {
    name: "night curtain",
    kind: "present",
    saved,
    coldestHourGain: curtained.coldestHour - bare.coldestHour,
    electricity: 0,
    net: saved,
  };
}

/**
 * The store, the improvements of the house still to be made, and the curtain where the study has
 * one, the largest saving of heat first.
 *
 * @param question results of house and store
 */
export function firstSteps(question: FirstStepsQuestion): FirstStep[] {
  const { store, ranking, ways } = question;
  const curtain = question.curtain ? presentCurtain(ways) : undefined;
  const steps: FirstStep[] = [
    {
      name: "heat store, as planned",
      kind: "store",
      saved: store.savedHeat,
      coldestHourGain: store.coldestHourGain,
      electricity: store.fanEnergy,
      net: store.savedHeat - store.fanEnergy,
    },
    ...ranking.filter(({ kind }) => kind === "house").map((
      { name, saved, coldestHourGain },
    ): FirstStep => ({
      name,
      kind: "house",
      saved,
      coldestHourGain,
      electricity: 0,
      net: saved,
    })),
    ...(curtain === undefined ? [] : [curtain]),
  ];
  return steps.toSorted((a, b) => b.saved - a.saved);
}
