import type { Mode } from "@skipwright/rules";
import type { Finding } from "@skipwright/set";
import type { Hz, IsoDate } from "@skipwright/units";
import type { LeftOut, Want } from "./candidate.ts";
import type { PlaceDay, PlaceService } from "./explain.ts";
import type { ScanBlock } from "./scanBlocks.ts";
import type { Served } from "./served.ts";
import type { UseRun } from "./usePlan.ts";
import type { LegOffWatch } from "./watchOff.ts";

export const PLAN_FORMAT = "skipwright-plan";
export const PLAN_VERSION = 1;

/** One filled place of the layout. */
export interface PlannedPlace {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly receiveHz: Hz;
	/** null: receive only. */
	readonly transmitHz: Hz | null;
	readonly mode: Mode;
	/** Best heard of its listings, or a channel (`ap17/401`) or guard carrier (`guard/2182`); null for something in no list. */
	readonly listing: string | null;
	readonly pinned: boolean;
	/** Not what was found there. */
	readonly changed: boolean;
	/** Name for a person. */
	readonly what: string;
	readonly want: Want | null;
	readonly notes: readonly string[];
	/** Ids of all listings that are heard there; none for a distress carrier, on which nobody makes routine calls. */
	readonly hears: readonly string[];
	/** What it does for the wants, most hours first; empty where no listing tells. */
	readonly serves: readonly PlaceService[];
	readonly day: PlaceDay;
}

/** A leg or stay of the voyage. */
export interface PlannedLeg {
	readonly name: string;
	readonly from: IsoDate;
	readonly days: number;
}

/** Something that would be chosen, or not, if signals were stronger or weaker. */
export interface Swayed {
	readonly listing: string;
	readonly what: string;
}

/** The plan if every signal were so many decibels stronger (below 0: weaker) than predicted. */
export interface PlanLevel {
	readonly db: number;
	/** Hours a day that this layout would give, over the voyage. */
	readonly hours: readonly { readonly want: Want; readonly hoursPerDay: number }[];
	/** How the choice would change. */
	readonly enters: readonly Swayed[];
	readonly leaves: readonly Swayed[];
}

/** Selective calling watch, which is a table inside the set and not places. */
export interface PlannedWatch {
	/** As the job wants it, else as the rule has it; null: the set has no such table. */
	readonly tableHz: readonly Hz[] | null;
	/** What is wrong with the table the job asks for. */
	readonly problems: readonly string[];
	/** When a set with one receiver keeps no watch; null for one with two. */
	readonly off: readonly LegOffWatch[] | null;
}

/** A row of the list as found that is not in the layout any more. */
export interface RemovedRow {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly why: string;
}

/** The layout as data: plan.json. */
export interface Plan {
	readonly format: typeof PLAN_FORMAT;
	readonly version: typeof PLAN_VERSION;
	/** `feasible`: everything that must be held is, and the rest is a good choice; `optimal`: proved best under the model of what a place is worth. */
	readonly status: "optimal" | "feasible" | "infeasible";
	/** How much better a choice can be at most, as a share of its worth less the price of its keys; 0 where proved, null where nothing tells. */
	readonly gap: number | null;
	/** Sum over the wants of weight times share of what could be had, by the hearing named in `basis`. */
	readonly worth: number;
	readonly on: IsoDate;
	/** What the hours rest on. */
	readonly basis: string;
	/** How good the order of the places is known to be: proved under the points of blockProblem.ts, or how many points may be too many, as a share. */
	readonly layout: { readonly status: "optimal" | "feasible"; readonly gap: number | null };
	readonly places: readonly PlannedPlace[];
	/** The blocks of the set, and what it is to scan them. */
	readonly blocks: readonly ScanBlock[];
	readonly legs: readonly PlannedLeg[];
	readonly served: readonly Served[];
	/** What to use when: by want, leg and hours. */
	readonly use: readonly UseRun[];
	readonly watch: PlannedWatch;
	/** How far it rests on the strength of signals; empty where nobody asked. */
	readonly levels: readonly PlanLevel[];
	readonly leftOut: readonly LeftOut[];
	readonly removed: readonly RemovedRow[];
	/** What in the job can hardly be meant, in sentences. */
	readonly doubts: readonly string[];
	/** Why it is infeasible, in words. */
	readonly conflicts: readonly string[];
	/** What the checks say about the layout. */
	readonly findings: readonly Finding[];
}
