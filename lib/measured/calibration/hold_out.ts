/** Weeks that a fit never sees, and how well it does on them. @module */
import { DAY, InputError } from "../../basics/mod.ts";
import { type Agreement, agreement, AGREEMENT_LIMITS } from "../fit/agreement.ts";
import { showSi } from "../../units/mod.ts";

/** Which entries are fitted and which held out. */
export interface HeldWeeks {
  /** 1 where an entry is held out, 0 where it is fitted */
  readonly held: Uint8Array;
  /** number of weeks fitted */
  readonly fittedWeeks: number;
  /** number of weeks held out */
  readonly heldWeeks: number;
}

/**
 * Holds out one week in several, the last of each group, so that every season is on both sides.
 *
 * @param count number of entries
 * @param step s between entries
 * @param every a whole number of weeks of which one is held out, at least 2; 4 unless given
 * @throws InputError where the log is shorter than one such group
 */
export function heldWeeks(count: number, step: number, every = 4): HeldWeeks {
  const week = 7 * DAY / step;
  const weeks = Math.floor(count / week);
  if (!(every >= 2) || weeks < every) {
    throw new InputError(
      `hold-out: ${weeks} whole weeks, one in ${every} to be held out; expected ${
        Math.max(2, every)
      } weeks or more: log longer, or hold out one in fewer`,
    );
  }
  const isHeld = (index: number) => Math.floor(index / week) % every === every - 1;
  const held = Uint8Array.from({ length: count }, (_, i) => isHeld(i) ? 1 : 0);
  const heldOnes = Math.floor(weeks / every);
  return { held, fittedWeeks: weeks - heldOnes, heldWeeks: heldOnes };
}

/** A temperature or another series with no natural nought, on one side of the hold-out. */
export interface Misses {
  /** number of entries compared */
  readonly count: number;
  /** root of the mean square of computed less measured, in the unit of the series */
  readonly error: number;
  /** mean of computed less measured, same unit */
  readonly bias: number;
}

/** Both sides of a hold-out. */
export interface Sides<One> {
  /** entries that the fit has seen */
  readonly fitted: One;
  /** entries that it has not; null where none are held out */
  readonly heldOut: One | null;
}

function sidesOf<One>(
  measured: ArrayLike<number>,
  computed: ArrayLike<number>,
  held: Uint8Array,
  judge: (measured: number[], computed: number[]) => One,
): Sides<One> {
  const side = (want: number) => {
    const places = Array.from(measured, (_, i) => i).filter((i) =>
      held[i] === want && Number.isFinite(measured[i]! + computed[i]!)
    );
    return judge(places.map((i) => measured[i]!), places.map((i) => computed[i]!));
  };
  return { fitted: side(0), heldOut: held.includes(1) ? side(1) : null };
}

/**
 * Misses of a temperature on both sides, in kelvins: a share of a mean in degC has no meaning.
 *
 * @param measured any unit; gaps are not numbers and are left out
 * @param computed same unit and length
 * @param held of {@link heldWeeks}
 */
export function missesOn(
  measured: ArrayLike<number>,
  computed: ArrayLike<number>,
  held: Uint8Array,
): Sides<Misses> {
  return sidesOf(measured, computed, held, (real, model) => {
    const gaps = model.map((one, i) => one - real[i]!);
    const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
    return {
      count: gaps.length,
      error: Math.sqrt(sum(gaps.map((gap) => gap * gap)) / gaps.length),
      bias: sum(gaps) / gaps.length,
    };
  });
}

/** Agreement against the usual limits. */
export interface JudgedAgreement extends Agreement {
  /** number of values compared */
  readonly count: number;
  /** true where both are within the usual limits */
  readonly within: boolean;
  /** the figures with sign, number of parameters and limits, for the reader */
  readonly words: string;
}

/**
 * NMBE and CV(RMSE) of heat, water or money on both sides, against the limits of ASHRAE Guideline 14
 * [ashrae-g14-2002].
 *
 * @param measured any unit with a natural nought; gaps are not numbers and are left out
 * @param computed same unit and length
 * @param held of {@link heldWeeks}
 * @param options a whole number of fitted parameters (taken off the count on the fitted side; 0 on the
 * other, which had no say in them), and whether the values are hours or months
 */
export function agreementOn(
  measured: ArrayLike<number>,
  computed: ArrayLike<number>,
  held: Uint8Array,
  options: { readonly parameters: number; readonly per: "hourly" | "monthly" },
): Sides<JudgedAgreement> {
  const judge = (parameters: number) => (real: number[], model: number[]): JudgedAgreement => {
    const found = agreement(real, model, parameters);
    const limits = AGREEMENT_LIMITS[options.per];
    const within = Math.abs(found.nmbe) <= limits.nmbe && found.cvRmse <= limits.cvRmse;
    const share = (one: number) => showSi(one, "sharePrecise");
    return {
      ...found,
      count: real.length,
      within,
      words:
        `NMBE ${share(found.nmbe)} (measured less computed, p ${parameters}), CV(RMSE) ${
          share(found.cvRmse)
        }; usual limits ${share(limits.nmbe)} and ${share(limits.cvRmse)} ${options.per}: ` +
        (within ? "within" : "outside"),
    };
  };
  return {
    fitted: sidesOf(measured, computed, held, judge(options.parameters)).fitted,
    heldOut: sidesOf(measured, computed, held, judge(0)).heldOut,
  };
}
