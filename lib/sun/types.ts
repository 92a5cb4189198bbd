/** Sun positions and planes. @module */

/** Where the sun is looked at from; a `Place` of the climate chapter fits. */
export interface SunPlace {
  /** degrees, north positive, -90 to 90 */
  readonly latitude: number;
  /** degrees, east positive */
  readonly longitude: number;
  /** hours east of UTC of local standard time */
  readonly timeZone: number;
}

/** Hourly sun, index as in ClimateYear; averaged over the part of the hour the sun is up. */
export interface HourlySun {
  /** mean over the whole hour of max(0, cos zenith) */
  readonly cosZenith: Float64Array;
  /** elevation of the sun above the horizon at the middle of its time above it in the hour, degrees; negative at night */
  readonly elevation: Float64Array;
  /** azimuth at that moment, degrees clockwise from north */
  readonly azimuth: Float64Array;
  /** extraterrestrial radiation normal to the sun, W/m² */
  readonly extraterrestrialNormal: Float64Array;
  /** share of the hour the sun is above the horizon, 0 to 1 */
  readonly upShare: Float64Array;
  /** declination at the middle of the hour, degrees */
  readonly declination: Float64Array;
  /** hour angle at the start of the sun's time above the horizon in the hour, degrees, 0 at noon */
  readonly hourAngleStart: Float64Array;
  /** hour angle at its end, degrees */
  readonly hourAngleEnd: Float64Array;
  /** degrees, north positive */
  readonly latitude: number;
}

/** The radiation of a year that planes and sky need; a `ClimateYear` fits. */
export interface RadiationYear {
  /** global radiation on the horizontal, W/m² */
  readonly globalHorizontal: Float64Array;
  /** direct radiation normal to the sun, W/m² */
  readonly directNormal: Float64Array;
  /** diffuse radiation on the horizontal, W/m² */
  readonly diffuseHorizontal: Float64Array;
}

/** Orientation of a plane. */
export interface Plane {
  /** degrees from the horizontal, 0 to 180 */
  readonly tilt: number;
  /** degrees clockwise from north of the outward normal; 180 faces south */
  readonly azimuth: number;
}

/** How the diffuse sky is spread: evenly, or with a bright disc around the sun. */
export type SkyModel = "isotropic" | "hay-davies";

/** Hourly radiation on a plane, W/m² of the plane. */
export interface PlaneRadiation {
  /** W/m², straight from the sun */
  readonly beam: Float64Array;
  /** W/m², from the sky */
  readonly skyDiffuse: Float64Array;
  /** W/m², from the ground */
  readonly groundReflected: Float64Array;
  /** cosine of the incidence angle of the beam, 0 where the sun is behind the plane */
  readonly cosIncidence: Float64Array;
}
