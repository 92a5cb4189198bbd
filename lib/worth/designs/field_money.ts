/** Money of a design, by the study's own sums. @module */
import type { HouseInputs } from "../../house/types.ts";
import { storeMoney, worthMoney } from "../compute.ts";
import { judgeMoney } from "../earnings.ts";
import { headerPrices } from "../prices/header_prices.ts";
import type { WorthRequest } from "../request.ts";
import { boardPrice } from "./choices.ts";
import type { BuiltAir, DesignSections } from "./field_air.ts";
import type { DesignChoice, DesignMoney, DesignQuestion, DesignYear } from "./types.ts";

/** m² K/W of the board at the edge, and m that it reaches below the tubes, as among the variants. */
const BOARD = 1.76;
const BOARD_BELOW = 0.3;

/** Board at the edge down to below the lowest tube, where it is chosen. */
export function houseOf(choice: DesignChoice, { house, tubes }: DesignQuestion): HouseInputs {
  if (!choice.edgeBoard) return house;
  const lowest = choice.depth + (choice.layers - 1) * tubes.layerSpacing;
  return {
    ...house,
    edgeInsulation: Math.max(BOARD, house.edgeInsulation),
    edgeInsulationDepth: Math.max(house.edgeInsulationDepth, lowest + BOARD_BELOW),
  };
}

/**
 * First cost, price of heat and net savings of a design for any year of it; null where a price is
 * missing.
 *
 * @param choice of the design
 * @param question the study
 * @param built its sections and its air
 */
export function fieldMoney(
  choice: DesignChoice,
  question: DesignQuestion,
  built: DesignSections & Pick<BuiltAir, "tubes" | "fan">,
): (year: DesignYear) => DesignMoney | null {
  const worth = worthOf(choice, question, built);
  const board = boardCost(choice, question);
  const { costs, parts } = worthMoney(worth);
  const { backupHeatNoFan } = worth.energy;
  return ({ saved, fanEnergy }) => {
    const energy = { backupHeatNoFan, backupHeat: backupHeatNoFan - saved, fanEnergy };
    const money = costs === null || parts === null
      ? null
      : storeMoney({ ...worth, energy }, costs, parts);
    if (money === null) return null;
    const { capital, costOfHeat, earned } = judgeMoney({ ...money, first: money.first + board });
    return { capital, costOfHeat, netSavings: earned.netSavings };
  };
}

/** Money of the board that the house does not have yet. */
export function boardCost(choice: DesignChoice, question: DesignQuestion): number {
  if (!choice.edgeBoard) return 0;
  const { house, worth } = question;
  const { edgeInsulationDepth } = houseOf(choice, question);
  const there = house.edgeInsulation >= BOARD ? house.edgeInsulationDepth : 0;
  const area = 2 * (house.length + house.width) * Math.max(0, edgeInsulationDepth - there);
  const { prices, contingency } = worth.inputs;
  return area * boardPrice(prices)! * (1 + contingency);
}

function worthOf(
  choice: DesignChoice,
  { worth, headers }: DesignQuestion,
  { tubes, fan, tubesInputs, headersInputs }: DesignSections & Pick<BuiltAir, "tubes" | "fan">,
): WorthRequest {
  const field = {
    ...worth.field,
    tubes,
    tubesInputs,
    headersInputs,
    fans: choice.fans,
    fan: { id: choice.fan, name: fan.curve.name },
  };
  const prices = worth.inputs.prices &&
    headerPrices(worth.inputs.prices, choice.header / headers.diameter);
  return { ...worth, field, inputs: { ...worth.inputs, prices } };
}
