/** The whole study in one card. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { ChapterResults, Study } from "../../study/mod.ts";
import { answerCard } from "../kit/answer.ts";
import { killingText, savedText } from "../store/crop_words.ts";
import { table } from "../kit/table.ts";
import { firstFreezeText, freezingText, frostLight, needText } from "../house/frost_words.ts";

/** Does the house stay frost-free, and what does the store do for it? */
export function answer(results: ChapterResults): DisplayItem {
  const { house, store, tubes, fan } = results;
  const losses = [...house.summary.lossShares].sort((a, b) => b.conductance - a.conductance).slice(
    0,
    3,
  );
  const light = frostLight(store.crop.freezing.hours);
  const verdict = {
    yes: "The house with its store stays free of frost in this year.",
    partly: "The house with its store freezes occasionally in this year.",
    no: "The house with its store is not free of frost in this year.",
  }[light];
  return answerCard({
    light,
    answer:
      `${verdict} Coldest hour ${shownBoth(store.coldestHour, "temperature")}, ${
        shown(store.crop.freezing.hours, "hours")
      } below freezing (${
        shown(store.cropNoFan.freezing.hours, "hours")
      } with the fan always off); ${killingText(store)}; ${savedText(store)}; ${
        firstFreezeText(store.crop.freezing.first)
      }.` + needText(store.cropNoFan.freezing.hours),
    range: `House temperatures are not known to better than a kelvin: ${
      freezingText(store.summary.freezingRange)
    }. Back-up heat to hold the set point: ${
      shownBoth(store.backupHeat, "energy")
    } with the store, ${shownBoth(store.backupHeatNoFan, "energy")} with the fan always off.`,
    drivenBy: `the three largest losses: ${
      losses.map((part) => `${part.name} ${shown(part.share, "share")}`).join(", ")
    }; then ${tubes.count} tubes of ${shownBoth(tubes.length, "length")} supplied with ${
      shownBoth(fan.airFlow, "airFlow")
    }.`,
    changesWith: "those losses were cut first: insulate, seal and curtain before digging.",
  });
}

/** Values the study file left open, with where each comes from. */
export function defaultsTable(study: Study): DisplayItem {
  return table(study.defaults, [
    { head: "input", value: (row) => row.key },
    { head: "taken", value: (row) => row.value },
    { head: "source", value: (row) => row.source },
  ]);
}
