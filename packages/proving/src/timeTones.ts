/** Steady tones that standard-time stations send beside their pulses, Hz by station id. */
const TIME_TONES: Readonly<Record<string, readonly number[]>> = {
	// the stations' own descriptions, from memory: 500 and 600 Hz by turns of a minute
	"us-wwv": [500, 600],
	"us-wwvh": [500, 600],
};

/** Hz above its carrier; none for a station of which only pulses are known. */
export function timeTones(stationId: string): readonly number[] {
	return TIME_TONES[stationId] ?? [];
}
