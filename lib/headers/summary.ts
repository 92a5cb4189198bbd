/** What a reader may quote of the headers besides the figures. @module */
import type { TubesResult } from "../tubes/types.ts";
import type { HeadersResult } from "./types.ts";

/** One tube of the field. */
export interface TubeShare {
  /** number from 1, from the fan side, layer by layer */
  readonly tube: number;
  /** m below the floor */
  readonly depth: number;
  /** flow over the mean */
  readonly share: number;
  /** m³/s */
  readonly flow: number;
  /** Pa in the supply header, over the return outlet */
  readonly supplyPressure: number;
  /** Pa in the return header, over the return outlet */
  readonly returnPressure: number;
  /** Pa from header to header */
  readonly across: number;
  /** true where the share is more than a tenth off the mean */
  readonly outside: boolean;
}

/** Tables and sums of the headers. */
export interface HeadersSummary {
  /** tube by tube */
  readonly tubes: readonly TubeShare[];
  /** number of tubes more than a tenth off the mean */
  readonly outside: number;
  /** number, from 1, of the tube that gets least */
  readonly poorest: number;
}

/** Result of the headers chapter with its summary. */
export interface SummarisedHeaders extends HeadersResult {
  /** tables and sums a reader may quote */
  readonly summary: HeadersSummary;
}

/** Share of the mean by which a tube may be off: common practice, no source. */
const EVEN_WITHIN = 0.1;

/**
 * Adds the tables and sums of a study's headers.
 *
 * @param result of the headers chapter
 * @param field positions, m, and mean flow of the tubes, m³/s
 */
export function summariseHeaders(
  result: HeadersResult,
  field: Pick<TubesResult, "positions" | "flowPerTube">,
): SummarisedHeaders {
  const tubes = Array.from(result.shares, (share, index): TubeShare => ({
    tube: index + 1,
    depth: field.positions[index]?.depth ?? NaN,
    share,
    flow: share * field.flowPerTube,
    supplyPressure: result.supplyPressure[index]!,
    returnPressure: result.returnPressure[index]!,
    across: result.supplyPressure[index]! - result.returnPressure[index]!,
    outside: Math.abs(share - 1) > EVEN_WITHIN,
  }));
  const poorest = tubes.reduce((least, one) => one.share < least.share ? one : least);
  const outside = tubes.filter((one) => one.outside).length;
  return { ...result, summary: { tubes, outside, poorest: poorest.tube } };
}
