/** Fans: curves, laws, operating point, power. @module */
export type { ShapedCurve } from "./interpolate.ts";
export { curveValue, shapedCurve } from "./interpolate.ts";
export type { FanChange } from "./laws.ts";
export { changeFan, fansInParallel, fansInSeries, stallLimit, STANDARD_DENSITY } from "./laws.ts";
export type { OperatingPoint, PointMissed, PointReached } from "./operating_point.ts";
export { operatingPoint } from "./operating_point.ts";
export { FANS, findFan, readFans } from "./products.ts";
export type { AirPath, PressurePoint } from "./system.ts";
export { systemPressure } from "./system.ts";
export type { FanSurroundings } from "./compute.ts";
export { fanAirPath, fanChapter } from "./compute.ts";
export type { FanCurve, FanInputs, FanPoint, FanResult } from "./types.ts";
export type { SpeedPoint } from "./control.ts";
export { fanEnergy, speedForFlow, speedSweep } from "./control.ts";
export { fan } from "./chapter.ts";
export type { FanGiven } from "./fields.ts";
