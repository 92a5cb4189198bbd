/** Messages of the measured chapter. @module */
import { type Notice, notice } from "../basics/mod.ts";
import { showSi } from "../units/mod.ts";
import { loggedShare } from "./balance.ts";
import type { MeasuredRequest } from "./request.ts";
import type { MeasuredResult } from "./types.ts";

/** Share of the hours below which sums are told as parts. */
const WHOLE = 0.98;
/** K, mean difference outdoors from which on the plan ran on other weather. */
const OTHER_WEATHER = 2;

/** What a reader must know of the log before its figures are used. */
export function measuredNotices(
  { reason, season, plan }: Omit<MeasuredResult, "notices">,
  { inputs }: MeasuredRequest,
): Notice[] {
  const list: Notice[] = [];
  const tell = (level: Notice["level"], text: string) => list.push(notice(level, "measured", text));
  if (reason !== null && inputs.texts !== null) {
    tell("warning", `No heat is worked out from the logs: ${reason}.`);
  }
  if (season === null) return list;
  const share = loggedShare(season);
  if (share < WHOLE) {
    tell(
      "info",
      `Sums hold ${
        showSi(share, "share")
      } of the logged time: in the other hours a reading of the ` +
        "heat is missing or was found false. Plan and log are compared over the same hours.",
    );
  }
  if (season.findings.length > 0) {
    const channels = new Set(season.findings.map(({ channel }) => channel)).size;
    tell(
      "warning",
      `${season.findings.length} faults were found in ${channels} sensors or loggers; their readings ` +
        "are left out of the sums.",
    );
  }
  if (season.rowsLeftOut > 0) {
    tell(
      "warning",
      `${season.rowsLeftOut} rows of the logs could not be read; the table names them.`,
    );
  }
  if (plan?.weatherApart != null && plan.weatherApart > OTHER_WEATHER) {
    tell(
      "warning",
      `The weather of the study is not that of the log: outdoors they are ${
        showSi(plan.weatherApart, "temperatureDifference")
      } apart on the mean of the hours. Run the study on the weather of the logged time before the ` +
        "plan is judged.",
    );
  }
  tell("info", "Nothing is fitted here: the plan beside the log is the study as it stands.");
  return list;
}
