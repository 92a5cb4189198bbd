import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { openStudy } from "winterground/study/file/open.ts";
import { defaultStudyPath } from "winterground/study/file/check_study.ts";

const PRICES = `id,price,unit,currency,life_years,date,source
electricity,0.3,kWh,EUR,,2026-05-01,the bill
fuel:propane,1.1,L,EUR,,2026-05-01,the dealer
`;

/** Runs a check on the demo study with a price list beside it, or none. */
async function withPrices(
  line: string,
  prices: string | null,
  check: (path: string) => Promise<void>,
): Promise<void> {
  const folder = await Deno.makeTempDir();
  try {
    const demo = defaultStudyPath();
    const text = (await Deno.readTextFile(demo))
      .replaceAll("../../climates", join(demo, "../../../climates"))
      .replaceAll("../../logs", join(demo, "../../../logs"))
      .replace(/^ {2}prices: .*\n/m, line);
    const path = join(folder, "study.yaml");
    await Deno.writeTextFile(path, text);
    if (prices !== null) await Deno.writeTextFile(join(folder, "prices.csv"), prices);
    await check(path);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

const NAMED = "  prices: prices.csv\n";

Deno.test("a study takes its prices from the file it names, which belongs to its inputs", async () => {
  // Property: the list read is the list used
  await withPrices(NAMED, PRICES, async (path) => {
    const study = await openStudy(path);
    assertEquals(study.worth.prices!.prices.map(({ price }) => price), [0.3, 1.1]);
    await Deno.writeTextFile(join(path, "../prices.csv"), PRICES.replace("0.3", "0.4"));
    assert((await openStudy(path)).inputHash !== study.inputHash);
  });
});

Deno.test("a study without a price list has none: the demo's are not lent to it", async () => {
  // Property: a missing price is never counted as something else
  await withPrices("", null, async (path) => {
    assertEquals((await openStudy(path)).worth.prices, null);
  });
});

Deno.test("faults in a price list are told with file and line", async () => {
  // Property: bad input
  const refused = async (prices: string | null, part: string): Promise<void> =>
    await withPrices(NAMED, prices, async (path) => {
      await assertRejects(() => openStudy(path), InputError, part);
    });
  await refused(null, 'named by "worth.prices"');
  await refused("", "it is empty");
  await refused(PRICES.replace("0.3", "-0.3"), "prices.csv:2");
  await refused(PRICES.replace("1.1,L,EUR", "1.1,L,USD"), "prices.csv:3");
  await refused("id;price\nelectricity;1", 'Cannot find the column "id"');
});
