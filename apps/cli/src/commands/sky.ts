import { type SkyAt, skyAt, skyRows, sunspots } from "@skipwright/sky";
import { formatPosition, type Position, parsePosition } from "@skipwright/units";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { readText } from "../readText.ts";

export interface SkyFlags {
	readonly at?: string;
	readonly month?: string;
	readonly hour?: string;
	readonly sunspots?: string;
	readonly rows?: string;
	readonly json?: boolean;
}

/** `sky --at` tells the ionosphere over a place; `sky --rows` works foF2 and M(3000)F2 out for every row of a CSV. */
export function skyCommand(context: Context, flags: SkyFlags): Exit {
	if (flags.rows !== undefined) {
		if (flags.at !== undefined) throw new UsageError("cannot take --at and --rows together: expected one of them");
		context.out(skyRows(readText(context, flags.rows), flags.rows));
		return EXIT.ok;
	}
	const { at, month, hour } = flags;
	if (at === undefined || month === undefined || hour === undefined) {
		throw new UsageError("cannot tell the sky: expected --at, --month and --hour, or --rows");
	}
	const position = read("--at", at, parsePosition);
	const utcHour = Number(hour);
	const given = flags.sunspots === undefined ? undefined : Number(flags.sunspots);
	const spots = read("--month and --sunspots", month, (text) => sunspots(text, given));
	const sky = read("--hour", hour, () => skyAt({ position, month, utcHour, r12: spots.r12Old }));
	context.out(flags.json === true ? `${JSON.stringify(sky, null, "\t")}\n` : skyText(position, month, hour, spots.r12Old, sky));
	return EXIT.ok;
}

function skyText(position: Position, month: string, hour: string, r12: number, sky: SkyAt): string {
	const { foF2MHz, m3000F2, foEMHz, dipDeg, modifiedDipDeg, gyroMHz } = sky;
	return [
		`${formatPosition(position)}, ${month}, ${hour} h UTC, sunspot number ${Math.round(r12)} on the old scale: monthly medians`,
		`foF2 ${foF2MHz.toFixed(2)} MHz, M(3000)F2 ${m3000F2.toFixed(2)}, foE ${foEMHz.toFixed(2)} MHz`,
		`field 300 km up: dip ${dipDeg.toFixed(1)} deg, modified dip ${modifiedDipDeg.toFixed(1)} deg, gyrofrequency ${gyroMHz.toFixed(3)} MHz`,
		"",
	].join("\n");
}

function read<T>(flag: string, text: string, reader: (text: string) => T): T {
	try {
		return reader(text);
	} catch (error) {
		throw new UsageError(`cannot take ${flag} ${text}: ${(error as Error).message}`);
	}
}
