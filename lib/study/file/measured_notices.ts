/** What is odd about the measured years of the odds. @module */
import { type Notice, notice } from "../../basics/mod.ts";
import type { ClimateYear, Place } from "../../climate/types.ts";
import { FAR } from "./plausibility.ts";

/** Says which years are of another place than the study's weather, and what was found wrong in each. */
export function measuredNotices(study: Place, years: readonly ClimateYear[]): readonly Notice[] {
  return years.flatMap(({ place, source, notices }) => {
    const { name, latitude, longitude } = place;
    const apart = Math.max(
      Math.abs(study.latitude - latitude),
      Math.abs(study.longitude - longitude),
    );
    const elsewhere = apart > FAR
      ? [notice(
        "warning",
        "climate",
        `The measured year ${source} is of ${name} (${latitude} deg, ${longitude} deg), not of the ` +
          "place of the study's weather: its winters say nothing of that place",
      )]
      : [];
    const found = notices.filter(({ level }) => level !== "info")
      .map((one) => ({ ...one, text: `Measured year ${source}: ${one.text}` }));
    return [...elsewhere, ...found];
  });
}
