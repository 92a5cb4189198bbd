/** One design: is it within the limits, what does it cost, what would it bring at a rough guess? @module */
import { airProperties } from "../../air/mod.ts";
import { DAY, InputError, NotConvergedError } from "../../basics/mod.ts";
import { fanChapter, type FanInputs, type FanResult, LEAST_FLOW_RATIO } from "../../fan/mod.ts";
import { fieldPit, headersChapter, type HeadersInputs } from "../../headers/mod.ts";
import type { StoreRequest } from "../../store/site.ts";
import {
  crossSection,
  findTube,
  floorFit,
  INLET_SWING,
  limitsAround,
  soilRadius,
  tubeHeat,
  tubesChapter,
  type TubesInputs,
  type TubesResult,
} from "../../tubes/mod.ts";
import { storeMoney, worthMoney } from "../compute.ts";
import { LEAST_SHARE_OF_AIR } from "../design_faults.ts";
import { judgeMoney } from "../earnings.ts";
import type { TakeOffInputs } from "../quantities/types.ts";
import type { PriceList } from "../prices/price_list.ts";
import type { WorthRequest } from "../request.ts";
import { boardPrice, choiceKey, ownChoice } from "./choices.ts";
import type { DesignChoice, DesignMoney, DesignQuestion, DesignYear } from "./types.ts";

/** A design that can be built, ready for the year. */
export interface BuiltDesign {
  /** what was chosen */
  readonly choice: DesignChoice;
  /** the store's request */
  readonly request: StoreRequest;
  /** money of any year */
  readonly money: (year: DesignYear) => DesignMoney | null;
  /** what the quick estimate makes of its year */
  readonly estimate: DesignYear;
  /** the first limit that it breaks; null where it keeps all */
  readonly breaks: string | null;
}

/** m/s in headers and risers; faster air is loud: common practice, no source. */
const HEADER_SPEED = 5;
const RISER_SPEED = 6;
/** m² K/W of the board at the edge, and m that it reaches below the tubes, as among the variants. */
const BOARD = 1.76;
const BOARD_BELOW = 0.3;
/** Fans turned down further than this hunt: common practice, no source. */
const SLOWEST = 0.3;

/**
 * Builds a design and looks at every limit; a word where it cannot even be worked out.
 *
 * @param choice of the design
 * @param question the study
 */
export function judgeDesign(choice: DesignChoice, question: DesignQuestion): BuiltDesign | string {
  const own = choiceKey(choice) === choiceKey(ownChoice(question));
  const limits = limitsAround(question.tubes, {
    house: question.house,
    footingDepth: question.house.footingDepth,
  });
  const tubesInputs = { ...question.tubes, ...fieldOf(choice) };
  const headersInputs = headersOf(choice, question);
  const product = findTube(choice.tube);
  const speed = choice.airFlow / choice.count / crossSection(product.insideDiameter);
  const tests: (string | null)[] = [
    speed < limits.airSpeedMin ? "air too slow in the tubes" : null,
    speed > limits.airSpeedMax ? "air too fast in the tubes" : null,
    choice.layers > choice.count ? "more layers than tubes" : null,
    coilFault(choice, question),
  ];
  const first = () => tests.find((test) => test !== null) ?? null;
  if (!own && first() !== null) return first()!;
  const pit = fieldPit({
    tubes: {
      positions: tubesChapter(tubesInputs, { house: question.house, ...question.air }).positions,
      product,
      length: choice.length,
    },
    slope: tubesInputs.slope,
    headers: headersInputs,
  });
  tests.push(floorFit({ ...tubesInputs, product }, limits.floor, pit));
  const water = question.request.soilInputs.waterTableDepth;
  tests.push(water !== null && pit.lowEnd >= water ? "pit reaches the water table" : null);
  if (!own && first() !== null) return first()!;
  try {
    const built = airOf(choice, question, { tubesInputs, headersInputs, own });
    if (typeof built === "string") return built;
    tests.push(...built.faults);
    const request = requestOf(choice, question, built);
    const worth = worthOf(choice, question, { ...built, tubesInputs, headersInputs });
    const board = boardCost(choice, question);
    const money = (year: DesignYear) => moneyOf(year, worth, board);
    const estimate = quickYear(choice, question, built.fan.power);
    const cost = money(estimate);
    tests.push(cost === null ? "a price is missing" : null);
    const { budget } = question.worth.inputs;
    tests.push(
      budget !== null && cost !== null && cost.capital > budget ? "dearer than the budget" : null,
    );
    return { choice, request, money, estimate, breaks: first() };
  } catch (error) {
    if (error instanceof InputError || error instanceof NotConvergedError) {
      return "headers or fan do not go with the tubes";
    }
    throw error;
  }
}

function fieldOf({ tube, count, length, spacing, layers, depth, airFlow }: DesignChoice) {
  return { tube, count, length, spacing, layers, depth, airFlow };
}

/** A tube longer than a coil is joined in the ground: not searched. */
function coilFault({ length }: DesignChoice, { worth }: DesignQuestion): string | null {
  const { coilLength } = worth.inputs;
  return coilLength !== null && length > coilLength + 1e-9 ? "longer than a coil" : null;
}

/** One pair of headers a layer where the study has that; both headers grow alike. */
function headersOf(choice: DesignChoice, { headers, tubes }: DesignQuestion): HeadersInputs {
  const each = headers.groups === tubes.layers;
  return {
    ...headers,
    diameter: choice.header,
    returnDiameter: headers.returnDiameter * choice.header / headers.diameter,
    groups: each ? choice.layers : Math.min(headers.groups, choice.count),
  };
}

interface BuiltAir {
  readonly tubes: TubesResult;
  readonly shares: Float64Array;
  readonly fan: FanResult;
  readonly faults: readonly (string | null)[];
}

/** Air through the field; a word where the fans cannot drive it. */
function airOf(
  choice: DesignChoice,
  question: DesignQuestion,
  { tubesInputs, headersInputs, own }: {
    readonly tubesInputs: TubesInputs;
    readonly headersInputs: HeadersInputs;
    readonly own: boolean;
  },
): BuiltAir | string {
  const { house, air } = question;
  const tubes = tubesChapter(tubesInputs, { house, ...air });
  const headers = headersChapter(headersInputs, tubes, air);
  const inputs = { ...question.fan, fan: choice.fan, count: choice.fans };
  const run = (speed: number) => fanChapter({ ...inputs, speed }, { tubesInputs, headers, ...air });
  const fan = run(own ? inputs.speed : speedFor(run, inputs));
  const riser = choice.airFlow / choice.fans / crossSection(inputs.riserDiameter);
  const narrow = Math.min(headersInputs.diameter, headersInputs.returnDiameter);
  const header = choice.airFlow / headersInputs.groups / crossSection(narrow);
  return {
    tubes,
    shares: headers.shares,
    fan,
    faults: [
      headers.flowMin < LEAST_SHARE_OF_AIR ? "a tube gets too little air" : null,
      fan.flowRatio < LEAST_FLOW_RATIO ? "the fan does not reach its flow" : null,
      fan.flowRatio > 1.15 ? "the fan is too strong" : null,
      fan.stalled ? "the fan stalls" : null,
      header > HEADER_SPEED ? "air too fast in the headers" : null,
      riser > RISER_SPEED ? "air too fast in the risers" : null,
    ],
  };
}

/** Speed at which the fans move the design flow, or the nearest that they have. */
function speedFor(run: (speed: number) => FanResult, { speed: own }: FanInputs): number {
  let [low, high] = [SLOWEST, Math.max(1, own)];
  if (run(high).flowRatio <= 1) return high;
  for (let step = 0; step < 8; step++) {
    const middle = (low + high) / 2;
    if (run(middle).flowRatio < 1) low = middle;
    else high = middle;
  }
  return high;
}

/** Board at the edge down to below the lowest tube, where it is chosen. */
function houseOf(choice: DesignChoice, { house, tubes }: DesignQuestion) {
  if (!choice.edgeBoard) return house;
  const lowest = choice.depth + (choice.layers - 1) * tubes.layerSpacing;
  return {
    ...house,
    edgeInsulation: Math.max(BOARD, house.edgeInsulation),
    edgeInsulationDepth: Math.max(house.edgeInsulationDepth, lowest + BOARD_BELOW),
  };
}

/** Money of the board that the house does not have yet. */
function boardCost(choice: DesignChoice, question: DesignQuestion): number {
  const { house, worth } = question;
  const { edgeInsulationDepth } = houseOf(choice, question);
  if (!choice.edgeBoard) return 0;
  const there = house.edgeInsulation >= BOARD ? house.edgeInsulationDepth : 0;
  const area = 2 * (house.length + house.width) * Math.max(0, edgeInsulationDepth - there);
  const { prices, contingency } = worth.inputs;
  return area * boardPrice(prices)! * (1 + contingency);
}

function requestOf(
  choice: DesignChoice,
  question: DesignQuestion,
  { tubes, shares, fan }: BuiltAir,
): StoreRequest {
  const { request } = question;
  const { edgeInsulation, edgeInsulationDepth } = houseOf(choice, question);
  const { product, count, length, diameter, positions, filmCoefficient } = tubes;
  const { airFlow, power, density, charge, discharge } = fan;
  const { chargeStart, dischargeBelow } = choice;
  const { inputs } = request;
  return {
    ...request,
    inputs: {
      ...inputs,
      chargeStart,
      chargeStop: inputs.chargeStop * chargeStart / inputs.chargeStart,
      dischargeBelow,
    },
    houseInputs: { ...request.houseInputs, edgeInsulation, edgeInsulationDepth },
    tubesInputs: { ...request.tubesInputs, airFlow: choice.airFlow },
    tubes: { product, count, length, diameter, positions, filmCoefficient },
    headers: { shares },
    fan: { airFlow, power, density, charge, discharge },
  };
}

function worthOf(
  choice: DesignChoice,
  question: DesignQuestion,
  { tubes, tubesInputs, headersInputs, fan }: Pick<BuiltAir, "tubes" | "fan"> & {
    readonly tubesInputs: TubesInputs;
    readonly headersInputs: HeadersInputs;
  },
): WorthRequest {
  const { worth, headers } = question;
  const field: TakeOffInputs = {
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

/**
 * The list prices the study's own headers; wider ones cost in proportion to their diameter (common
 * practice, no source).
 */
function headerPrices(list: PriceList, ratio: number): PriceList {
  const dearer = new Set(["header-pipe", "header-cap"]);
  return {
    ...list,
    prices: list.prices.map((one) =>
      dearer.has(one.id) ? { ...one, price: one.price * ratio } : one
    ),
  };
}

/** First cost, price of heat and net savings by the study's own sums; null where a price is missing. */
function moneyOf(year: DesignYear, worth: WorthRequest, board: number): DesignMoney | null {
  const { costs, parts } = worthMoney(worth);
  const { backupHeatNoFan } = worth.energy;
  const energy = {
    backupHeatNoFan,
    backupHeat: backupHeatNoFan - year.saved,
    fanEnergy: year.fanEnergy,
  };
  const money = costs === null || parts === null
    ? null
    : storeMoney({ ...worth, energy }, costs, parts);
  if (money === null) return null;
  const { capital, costOfHeat, earned } = judgeMoney({ ...money, first: money.first + board });
  return { capital, costOfHeat, netSavings: earned.netSavings };
}

/**
 * The quick search's heat of a daily wave, set to the own design's year: heat given back in
 * proportion, which saves at most the heat that is needed.
 */
function quickYear(choice: DesignChoice, question: DesignQuestion, power: number): DesignYear {
  const { own, worth } = question;
  const { backupHeatNoFan } = worth.energy;
  const ratio = waveHeat(choice, question) / waveHeat(ownChoice(question), question);
  const most = Math.max(1, backupHeatNoFan);
  const share = Math.min(0.95, Math.max(0.01, own.saved / most));
  const saved = most * (1 - (1 - share) ** ratio);
  const better = saved / (most * share);
  return {
    saved,
    cropHoursAvoided: own.cropHoursAvoided * better,
    fanEnergy: own.power > 0 ? own.fanEnergy * power / own.power : own.fanEnergy,
  };
}

/** kWh in a half wave of a day. */
function waveHeat(choice: DesignChoice, { tubes, request, air }: DesignQuestion): number {
  const product = findTube(choice.tube);
  const height = choice.layers > 1 ? tubes.layerSpacing : 2 * choice.depth;
  const outerRadius = Math.max(soilRadius(choice.spacing, height), 0.51 * product.insideDiameter);
  const { conductivity, heatCapacity } = request.soil.properties;
  return choice.count * tubeHeat({
    product,
    soil: { conductivity, heatCapacity, outerRadius, outside: "adiabatic" },
    airFlow: choice.airFlow / choice.count,
    air: airProperties(air.airTemperature, air.pressure),
    extraLosses: tubes.extraLosses,
    swing: INLET_SWING,
    period: DAY,
  }, choice.length);
}
