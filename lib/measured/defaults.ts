/** The measured section with the logs that were read. @module */
import type { LogTexts, MeasuredGiven, MeasuredInputs } from "./fields.ts";

/** Takes the texts that were read in place of the names of files. */
export function completeMeasured(
  { logs: _logs, ...given }: MeasuredGiven,
  before: { readonly logs: LogTexts | null },
): MeasuredInputs {
  return {
    ...given,
    logMap: given.logMap ?? null,
    truth: given.truth ?? null,
    plantedFaults: given.plantedFaults ?? null,
    forecast: given.forecast ?? null,
    texts: before.logs,
  };
}
