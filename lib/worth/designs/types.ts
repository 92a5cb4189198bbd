/** Search for other designs of the store: what it takes and gives. @module */
import type { FanInputs } from "../../fan/types.ts";
import type { HeadersInputs } from "../../headers/types.ts";
import type { HouseInputs } from "../../house/types.ts";
import type { StoreRequest } from "../../store/site.ts";
import type { TubesInputs } from "../../tubes/types.ts";
import type { WorthRequest } from "../request.ts";

/** What may be chosen of a design. */
export interface DesignChoice {
  /** id in data/tubes */
  readonly tube: string;
  /** number of tubes */
  readonly count: number;
  /** m of one tube */
  readonly length: number;
  /** centre to centre, m */
  readonly spacing: number;
  /** number of layers */
  readonly layers: number;
  /** m to the upper layer */
  readonly depth: number;
  /** design air flow of the field, m³/s */
  readonly airFlow: number;
  /** inside diameter of both headers, m */
  readonly header: number;
  /** id of the fan */
  readonly fan: string;
  /** number of fans */
  readonly fans: number;
  /** true for a board at the edge of the floor to below the tubes; false for the house as it is */
  readonly edgeBoard: boolean;
  /** K of the intake over the store at which charging starts */
  readonly chargeStart: number;
  /** degC of the house below which the store is discharged */
  readonly dischargeBelow: number;
}

/** What a year says of a design, with the fans in it. */
export interface DesignYear {
  /** kWh a year of back-up heat less than with the fan always off */
  readonly saved: number;
  /** h a year below the crop's killing limit less than with the fan always off */
  readonly cropHoursAvoided: number;
  /** kWh of the fans' electricity in the year of that heat */
  readonly fanEnergy: number;
}

/** Money of a design, in the currency of the prices. */
export interface DesignMoney {
  /** money of the first cost less grants */
  readonly capital: number;
  /** levelised money for a kWh saved; null where none is */
  readonly costOfHeat: number | null;
  /** present value saved against a heater alone, money */
  readonly netSavings: number;
}

/** A design that went through the year. */
export interface DesignRow extends DesignYear, DesignMoney {
  /** what was chosen */
  readonly choice: DesignChoice;
  /** true for the study's own */
  readonly own: boolean;
  /** true where none saves at least as much heat for no more money */
  readonly bestForHeat: boolean;
  /** true where none avoids at least as many hours for no more money */
  readonly bestForHours: boolean;
  /** limits that it breaks, in words; only the study's own may */
  readonly breaks: string | null;
}

/** What the study's own design gives up: rows within the limits that better it; null where none does. */
export interface OwnGivesUp {
  /** saves most heat for no more money */
  readonly moreHeat: DesignRow | null;
  /** saves as much heat for least money */
  readonly sameHeat: DesignRow | null;
  /** avoids most of the crop's hours for no more money */
  readonly fewerHours: DesignRow | null;
  /** avoids as many of them for least money */
  readonly sameHours: DesignRow | null;
}

/** Outcome of the search. */
export interface DesignSearch {
  /** currency of all money */
  readonly currency: string;
  /** by rising cost, the study's own among them where it has a price */
  readonly rows: readonly DesignRow[];
  /** the one with the greatest net savings among those within the limits; null where there is none */
  readonly best: DesignRow | null;
  /** the one whose kWh saved costs least among those; null where none saves what the mesh resolves */
  readonly cheapest: DesignRow | null;
  /** what the study's own design gives up */
  readonly givesUp: OwnGivesUp;
  /** number of designs judged before any year was run */
  readonly judged: number;
  /** number of designs refused, by the limit they break */
  readonly refused: Readonly<Record<string, number>>;
  /** number of designs taken through the year, the study's own among them */
  readonly runs: number;
  /** kWh a year that the coarse mesh moves the own design's saving: smaller differences are not resolved */
  readonly savedResolution: number;
  /** h a year that it moves the own design's hours: smaller differences are not resolved */
  readonly hoursResolution: number;
}

/** What the search is computed from. */
export interface DesignQuestion {
  /** true where it was asked for */
  readonly wanted: boolean;
  /** the store in few slices */
  readonly request: StoreRequest;
  /** tubes section of the study */
  readonly tubes: TubesInputs;
  /** headers section of the study */
  readonly headers: HeadersInputs;
  /** fan section of the study */
  readonly fan: FanInputs;
  /** house section of the study */
  readonly house: HouseInputs;
  /** Pa and degC in the tubes */
  readonly air: { readonly pressure: number; readonly airTemperature: number };
  /** what the worth chapter is computed from */
  readonly worth: WorthRequest;
  /** the study's own year */
  readonly own: DesignYear & {
    /** h a year below the crop's killing limit with the store */
    readonly hours: number;
    /** W of the fans */
    readonly power: number;
  };
}
