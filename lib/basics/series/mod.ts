/** Series of values by the hour: the calendar of their year, their sums, means and extremes. @module */
export {
  describeHour,
  FIRST_OF_JULY,
  MONTH_ABBREVIATIONS,
  MONTH_FIRST_DAYS,
  MONTH_FIRST_HOURS,
  MONTH_NAMES,
  monthOfHour,
} from "./calendar.ts";
export {
  degreeHoursBelow,
  firstHourBelow,
  hoursBelow,
  lastHourBelow,
  longestSpellBelow,
  lowestRunStart,
  type YearBelow,
  yearBelow,
} from "./limits.ts";
export { type DayRange, dayRanges, weekAroundLowest } from "./days.ts";
export {
  dailyMeans,
  hoursOfMonth,
  monthlyHeat,
  monthlyMeans,
  monthlyMeansOfDays,
  monthlySums,
} from "./sums.ts";
