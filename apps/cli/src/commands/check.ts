import { checkList, readList } from "@skipwright/set";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { findingsText } from "../findingsText.ts";
import { countText } from "../paint.ts";
import { readText } from "../readText.ts";
import { dateGiven, directoryGiven, profileGiven, regionGiven } from "../sources.ts";

export interface CheckFlags {
	readonly set: string;
	readonly on?: string;
	readonly own?: string;
	readonly shop?: string;
	readonly region?: string;
	readonly licence?: string;
	readonly json?: boolean;
}

/** `check LIST.csv --set PROFILE`: every finding over a list of places; exit 1 when a stop or a fix is among them. */
export function checkCommand(context: Context, file: string, flags: CheckFlags): Exit {
	const profile = profileGiven(context, flags.set);
	const rows = readList(file, readText(context, file), profile);
	const on = dateGiven(context, flags.on);
	const findings = checkList(rows, {
		profile,
		directory: directoryGiven(context, flags),
		on,
		region: regionGiven(flags.region),
		amateurLicence: licenceGiven(flags.licence),
	});
	const isBad = findings.some(({ severity }) => severity !== "mind");
	if (flags.json === true) {
		context.out(`${JSON.stringify({ findings }, null, "\t")}\n`);
	} else {
		context.out(findingsText(findings, context.colour));
		context.out(`${file}: ${rows.length} places on ${profile.id}, ${on}: ${countText(findings)}\n`);
	}
	return isBad ? EXIT.found : EXIT.ok;
}

function licenceGiven(text: string | undefined): boolean {
	if (text === undefined || text === "amateur") return text === "amateur";
	throw new UsageError(`cannot take --licence ${text}: expected amateur (a ship licence is taken as given)`);
}
