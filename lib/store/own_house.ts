/** The house of a store's request, as its years run it. @module */
import { samePlain } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { houseModel, withHeater } from "../house/mod.ts";
import type { HouseInputs, HouseModel } from "../house/types.ts";
import type { StoreRequest } from "./request.ts";

/** Houses kept: sun and films of a year take longer than most of what is asked of them. */
const KEPT = 2;
const known: {
  readonly inputs: HouseInputs;
  readonly climate: ClimateYear;
  readonly model: HouseModel;
}[] = [];

function modelOf({ houseInputs: inputs, climate }: StoreRequest): HouseModel {
  const found = known.find((one) =>
    samePlain(one.inputs, inputs) && samePlain(one.climate, climate)
  );
  if (found !== undefined) return found.model;
  const model = houseModel(inputs, climate);
  known.unshift({ inputs, climate, model });
  known.length = Math.min(known.length, KEPT);
  return model;
}

/**
 * The house above a store.
 *
 * @param request of the store
 * @param heated true: a heater without limit holds the set point; false: the house runs free
 */
export function ownHouse(request: StoreRequest, heated: boolean): HouseModel {
  return withHeater(modelOf(request), heated ? Infinity : 0);
}
