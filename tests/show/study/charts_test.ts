import * as study from "winterground/study";
import { checkFigures } from "../figure_rules.ts";
import { steps } from "../store/sample.ts";

checkFigures({
  firstSteps: [() => study.firstStepsChart(steps), ["kWh a year", ", K"]],
});
