/** The settled years of designs, on the coarse mesh. @module */
import { each, hoursBelow, kilowattHours, type Steps } from "../../basics/mod.ts";
import { findCrop } from "../../house/mod.ts";
import { asItIsYears, likeYears } from "../../store/like_houses.ts";
import { reducedStores, type SettledQuestion, settledTask } from "../../store/runs.ts";
import type { StoreRequest } from "../../store/site.ts";
import type { BuiltDesign } from "./judge.ts";

/** Heat and hours of a year, not yet compared with anything. */
export interface DesignRun {
  /** kWh a year of back-up heat in the house held at its set point */
  readonly heat: number;
  /** kWh of the fans' electricity in that year */
  readonly fanEnergy: number;
  /** false where the fan never ran in it: heat is then that of the house with the fan never on */
  readonly fanRanHeld: boolean;
  /** h a year below the crop's limit in the free house */
  readonly hours: number;
  /** false where the fan never ran there: hours are then those of the house with the fan never on */
  readonly fanRanFree: boolean;
}

/** Years of several designs, in their order. */
export type DesignYears = (designs: readonly BuiltDesign[]) => Steps<DesignRun[]>;

/**
 * Settled years, free and held. The design asked for first, the study's own, settles from undisturbed
 * ground; all others settle from its ground. A fan that never runs is no store: the house with the
 * fan never on stands for it, on the study's own mesh, so that it saves exactly nothing.
 *
 * @param study the store in few slices
 */
export function settledDesigns(study: StoreRequest): DesignYears {
  let own: readonly SettledQuestion["from"][] | null = null;
  return function* (designs) {
    const stores = yield* reducedStores(designs.map(({ request }) => request));
    const asked = stores.flatMap((store) => [false, true].map((heated) => ({ ...store, heated })));
    const first = own === null
      ? yield* each(settledTask, asked.slice(0, 2).map((one) => ({ ...one, keepField: true })))
      : [];
    const grounds = own ??= first.map(({ field }) => field!);
    const later = asked.slice(first.length).map((one) => ({ ...one, from: grounds[+one.heated]! }));
    const years = [...first, ...yield* each(settledTask, later)];
    const pairs = designs.map((design, k) => ({
      design,
      free: years[2 * k]!,
      held: years[2 * k + 1]!,
    }));
    const idle = pairs.filter(({ free, held }) => !free.fanRan || !held.fanRan);
    const bare = yield* idleYears(study, idle.map(({ design }) => design));
    return pairs.map(({ design, free, held }): DesignRun => {
      const instead = bare.get(design);
      const heater = held.fanRan ? held.ledger.heater : instead!.held.ledger.heater;
      const air = free.fanRan ? free.year.airTemperature : instead!.free.year.airTemperature;
      return {
        heat: kilowattHours(heater),
        fanEnergy: held.fanRan ? kilowattHours(held.ledger.fanEnergy) : 0,
        fanRanHeld: held.fanRan,
        hours: hoursBelow(air, findCrop(study.houseInputs.crop).killingLimit),
        fanRanFree: free.fanRan,
      };
    });
  };
}

/** The houses of designs whose fans never ran, with the fan never on. */
function* idleYears(study: StoreRequest, designs: readonly BuiltDesign[]) {
  if (designs.length === 0) return new Map<BuiltDesign, never>();
  const asItIs = yield* asItIsYears(study);
  const houses = designs.map(({ request: { houseInputs } }) => ({ ...study, houseInputs }));
  const years = yield* likeYears(asItIs, houses, ["free", "held"]);
  return new Map(
    designs.map((design, k) => [design, { free: years[k]!.free!, held: years[k]!.held! }]),
  );
}
