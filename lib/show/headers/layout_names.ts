/** Names of the ways to feed headers. @module */
import type { HeaderLayout } from "../../headers/mod.ts";

/** Words for the ways to feed a pair of headers. */
export const LAYOUT_NAMES: Readonly<Record<HeaderLayout, string>> = {
  U: "U: in and out at the same end",
  Z: "Z: in and out at opposite ends",
  centre: "in and out in the middle",
  "two-ended": "in and out at both ends",
};
