/** The store chapter: tubes, soil and house together over days, seasons and years. @module */
export type * from "./types.ts";
export { storeChapter } from "./chapter.ts";
export type { StoreRequest } from "./site.ts";
export {
  STORE_VARIANTS,
  type StoreVariant,
  storeVariants,
  type VariantRow,
  variantRow,
} from "./variants.ts";
