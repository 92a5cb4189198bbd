/** The day ahead: forecast, the coming days inside, frost, charging. @module */
export { type Forecast, type ForecastOptions, readForecast } from "./forecast.ts";
export { type WeatherSpan, yearWith } from "./weather_span.ts";
export { type ChargingSpell, chargingSpells } from "./charging.ts";
export {
  type Ahead,
  type AheadCourse,
  type AheadQuestion,
  dayAhead,
  type FrostWarning,
} from "./day_ahead.ts";
