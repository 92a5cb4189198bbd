import * as measured from "winterground/measured";
import { checkFigures } from "../figure_rules.ts";
import { logCheck } from "./sample.ts";

checkFigures({
  log: [() => measured.logChart(logCheck, "second half"), ["degC", "humidity, %"]],
});
