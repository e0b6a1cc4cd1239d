import type { Directory } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { Plan } from "@skipwright/planner";
import type { Profile } from "@skipwright/set";
import type { DayInWords } from "./placeReason.ts";
import type { ReachGrade } from "./reachGrades.ts";

/** What the page of a plan is made from. */
export interface PlanPage {
	readonly plan: Plan;
	readonly jobTitle: string;
	readonly vessel: { readonly name: string; readonly callSign: string | null; readonly mmsi: string | null };
	readonly profile: Profile;
	/** As in force for the job, the owner's own listings in it. */
	readonly directory: Directory;
	/** Dated positions along the voyage: when it is night aboard. */
	readonly samples: readonly VoyageSample[];
	/** Words for a day of chances. */
	readonly words: DayInWords;
	/** Words for chances, best first, down to one from 0. */
	readonly grades: readonly ReachGrade[];
}
