/** Why something of a log is not there, in words that several places use. @module */

/** Why a study without logs has nothing measured. */
export const NO_LOGS =
  'the study names no logs (keys "measured.logMap" and "measured.logs"): nothing is built, or ' +
  "nothing is measured yet";
