/** The headers chapter run again with one thing changed. @module */
import { type BalanceStudy, balanceStudy } from "./balancing_plates.ts";
import { carelessEnds, workmanshipStudies, type WorkmanshipStudy } from "./careless_ends.ts";
import { headersChapter } from "./compute.ts";
import { firstGroup, type HeadersQuestion } from "./first_group.ts";
import { type BlockedRow, blockedTubes } from "./flooded_tubes.ts";
import { headerDiameterFor, headersOfSize, type SizedHeaders } from "./sizing.ts";
import type { HeaderLayout, HeadersResult } from "./types.ts";
import type { WorkmanshipResult } from "./workmanship.ts";

/** Inside diameters people find: 8 to 24 inches, m. */
const SIZES = [8, 10, 12, 15, 18, 24].map((inches) => inches * 0.0254);
const LAYOUTS = ["U", "Z", "centre", "two-ended"] as const;

/** One size in one layout. */
export interface HeaderVariant extends SizedHeaders {
  /** how it is fed */
  readonly layout: HeaderLayout;
}

/**
 * Headers of common sizes in three layouts, for the first group of tubes.
 *
 * @param question headers, tubes and air
 */
export function headerVariants(question: HeadersQuestion): HeaderVariant[] {
  return (["Z", "U", "centre"] as const).flatMap((layout) => {
    const { group, airFlow } = firstGroup(question, layout);
    const least = 1.05 * question.tubes.product.outsideDiameter;
    return SIZES.filter((size) => size >= least)
      .map((size) => ({ layout, ...headersOfSize(group, airFlow, size) }));
  });
}

/** The study's headers in one of the layouts. */
export interface LayoutVariant {
  /** how it is fed */
  readonly layout: HeaderLayout;
  /** the headers chapter for it */
  readonly result: HeadersResult;
}

/**
 * The headers chapter for each layout, everything else as in the study.
 *
 * @param question headers, tubes and air
 */
export function layoutVariants({ inputs, tubes, state }: HeadersQuestion): LayoutVariant[] {
  return LAYOUTS.map((layout) => ({
    layout,
    result: headersChapter({ ...inputs, layout }, tubes, state),
  }));
}

/** Smallest header for a wanted evenness in one layout. */
export interface WantedHeader {
  /** how it is fed */
  readonly layout: HeaderLayout;
  /** coefficient of variation wanted */
  readonly unevenness: number;
  /** the headers; null where no size does it */
  readonly sized: SizedHeaders | null;
}

/**
 * Smallest headers for an unevenness of 5 and of 2 % in each layout, first group of tubes.
 *
 * @param question headers, tubes and air
 */
export function wantedHeaders(question: HeadersQuestion): WantedHeader[] {
  return LAYOUTS.flatMap((layout) => {
    const { group, airFlow } = firstGroup(question, layout);
    return [0.05, 0.02].map((unevenness) => ({
      layout,
      unevenness,
      sized: headerDiameterFor(group, airFlow, unevenness),
    }));
  });
}

/** What other headers and other workmanship would do. */
export interface HeadersVariants {
  /** common sizes in three layouts */
  readonly sizes: readonly HeaderVariant[];
  /** the study's headers in every layout */
  readonly layouts: readonly LayoutVariant[];
  /** smallest headers for a wanted evenness */
  readonly wanted: readonly WantedHeader[];
  /** tube ends set more and less carefully */
  readonly workmanship: readonly WorkmanshipStudy[];
  /** careless ends of the study's own layout */
  readonly careless: WorkmanshipResult;
  /** flooded tubes */
  readonly blocked: readonly BlockedRow[];
  /** balancing plates */
  readonly balance: BalanceStudy;
}

/**
 * All variants of a study's headers.
 *
 * @param question headers, tubes and air
 */
export function headersVariants(question: HeadersQuestion): HeadersVariants {
  return {
    sizes: headerVariants(question),
    layouts: layoutVariants(question),
    wanted: wantedHeaders(question),
    workmanship: workmanshipStudies(question),
    careless: carelessEnds(question),
    blocked: blockedTubes(question),
    balance: balanceStudy(question),
  };
}
