import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { openStudy } from "winterground/study/file/open.ts";
import { defaultStudyPath } from "winterground/study/file/check_study.ts";

const CURVES = `id,name,air_flow_m3_per_s,static_pressure_Pa,power_W,outlet_area_m2,source
barn-fan,Barn fan,0,200,150,0.1,its maker
barn-fan,Barn fan,0.5,150,180,0.1,its maker
barn-fan,Barn fan,1,0,160,0.1,its maker
`;

/** Runs a check on the demo study with its fan section changed and a file of curves beside it. */
async function withCurves(
  fanLines: string,
  curves: string | null,
  check: (path: string) => Promise<void>,
): Promise<void> {
  const folder = await Deno.makeTempDir();
  try {
    const demo = defaultStudyPath();
    const data = join(demo, "../../..");
    const text = (await Deno.readTextFile(demo))
      .replaceAll("../../climates", join(data, "climates"))
      .replaceAll("../../prices", join(data, "prices"))
      .replaceAll("../../logs", join(data, "logs"))
      .replace(/^ {2}fan: .*$/m, fanLines);
    const path = join(folder, "study.yaml");
    await Deno.writeTextFile(path, text);
    if (curves !== null) await Deno.writeTextFile(join(folder, "fans.csv"), curves);
    await check(path);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("a study takes its fan from a file of the user's own", async () => {
  // Property: the curve read is the curve used, and the file belongs to the inputs
  await withCurves("  fan: barn-fan\n  curves: fans.csv", CURVES, async (path) => {
    const study = await openStudy(path);
    assertEquals(study.fan.ownFans?.[0]?.staticPressure, [200, 150, 0]);
    await Deno.writeTextFile(join(path, "../fans.csv"), CURVES.replace("0.5,150", "0.5,140"));
    assert((await openStudy(path)).inputHash !== study.inputHash);
  });
  await withCurves("  fan: duct-400\n  curves: fans.csv", CURVES, async (path) => {
    assertEquals((await openStudy(path)).fan.fan, "duct-400");
  });
});

Deno.test("a study without a fan id takes it from the user's own file", async () => {
  // Property: defaults
  await withCurves("  curves: fans.csv", CURVES, async (path) => {
    assertEquals((await openStudy(path)).fan.fan, "barn-fan");
  });
});

Deno.test("faults in the user's fan curves are told with file and line", async () => {
  // Property: bad input
  const refused = async (lines: string, curves: string | null, part: string): Promise<void> =>
    await withCurves(lines, curves, async (path) => {
      await assertRejects(() => openStudy(path), InputError, part);
    });
  await refused("  fan: barn-fan\n  curves: fans.csv", null, 'named by "fan.curves"');
  await refused(
    "  fan: barn-fan\n  curves: fans.csv",
    CURVES.replace("150,180", "x,180"),
    "fans.csv:3",
  );
  await refused("  fan: other\n  curves: fans.csv", CURVES, "barn-fan, duct-315");
  await refused("  fan: barn-fan", null, "the known ones are duct-315");
});
