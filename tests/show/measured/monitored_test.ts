// Property: verdicts and days are shown as found; what could not be looked at says what it needs.
import { assertMatch, assertStringIncludes } from "@std/assert";
import * as measured from "winterground/measured";
import { checkFigures } from "../figure_rules.ts";

const day = (k: number): measured.BlockedDay => ({
  start: Date.UTC(2026, 0, 1 + k) / 1000,
  resistance: k < 8 ? 1 + k / 1000 : 1.2,
  shut: k < 8 ? 0 : 3,
});
const found: measured.BlockedTubes = {
  days: Array.from({ length: 12 }, (_, k) => day(k)),
  findings: [{
    kind: "blocked",
    channel: "header_dp",
    from: day(8).start,
    to: day(12).start,
    message: "The field resists 20 % more than after commissioning, as with about 3 tubes shut",
  }],
  untested: null,
  limit: 1.08,
};
const plain = (item: { readonly "text/plain": string }) => item["text/plain"];

checkFigures({
  blockedDays: [() => measured.blockedDaysChart(found), ["resistance", "limit"]],
});

Deno.test("shut tubes: the finding stands below the picture; without a pressure it says what it needs", () => {
  assertStringIncludes(plain(measured.blockedDaysChart(found)), "as with about 3 tubes shut");
  const none = { ...found, days: [], findings: [], untested: "Shut tubes: needs an air flow" };
  assertStringIncludes(plain(measured.blockedDaysChart(none)), "needs an air flow.");
});

Deno.test("commissioning: tubes outside their limits are counted and named", () => {
  const shown = plain(measured.commissioningVerdictTable([
    { tube: 1, scaled: 3, verdict: "accept" },
    { tube: 2, scaled: 1.2, verdict: "low" },
    { tube: 3, scaled: NaN, verdict: "not measured" },
  ]));
  assertMatch(shown, /1 of 2 outside/);
  assertMatch(shown, /2\s+1\.2.*low/);
  assertMatch(plain(measured.commissioningVerdictTable([])), /No speed is given yet/);
});
