/** The store chapter: tubes, soil and house together over days, seasons and years. @module */
export type * from "./types.ts";
export { storeChapter } from "./compute.ts";
export {
  type PlateAir,
  type PlateCollector,
  plateEfficiency,
  type PlateHoles,
  type PlateTransfer,
  plateTransfer,
} from "./air/collector.ts";
export { PLATE_SUCTION, suctionFault } from "./air/collector_year.ts";
export { type HouseWay, houseWays } from "./variants/ways.ts";
export { HOUSE_BAND, INTAKE_BAND, NEAR_FREEZING } from "./control.ts";
export type { StoreRequest } from "./site.ts";
export {
  STORE_VARIANTS,
  type StoreVariant,
  storeVariants,
  type VariantRow,
} from "./variants/variants.ts";
export { store } from "./chapter.ts";
