/** What the climate chapter answers. @module */
import { dayName } from "../kit/calendar.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { ClimateResult, ColdSpell } from "../../climate/types.ts";
import { answerCard } from "../kit/answer.ts";
import { table } from "../kit/table.ts";

/** The answer card. */
export function answer(result: ClimateResult): DisplayItem {
  const week = result.coldSpells.find((spell) => spell.length === 7);
  return answerCard({
    answer: `It must get through nights down to ${shownBoth(result.coldestHour, "temperature")}, ` +
      `${shownBoth(result.heatingDegreeDays18, "degreeDays")} below ${
        shown(18, "temperature", 0)
      }, and ` +
      (week === undefined
        ? ""
        : `a worst week with a mean of ${shownBoth(week.meanTemperature, "temperature")} and ${
          shownBoth(week.globalRadiation, "energyPerArea")
        } of sun a day, `) +
      `with ${shownBoth(result.globalRadiation, "radiation")} of radiation in the year.`,
    range:
      `The design night lies between ${shownBoth(result.design99_6, "temperature")} (colder in ` +
      `0.4 % of the hours) and the coldest hour of this file; a typical year leaves out the hardest ` +
      `winters, so a real one can be colder.`,
    drivenBy: `the amount of winter sun: December to February bring ${
      shownBoth(result.winterRadiation, "radiation")
    }, June to August ${shownBoth(result.summerRadiation, "radiation")}.`,
    changesWith: "a year measured at the site, or one or two really cold winters, replaced " +
      "this file.",
  });
}

/** The worst spells of the year: cold days with little sun. */
export function coldSpellTable(spells: readonly ColdSpell[]): DisplayItem {
  return table(spells, [
    { head: "length", value: (spell) => spell.length, kind: "days" },
    { head: "from", value: (spell) => dayName(spell.startDay) },
    { head: "mean", value: (spell) => spell.meanTemperature, kind: "temperature" },
    { head: "lowest", value: (spell) => spell.minTemperature, kind: "temperature" },
    { head: "sun a day", value: (spell) => spell.globalRadiation, kind: "energyPerArea" },
  ], "Worst spells: cold and sunless together");
}
