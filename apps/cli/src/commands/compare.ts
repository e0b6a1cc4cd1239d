import { plannedRows } from "@skipwright/planner";
import { compareLists, type Row, readList } from "@skipwright/set";
import { type Context, EXIT, type Exit } from "../context.ts";
import { jobGiven, plannerFor } from "../planJob.ts";
import { readText } from "../readText.ts";
import { dateGiven, directoryGiven } from "../sources.ts";

export interface CompareFlags {
	readonly job: string;
	readonly planned?: string;
	readonly on?: string;
	readonly shop?: string;
	readonly json?: boolean;
}

/** `compare AS_LEFT.csv --job JOB.json`: the read-back against the plan, place by place; exit 1 when anything differs. */
export async function compareCommand(context: Context, file: string, flags: CompareFlags): Promise<Exit> {
	const resolved = jobGiven(context, flags.job);
	const asLeft = readList(file, readText(context, file), resolved.profile);
	const wanted = await wantedRows();
	const { equal, differences, repeated } = compareLists(wanted, asLeft);
	if (flags.json === true) {
		context.out(`${JSON.stringify({ equal, differences: differences.map(differenceJson), repeated }, null, "\t")}\n`);
	} else {
		for (const { sentence } of repeated) context.out(`${sentence}\n`);
		for (const { faults } of differences) for (const { sentence } of faults) context.out(`${sentence}\n`);
		context.out(`${file}: ${equal} places as planned, ${differences.length} not\n`);
	}
	return differences.length === 0 && repeated.length === 0 ? EXIT.ok : EXIT.found;

	async function wantedRows(): Promise<readonly Row[]> {
		if (flags.planned !== undefined) return readList(flags.planned, readText(context, flags.planned), resolved.profile);
		return plannedRows(await plannerFor(context, directoryGiven(context, flags), dateGiven(context, flags.on))(resolved));
	}
}

type Difference = ReturnType<typeof compareLists>["differences"][number];

function differenceJson({ bank, place, wanted, asLeft, faults }: Difference): object {
	const content = (row: Difference["wanted"]) =>
		row === null ? null : { tag: row.tag, receiveHz: row.receive, transmitHz: row.transmit, mode: row.mode };
	return { bank, place, wanted: content(wanted), asLeft: content(asLeft), faults };
}
