import { assertEquals } from "@std/assert";
import { join } from "node:path";
import { momentOfRun } from "winterground/study/results/moment.ts";
import { readCheckout } from "winterground/study/run/checkout.ts";
import { inTemporary } from "../../harness/in_temporary.ts";

const [ONE, TWO] = ["1".repeat(40), "2".repeat(40)];

Deno.test("readCheckout() finds the commit by a branch, among packed names, and without a branch", async () => {
  // Source: gitrepository-layout(5): HEAD, refs/heads, packed-refs, commondir
  await inTemporary(async (folder) => {
    const write = async (path: string, text: string) => {
      await Deno.mkdir(join(folder, path, ".."), { recursive: true });
      await Deno.writeTextFile(join(folder, path), text);
    };
    const commit = async (root = folder) => (await readCheckout(root)).commit;
    assertEquals(await readCheckout(folder), { commit: null, lockHash: null });
    await write(".git/HEAD", "ref: refs/heads/main\n");
    assertEquals(await commit(), null);
    await write(".git/packed-refs", `# pack-refs with: peeled\n${ONE} refs/heads/main\n^${TWO}\n`);
    assertEquals(await commit(), ONE);
    await write(".git/refs/heads/main", `${TWO}\n`);
    assertEquals(await commit(), TWO);
    await write(".git/worktrees/side/HEAD", "ref: refs/heads/main\n");
    await write(".git/worktrees/side/commondir", "../..\n");
    await write("side/.git", `gitdir: ${join(folder, ".git/worktrees/side")}\n`);
    assertEquals(await commit(join(folder, "side")), TWO);
    await write(".git/HEAD", `${ONE}\n`);
    assertEquals(await commit(), ONE);
  });
});

Deno.test("momentOfRun() is the time of SOURCE_DATE_EPOCH where it is set", () => {
  // Source: reproducible-builds.org, SOURCE_DATE_EPOCH: seconds since 1970 in UTC; 1e9 is 2001-09-09T01:46:40Z (date -u -d @1000000000)
  const before = Deno.env.get("SOURCE_DATE_EPOCH");
  try {
    Deno.env.set("SOURCE_DATE_EPOCH", "1000000000");
    assertEquals(momentOfRun().toISOString(), "2001-09-09T01:46:40.000Z");
    Deno.env.delete("SOURCE_DATE_EPOCH");
    assertEquals(momentOfRun().getUTCMilliseconds(), 0);
  } finally {
    if (before === undefined) Deno.env.delete("SOURCE_DATE_EPOCH");
    else Deno.env.set("SOURCE_DATE_EPOCH", before);
  }
});
