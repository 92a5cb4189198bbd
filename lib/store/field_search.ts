/** Fields around the one of the study, searched with the study's own soil, fan and hours. @module */
import type { FanResult } from "../fan/types.ts";
import { fieldPit, type HeadersInputs } from "../headers/mod.ts";
import type { SoilProperties } from "../soil/types.ts";
import {
  costClasses,
  DEMO_SEARCH_PRICES,
  type DesignAir,
  type DugField,
  type FieldPick,
  fieldPicks,
  type FloorSize,
  INLET_SWING,
  type Pit,
  type SearchAround,
  searchAround,
  type SearchPrices,
  tubePositions,
  type TubesInputs,
  type TubesResult,
} from "../tubes/mod.ts";
import { fanHoursPerDay } from "./fan_by_month.ts";

/** What the search takes. */
export interface FieldSearchQuestion {
  /** `tubes` section of the study */
  readonly inputs: TubesInputs;
  /** length and width of the house, m */
  readonly house: FloorSize;
  /** sizes and number of the study's headers; every field is given headers of these sizes */
  readonly headers: Pick<HeadersInputs, "diameter" | "returnDiameter" | "groups">;
  /** underside of the footing below the floor, m; null where it is not known */
  readonly footingDepth: number | null;
  /** Pa and degC */
  readonly air: DesignAir;
  /** W/(m K) and J/(m³ K) */
  readonly soil: Pick<SoilProperties, "conductivity" | "heatCapacity">;
  /** Pa of one tube */
  readonly tubes: Pick<TubesResult, "pressureDrop">;
  /** Pa, and 0 to 1 from wire to air */
  readonly fan: Pick<FanResult, "pressure" | "efficiency">;
  /** share of each hour that the fan ran, of either sign */
  readonly fanShare: Float64Array;
  /** tubes, ends and digging; the demo farm's invented ones where not given */
  readonly prices?: SearchPrices;
}

/** Outcome of the search with what a reader wants of it first. */
export interface FieldSearch extends SearchAround {
  /** a few fields worth a look, the study's own last */
  readonly picks: readonly FieldPick[];
  /** costs that part the front into three classes of equal number; null for an empty front */
  readonly costClasses: readonly [number, number] | null;
}

/**
 * Searches tube, count, length, spacing, layers and depth around the study.
 *
 * @param question tubes, house, soil, fan and hours
 */
export function fieldSearch(question: FieldSearchQuestion): FieldSearch {
  const { inputs, tubes, fan, prices } = question;
  const found = searchAround(inputs, {
    house: question.house,
    footingDepth: question.footingDepth,
    ...question.air,
    soil: question.soil,
    swing: INLET_SWING,
    otherPressure: Math.max(0, fan.pressure - tubes.pressureDrop),
    fanEfficiency: fan.efficiency,
    fanHours: fanHoursPerDay(question.fanShare),
    prices: prices ?? DEMO_SEARCH_PRICES,
    pit: (field) => pitOf(field, question),
  });
  return {
    ...found,
    picks: fieldPicks(found),
    costClasses: found.front.length === 0 ? null : costClasses(found.front),
  };
}

/** The headers chapter's pit; one pair of headers a layer where the study has that. */
function pitOf(field: DugField, { inputs, headers }: FieldSearchQuestion): Pit {
  const each = headers.groups === inputs.layers;
  return fieldPit({
    tubes: { positions: tubePositions(field), product: field.product, length: field.length },
    slope: inputs.slope,
    headers: { ...headers, groups: each ? field.layers : Math.min(headers.groups, field.count) },
  });
}
