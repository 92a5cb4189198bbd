/** What the search for designs takes of a study. @module */
import type { FanInputs } from "../../fan/types.ts";
import type { HeadersInputs } from "../../headers/types.ts";
import {
  coarseRequest,
  type StoreEarlier,
  type StoreStudy,
  type SummarisedStore,
} from "../../store/mod.ts";
import { designAir } from "../../tubes/mod.ts";
import type { WorthInputs } from "../fields.ts";
import type { WorthRequest } from "../request.ts";
import type { DesignQuestion } from "./types.ts";

/** Sections of the study that the search reads. */
export interface DesignStudy extends StoreStudy {
  readonly headers: HeadersInputs;
  readonly fan: FanInputs;
  readonly worth: WorthInputs;
}

/** Results that the search starts from. */
export interface DesignEarlier extends StoreEarlier {
  readonly store: SummarisedStore;
}

/**
 * Picks what the search is computed from.
 *
 * @param study the study, in SI
 * @param earlier results of the chapters before
 * @param worth what the worth chapter is computed from
 */
export function designQuestion(
  study: DesignStudy,
  earlier: DesignEarlier,
  worth: WorthRequest,
): DesignQuestion {
  const { store, fan } = earlier;
  return {
    wanted: study.worth.search,
    request: coarseRequest(study, earlier),
    tubes: study.tubes,
    headers: study.headers,
    fan: { ...study.fan, note: "" },
    house: study.house,
    air: designAir(study),
    worth,
    own: {
      saved: store.savedHeat,
      cropHoursAvoided: store.cropNoFan.killing.hours - store.crop.killing.hours,
      hours: store.crop.killing.hours,
      fanEnergy: store.backupFanEnergy,
      power: fan.power,
    },
  };
}
