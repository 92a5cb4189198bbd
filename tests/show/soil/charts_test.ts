import * as soil from "winterground/soil";
import { checkFigures } from "../figure_rules.ts";
import { soilResult } from "./sample.ts";

checkFigures({
  soilProfile: [() => soil.profileChart(soilResult), ["degC", "depth, m"]],
  soilField: [() => soil.fieldChart(soilResult), ["degC", "depth, m"]],
  frostSnow: [() => soil.frostSnowChart(soilResult), ["frost depth (down), m"]],
  twoEstimates: [() => soil.twoEstimatesChart(soilResult), ["tube depth, degC"]],
  soilSensitivity: [() => soil.sensitivityChart(soilResult), ["degC", "depth, m"]],
});
