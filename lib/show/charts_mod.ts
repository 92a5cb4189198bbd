/** One chart per function: data in, display item out. @module */
export { dayName, hourName, MONTHS, QUARTERS } from "./kit/calendar.ts";
export {
  carpet,
  type CarpetInput,
  carpetRuns,
  classLegend,
  classOf,
  type ColourClasses,
} from "./kit/carpet.ts";
export {
  monthlyClimateChart,
  outdoorDurationChart,
  radiationCarpet,
  temperatureCarpet,
} from "./climate/charts.ts";
export { glazingAngleChart, planeMonthsChart } from "./climate/glazing_charts.ts";
export {
  type Cell,
  type Column,
  type DataTable,
  dataTable,
  tableHtml,
  tableText,
} from "./kit/data_table.ts";
export {
  displayKinds,
  type DisplayUnit,
  displayUnit,
  showBoth,
  showNumber,
  showPower,
  showSi,
  showUs,
} from "../units/display_units.ts";
export {
  durationChart,
  durationCurve,
  type DurationInput,
  type DurationSeries,
} from "./kit/duration.ts";
export { escapeMarkup } from "./kit/escape.ts";
export { fanChart, fanCurvePoints } from "./fan/charts.ts";
export {
  fanCountChart,
  fanMonthsChart,
  fanSpeedChart,
  type TriedFan,
} from "./fan/choice_charts.ts";
export { type DisplayItem, figure, type FigureWords, pictureItem } from "./kit/figure.ts";
export {
  LAYOUT_NAMES,
  layoutChart,
  workmanshipChart,
  type WorkmanshipOutcome,
} from "./headers/layout_charts.ts";
export { headerPressureChart, tubeFlowChart } from "./headers/charts.ts";
export { coldestWeekChart, freeRunningDurationChart, lossesChart } from "./house/charts.ts";
export { hourlyMeansByDay, logChart } from "./measured/charts.ts";
export { measuresChart } from "./house/measures_charts.ts";
export {
  type DayRange,
  dayRanges,
  freeRunningYearChart,
  heatDemandChart,
  heatFlowsByMonth,
  heatFlowsChart,
  humidityChart,
} from "./house/year_charts.ts";
export { type TimeLine, type TimePlot, timePlot, weekAroundLowest } from "./kit/lines.ts";
export { PALETTE, SERIES_COLOURS } from "./kit/palette.ts";
export type { LegendEntry } from "./kit/picture.ts";
export { soilFieldChart, soilProfileChart } from "./soil/charts.ts";
export {
  type EstimateMonth,
  type FrostDay,
  frostDays,
  frostSnowChart,
  soilSensitivityChart,
  twoEstimates,
  twoEstimatesChart,
} from "./soil/frost_charts.ts";
export {
  storeCarpet,
  storeDurationChart,
  storeWeekChart,
  storeYearChart,
  worstWeekStart,
} from "./store/charts.ts";
export {
  cumulativeHeatChart,
  type HeatMonth,
  heatMonths,
  monthlyHeatChart,
  quartersChart,
} from "./store/heat_charts.ts";
export { cellLimits, soilSectionChart, soilWeeksChart } from "./store/ground_charts.ts";
export {
  dailyHeatChart,
  type HeatDay,
  heatDays,
  seasonRecoveries,
  type SeasonRecovery,
  stateOfChargeChart,
} from "./store/days_charts.ts";
export { heatFlowChart, yearFlows } from "./store/flow_chart.ts";
export { VARIANT_COLUMNS, variantsChart, WAY_COLUMNS, waysChart } from "./store/ways_charts.ts";
export { type FirstStep, firstStepsChart } from "./study/first_steps_chart.ts";
export { sunPathChart } from "./climate/sun_path.ts";
export { type Point, thin } from "./kit/thin.ts";
export {
  marginalHeatChart,
  tubeLengthChart,
  type TubeLengthRow,
  tubeLengthRows,
  tubeSpeedChart,
} from "./tubes/charts.ts";
export { condensateChart, tubeAlongChart, type TubePlace } from "./tubes/along_charts.ts";
export { costClasses, fieldSearchChart } from "./tubes/search_chart.ts";
