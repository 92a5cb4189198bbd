/** Cover, screens and vents of a logged compartment. @module */
import { DRY_AIR_HEAT_CAPACITY } from "../air/mod.ts";
import { HOUR } from "../basics/mod.ts";
import { withCurtain } from "../house/skin/curtain.ts";
import { EMISSIVITY, outsideFilm, splitGlazing } from "../house/skin/films.ts";
import type { LogForm } from "./log_form.ts";
import type { LogParameters } from "./log_parameters.ts";
import type { GreenhouseLog } from "./log_table.ts";

const GLASS = splitGlazing(6.2, 0);
/** a screen is never closed or open to the last thread */
const LEAST_GAP = 1e-3;

/** Between the air of the compartment and the air outside at one entry, per m² of floor. */
export interface LogSkin {
  /** W/(m² K) */
  readonly conductance: number;
  /** degC that this conductance leads to */
  readonly driving: number;
  /** 1/h of air with outside */
  readonly exchange: number;
}

/** W/(m² K) of an air change an hour. */
function heatPerChange(dryAirMass: number): number {
  return dryAirMass * DRY_AIR_HEAT_CAPACITY / HOUR;
}

function inSeries(one: number, other: number): number {
  return one * other / (one + other);
}

/**
 * Skin of the compartment at one entry.
 *
 * @param log with weather, vents and screens
 * @param i entry
 * @param p unknowns
 * @param form of the model
 * @param dryAirMass kg/m² of the air inside
 */
export function logSkin(
  log: GreenhouseLog,
  i: number,
  p: LogParameters,
  form: LogForm,
  dryAirMass: number,
): LogSkin {
  const wind = log.windSpeed[i]!;
  const outside = log.outsideTemperature[i]!;
  const film = outsideFilm(wind);
  const glass = 1 / (GLASS.innerResistance + 1 / film);
  const sky = outside + EMISSIVITY * log.netLongwave[i]! / film;
  const screens = [log.energyScreen[i]!, log.blackoutScreen[i]!];
  const aired = p.leakage + p.leakageWind * wind + p.ventRate * log.ventOpening[i]! * (wind + 1);
  if (form.vents === "inside") {
    const screened = screens.reduce(
      (open, coverage) =>
        withCurtain(open, { resistance: p.screenResistance, coverage, edgeLeak: 0 }),
      glass,
    );
    return { conductance: p.coverArea * screened, driving: sky, exchange: aired };
  }
  // the space above the screens, between the air below them and outside
  const perChange = heatPerChange(dryAirMass);
  let [heatResistance, airResistance] = [0, 0];
  for (const coverage of screens) {
    const gap = Math.max(LEAST_GAP, 1 - coverage);
    const air = p.gapExchange * gap / (1 - gap + LEAST_GAP);
    airResistance += 1 / air;
    heatResistance += 1 / (1 / p.screenResistance + perChange * air);
  }
  const up = p.coverArea * glass;
  const out = up + perChange * aired;
  const all = inSeries(1 / heatResistance, out);
  const exchange = inSeries(1 / airResistance, aired);
  const toOutside = perChange * exchange;
  // what of the loss is not carried by air from below goes through screens and glass
  const conductance = all - toOutside;
  const mixed = (up * sky + perChange * aired * outside) / out;
  return {
    conductance,
    driving: conductance > 1e-9 ? (all * mixed - toOutside * outside) / conductance : sky,
    exchange,
  };
}
