/** Unknowns of a logged compartment. @module */

/** What is not known of the compartment and is fitted; all per m² of floor, all above 0. */
export interface LogParameters {
  /** m² of glass per m² of floor */
  readonly coverArea: number;
  /** share of the global radiation that ends as heat inside, screens open */
  readonly solarShare: number;
  /** W/m² of heat per µmol/(m² s) of lamp light */
  readonly lampHeat: number;
  /** 1/h of air through a screen with as much gap as cloth, where vents act above the screens */
  readonly gapExchange: number;
  /** µmol/(m² s) of plant light inside per W/m² outside, screens open */
  readonly lightShare: number;
  /** W/(m² K) of the heating pipe */
  readonly pipeFilm: number;
  /** 1/h without wind */
  readonly leakage: number;
  /** 1/h per m/s of wind */
  readonly leakageWind: number;
  /** 1/h per m/s of wind (and 1 m/s of stack) with all vents open */
  readonly ventRate: number;
  /** m² K/W of each screen */
  readonly screenResistance: number;
  /** leaf area over floor area */
  readonly leafArea: number;
  /** share of the lamps' heat that goes to the air at once, where it is a number of its own */
  readonly lampAirShare: number;
  /** share of sun and lamp heat that benches, pots and lamps give to the air at once */
  readonly airShare: number;
  /** W/(m² K) between air and floor */
  readonly floorFilm: number;
  /** J/(K m²) of air, crop, light structure */
  readonly capacity: number;
  /** 1/day: growth of the leaf area while it is small, where the form lets it grow */
  readonly growth: number;
  /** J/(K m²) of benches, pots and substrate, where the form has them */
  readonly benchCapacity: number;
  /** W/(m² K) between them and the air */
  readonly benchFilm: number;
  /** share of the light past the crop that falls on them */
  readonly benchShare: number;
  /** wet share of the floor */
  readonly wetFloor: number;
  /** W/(m² K) to the neighbours and the ground, and their degC */
  readonly neighbourFilm: number;
  /** degC */
  readonly neighbourTemperature: number;
}
