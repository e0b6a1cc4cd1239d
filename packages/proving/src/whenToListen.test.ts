import { directory, listingById } from "@skipwright/directory";
import { profileNamed } from "@skipwright/set";
import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Broadcast, broadcastsOf, isOnAir } from "./broadcastsOf.ts";
import type { Expectation } from "./expectation.ts";
import { expectationOf } from "./expectationOf.ts";
import { bandOf, type ListeningQuestion, type PlaceToProve, whenToListen } from "./whenToListen.ts";

const HOUR = 3_600_000;
const FROM = Date.UTC(2027, 1, 1);

function expected(id: string): Expectation {
	const found = expectationOf(listingById(directory(), id)!, directory(), profileNamed("twin-180")!);
	if ("cannot" in found) throw new Error(found.cannot);
	return found;
}

const MODELS = [
	"navtex-capetown/navtex/518",
	"us-pointreyes/fax/8682",
	"de-pinneberg/rtty-weather/10100.8",
	"za-capetown/voice-weather/8719",
	"us-wwv/time-signal/10000",
].map(expected);

function places(expectations: readonly (readonly Expectation[])[]): readonly PlaceToProve[] {
	return expectations.map((own, i) => ({ bank: "data", place: i + 1, tag: `P${i + 1}`, expectations: own }));
}

const at = (fromHour: number, toHour: number): Broadcast => ({
	fromMs: FROM + fromHour * HOUR,
	toMs: FROM + toHour * HOUR,
	product: "",
	doubt: "",
});

function question(
	own: readonly PlaceToProve[],
	broadcasts: Readonly<Record<string, readonly Broadcast[]>>,
	change: Partial<ListeningQuestion> = {},
): ListeningQuestion {
	return { places: own, broadcasts: (id) => broadcasts[id] ?? [], reach: () => 0.9, fromMs: FROM, hours: 48, lonDeg: 0, ...change };
}

/** Minutes: one NAVTEX slot, a chart's phasing and first lines, half a minute of tone by each turn of a minute. */
const LEAST_MIN: Readonly<Record<string, number>> = { text: 10, teletype: 10, chart: 12, voice: 5, tone: 3 };

describe("whenToListen", () => {
	it("is what one person with one receiver can do, whatever is sent when", () => {
		const broadcast = fc
			.tuple(fc.integer({ min: -60, max: 16 * 1_440 }), fc.constantFrom(3, 5, 10, 15, 60, 300, 1_440))
			.map(
				([start, length]): Broadcast => ({ fromMs: FROM + start * 60_000, toMs: FROM + (start + length) * 60_000, product: "", doubt: "" }),
			);
		const station = fc.record({
			model: fc.constantFrom(...MODELS),
			mhz: fc.integer({ min: 2, max: 22 }),
			broadcasts: fc.array(broadcast, { maxLength: 8 }),
			byHour: fc.array(fc.constantFrom(null, 0, 0.1, 0.3, 0.5, 0.7, 0.95), { minLength: 24, maxLength: 24 }),
		});
		let [listened, left, keys, empty] = [0, 0, 0, 0];
		fc.assert(
			fc.property(
				fc.array(fc.array(station, { maxLength: 3 }), { maxLength: 12 }),
				fc.integer({ min: 1, max: 72 }),
				fc.integer({ min: -180, max: 179 }),
				(made, hours, lonDeg) => {
					const stations = new Map<string, (typeof made)[number][number]>();
					const own = places(
						made.map((of, p) =>
							of.map((one, s) => {
								stations.set(`s${p}/${s}`, one);
								return { ...one.model, listing: `s${p}/${s}`, hz: hz(one.mhz * 1_000_000) };
							}),
						),
					);
					const asked: ListeningQuestion = {
						places: own,
						broadcasts: (id) => stations.get(id)!.broadcasts,
						reach: (id, ms) => stations.get(id)!.byHour[Math.floor(ms / HOUR) % 24]!,
						fromMs: FROM,
						hours,
						lonDeg,
					};
					const { agenda, rest } = whenToListen(asked);
					expect([...agenda, ...rest].map(({ place }) => place).sort((a, b) => a - b)).toEqual(own.map(({ place }) => place));
					for (const [i, one] of agenda.entries()) {
						if (i > 0) expect(one.fromMs).toBeGreaterThanOrEqual(agenda[i - 1]!.toMs + 3 * 60_000);
						expect(one.fromMs).toBeGreaterThanOrEqual(FROM);
						expect(one.toMs).toBeLessThanOrEqual(FROM + hours * HOUR);
						expect(one.toMs).toBeGreaterThan(one.fromMs);
						const sent = asked.broadcasts(one.expectation.listing);
						// within a sending, and long enough for a whole item or the whole of the sending
						const least = LEAST_MIN[one.expectation.kind]! * 60_000;
						const isWhole = ({ fromMs, toMs }: Broadcast) => one.toMs - one.fromMs >= Math.min(least, toMs - fromMs);
						expect(sent.some((each) => each.fromMs <= one.fromMs && each.toMs >= one.toMs && isWhole(each))).toBe(true);
						expect(own[one.place - 1]!.expectations).toContain(one.expectation);
						expect(one.chance).toBe(asked.reach(one.expectation.listing, (one.fromMs + one.toMs) / 2));
						expect(one.chance).toBeGreaterThanOrEqual(0.45);
						const sunHour = (((one.fromMs / HOUR + lonDeg / 15) % 24) + 24) % 24;
						if (!one.isKey) expect(sunHour >= 6 && sunHour < 22).toBe(true); // nobody is got up for what is not needed
					}
					// the keys bring what the others only bring again
					const tellable = agenda.filter(({ expectation: { kind, tonesHz } }) => kind !== "tone" || tonesHz.length > 0);
					const key = tellable.filter(({ isKey }) => isKey);
					for (const { expectation } of tellable) {
						expect(key.some((other) => other.expectation.kind === expectation.kind)).toBe(true);
						expect(key.some((other) => bandOf(other.expectation) === bandOf(expectation))).toBe(true);
					}
					for (const { why, atMs } of rest) if (why === "later") expect(atMs).toBeGreaterThanOrEqual(FROM);
					listened += agenda.length;
					left += rest.length;
					keys += key.length;
					if (agenda.length === 0) empty++;
					expect(whenToListen(asked)).toEqual({ agenda, rest });
				},
			),
			{ seed: 20_261_127, numRuns: 400 },
		);
		expect(Math.min(listened, left, keys)).toBeGreaterThan(250);
		expect(empty).toBeLessThan(250);
	});

	const [navtex, chart, , voice] = MODELS as [Expectation, Expectation, Expectation, Expectation];

	it("takes the surer of two hours, and puts off what is sent at the same time", () => {
		const own = places([[navtex], [chart], [voice]]);
		const broadcasts = {
			[navtex.listing]: [at(8, 8.2), at(12, 12.2)],
			[chart.listing]: [at(12, 12.5), at(16, 16.5)],
			[voice.listing]: [at(12, 12.5)],
		};
		const byHour: Record<string, number> = { 8: 0.6, 12: 0.9, 16: 0.7 };
		const { agenda, rest } = whenToListen(question(own, broadcasts, { reach: (_, ms) => byHour[new Date(ms).getUTCHours()]! }));
		// each place has one time that no other needs: at 12 the voice, which has no other
		expect(agenda.map(({ place, fromMs }) => [place, new Date(fromMs).getUTCHours()])).toEqual([
			[1, 8],
			[3, 12],
			[2, 16],
		]);
		expect(rest).toEqual([]);
	});

	it("prefers the day: an hour by night must be surer by a quarter", () => {
		const own = places([[navtex]]);
		const broadcasts = { [navtex.listing]: [at(2, 2.2), at(12, 12.2)] };
		const hourOf = (night: number) => {
			const reach = (_: string, ms: number) => (new Date(ms).getUTCHours() === 2 ? night : 0.6);
			return new Date(whenToListen(question(own, broadcasts, { reach })).agenda[0]!.fromMs).getUTCHours();
		};
		expect([hourOf(0.84), hourOf(0.86)]).toEqual([12, 2]);
	});

	it("says of each place left why, and when to come back", () => {
		const watch = expected("za-capetown/voice-working/8779");
		const unknown: Expectation = { ...voice, listing: "unknown", times: { known: "cannot-tell", published: "unknown" } };
		const later: Expectation = { ...voice, listing: "later" };
		const deaf: Expectation = { ...voice, listing: "deaf" };
		const poor: Expectation = { ...voice, listing: "poor" };
		const placeless: Expectation = { ...voice, listing: "placeless" };
		const never: Expectation = { ...voice, listing: "never" };
		const own = places([[], [watch], [unknown], [later], [deaf], [poor], [placeless], [never]]);
		const broadcasts = {
			later: [at(24 * 9 + 10, 24 * 9 + 10.5)],
			deaf: [at(10, 10.5)],
			poor: [at(10, 10.5), at(20, 20.5)],
			placeless: [at(5, 5.5)],
		};
		const reach = (id: string, ms: number) =>
			id === "placeless" ? null : id === "deaf" ? 0.05 : id === "poor" ? (ms > FROM + 15 * HOUR ? 0.3 : 0.2) : 0.9;
		const { agenda, rest } = whenToListen(question(own, broadcasts, { reach }));
		expect(agenda).toEqual([]);
		expect(rest.map(({ why, atMs }) => [why, atMs === null ? null : (atMs - FROM) / HOUR])).toEqual([
			["no listing", null],
			["by a call", null],
			["times not known", null],
			["later", 24 * 9 + 10],
			["not heard here", null],
			["poor", 20],
			["reach not known", 5],
			["silent", null],
		]);
		expect(rest[4]!.sentence).toBe("Cannot be heard here (5 % at best): prove it under way.");
	});

	it("leaves what there is no room for to be taken in place of another", () => {
		const twin: Expectation = { ...voice, listing: "twin" };
		const broadcasts = { [voice.listing]: [at(12, 12.1)], twin: [at(12, 12.1)] };
		const { agenda, rest } = whenToListen(question(places([[voice], [twin]]), broadcasts));
		expect(agenda.map(({ place }) => place)).toEqual([1]);
		expect(rest).toMatchObject([{ place: 2, why: "no room", atMs: FROM + 12 * HOUR }]);
	});
});

describe("broadcastsOf", () => {
	const listing = (id: string) => listingById(directory(), id)!;
	const hours = (broadcasts: readonly Broadcast[]) => broadcasts.map(({ fromMs, toMs }) => [(fromMs - FROM) / HOUR, (toMs - FROM) / HOUR]);

	it("gives the six slots of a NAVTEX letter, and what runs over midnight", () => {
		// C: 20 minutes after 0000, 0400 ... ten minutes long (IMO NAVTEX Manual, from memory)
		const third = 1 / 3;
		expect(hours(broadcastsOf(directory(), listing("navtex-capetown/navtex/518"), FROM, FROM + 24 * HOUR)).map(([from]) => from)).toEqual(
			[0, 4, 8, 12, 16, 20].map((hour) => hour + third),
		);
		const kodiak = broadcastsOf(directory(), listing("us-kodiak/fax/4298"), FROM, FROM + 2 * HOUR);
		expect(hours(kodiak.filter(({ product }) => product === ""))).toEqual([[-2 - 1 / 6, 0.5]]);
	});

	it("names the chart where a timetable does", () => {
		const named = broadcastsOf(directory(), listing("us-pointreyes/fax/8682"), FROM, FROM + 24 * HOUR).filter(
			({ product }) => product !== "",
		);
		expect(named.length).toBeGreaterThan(10);
	});

	it("knows what was on the air, and where nobody can know", () => {
		const one = broadcastsOf(directory(), listing("navtex-capetown/navtex/518"), FROM + 4.4 * HOUR, FROM + 4.45 * HOUR);
		const none = broadcastsOf(directory(), listing("navtex-capetown/navtex/518"), FROM + 5 * HOUR, FROM + 6 * HOUR);
		expect([isOnAir(one, "timed"), isOnAir(none, "timed"), isOnAir(none, "cannot-tell"), isOnAir([], "off")]).toEqual([
			true,
			false,
			null,
			false,
		]);
		expect(isOnAir(broadcastsOf(directory(), listing("us-wwv/time-signal/10000"), FROM, FROM + HOUR), "continuous")).toBe(true);
	});
});
