/**
 * The exercises of the notebooks. Their numbers are textbook cases, not those of any study. The file
 * is long because it is a list; no entry depends on another.
 *
 * @module
 */
import {
  dewPoint,
  humidityRatioFromRelativeHumidity,
  moistEnthalpy,
  saturationPressure,
} from "../air/mod.ts";
import { STANDARD_PRESSURE } from "../basics/mod.ts";
import { type Exercise, exerciseItem } from "./kit/exercise.ts";
import type { DisplayItem } from "./charts_mod.ts";

const YEAR = 365 * 86400;
const soilDiffusivity = 1.0 / 2.0e6;
const yearDepth = Math.sqrt(soilDiffusivity * YEAR / Math.PI);
const dayDepth = Math.sqrt(soilDiffusivity * 86400 / Math.PI);
const lag = 1 / yearDepth * 365 * 86400 / (2 * Math.PI);
const leakLoss = 961 / 3600 * 1207;
const skinLoss = 486 * 4.0;
const houseLoss = skinLoss + leakLoss;
const curtainTight = 1 / (1 / 3.3 + 0.35);
const curtainNight = 0.9 * curtainTight + 0.1 * 3.3;
const dripPoint = dewPoint(0.8 * saturationPressure(16));
const tubeHead = 1.2 * 3 ** 2 / 2;
const tubeUnits = 6 * Math.PI * 0.102 * 15 / (1207 * 2 * Math.PI * 0.102 ** 2 / 4);
const halfCylinder = Math.PI * 4.572 ** 2 / 2 * 29.26;
const warmRatio = humidityRatioFromRelativeHumidity(28, 0.8, STANDARD_PRESSURE);
const coolRatio = humidityRatioFromRelativeHumidity(18, 1, STANDARD_PRESSURE);
const wholeDrop = moistEnthalpy(28, warmRatio) - moistEnthalpy(18, coolRatio);
const latentShare = 1 - (moistEnthalpy(28, coolRatio) - moistEnthalpy(18, coolRatio)) / wholeDrop;

/** All exercises. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "climate.noonSun",
    question:
      "How high does the sun stand at solar noon on the shortest day at 50 degrees north? " +
      'The earth\'s axis leans 23.44 degrees. Answer as an angle, such as "30 deg".',
    kind: "angle",
    answer: 90 - 50 - 23.44,
    tolerance: 0.02,
    slips: [
      { value: 90 - 50 + 23.44, hint: "That is the longest day: in winter the lean is taken off." },
      { value: 90 - 50, hint: "That is the equinox: the lean of the axis is still missing." },
      { value: 50 - 23.44, hint: "That is measured from the wrong end: start from 90 degrees." },
    ],
    explanation: "90 − latitude − 23.44. Such a low sun makes steep glazing worth its price.",
  },
  {
    id: "climate.degreeDays",
    question: "A spell of 7 days has a mean of −20 degC. How many degree-days below 18 degC is " +
      "that? Answer as a plain number of K d.",
    kind: "number",
    answer: 7 * 38,
    tolerance: 0.005,
    slips: [
      { value: 7 * 2, hint: "A sign slipped: from −20 up to 18 is 38 K, not 2 K." },
      { value: 38, hint: "That is one day; the spell lasts seven." },
      { value: 7 * 38 * 1.8, hint: "That is in Fahrenheit degree-days; asked are K d." },
      { value: 7 * 20, hint: "That counts from 0 degC; the base is 18 degC." },
    ],
    explanation: "(18 − (−20)) · 7. Multiply by the loss coefficient and 24 h to get heat.",
  },
  {
    id: "climate.incidence",
    question: "The noon sun stands 17 degrees above level, straight in front of a vertical " +
      "glazing. At what angle from the normal of the glazing does it strike? Answer as an angle, " +
      'such as "30 deg".',
    kind: "angle",
    answer: 17,
    tolerance: 0.02,
    slips: [
      { value: 73, hint: "That is the angle from the upright: the normal of a wall lies level." },
      { value: 90, hint: "That would graze along the wall: the sun stands in front of it." },
    ],
    explanation: "The normal lies level, so the angle is the sun's height. On level glazing the " +
      "same sun strikes at 73 degrees, where clear sheets throw much of it back.",
  },
  {
    id: "soil.penetration",
    question:
      "A soil has conductivity 1.0 W/(m K) and heat capacity 2.0 MJ/(m³ K). At what depth " +
      'has the yearly wave fallen to 1/e? Answer with unit, such as "1.2 m".',
    kind: "length",
    answer: yearDepth,
    tolerance: 0.02,
    slips: [
      { value: dayDepth, hint: "That is the daily wave: the period asked for is a year." },
      { value: Math.sqrt(soilDiffusivity * YEAR), hint: "The π is missing: √(a·P/π)." },
      { value: soilDiffusivity * YEAR / Math.PI, hint: "The square root is missing: √(a·P/π)." },
    ],
    explanation: "√(a·P/π) with a = 1.0/2.0e6 m²/s. A day reaches only a twentieth as deep: one " +
      "night's store is thin, a season's is thick.",
  },
  {
    id: "soil.lag",
    question: "In the same soil, how much later than at the surface does the coldest day arrive " +
      '1 m down? Answer as a time, such as "10 days".',
    kind: "time",
    answer: lag,
    tolerance: 0.03,
    slips: [
      { value: lag * 2 * Math.PI, hint: "One radian is a year over 2π, not a year." },
      { value: lag * Math.PI, hint: "One radian is a year over 2π, not a year over 2." },
    ],
    explanation:
      "depth/penetration depth is the lag in radians; times 365/2π in days. The ground " +
      "at tube depth is coldest weeks after the air.",
  },
  {
    id: "soil.freezing",
    question: "One cubic metre of soil holds 25 % water by volume. How much heat does that water " +
      'set free when all of it freezes at 0 degC, at 334 kJ/kg? Answer such as "50 MJ".',
    kind: "energy",
    answer: 0.25 * 1000 * 334e3,
    tolerance: 0.02,
    slips: [
      { value: 1000 * 334e3, hint: "That is a cubic metre of water; only a quarter of it is." },
      { value: 0.25 * 334e3, hint: "Litres and cubic metres: a cubic metre of water is 1000 kg." },
      {
        value: 0.25 * 1000 * 4180,
        hint: "That is the heat of cooling it by 1 K, not of freezing.",
      },
    ],
    explanation: "0.25 · 1000 kg · 334 kJ/kg. As much as cooling the same soil by some forty " +
      "kelvin: wet ground freezes slowly, and thaws slowly.",
  },
  {
    id: "house.loss",
    question: "A hoop house has 486 m² of double film (4.0 W/(m² K)) and 961 m³ of air changed " +
      "once an hour; air holds 1207 J/(m³ K). What does it lose for each kelvin? Answer as a " +
      'conductance, such as "500 W/K".',
    kind: "conductance",
    answer: houseLoss,
    tolerance: 0.02,
    slips: [
      { value: skinLoss, hint: "That is the skin alone; leakage is missing." },
      { value: leakLoss, hint: "That is the leakage alone; the skin is missing." },
      { value: skinLoss + 961 * 1207, hint: "An air change an hour is 1/3600 in a second." },
    ],
    explanation: "486·4.0 + 961/3600·1207. The film loses six times what the leaks do: know this " +
      "before counting tubes.",
  },
  {
    id: "house.night",
    question:
      "The same house is held 15 K above the outdoors for 14 hours. How much heat is that? " +
      'Answer as energy, such as "100 kWh".',
    kind: "energy",
    answer: houseLoss * 15 * 14 / 1000,
    tolerance: 0.02,
    slips: [
      { value: houseLoss * 15 / 1000, hint: "That is the power in kW; it lasts 14 hours." },
      { value: houseLoss * 15 * 14, hint: "That is in Wh: a thousand of them make a kWh." },
      { value: houseLoss * 14 / 1000, hint: "The 15 K are missing." },
    ],
    explanation:
      "Loss coefficient times temperature difference times hours. A store gives a part " +
      "of one such night, not a week of them.",
  },
  {
    id: "house.curtain",
    question:
      "Twin-wall sheet loses 3.3 W/(m² K). A night curtain adds 0.35 m² K/W over the whole " +
      "sheet, but a tenth of its area leaks past the edges as if it were open. What does the sheet " +
      'lose at night? Answer such as "2.0 W/(m2 K)".',
    kind: "transmittance",
    answer: curtainNight,
    tolerance: 0.02,
    slips: [
      { value: curtainTight, hint: "That is a curtain without leaks: a tenth stays at 3.3." },
      {
        value: 3.3 - 1 / 0.35,
        hint: "U-values are not taken off each other: add resistances, 1/3.3 + 0.35.",
      },
      { value: 3.3 * 0.9, hint: "The cloth's resistance is missing." },
    ],
    explanation:
      "0.9/(1/3.3 + 0.35) + 0.1·3.3. The leaks alone are a fifth of what is left: close " +
      "the edges.",
  },
  {
    id: "house.drip",
    question: "Evening: the house air has 16 degC and 80 % humidity, the inside of the cover is " +
      'at 9 degC. Does it drip? Answer "yes" or "no".',
    kind: "choice",
    answer: "yes",
    tolerance: 0,
    slips: [{
      value: "no",
      hint: "Find the dew point of the air: 80 % of the vapour pressure at 16 degC.",
    }],
    explanation: `The dew point is ${dripPoint.toFixed(1)} degC, warmer than the cover. A second ` +
      "layer keeps the inside warmer and drips less, and then the air stays damper.",
  },
  {
    id: "house.first",
    question:
      "Foam strips and tape for 150 save 900 kWh a year, a curtain for 2400 saves 6000 kWh " +
      'a year. Which saves more for each coin spent? Answer "sealing" or "curtain".',
    kind: "choice",
    answer: "sealing",
    tolerance: 0,
    slips: [{
      value: "curtain",
      hint: "It saves more in all; divide what each saves by what it costs.",
    }],
    explanation:
      "6 kWh against 2.5 kWh a year for each coin. Do it first, then work out the curtain " +
      "again for the sealed house. The prices are made up: put your own quotes in.",
  },
  {
    id: "tubes.pressure",
    question: "Air of 1.2 kg/m³ runs at 3 m/s through 29 m of corrugated tube, 0.102 m inside, " +
      "friction factor 0.06, inlet and exit 1.5 velocity heads. What pressure does it take? Answer " +
      'such as "20 Pa".',
    kind: "pressure",
    answer: (0.06 * 29 / 0.102 + 1.5) * tubeHead,
    tolerance: 0.02,
    slips: [
      { value: (0.06 * 29 / 0.102 + 1.5) * tubeHead * 2, hint: "The velocity head is ρ·v²/2." },
      { value: 0.06 * 29 / 0.102 * tubeHead, hint: "Inlet and exit are missing." },
      { value: (0.015 * 29 / 0.102 + 1.5) * tubeHead, hint: "The factor 0.06 is Darcy's already." },
      { value: (0.24 * 29 / 0.102 + 1.5) * tubeHead, hint: "The factor 0.06 is Darcy's already." },
    ],
    explanation: "(f·L/D + 1.5)·ρ·v²/2. A smooth tube would take less than half.",
  },
  {
    id: "tubes.effectiveness",
    question: "15 m of the same tube at 2 m/s, film coefficient 6 W/(m² K), air 1207 J/(m³ K), " +
      "wall at one temperature: how much of the possible temperature change does the air make? " +
      'Answer as a share, such as "50 %".',
    kind: "share",
    answer: 1 - Math.exp(-tubeUnits),
    tolerance: 0.02,
    slips: [
      {
        value: tubeUnits,
        hint: "That is the number of transfer units; the share is 1 − exp(−NTU).",
      },
      { value: Math.exp(-tubeUnits), hint: "That is what is left over: take it from one." },
    ],
    explanation: "1 − exp(−NTU). Twice the length brings it near one, but not to twice the heat.",
  },
  {
    id: "tubes.count",
    question: "A half-cylinder house of 4.572 m radius and 29.26 m length is to pass its air " +
      "5 times an hour through tubes of 0.102 m at 2 m/s. How many tubes is that? Answer as a plain " +
      "number.",
    kind: "number",
    answer: halfCylinder * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
    tolerance: 0.015,
    slips: [
      {
        value: 2 * halfCylinder * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That is the whole cylinder: half of it stands above ground.",
      },
      {
        value: halfCylinder * 5 / 3600 / (2 * Math.PI * 0.102 ** 2),
        hint: "The area of a circle is π·d²/4.",
      },
      {
        value: halfCylinder / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That is one air change an hour.",
      },
    ],
    explanation: "Volume · 5/3600 over the flow of one tube, to the nearest whole one. This buys " +
      "air, not heat: ask next what a night costs and what a metre of tube stores.",
  },
  {
    id: "headers.areaRatio",
    question:
      "16 tubes of 0.102 m branch off one end-fed header of 0.254 m. How large is the area " +
      "of all tubes over the area of the header? Answer as a plain number.",
    kind: "number",
    answer: 16 * 0.102 ** 2 / 0.254 ** 2,
    tolerance: 0.02,
    slips: [
      { value: 16 * 0.102 / 0.254, hint: "Areas go with the square of the diameter." },
      { value: 0.254 ** 2 / (16 * 0.102 ** 2), hint: "Upside down: tubes over header." },
      { value: 0.102 ** 2 / 0.254 ** 2, hint: "That is one tube; there are sixteen." },
    ],
    explanation:
      "16·0.102²/0.254². A ratio well above one means fast air in the header and uneven " +
      "tubes.",
  },
  {
    id: "headers.strength",
    question:
      "Holes of 121 mm stand 406 mm apart along a header, centre to centre. What share of " +
      'the wall along that line is left between them? Answer as a share, such as "50 %".',
    kind: "share",
    answer: (406 - 121) / 406,
    tolerance: 0.01,
    slips: [
      { value: 121 / 406, hint: "That is the share that was drilled away." },
      {
        value: (406 - 2 * 121) / 406,
        hint: "Between two centres lie two halves of a hole, not two.",
      },
    ],
    explanation:
      "(pitch − hole)/pitch. Engineers of pressure pipe call it the ligament; a buried header " +
      "carries soil, so leave plenty and ask for moulded take-offs where little is left.",
  },
  {
    id: "headers.starving",
    question: "Headers without friction, fed at one end and drawn off at the opposite end: which " +
      'tubes get least, those near the feed or those far from it? Answer "near" or "far".',
    kind: "choice",
    answer: "near",
    tolerance: 0,
    slips: [{
      value: "far",
      hint: "Air that leaves into the tubes slows the rest down: where it slows, static pressure " +
        "rises. Where along the supply header is that?",
    }],
    explanation: "Static pressure is regained along the supply header and lost along the return " +
      "header, so the drop across a tube is smallest near the feed. A faster fan changes nothing: " +
      "both go with the square of the speed.",
  },
  {
    id: "fan.twoFans",
    question: "One fan moves 0.5 m³/s through a tube field. A second one of the same kind is set " +
      "beside it, blowing into the same header. How much do both move? Answer " +
      '"twice", "less" or "more".',
    kind: "choice",
    answer: "less",
    tolerance: 0,
    slips: [
      {
        value: "twice",
        hint: "Only if the field asked for no more pressure at more flow: it asks for four times " +
          "as much at twice the flow.",
      },
      { value: "more", hint: "The field gets stiffer with more flow, not softer." },
    ],
    explanation:
      "The point slides up the fans' curves until field and fans agree. On a stiff field " +
      "a second fan brings a few per cent: spend on more tubes instead.",
  },
  {
    id: "fan.halfSpeed",
    question: "By the fan laws, what power does a fan of 120 W take at half speed, motor losses " +
      'left aside? Answer such as "50 W".',
    kind: "power",
    answer: 120 / 8,
    tolerance: 0.01,
    slips: [
      { value: 60, hint: "That is in proportion to speed: only the flow is." },
      { value: 30, hint: "That is with the square: so goes the pressure." },
    ],
    explanation:
      "Power goes with the cube of the speed. Half the air for an eighth of the power, " +
      "and the air leaves the tubes closer to soil temperature.",
  },
  {
    id: "fan.density",
    question:
      "A curve measured in air of 1.2 kg/m³ shows 100 Pa. What does the same fan make at the " +
      'same flow and speed in thin air of 0.9 kg/m³? Answer such as "50 Pa".',
    kind: "pressure",
    answer: 75,
    tolerance: 0.01,
    slips: [
      { value: 100 * 1.2 / 0.9, hint: "Upside down: thin air gives less pressure." },
      { value: 100, hint: "The flow in m³/s stays the same, the pressure does not." },
      { value: 100 * (0.9 / 1.2) ** 2, hint: "Pressure goes with density itself, not its square." },
    ],
    explanation: "Pressure goes with density. So does the resistance of the tubes: the flow in " +
      "m³/s hardly changes, the heat it carries does.",
  },
  {
    id: "store.latentShare",
    question: "Air of 28 degC and 80 % is cooled to 18 degC and saturated, at standard pressure. " +
      'Which share of the heat it gives up comes from condensing water? Answer such as "30 %".',
    kind: "share",
    answer: latentShare,
    tolerance: 0.03,
    slips: [
      { value: 1 - latentShare, hint: "That is the sensible share." },
      {
        value: latentShare / (1 - latentShare),
        hint: "That is latent over sensible; asked is " +
          "latent over all.",
      },
    ],
    explanation:
      "More than half. Drier air of the same temperature stores far less; say which you " +
      "mean when you quote a heat.",
  },
  {
    id: "store.cop",
    question:
      "In a year 20000 kWh go into a store, 12000 kWh come back, the fan takes 1000 kWh. How " +
      "many kWh come back for one of the fan? Answer as a plain number.",
    kind: "number",
    answer: 12,
    tolerance: 0.01,
    slips: [
      { value: 32, hint: "In and out added count the same heat twice." },
      { value: 20, hint: "That is what goes in; the house is served by what comes back." },
      { value: 0.6, hint: "That is the recovery: back over in." },
    ],
    explanation:
      "12000/1000. Even this is gross: part of it the bare floor would have given too, " +
      "so always look at the run with the fan never on.",
  },
  {
    id: "store.gross",
    question:
      "A store gives back 9000 kWh a year. Holding the set point takes 8000 kWh with it and " +
      "11500 kWh with its fan never on; the fan takes 900 kWh. How much heat does the store save a " +
      'heater? Answer such as "500 kWh".',
    kind: "energy",
    answer: 3500 * 3.6e6,
    tolerance: 0.005,
    slips: [
      {
        value: 9000 * 3.6e6,
        hint: "That is what comes out of the tubes. A part of it the bare floor would have given " +
          "too, a part comes when no heat is wanted.",
      },
      {
        value: 2600 * 3.6e6,
        hint: "That is heat less electricity: a fair number too, but asked is the heat.",
      },
      { value: 8000 * 3.6e6, hint: "That is what a heater must still give." },
    ],
    explanation:
      "11500 − 8000. The 900 kWh of the fan have their own price: count them against it.",
  },
  {
    id: "store.season",
    question:
      "From January to March a store gives back 4000 kWh: 1700 kWh put in during the same months, " +
      "250 kWh in earlier quarters, the rest out of ground that was never charged. Which share was " +
      'carried over from earlier quarters? Answer such as "30 %".',
    kind: "share",
    answer: 250 / 4000,
    tolerance: 0.02,
    slips: [
      { value: 2300 / 4000, hint: "The ground's own warmth was there without any tube." },
      { value: 1700 / 4000, hint: "That is the heat of the same quarter." },
      {
        value: 250 / 1950,
        hint: "That is the share of what was put in; asked is the share of all.",
      },
    ],
    explanation: "250/4000. More comes from ground that nobody charged than from last summer.",
  },
  {
    id: "store.spell",
    question:
      "A store can still give 600 kWh before it is empty. In a sunless spell the house needs 14 kW " +
      "of heat and the store gives 3 kW at first. Does a heater have to be smaller than without " +
      "store, as large, or is none needed? Answer smaller, same or none.",
    kind: "choice",
    answer: "same",
    tolerance: 0,
    slips: [
      {
        value: "smaller",
        hint:
          "Only on the first days. Size the heater for the end of the spell, when the store is " +
          "empty, and for the night on which its fan fails.",
      },
      { value: "none", hint: "3 kW are not 14 kW, not even in the first hour." },
    ],
    explanation: "It must carry the house alone at the end of the spell. The store saves its fuel.",
  },
];

/**
 * Shows an exercise and checks the answer given.
 *
 * @param id such as "soil.penetration"
 * @param given the answer with its unit, or null while it is open
 * @throws {RangeError} for an unknown id; the message lists the known ones
 */
export function exercise(id: string, given: string | number | null): DisplayItem {
  const found = EXERCISES.find((one) => one.id === id);
  if (found === undefined) {
    const known = EXERCISES.map((one) => one.id).join(", ");
    throw new RangeError(`Cannot find exercise "${id}": known are ${known}`);
  }
  return exerciseItem(found, given);
}
