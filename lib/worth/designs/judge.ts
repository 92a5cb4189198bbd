/** One design: is it within the limits, what does it cost, what would it bring at a rough guess? @module */
import { InputError, NotConvergedError } from "../../basics/mod.ts";
import { fieldPit } from "../../headers/mod.ts";
import type { StoreRequest } from "../../store/site.ts";
import { crossSection, findTube, floorFit, limitsAround, tubePositions } from "../../tubes/mod.ts";
import { choiceKey, HEADER_KEYS, ownChoice } from "./choices.ts";
import { roughYears } from "./estimate.ts";
import {
  type BuiltAir,
  type DesignSections,
  fieldAir,
  sectionsOf,
  type TubesAndHeaders,
  tubesAndHeaders,
  wideEnough,
} from "./field_air.ts";
import { fieldMoney, houseOf } from "./field_money.ts";
import type { DesignChoice, DesignMoney, DesignQuestion, DesignYear } from "./types.ts";

/** A design that can be worked out, ready for the year. */
export interface BuiltDesign {
  /** what was chosen */
  readonly choice: DesignChoice;
  /** speed of its fans over the rated one */
  readonly speed: number;
  /** its pairs of headers: how many, and m of the inside of the return */
  readonly headers: { readonly groups: number; readonly returnDiameter: number };
  /** the store's request */
  readonly request: StoreRequest;
  /** money of any year; null where a price is missing */
  readonly money: (year: DesignYear) => DesignMoney | null;
  /** what the quick estimate makes of its year */
  readonly estimate: DesignYear;
  /** the first limit that it breaks; null where it keeps all */
  readonly breaks: string | null;
}

/** Judges designs of one study: a word where one cannot be built, the own one where it can be run. */
export type DesignJudge = (choice: DesignChoice) => BuiltDesign | string;

/**
 * Looks at every limit of a design and builds it. Of the study's own design all is worked out though
 * it breaks a limit; of any other, nothing behind the first that it breaks.
 *
 * @param question the study
 */
export function designJudge(question: DesignQuestion): DesignJudge {
  const { worth, request: { soilInputs: { waterTableDepth } } } = question;
  const ownKey = choiceKey(ownChoice(question));
  const { floor, ...limits } = limitsAround(question.tubes, {
    house: question.house,
    footingDepth: question.house.footingDepth,
  });
  const rough = roughYears(question);
  const groundFaults = (choice: DesignChoice): readonly (string | null)[] => {
    const { tubesInputs, headersInputs } = sectionsOf(choice, question);
    const product = findTube(choice.tube);
    const pit = fieldPit({
      tubes: { positions: tubePositions(tubesInputs), product, length: choice.length },
      slope: tubesInputs.slope,
      headers: headersInputs,
    });
    return [
      floorFit({ ...tubesInputs, product }, floor, pit),
      waterTableDepth !== null && pit.lowEnd >= waterTableDepth
        ? "pit reaches the water table"
        : null,
    ];
  };
  const known = new Map<string, TubesAndHeaders>();
  const tubesAndHeadersOf = (choice: DesignChoice, sections: DesignSections) => {
    const key = HEADER_KEYS.map((part) => choice[part]).join(" ");
    const found = known.get(key) ?? tubesAndHeaders(sections, question);
    known.set(key, found);
    return found;
  };
  return (choice) => {
    const own = choiceKey(choice) === ownKey;
    const speed = choice.airFlow / choice.count /
      crossSection(findTube(choice.tube).insideDiameter);
    const faults: (string | null)[] = [
      choice.layers > choice.count ? "more layers than tubes" : null,
      speed < limits.airSpeedMin ? "air too slow in the tubes" : null,
      speed > limits.airSpeedMax ? "air too fast in the tubes" : null,
      coilFault(choice, question),
    ];
    const first = () => faults.find((fault) => fault !== null) ?? null;
    if (!own && first() !== null) return first()!;
    try {
      faults.push(...groundFaults(choice));
      if (!own && first() !== null) return first()!;
      const sections = sectionsOf(choice, question);
      faults.push(...wideEnough(choice, question, sections.headersInputs));
      if (!own && first() !== null) return first()!;
      const air = fieldAir(choice, question, { ...tubesAndHeadersOf(choice, sections), own });
      faults.push(
        air.tubes.pressureDrop > limits.pressureMax ? "too much pressure in the tubes" : null,
        ...air.faults,
      );
      if (!own && first() !== null) return first()!;
      const money = fieldMoney(choice, question, { ...sections, ...air });
      const estimate = rough(choice, air.fan.power);
      const cost = money(estimate);
      const { groups, returnDiameter } = sections.headersInputs;
      const { budget } = worth.inputs;
      faults.push(
        cost === null ? "a price is missing" : null,
        budget !== null && cost !== null && cost.capital > budget ? "dearer than the budget" : null,
      );
      return {
        choice,
        speed: air.speed,
        headers: { groups, returnDiameter },
        request: requestOf(choice, question, air),
        money,
        estimate,
        breaks: first(),
      };
    } catch (error) {
      if (error instanceof InputError || error instanceof NotConvergedError) {
        return "headers or fan do not go with the tubes";
      }
      throw error;
    }
  };
}

/** A tube longer than a coil is joined in the ground: not searched. */
function coilFault({ length }: DesignChoice, { worth }: DesignQuestion): string | null {
  const { coilLength } = worth.inputs;
  return coilLength !== null && length > coilLength + 1e-9 ? "longer than a coil" : null;
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
