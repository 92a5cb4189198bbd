/** Figures of the odds. @module */
import { type FigureRow, numberFigure, withRange } from "../../basics/figures.ts";
import { NO_CROP } from "../../house/mod.ts";
import type { HouseWinter } from "../../store/mod.ts";
import { type Banded, meanWithBand, rareValue } from "./statistics.ts";
import type { WinterOdds, WinterSpread } from "./types.ts";

const NO_WINTERS = "no winters are counted (worth.winters)";
const ON_DEMAND = "counted when asked for, and by the whole study";
const TOO_FEW = "too few winters";
const NOTHING_GROWS = "no crop is named";

/** Chance that a figure's band holds the true value. */
const COVER = 0.95;

/** A rare value with the band of figures; open where the winters are too few for it. */
function figureBand(
  stated: WinterSpread["rare10"] | undefined,
  houses: readonly HouseWinter[],
  value: (house: HouseWinter) => number,
  share: number,
): Banded | undefined {
  return stated ? rareValue(houses.map(value), share, COVER) : undefined;
}

/**
 * Rare values and chances with bands of 95 %, which cover sampling only; null with the reason where
 * there are none.
 */
export function oddsFigures(odds: WinterOdds | null | undefined): readonly FigureRow[] {
  const winter = odds?.spread === "measured winters" ? "measured winter" : "winter";
  const banded = (
    key: string,
    value: Banded | null | undefined,
    unit: string,
    label: string,
    otherwise = TOO_FEW,
  ): FigureRow => {
    const why = odds === undefined ? ON_DEMAND : odds === null ? NO_WINTERS : otherwise;
    const row = numberFigure(key, value?.value, unit, label, why);
    return withRange(row, value ? [value.low, value.high] : null);
  };
  const killing = odds?.limits.find(({ name }) => name === "killing");
  const killed = (never: Banded | undefined): Banded | undefined =>
    never === undefined || killing!.limit <= NO_CROP
      ? undefined
      : { value: 1 - never.value, low: 1 - never.high, high: 1 - never.low };
  const withStore = odds?.list.map((winter) => winter.withStore) ?? [];
  const without = odds?.list.map((winter) => winter.without) ?? [];
  const coldest = ({ coldestHour }: HouseWinter) => coldestHour;
  return [
    banded(
      "worth.coldestHour10Years",
      figureBand(odds?.coldestHour.withStore.rare10, withStore, coldest, 0.1),
      "degC",
      `coldest hour of the ${winter} of one in ten with the store`,
    ),
    banded(
      "worth.coldestHour10YearsNoStore",
      figureBand(odds?.coldestHour.without.rare10, without, coldest, 0.1),
      "degC",
      `coldest hour of the ${winter} of one in ten without it`,
    ),
    banded(
      "worth.chanceOfKilling",
      killed(killing?.withStore.never),
      "1",
      `share of ${winter}s with an hour in which plants die, with the store`,
      NOTHING_GROWS,
    ),
    banded(
      "worth.chanceOfKillingNoStore",
      killed(killing?.without.never),
      "1",
      `share of ${winter}s with an hour in which plants die, without it`,
      NOTHING_GROWS,
    ),
    banded(
      "worth.backupHeat10Years",
      figureBand(odds?.backupHeat.withStore.rare10, withStore, (house) => house.backupHeat, 0.9),
      "kWh",
      `back-up heat of the ${winter} of one in ten with the store`,
    ),
    banded(
      "worth.savedHeatOfWinters",
      odds?.savedHeat && meanWithBand(odds.savedHeat),
      "kWh",
      `heat saved by the store in a winter, mean of the ${winter}s`,
    ),
    cropLossFigure(odds),
  ];
}

function cropLossFigure(odds: WinterOdds | null | undefined): FigureRow {
  const label = "crop loss that the store avoids in a winter on the mean: chance times value";
  const key = "worth.cropLossAvoided";
  const loss = odds?.cropLoss;
  if (loss) {
    return numberFigure(key, loss.without - loss.withStore, loss.currency ?? "money", label);
  }
  const why = odds === undefined
    ? ON_DEMAND
    : odds === null
    ? NO_WINTERS
    : "no value of the crop (worth.cropValue)";
  return [key, { value: null, unit: "money", label: `${label}: ${why}` }];
}
