/** What the take-off takes of a study. @module */
import type { FanInputs, FanResult } from "../fan/types.ts";
import type { HeadersInputs } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { StoreInputs } from "../store/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import type { WorthInputs } from "./fields.ts";
import type { TakeOffInputs } from "./quantities/types.ts";

/** Sections of the study that decide what is bought. */
export interface TakeOffStudy {
  /** house section */
  readonly house: HouseInputs;
  /** tubes section */
  readonly tubes: TubesInputs;
  /** headers section */
  readonly headers: HeadersInputs;
  /** fan section */
  readonly fan: Pick<FanInputs, "fan" | "count" | "riserDiameter">;
  /** store section */
  readonly store: Pick<StoreInputs, "gravelBed" | "flatBoardResistance" | "collector">;
  /** worth section */
  readonly worth: Pick<WorthInputs, "coilLength">;
}

/**
 * Picks what the take-off needs.
 *
 * @param study the study, in SI
 * @param earlier results of the tubes and fan chapters
 */
export function takeOffInputs(
  study: TakeOffStudy,
  earlier: { readonly tubes: TubesResult; readonly fan: Pick<FanResult, "curve"> },
): TakeOffInputs {
  return {
    house: study.house,
    tubesInputs: study.tubes,
    tubes: earlier.tubes,
    headersInputs: study.headers,
    riserDiameter: study.fan.riserDiameter,
    fans: study.fan.count,
    fan: { id: study.fan.fan, name: earlier.fan.curve.name },
    coilLength: study.worth.coilLength,
    gravelMargin: study.store.gravelBed?.margin ?? null,
    flatBoard: study.store.flatBoardResistance ?? null,
    collector: collectorOf(study),
  };
}

/** What is bought of a plate collector: its holes and paint cost nothing. */
function collectorOf({ store: { collector } }: TakeOffStudy): TakeOffInputs["collector"] {
  if (collector === undefined) return null;
  const { place, area, ductLength } = collector;
  return { place, area, ductLength };
}
