/**
 * What a reviewer asks of a study before believing it: a list of checks worked out from its own results,
 * and how far the heat saved is known when everything is put together.
 *
 * @module
 */
import type { Notice } from "../../basics/mod.ts";
import type { ClimateResult } from "../../climate/types.ts";
import type { SoilInputs } from "../../soil/types.ts";
import type { StoreResolution } from "../../store/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { showBoth, showNumber, showPower } from "../../units/mod.ts";
import type { WorthInputs } from "../../worth/fields.ts";
import type { WorthResult } from "../../worth/types.ts";
import type { Study } from "../types.ts";

/** One check. */
export interface ReviewCheck {
  /** what is asked */
  readonly question: string;
  /** what was found, with its unit */
  readonly found: string;
  /** what is expected */
  readonly expected: string;
  /** true where it is so, false where not, null where only the reviewer can say */
  readonly passes: boolean | null;
}

/** A part of what is not known of the heat saved. */
export interface DoubtPart {
  /** where it comes from */
  readonly name: string;
  /** kWh a year, half the width of its range */
  readonly half: number;
}

/** How far the heat saved is known. */
export interface SavedHeatDoubt {
  /** kWh a year of back-up heat saved */
  readonly savedHeat: number;
  /** the parts, each by itself */
  readonly parts: readonly DoubtPart[];
  /** kWh a year, half the width with all parts, as if they had nothing to do with each other */
  readonly together: number;
}

/** What is asked of a study. */
export interface StudyReview {
  readonly checks: readonly ReviewCheck[];
  readonly saved: SavedHeatDoubt;
}

/** Results that a review is made of. */
export interface ReviewedResults {
  readonly climate: Pick<ClimateResult, "notices">;
  readonly store: Pick<
    StoreResult,
    "balanceResidual" | "heatIn" | "savedHeat" | "tagged"
  >;
  readonly resolution: StoreResolution;
  readonly worth: Pick<WorthResult, "designFaults">;
  /** all notices of the run */
  readonly notices: readonly Notice[];
}

/** What a review reads of a study. */
export interface ReviewedStudy {
  readonly climate: Pick<Study["climate"], "layout" | "notices">;
  readonly soil: Pick<SoilInputs, "measuredConductivity" | "waterTableDepth">;
  readonly worth: Pick<WorthInputs, "doubtHeatSaved">;
  readonly defaults: readonly unknown[];
}

/** Ratio of the heat moved: what arithmetic in double precision leaves of a year of steps. */
const LEDGER_CLOSES = 1e-9;
/** Share of the heat charged that may be left of a quarter's heat where the year repeats. */
const YEAR_REPEATS = 0.005;
/** Share of the heat saved, and K: movements that decide nothing (common practice, no source). */
const SMALL_SHARE = 0.05;
const SMALL_KELVIN = 0.2;

/**
 * Works through the list.
 *
 * @param study its weather, soil and the values left to their defaults
 * @param results of its run
 */
export function reviewStudy(study: ReviewedStudy, results: ReviewedResults): StudyReview {
  return {
    checks: [
      ...computationChecks(results),
      ...inputChecks(study, results),
      ...judgedChecks(study, results),
    ],
    saved: savedHeatDoubt(study, results),
  };
}

function computationChecks({ store, resolution }: ReviewedResults): ReviewCheck[] {
  const { largest, together } = resolution;
  const left = Math.max(...store.tagged.map(({ remaining }) => Math.abs(remaining)));
  const leftShare = store.heatIn === 0 ? 0 : left / store.heatIn;
  const movedShare = store.savedHeat === 0 ? null : largest.savedHeat / Math.abs(store.savedHeat);
  const coldest = Math.max(largest.coldestHour, largest.coldestHourNoFan);
  return [
    {
      question: "Does the heat ledger of the soil close?",
      found: `${showPower(store.balanceResidual)} of the heat moved`,
      expected: `less than ${showPower(LEDGER_CLOSES)}`,
      passes: Math.abs(store.balanceResidual) < LEDGER_CLOSES,
    },
    {
      question: "Does the year repeat?",
      found: `at most ${perCent(leftShare)} of the heat charged is left of any quarter's`,
      expected: `at most ${perCent(YEAR_REPEATS)}`,
      passes: leftShare <= YEAR_REPEATS,
    },
    {
      question: "Do cells, steps, slices and soil around decide anything?",
      found: movedShare === null
        ? "no heat is saved"
        : `each moves the heat saved by at most ${perCent(movedShare)}`,
      expected: `at most ${perCent(SMALL_SHARE)}`,
      passes: movedShare !== null && movedShare <= SMALL_SHARE,
    },
    {
      question: "Do they move the coldest hour?",
      found: `by at most ${showNumber(coldest, 2)} K`,
      expected: `at most ${showNumber(SMALL_KELVIN, 1)} K`,
      passes: coldest <= SMALL_KELVIN,
    },
    {
      question: "Is the heat saved more than all of them together can make?",
      found: `${showBoth(store.savedHeat, "energy")} saved, ${
        showBoth(together.savedHeat, "energy")
      } moved`,
      expected: "more saved than moved",
      passes: Math.abs(store.savedHeat) > together.savedHeat,
    },
  ];
}

function inputChecks({ climate, soil }: ReviewedStudy, results: ReviewedResults): ReviewCheck[] {
  const odd = [...climate.notices, ...results.climate.notices]
    .filter(({ level }) => level === "warning").length;
  return [
    {
      question: "Is the weather a measured year?",
      found: climate.layout === "normals" ? "made from twelve monthly normals" : climate.layout,
      expected: "hours of a station; a measured cold winter besides",
      passes: climate.layout !== "normals",
    },
    {
      question: "Is the weather sound?",
      found: odd === 0 ? "nothing odd" : `${odd} warnings`,
      expected: "nothing odd",
      passes: odd === 0,
    },
    {
      question: "Is the soil's conductivity measured?",
      found: soil.measuredConductivity === null ? "estimated from texture and water" : "measured",
      expected: "a needle-probe reading at the depth of the tubes",
      passes: soil.measuredConductivity !== null,
    },
    {
      question: "Is the water table known?",
      found: soil.waterTableDepth === null ? "not given" : showBoth(soil.waterTableDepth, "length"),
      expected: "a depth, from a pit or well in the wet season",
      passes: soil.waterTableDepth !== null,
    },
  ];
}

function judgedChecks(
  { defaults }: ReviewedStudy,
  { worth, notices }: ReviewedResults,
): ReviewCheck[] {
  const faults = worth.designFaults.length;
  const warnings = notices.filter(({ level }) => level === "warning").length;
  return [
    {
      question: "Is the design free of faults that must be mended first?",
      found: faults === 0 ? "none found" : worth.designFaults.join("; "),
      expected: "none",
      passes: faults === 0,
    },
    {
      question: "Do the values left to their defaults fit this house?",
      found: `${defaults.length} defaults, listed below`,
      expected: "each looked at",
      passes: null,
    },
    {
      question: "Are the warnings answered?",
      found: warnings === 0 ? "there are none" : `${warnings} warnings in the report`,
      expected: "each answered",
      passes: warnings === 0 ? true : null,
    },
  ];
}

/** Parts of the doubt in the heat saved; independent parts add by their squares. */
function savedHeatDoubt(
  { worth }: ReviewedStudy,
  { store, resolution }: ReviewedResults,
): SavedHeatDoubt {
  const parts: DoubtPart[] = [
    ...resolution.rows.map(({ change, moved }) => ({
      name: `computation: ${change}`,
      half: Math.abs(moved.savedHeat),
    })),
    {
      name: "inputs that are not known exactly (worth.doubtHeatSaved)",
      half: worth.doubtHeatSaved * Math.abs(store.savedHeat),
    },
  ];
  return {
    savedHeat: store.savedHeat,
    parts,
    together: Math.hypot(...parts.map(({ half }) => half)),
  };
}

const perCent = (share: number) => `${showNumber(100 * share, 2)}\u00a0%`;
