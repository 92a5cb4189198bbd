/** Commissioning: the air speed of every tube before backfill, a smoke and a leak test. @module */
import { crossSection } from "../../tubes/mod.ts";
import { carelessEnds, type HeadersQuestion, type SummarisedHeaders } from "../../headers/mod.ts";

/** What one tube must show. */
export interface CommissioningRow {
  /** number from 1, as in the table of the headers */
  readonly tube: number;
  /** number of its header group, from 1 */
  readonly group: number;
  /** m below the floor */
  readonly depth: number;
  /** m/s, mean over the section at the design flow */
  readonly speed: number;
  /** m/s below which the tube is refused */
  readonly least: number;
  /** m/s above which the tube, or a neighbour, is refused */
  readonly most: number;
}

/** A step of the tests before backfill. */
export interface CommissioningStep {
  /** what is done */
  readonly step: string;
  /** what passes */
  readonly accept: string;
  /** the caution beside it */
  readonly caution: string;
}

/** The commissioning sheet. */
export interface Commissioning {
  /** tube by tube */
  readonly tubes: readonly CommissioningRow[];
  /** share: standard deviation of a tube's share by careless ends, within the design's own */
  readonly scatter: number;
  /** share: standard uncertainty of one speed by a vane or hot-wire anemometer */
  readonly reading: number;
  /** Pa, test pressure of the leak test: twice the greatest of the supply header */
  readonly testPressure: number;
  /** m³/s, most that may leak at that pressure */
  readonly mostLeak: number;
  /** tests in their order */
  readonly steps: readonly CommissioningStep[];
}

/** One reading at a tube end; common practice, no source. */
const READING = 0.05;
/** A tube may be off by so many standard uncertainties of scatter and reading together. */
const WITHIN = 2;
/** Share of the design flow that may leak at the test pressure; common practice, no source. */
const LEAK = 0.03;

/**
 * The commissioning sheet: speeds by the headers' own shares, with room for the scatter that
 * ordinary care leaves in the tube ends (the spread of a hundred drawn fields over that of the
 * design) and for the anemometer.
 *
 * @param question headers, tubes and air
 * @param headers result of the headers chapter
 */
export function commissioning(
  question: HeadersQuestion,
  headers: Pick<
    SummarisedHeaders,
    "shares" | "groups" | "unevenness" | "supplyPressure" | "summary"
  >,
): Commissioning {
  const { tubes } = question;
  const careless = carelessEnds(question).unevenness.mean;
  const scatter = Math.sqrt(Math.max(0, careless ** 2 - headers.unevenness ** 2));
  const room = WITHIN * Math.hypot(scatter, READING);
  const area = crossSection(tubes.diameter);
  const rows = headers.summary.tubes.map(({ tube, depth, flow }, i): CommissioningRow => {
    const speed = flow / area;
    return {
      tube,
      group: headers.groups[i]! + 1,
      depth,
      speed,
      least: Math.max(0, speed * (1 - room)),
      most: speed * (1 + room),
    };
  });
  const testPressure = 2 * Math.max(...headers.supplyPressure);
  const mostLeak = LEAK * tubes.flowPerTube * tubes.count;
  return { tubes: rows, scatter, reading: READING, testPressure, mostLeak, steps: steps() };
}

function steps(): CommissioningStep[] {
  return [
    {
      step: "Look through every tube with a lamp before it is connected",
      accept: "round, clear, falls all the way to its drain",
      caution: "nobody enters an unprotected pit or trench",
    },
    {
      step: "Smoke test: tube ends plugged, theatrical smoke in at the fan, low speed",
      accept: "no smoke at joints, holes and connectors",
      caution: "warn neighbours and the fire service; leave the house while it fills; no burner on",
    },
    {
      step: "Leak test: tube ends plugged, the flow that holds the test pressure",
      accept: "no more than the flow named with this sheet",
      caution:
        "mains in a wet pit: a licensed electrician connects the fan, with ground-fault protection",
    },
    {
      step: "Air speed at every tube end at the design flow, before backfill",
      accept: "within the limits of the tube; no tube backwards",
      caution: "guards on the fan; hands, hair and sleeves away from it",
    },
    {
      step: "The same again after backfill, from the headers or clean-outs",
      accept: "each within a tenth of before; a lower one is crushed or holds water",
      caution: "air in headers and pits can lack oxygen: test it, and a second person outside",
    },
    {
      step:
        "Header pressure and air flow together, noted as the baseline of the blocked-tube limit",
      accept: "resistance within a tenth of the plan; else find out why before the crop goes in",
      caution: "local codes and licensed trades decide what may run",
    },
  ];
}

/** What became of one tube. */
export interface CommissioningVerdict {
  /** number from 1 */
  readonly tube: number;
  /** m/s, as measured, scaled to the design's mean */
  readonly scaled: number;
  /** accept, low or high */
  readonly verdict: "accept" | "low" | "high" | "not measured";
}

/**
 * Judges measured speeds. They are first scaled so that their mean is the design's, since fan and
 * density of the day decide how much all of them get; what is judged is how they share it.
 *
 * @param sheet from `commissioning`
 * @param speeds m/s in the order of its rows; NaN where not measured
 */
export function judgeCommissioning(
  sheet: Commissioning,
  speeds: readonly number[],
): CommissioningVerdict[] {
  const pairs = sheet.tubes.map((row, i) => ({ row, speed: speeds[i] ?? NaN }))
    .filter(({ speed }) => !Number.isNaN(speed));
  const planned = pairs.reduce((sum, { row }) => sum + row.speed, 0);
  const measured = pairs.reduce((sum, { speed }) => sum + speed, 0);
  const factor = measured > 0 ? planned / measured : 1;
  return sheet.tubes.map((row, i): CommissioningVerdict => {
    const scaled = factor * (speeds[i] ?? NaN);
    const verdict = Number.isNaN(scaled)
      ? "not measured"
      : scaled < row.least
      ? "low"
      : scaled > row.most
      ? "high"
      : "accept";
    return { tube: row.tube, scaled, verdict };
  });
}
