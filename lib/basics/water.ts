/** Properties of water and ice that every chapter shares. @module */

/** kg/m³; that of pure water is 999 at 15 degC (IAPWS R7-97), rounded. */
export const WATER_DENSITY = 1000;
/**
 * Specific heat of liquid water, J/(kg K): 4.186 kJ/(kg K) in ASHRAE Fundamentals 2017
 * [ashrae-2017] ch. 1 eq. 33, the set of round figures that also gives 1006 for air and 1860 for
 * vapour; it holds at 15 degC, where the 15 degC calorie is 4.1858 J (NIST SP 811 (2008)
 * [nist-sp811-2008] app. B.8).
 */
export const WATER_HEAT_CAPACITY = 4186;
/** Specific heat of ice, J/(kg K); IAPWS R10-06 (2009) [iapws-r10-2009] gives 2097 at 0 and 2029 at −10 degC. */
export const ICE_HEAT_CAPACITY = 2090;
/** Heat of fusion of water, J/kg; IAPWS R10-06 (2009) [iapws-r10-2009], 333.4e3, rounded. */
export const HEAT_OF_FUSION = 334e3;
