/** Sun positions and planes. @module */

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
}

/** Orientation of a plane. */
export interface Plane {
  /** degrees from the horizontal, 0 to 180 */
  readonly tilt: number;
  /** degrees clockwise from north of the outward normal; 180 faces south */
  readonly azimuth: number;
}

/** Hourly radiation on a plane, W/m² of the plane. */
export interface PlaneRadiation {
  readonly beam: Float64Array;
  readonly skyDiffuse: Float64Array;
  readonly groundReflected: Float64Array;
  /** cosine of the incidence angle of the beam, 0 where the sun is behind the plane */
  readonly cosIncidence: Float64Array;
}
