/** Designs that went through the year, priced and set beside each other. @module */
import type { BuiltDesign } from "./judge.ts";
import type { DesignChoice, DesignQuestion, DesignRow, DesignYear, OwnGivesUp } from "./types.ts";
import { unbeaten } from "./unbeaten.ts";
import type { DesignRun } from "./years.ts";

/** A design with its year. */
export interface RanDesign {
  /** the design */
  readonly design: BuiltDesign;
  /** its year on the coarse mesh */
  readonly run: DesignRun;
}

/** How far the coarse mesh moves the study's own design: smaller differences are not resolved. */
export interface Resolution {
  /** kWh a year of the heat saved */
  readonly saved: number;
  /** h a year of the crop's hours */
  readonly hours: number;
}

/** Resolution of the search, from the coarse year of the study's own design. */
export function resolutionOf(own: DesignRun, { worth, own: fine }: DesignQuestion): Resolution {
  return {
    saved: Math.abs(own.heat - (worth.energy.backupHeatNoFan - fine.saved)),
    hours: Math.abs(own.hours - fine.hours),
  };
}

/**
 * The study's own year, moved by what a coarse year differs from the own coarse one. Where a fan never
 * runs, the house with the fan never on is what it is compared with.
 */
function yearOf(run: DesignRun, coarse: DesignRun, { own, worth }: DesignQuestion): DesignYear {
  return {
    saved: run.fanRanHeld
      ? own.saved + (coarse.heat - run.heat)
      : worth.energy.backupHeatNoFan - run.heat,
    cropHoursAvoided: run.fanRanFree
      ? own.cropHoursAvoided + (coarse.hours - run.hours)
      : own.cropHoursAvoided + own.hours - run.hours,
    fanEnergy: run.fanRanHeld ? Math.max(0, own.fanEnergy + (run.fanEnergy - coarse.fanEnergy)) : 0,
  };
}

/**
 * Rows by rising cost.
 *
 * @param ran designs with their years, the study's own first
 * @param question the study
 */
export function designRows(
  ran: readonly RanDesign[],
  question: DesignQuestion,
): readonly DesignRow[] {
  const coarse = ran[0]!.run;
  const priced = ran.map(({ design, run }, k) => {
    const year = yearOf(run, coarse, question);
    const { choice, breaks } = design;
    return { choice, own: k === 0, breaks, ...year, ...design.money(year)! };
  });
  // the own design stands beside the others; where it breaks a limit it beats none of them
  const within = priced.filter(({ breaks }) => breaks === null);
  const flags = (gain: (row: DesignYear) => number) => {
    const kept = unbeaten(within.map((row) => ({ cost: row.capital, gain: gain(row) })));
    return priced.map((row) => kept[within.indexOf(row)] ?? false);
  };
  const [heat, hours] = [flags((row) => row.saved), flags((row) => row.cropHoursAvoided)];
  return priced.map((row, k) => ({ ...row, bestForHeat: heat[k]!, bestForHours: hours[k]! }))
    .toSorted((a, b) => a.capital - b.capital || b.saved - a.saved);
}

/** The design within the limits with the greatest net savings; null where there is none. */
export function greatestSavings(rows: readonly DesignRow[]): DesignRow | null {
  return first(within(rows), (row) => -row.netSavings);
}

/**
 * The design within the limits whose kilowatt-hour saved costs least; null where none saves more than
 * the mesh resolves.
 */
export function cheapestHeat(rows: readonly DesignRow[], { saved }: Resolution): DesignRow | null {
  return first(
    within(rows).filter((row) => row.saved > saved && row.costOfHeat !== null),
    (row) => row.costOfHeat!,
  );
}

/**
 * The study's own design with each of some parts as it is best alone: of the designs that differ from
 * the own one in that part and no other, the one of greatest net savings, where it betters the own one.
 *
 * @param rows the own one and others
 * @param keys parts
 */
export function bestParts(
  rows: readonly DesignRow[],
  keys: readonly (keyof DesignChoice)[],
): Partial<DesignChoice> {
  const own = rows.find((row) => row.own)!;
  const parts = Object.keys(own.choice) as (keyof DesignChoice)[];
  const differsIn = (row: DesignRow) =>
    parts.filter((part) => row.choice[part] !== own.choice[part]);
  return Object.fromEntries(keys.map((key) => {
    const alone = rows.filter((row) => {
      const changed = differsIn(row);
      return changed.length === 1 && changed[0] === key && row.breaks === null;
    });
    const best = first([own, ...alone], (row) => -row.netSavings)!;
    return [key, best.choice[key]];
  }));
}

/** What the study's own design gives up against the others; smaller differences than resolved are none. */
export function ownGivesUp(rows: readonly DesignRow[], resolution: Resolution): OwnGivesUp {
  const own = rows.find((row) => row.own)!;
  const others = within(rows).filter((row) => !row.own);
  const noDearer = others.filter(({ capital }) => capital <= own.capital);
  const cheaper = others.filter(({ capital }) => capital < own.capital);
  return {
    moreHeat: first(
      noDearer.filter(({ saved }) => saved > own.saved + resolution.saved),
      (row) => -row.saved,
    ),
    sameHeat: first(cheaper.filter(({ saved }) => saved >= own.saved), (row) => row.capital),
    fewerHours: first(
      noDearer.filter(({ cropHoursAvoided }) =>
        cropHoursAvoided > own.cropHoursAvoided + resolution.hours
      ),
      (row) => -row.cropHoursAvoided,
    ),
    sameHours: first(
      cheaper.filter(({ cropHoursAvoided }) => cropHoursAvoided >= own.cropHoursAvoided),
      (row) => row.capital,
    ),
  };
}

const within = (rows: readonly DesignRow[]) => rows.filter(({ breaks }) => breaks === null);

function first(rows: readonly DesignRow[], place: (row: DesignRow) => number): DesignRow | null {
  return rows.reduce<DesignRow | null>(
    (best, row) => best === null || place(row) < place(best) ? row : best,
    null,
  );
}
