/**
 * How often the intervals of the whole calibration hold the truth of the demo's winter:
 * `deno run -A tests/measured/calibrated/joint_seeds.ts FROM TO [STEP]` draws the sensors' errors anew
 * for each seed and prints, stage by stage, what lay outside, then the logarithm of every value over the
 * truth and its standard uncertainty. A seed takes some fifteen seconds.
 */
import { calibrate } from "winterground/measured/calibrated/calibration.ts";
import { calibrationTakes } from "winterground/measured/calibrated/takes.ts";
import { DEMO_HOURS, demoSetting } from "winterground/measured/demo/demo_season.ts";
import { builtRequest, DEMO_TRUTH } from "winterground/measured/demo/known_truth.ts";
import { trueYear } from "winterground/measured/demo/true_year.ts";
import { winterFiles } from "winterground/measured/demo/winter_files.ts";
import { winterTruth } from "winterground/measured/demo/winter_truth.ts";
import { storeRequest } from "winterground/store/takes.ts";
import { defaultStudyPath, openStudy, startRun } from "winterground/study/mod.ts";

const [first = 1, last = 1, step = 1] = Deno.args.map(Number);
const study = await openStudy(defaultStudyPath());
const run = startRun(study);
const [soil, tubes, headers, fan] = await Promise.all([
  run.soil(),
  run.tubes(),
  run.headers(),
  run.fan(),
]);
const earlier = { soil, tubes, headers, fan };
const built = builtRequest(storeRequest(study, earlier), DEMO_TRUTH);
const year = trueYear(built, DEMO_HOURS);
const request = calibrationTakes(study, earlier);

for (let seed = first; seed <= last; seed += step) {
  const setting = demoSetting(study.climate.place.timeZone, seed);
  const truth = new Map(
    winterTruth(built, DEMO_TRUTH, year, setting).map(({ key, value }) => [key, Number(value)]),
  );
  const trueValues: Readonly<Record<string, number | undefined>> = {
    "house.leakage": truth.get("house.leakage"),
    "house.leakageWind": truth.get("house.leakageWind"),
    "soil.measuredConductivity": truth.get("soil.conductivity"),
    "fan.speed": study.fan.speed * DEMO_TRUTH.airFlow,
    "loss coefficient": truth.get("quiet.lossCoefficient"),
    "film of the tubes over the study's": DEMO_TRUTH.film ?? 1,
  };
  const { map, logs } = winterFiles(year, study.climate, setting);
  const { stages } = calibrate({ ...request, texts: { ...request.texts, map, logs } });
  for (const { stage } of stages) {
    const known = (stage?.estimates ?? []).flatMap(({ key, name, value: found, low, high }) => {
      const value = trueValues[key ?? name];
      return value === undefined ? [] : [{
        what: key ?? name,
        inside: low <= value && value <= high,
        words: `${key ?? name} ${Math.log(found / value).toFixed(3)} ± ${
          (Math.log(high / low) / 3.92).toFixed(3)
        }`,
      }];
    });
    const out = known.filter(({ inside }) => !inside).map(({ what }) => what);
    if (known.length > 0) {
      // deno-lint-ignore no-console -- a table for whoever runs it
      console.log(
        [
          seed,
          stage!.name,
          `${known.length - out.length} of ${known.length}`,
          out.join(", "),
          ...known.map(({ words }) => words),
        ].join("\t"),
      );
    }
  }
}
