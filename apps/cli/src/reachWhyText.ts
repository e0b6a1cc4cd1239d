import { MEMORY, type MemoryId, type ModeWhy, type ReachHour, type Signal } from "@skipwright/sky";
import { formatKhz, hz } from "@skipwright/units";
import { percent } from "./reachText.ts";

/** Modes that bring less than this of the power are only counted. */
const LEAST_SHARE = 0.005;
const OF_THE_REST = {
	counts: `under ${LEAST_SHARE * 100} % of the power each`,
	screened: "screened too",
	"too low": "too low too",
} as const;
/** dB(uV/m) of 1 kW under which a ground wave is nothing. */
const LEAST_GROUND_DB = -60;

/** One hour of one frequency, step by step, for a specialist. */
export function reachWhyText(signal: Signal, hour: ReachHour, basis: readonly MemoryId[]): string {
	const { why } = hour;
	const { sky, noise } = why;
	const isGround = hour.by === "ground wave";
	const need = isGround ? why.sending.groundNeed : why.sending.skyNeed;
	const radiatedDbw = why.sending.skyPowerDbw + why.sending.skyNeed.belowRatedDb;
	const lines = [
		`\nWhy ${formatKhz(hz(Math.round(signal.fMHz * 1_000_000)))} kHz ${signal.emission} at ${String(hour.utcHour).padStart(2, "0")}00 UTC`,
		`path: ${Math.round(why.km)} km by the ${why.way} way; basic MUF ${mhz(hour.mufMHz)} (E ${sky.eMufMHz === null ? "none" : mhz(sky.eMufMHz)}, F2 ${mhz(sky.f2MufMHz)}), optimum working frequency ${mhz(hour.optimumMHz)}; a layer carries this on ${percent(hour.supportChance)} of days`,
		`sent: ${dbw(radiatedDbw)} radiated by the rated power${need.belowRatedDb === 0 ? "" : `, of which ${dbw(radiatedDbw - need.belowRatedDb)} counts, ${need.power} power`}`,
		...modeLines(hour),
		`sky wave: ${db(sky.pathDb)} from power radiated to the receiver's aerial, both aerials' gains counted: ${dbw(why.sending.skyPowerDbw + sky.pathDb)}; chance ${percent(why.skyChance)}`,
		groundLine(hour),
		`noise: Fa ${db(noise.medianDb)} above kT0b (${noiseParts(hour)}), ${dbw(hour.noiseDbw)} in ${need.bandwidthHz} Hz`,
		`by ${hour.by}: ${dbw(hour.signalDbw)} median, ratio ${db(hour.snrDb)} (+${hour.upperDb.toFixed(1)}/-${hour.lowerDb.toFixed(1)} to the deciles) against ${db(need.snrDb)} needed for ${signal.grade} (${need.source}): chance ${percent(hour.chance)}`,
		`rests on memory [M] or stand-ins [own]: ${basis.map((id) => `${id} [${MEMORY[id].mark}]`).join(", ")}`,
	];
	return lines.join("\n");
}

function groundLine({ why: { groundFieldDb, groundChance } }: ReachHour): string {
	if (groundFieldDb === null) return "ground wave: none over land";
	if (groundFieldDb <= LEAST_GROUND_DB) return "ground wave: nothing at this distance";
	return `ground wave over sea: ${groundFieldDb.toFixed(1)} dB(uV/m) of 1 kW; chance ${percent(groundChance)}`;
}

function noiseParts({ why: { noise } }: ReachHour): string {
	const { manMadeDb, atmosphericDb, galacticDb, receiverDb } = noise.parts;
	const parts = { "man-made": manMadeDb, atmospheric: atmosphericDb, galactic: galacticDb, "the receiver's own": receiverDb };
	return Object.entries(parts)
		.flatMap(([name, level]) => (level === null ? [] : [`${name} ${db(level)}`]))
		.join(", ");
}

function modeLines({ why: { sky } }: ReachHour): readonly string[] {
	const isTold = ({ fate, share }: ModeWhy, index: number) =>
		fate === "counts" ? share >= LEAST_SHARE : sky.modes.findIndex((mode) => mode.fate === fate) === index; // the first of its fate stands for all
	const told = sky.modes.filter(isTold).map(modeLine);
	for (const [fate, words] of Object.entries(OF_THE_REST)) {
		const rest = sky.modes.filter((mode, index) => mode.fate === fate && !isTold(mode, index));
		if (rest.length > 0) told.push(`  ${rest.map(({ hops, layer }) => `${hops}${layer}`).join(", ")}: ${words}`);
	}
	const { long } = sky;
	if (long === null) return told;
	const mixed = sky.nearDb === null ? "" : ", mixed with the modes by distance";
	return [
		...told,
		`  long-path form: ${long.hops} hops, usable from ${mhz(long.lowestMHz)} to ${mhz(long.highestMHz)}, field ${long.fieldDb.toFixed(1)} dB(uV/m) of 1 kW${mixed}`,
	];
}

function modeLine({ layer, hops, fate, elevationDeg, mirrorKm, mufMHz, screeningMHz, losses, share }: ModeWhy): string {
	const head = `  ${hops}${layer}: leaves at ${elevationDeg.toFixed(1)} deg, mirror ${Math.round(mirrorKm)} km, MUF ${mhz(mufMHz)}`;
	if (fate === "too low") return `${head}: too low, under ${MEMORY.lowestElevation.value} deg`;
	if (fate === "screened" || losses === null) return `${head}: screened by the E layer up to ${mhz(screeningMHz ?? 0)}`;
	const parts = [
		`free space ${losses.freeSpaceDb.toFixed(1)}`,
		`absorption ${losses.absorptionDb.toFixed(1)}`,
		`above the MUF ${losses.aboveMufDb.toFixed(1)}`,
		`ground ${losses.groundDb.toFixed(1)}`,
		`auroral ${losses.auroralDb.toFixed(1)}`,
		`other ${losses.otherDb.toFixed(1)}`,
	];
	return `${head}; loss ${db(losses.totalDb)} (${parts.join(", ")}); ${percent(share)} of the power`;
}

function mhz(value: number): string {
	return `${value.toFixed(1)} MHz`;
}

function db(value: number): string {
	return `${value.toFixed(1)} dB`;
}

function dbw(value: number): string {
	return `${value.toFixed(1)} dBW`;
}
