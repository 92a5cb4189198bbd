/**
 * The ladder of each exercise of the chapters: two hints and a worked solution, shown where a learner
 * asks. Sums in the solutions are those of the answers, rounded.
 *
 * @module
 */

/** Two hints and the way to the answer. */
export interface ExerciseHelp {
  /** one to begin with, one that goes further */
  readonly hints: readonly [first: string, second: string];
  /** the way, step by step */
  readonly solution: string;
}

const help = (first: string, second: string, solution: string): ExerciseHelp => ({
  hints: [first, second],
  solution,
});

/** By the exercise's id. */
export const HELP: Readonly<Record<string, ExerciseHelp>> = {
  "study.balance": help(
    "Write down all that comes in and all that goes out: the house neither warms nor cools.",
    "Loss times difference is what goes out; take off it what comes in besides the heater.",
    "Out: 800 W/K · 20 K = 16 000 W. In besides the heater: 5000 W. Heater: 16 000 − 5000 = 11 000 W.",
  ),
  "study.first": help(
    "What does each unit of money save in a year?",
    "Divide the heat saved by the price, for each of the two.",
    "Tubes: 4000/8000 = 0.5 kWh a year per unit of money. Curtain: 3000/1500 = 2. The curtain.",
  ),
  "climate.noonSun": help(
    "At noon the sun stands as far below the zenith as you are from the place where it is overhead.",
    "On the shortest day the sun is overhead at 23.44 degrees on the other side of the equator.",
    "From there to 50 degrees north it is 50 + 23.44 = 73.44 degrees; 90 − 73.44 = 16.56 degrees.",
  ),
  "climate.degreeDays": help(
    "A degree-day is one kelvin below the base for one day.",
    "How far below 18 degC is −20 degC?",
    "18 − (−20) = 38 K on each of 7 days: 38 · 7 = 266 K d.",
  ),
  "climate.incidence": help(
    "Draw the glazing from the side, its normal and the ray.",
    "Which way does the normal of upright glazing point?",
    "The normal is level, and the ray comes 17 degrees above the level: 17 degrees between them.",
  ),
  "soil.penetration": help(
    "The depth of a wave grows with the root of diffusivity and period.",
    "Diffusivity is conductivity over heat capacity; the period is a year in seconds.",
    "a = 1.0/2.0e6 = 0.5e-6 m²/s, P = 31.5e6 s: √(a·P/π) = √5.02 = 2.24 m.",
  ),
  "soil.lag": help(
    "The wave comes later the deeper you look: by one radian for each penetration depth.",
    "A whole year is 2π radians.",
    "1 m / 2.24 m = 0.446 rad; 0.446/(2π) · 365 d = 25.9 d.",
  ),
  "soil.freezing": help(
    "How much water is there, in kilograms?",
    "Each kilogram gives up its heat of fusion, some 334 kJ.",
    "0.25 · 1000 kg = 250 kg; 250 kg · 334 kJ/kg = 83 500 kJ = 83.5 MJ.",
  ),
  "house.loss": help(
    "Two ways lead outdoors: through the film, and with the air that is changed.",
    "Film: area times U-value. Air: volume a second times heat a cubic metre.",
    "486 · 4.0 = 1944 W/K; 961/3600 · 1207 = 322 W/K; together 2266 W/K.",
  ),
  "house.night": help(
    "Heat is loss coefficient times difference times time.",
    "The loss coefficient is that of the question before.",
    "2266 W/K · 15 K = 34.0 kW; 34.0 kW · 14 h = 476 kWh.",
  ),
  "house.curtain": help(
    "Nine tenths of the sheet have the curtain, one tenth has none: what does each lose?",
    "Resistances add up, losses of areas side by side add up.",
    "With curtain 1/(1/3.3 + 0.35) = 1.53; 0.9 · 1.53 + 0.1 · 3.3 = 1.71 W/(m² K).",
  ),
  "house.drip": help(
    "At which temperature does this air give up water?",
    "Compare its dew point with the inside of the cover.",
    "At 16 degC and 80 % the vapour pressure is 0.8 · 1.82 kPa = 1.45 kPa: dew point 12.6 degC. " +
      "The cover is colder, so it drips.",
  ),
  "house.first": help(
    "What does each unit of money save in a year?",
    "Divide the heat saved by the price, for each of the two.",
    "Sealing: 900/150 = 6 kWh a year per unit of money. Curtain: 6000/2400 = 2.5. Sealing.",
  ),
  "tubes.pressure": help(
    "Everything is counted in velocity heads: ρ·v²/2.",
    "Friction takes f·L/D of them, inlet and exit 1.5 more.",
    "Head 1.2 · 3²/2 = 5.4 Pa; (0.06 · 29/0.102 + 1.5) · 5.4 = 18.6 · 5.4 = 100 Pa.",
  ),
  "tubes.effectiveness": help(
    "Air comes nearer to the wall's temperature by an exponential along the tube.",
    "NTU is film coefficient times wall area over heat capacity flow.",
    "Wall π · 0.102 · 15 = 4.81 m², 6 · 4.81 = 28.8 W/K; flow 1207 · 2 · 0.00817 = 19.7 W/K; " +
      "NTU 1.46; 1 − exp(−1.46) = 0.77.",
  ),
  "tubes.count": help(
    "How much air has to flow in all, and how much does one tube carry?",
    "The volume is that of half a cylinder; the tube's flow is area times speed.",
    "π · 4.572²/2 · 29.26 = 961 m³; 961 · 5/3600 = 1.33 m³/s; one tube 0.00817 · 2 = 0.0163 m³/s: " +
      "82 tubes.",
  ),
  "headers.areaRatio": help(
    "Areas go with the square of the diameter.",
    "π/4 stands above and below: it falls out.",
    "16 · 0.102²/0.254² = 2.58.",
  ),
  "headers.strength": help(
    "Look along the line of holes: what is left between two of them?",
    "From centre to centre, take off one whole hole.",
    "(406 − 121)/406 = 0.70.",
  ),
  "headers.starving": help(
    "Where does the air in the supply header slow down?",
    "What is lost in speed comes back as static pressure; the return header does the opposite.",
    "Supply pressure rises away from the feed, return pressure falls towards its exit at the other " +
      "end: the least difference, and the least air, is near the feed.",
  ),
  "fan.twoFans": help(
    "How much pressure would the tubes take at twice the flow?",
    "Two fans side by side give twice the flow only at the same pressure.",
    "At twice the flow the tubes take four times the pressure, which the fans do not give: they settle " +
      "at less than twice the flow.",
  ),
  "fan.halfSpeed": help(
    "How do flow and pressure change with speed?",
    "Power is flow times pressure: one power of the speed, times two more.",
    "120 W · (1/2)³ = 15 W.",
  ),
  "fan.density": help(
    "At the same speed, a fan's pressure goes with one property of the air.",
    "Take the ratio of the two densities.",
    "100 Pa · 0.9/1.2 = 75 Pa.",
  ),
  "store.latentShare": help(
    "Split the way of the air in two: cooled without losing water, then losing the water.",
    "Heat per kg of dry air: take enthalpies at the start, at the end, and at the starting temperature " +
      "with the water of the end.",
    "Humidity falls from 19.2 to 12.9 g/kg; enthalpy from 77.2 to 50.8 kJ/kg, of which some " +
      "16 kJ/kg go with the water: 61 %.",
  ),
  "store.cop": help(
    "Only what comes back serves the house.",
    "Divide it by the electricity.",
    "12 000/1000 = 12.",
  ),
  "store.gross": help(
    "What would the heater need if the fan never ran?",
    "The saving is the difference between two heaters, not what comes out of the tubes.",
    "11 500 − 8000 = 3500 kWh.",
  ),
  "store.season": help(
    "Which heat was put in before January?",
    "Take it as a share of all that is given back.",
    "250/4000 = 6.25 %.",
  ),
  "store.spell": help(
    "How long do the 600 kWh last, and how long can such a spell be?",
    "What does the house need on the last night of the spell?",
    "600 kWh at 3 kW last some 200 h at most; then the house needs all 14 kW from the heater: the same " +
      "size.",
  ),
  "worth.payback": help(
    "What is left of the saving each year?",
    "Divide the price by it.",
    "6000/(650 − 150) = 12 years.",
  ),
  "worth.presentValue": help(
    "Money of next year is worth its amount over 1.03.",
    "Do that twelve times.",
    "1/1.03¹² = 0.70.",
  ),
  "worth.rival": help(
    "Which heat costs least to save?",
    "Compare each with what a kilowatt-hour costs to make, and with each other.",
    "0.04 is less than 0.21 and less than heat: sealing first.",
  ),
  "worth.chance": help(
    "How likely is it that it never comes?",
    "Ten winters in a row without it: multiply.",
    "0.9¹⁰ = 0.35 without; 1 − 0.35 = 0.65 with at least one.",
  ),
  "worth.ladder": help(
    "After the first step, less heat is left to save.",
    "As shares: 30 % of all, then 40 % of what is left.",
    "3000 of 10 000; 40 % of the 7000 left are 2800; together 5800 kWh.",
  ),
  "measured.heat": help(
    "Mass flow times heat capacity times difference.",
    "Mass flow is volume flow times density.",
    "0.5 · 1.2 · 1006 · (26 − 16) = 6036 W.",
  ),
  "measured.difference": help(
    "Independent uncertainties add up as squares.",
    "First the uncertainty of the difference, then its share of 5 K.",
    "√(0.2² + 0.2²) = 0.283 K; 0.283/5 = 5.7 %.",
  ),
  "measured.bath": help(
    "Write the two readings as true value plus 0.3 K.",
    "What becomes of the 0.3 K when you subtract?",
    "(a + 0.3) − (b + 0.3) = a − b: the same.",
  ),
  "measured.nmbe": help(
    "The sign: measured less planned.",
    "Over what was measured.",
    "(12 000 − 10 800)/12 000 = 10 %.",
  ),
};
