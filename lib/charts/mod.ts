/** One chart per function: data in, display item out. @module */
export { dayName, hourName, monthlySums, MONTHS, QUARTERS } from "./calendar.ts";
export {
  carpet,
  type CarpetInput,
  carpetRuns,
  classLegend,
  classOf,
  type ColourClasses,
} from "./carpet.ts";
export {
  monthlyClimateChart,
  outdoorDurationChart,
  radiationCarpet,
  temperatureCarpet,
} from "./climate.ts";
export { glazingAngleChart, planeMonthsChart } from "./climate_glazing.ts";
export {
  type Cell,
  type Column,
  type DataTable,
  dataTable,
  tableHtml,
  tableText,
} from "./data_table.ts";
export {
  displayKinds,
  type DisplayUnit,
  displayUnit,
  showBoth,
  showNumber,
  showPower,
  showSi,
  showUs,
} from "./display_units.ts";
export {
  durationChart,
  durationCurve,
  type DurationInput,
  type DurationSeries,
  hoursBelow,
} from "./duration.ts";
export { escapeMarkup } from "./escape.ts";
export { fanChart, fanCurvePoints } from "./fan.ts";
export { fanCountChart, fanMonthsChart, fanSpeedChart, type TriedFan } from "./fan_choice.ts";
export { type DisplayItem, figure, type FigureWords, pictureItem } from "./figure.ts";
export {
  LAYOUT_NAMES,
  layoutChart,
  workmanshipChart,
  type WorkmanshipOutcome,
} from "./header_layouts.ts";
export { headerPressureChart, tubeFlowChart } from "./headers.ts";
export { coldestWeekChart, freeRunningDurationChart, lossesChart } from "./house.ts";
export { hourlyMeansByDay, logChart } from "./house_log.ts";
export { measuresChart } from "./house_measures.ts";
export {
  type DayRange,
  dayRanges,
  freeRunningYearChart,
  heatDemandChart,
  heatFlowsByMonth,
  heatFlowsChart,
  humidityChart,
} from "./house_year.ts";
export { coldestWeekStart, dailyMeans, type TimeLine, type TimePlot, timePlot } from "./lines.ts";
export { PALETTE, SERIES_COLOURS } from "./palette.ts";
export type { LegendEntry } from "./picture.ts";
export { soilFieldChart, soilProfileChart } from "./soil.ts";
export {
  type EstimateMonth,
  type FrostDay,
  frostDays,
  frostSnowChart,
  soilSensitivityChart,
  twoEstimates,
  twoEstimatesChart,
} from "./soil_frost.ts";
export {
  storeCarpet,
  storeDurationChart,
  storeWeekChart,
  storeYearChart,
  worstWeekStart,
} from "./store.ts";
export {
  cumulativeHeatChart,
  type HeatMonth,
  heatMonths,
  monthlyHeatChart,
  quartersChart,
} from "./store_heat.ts";
export { cellLimits, soilSectionChart, soilWeeksChart } from "./store_ground.ts";
export {
  dailyHeatChart,
  type HeatDay,
  heatDays,
  seasonRecoveries,
  type SeasonRecovery,
  stateOfChargeChart,
} from "./store_days.ts";
export { heatFlowChart, yearFlows } from "./store_flow.ts";
export { VARIANT_COLUMNS, variantsChart, WAY_COLUMNS, waysChart } from "./store_ways.ts";
export { type FirstStep, firstStepsChart } from "./first_steps.ts";
export { sunPathChart } from "./sun_path.ts";
export { type Point, thin } from "./thin.ts";
export {
  marginalHeatChart,
  tubeLengthChart,
  type TubeLengthRow,
  tubeLengthRows,
  tubeSpeedChart,
} from "./tubes.ts";
export { condensateChart, tubeAlongChart, type TubePlace } from "./tubes_along.ts";
export { costClasses, fieldSearchChart } from "./tubes_search.ts";
