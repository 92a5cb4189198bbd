/** A glazed box with a perforated dark plate, outdoors on the back wall. @module */
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import { EMISSIVITY, INSIDE_CONVECTION } from "../../house/mod.ts";

/** What the air of the box exchanges with, W/(m² K) of plate. */
export interface BoxConductances {
  /** plate to air: effectiveness times ρcV */
  readonly air: number;
  /** air to cover */
  readonly gap: number;
  /** plate to cover, radiation */
  readonly radiation: number;
  /** plate to outdoors, radiation straight through the cover */
  readonly clear: number;
  /** cover to outdoors */
  readonly outside: number;
}

/** degC at which the radiation of the plate is made linear, common practice, no source. */
const PLATE_TEMPERATURE = 30;

/**
 * Radiation between plate and cover as parallel planes, and straight through the cover.
 *
 * h_r = 4σT³/(1/e + 1/0.9 − 1), Duffie & Beckman 2013 [duffie-beckman-2013] §3.10 (from memory).
 *
 * @param emissivity of the plate, 0 to 1
 * @param clear long-wave transmittance of the cover, 0 to 1
 */
export function plateRadiation(
  emissivity: number,
  clear: number,
): Pick<BoxConductances, "gap" | "radiation" | "clear"> {
  const black = 4 * STEFAN_BOLTZMANN * (PLATE_TEMPERATURE + ZERO_CELSIUS) ** 3;
  return {
    gap: INSIDE_CONVECTION,
    radiation: (1 - clear) * black / (1 / emissivity + 1 / EMISSIVITY - 1),
    clear: clear * emissivity * black,
  };
}

/**
 * Heat that the air takes from the box, W/m²: the balances of plate and cover, all linear,
 * S = e(T_p − T_i) + r(T_p − T_c) + t(T_p − T_o), r(T_p − T_c) + g(T_i − T_c) = o(T_c − T_o),
 * q = e(T_p − T_i) − g(T_i − T_c). The back of the box is taken as well insulated.
 *
 * @param box conductances
 * @param absorbed S, sun that the plate takes up, W/m²
 * @param inlet T_i, degC of the air drawn in
 * @param outdoor T_o, degC outdoors as the cover sees it
 */
export function boxHeat(
  box: BoxConductances,
  absorbed: number,
  inlet: number,
  outdoor: number,
): number {
  const { air, gap, radiation, clear, outside } = box;
  const around = radiation + gap + outside;
  const beyond = gap * inlet + outside * outdoor;
  const plate = (absorbed + air * inlet + clear * outdoor + radiation * beyond / around) /
    (air + clear + radiation - radiation ** 2 / around);
  const cover = (radiation * plate + beyond) / around;
  return air * (plate - inlet) - gap * (inlet - cover);
}
