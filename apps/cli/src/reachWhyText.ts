import { MEMORY, type MemoryId, type ReachHour, type Signal } from "@skipwright/sky";

/** One hour of one frequency, step by step, for a specialist. */
export function reachWhyText(signal: Signal, hour: ReachHour, basis: readonly MemoryId[]): string {
	const { why } = hour;
	const { sky, noise, sending } = why;
	const need = hour.by === "sky wave" ? sending.skyNeed : sending.groundNeed;
	const lines = [
		`\nWhy ${(signal.fMHz * 1_000).toFixed(1)} kHz ${signal.emission} at ${String(hour.utcHour).padStart(2, "0")}00 UTC`,
		`path: ${Math.round(why.km)} km by the ${why.way} way; basic MUF ${mhz(hour.mufMHz)} (E ${sky.eMufMHz === null ? "none" : mhz(sky.eMufMHz)}, F2 ${mhz(sky.f2MufMHz)}), optimum working frequency ${mhz(hour.optimumMHz)}; a layer carries this on ${percent(hour.supportChance)} of days`,
		...modeLines(hour),
		why.groundFieldDb === null
			? "ground wave: none over land"
			: `ground wave over sea: ${db(why.groundFieldDb)}(uV/m) of 1 kW; chance ${percent(why.groundChance)}`,
		`signal by ${hour.by}: ${db(hour.signalDbw)}W median`,
		`noise: Fa ${db(noise.medianDb)} above kT0b (man-made ${db(noise.parts.manMadeDb)}, atmospheric ${db(noise.parts.atmosphericDb)}${noise.parts.galacticDb === null ? "" : `, galactic ${db(noise.parts.galacticDb)}`}), ${db(hour.noiseDbw)}W in ${need.bandwidthHz} Hz`,
		`ratio ${db(hour.snrDb)} (+${hour.upperDb.toFixed(1)}/-${hour.lowerDb.toFixed(1)} to the deciles) against ${db(hour.neededDb)} needed for ${signal.grade} (${need.source}): chance ${percent(hour.chance)}`,
		`rests on memory or stand-ins: ${basis.map((id) => `${id} [${MEMORY[id].mark}]`).join(", ")}`,
	];
	return lines.join("\n");
}

function modeLines({ why: { sky } }: ReachHour): readonly string[] {
	const modes = sky.modes.map(({ layer, hops, fate, elevationDeg, mirrorKm, mufMHz, losses, share }) => {
		const head = `  ${hops}${layer}: leaves at ${elevationDeg.toFixed(1)} deg, mirror ${Math.round(mirrorKm)} km, MUF ${mhz(mufMHz)}`;
		if (losses === null) return `${head}: ${fate}`;
		const parts = [
			`free space ${losses.freeSpaceDb.toFixed(1)}`,
			`absorption ${losses.absorptionDb.toFixed(1)}`,
			`above the MUF ${losses.aboveMufDb.toFixed(1)}`,
			`ground ${losses.groundDb.toFixed(1)}`,
			`auroral ${losses.auroralDb.toFixed(1)}`,
			`other ${losses.otherDb.toFixed(1)}`,
		];
		return `${head}; loss ${losses.totalDb.toFixed(1)} dB (${parts.join(", ")}); ${percent(share)} of the power`;
	});
	const { long } = sky;
	if (long === null) return modes;
	return [
		...modes,
		`  long-path form: ${long.hops} hops, usable from ${mhz(long.lowestMHz)} to ${mhz(long.highestMHz)}, field ${db(long.fieldDb)}(uV/m) of 1 kW`,
	];
}

function mhz(value: number): string {
	return `${value.toFixed(1)} MHz`;
}

function db(value: number): string {
	return `${value.toFixed(1)} dB`;
}

function percent(value: number): string {
	return `${Math.round(value * 100)} %`;
}
