import { hz, parseKhz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DialOptions, dialFor, publishedFor } from "./dial.ts";
import { modesThatReceive } from "./emission.ts";
import { emissionFamily } from "./emissionTable.ts";
import { SERVICE_WORDS } from "./services.ts";
import { type DialConvention, EMISSION_CLASSES, LISTED_MEANS, MODES, type Mode, type Published, type ServiceId } from "./types.ts";

const ALL_CARRIER: DialConvention = {
	USB: { shows: "carrier" },
	LSB: { shows: "carrier" },
	AM: { shows: "carrier" },
	CW: { shows: "carrier" },
	FSK: { shows: "carrier" },
};
const FSK_CENTRE: DialConvention = { ...ALL_CARRIER, FSK: { shows: "centre" } };
const SIDEBANDS_ONLY: DialConvention = { USB: { shows: "carrier" }, LSB: { shows: "carrier" } };
const khz = (text: string) => parseKhz(text);

function dialOf(published: Published, convention: DialConvention, options: DialOptions & { mode?: Mode } = {}) {
	const dial = dialFor(published, convention, options);
	if ("cannot" in dial) throw new Error(dial.cannot);
	return dial;
}
const dialKhz = (published: Published, convention: DialConvention, options: DialOptions & { mode?: Mode } = {}) =>
	dialOf(published, convention, options).dialHz / 1000;

describe("dialFor, text and calls", () => {
	// IMO A.806(19) Part C 1.2: the centre is published; 1700 Hz audio centre from memory of ITU-R M.493 and M.625
	const rows: readonly (readonly [string, string, ServiceId])[] = [
		["490", "488.3", "navtex"],
		["518", "516.3", "navtex"],
		["2174.5", "2172.8", "nbdp-msi"],
		["2187.5", "2185.8", "dsc-watch"],
		["4207.5", "4205.8", "dsc-watch"],
		["4209.5", "4207.8", "navtex"],
		["4210", "4208.3", "nbdp-msi"],
		["6312", "6310.3", "dsc-watch"],
		["6314", "6312.3", "nbdp-msi"],
		["8414.5", "8412.8", "dsc-watch"],
		["8416.5", "8414.8", "nbdp-msi"],
		["12577", "12575.3", "dsc-watch"],
		["12579", "12577.3", "nbdp-msi"],
		["16804.5", "16802.8", "dsc-watch"],
		["16806.5", "16804.8", "nbdp-msi"],
	];

	it.each(rows)("takes the centre %s kHz to %s on USB, and leaves it alone where the mode shows the centre", (centre, usb, service) => {
		const published = { hz: khz(centre), means: "assigned", emission: "F1B", service } as const;
		expect(dialOf(published, SIDEBANDS_ONLY)).toMatchObject({ dialHz: khz(usb), mode: "USB" });
		expect(dialOf(published, FSK_CENTRE)).toMatchObject({ dialHz: khz(centre), mode: "FSK" });
		expect(dialOf({ ...published, hz: khz(usb), means: "dial" }, SIDEBANDS_ONLY).dialHz).toBe(khz(usb));
	});

	it("never takes the offset twice: a figure listed as a dial comes back to the centre on a mode that shows it", () => {
		const published = { hz: khz("516.3"), means: "dial", emission: "F1B", service: "navtex" } as const;
		const dial = dialOf(published, FSK_CENTRE);
		expect(dial.dialHz).toBe(khz("518"));
		expect(dial.why).toContain("no audio offset is taken");
	});

	it("shows the mark tone half the shift below the centre, above it with the sense reversed; DSC and NBDP shift 170 Hz", () => {
		const published = { hz: khz("518"), means: "assigned", emission: "F1B", service: "navtex" } as const;
		const mark = (sense?: "normal" | "reversed"): DialConvention => ({ FSK: { shows: "mark", shiftHz: 450, ...(sense ? { sense } : {}) } });
		expect([dialKhz(published, mark()), dialKhz(published, mark("normal")), dialKhz(published, mark("reversed"))]).toEqual([
			517.915, 517.915, 518.085,
		]);
	});

	it("takes the set's own audio centre over the usual one, and the one asked for over both", () => {
		const published = { hz: khz("8416.5"), means: "assigned", emission: "J2B", service: "nbdp-msi" } as const;
		const own: DialConvention = { USB: { shows: "carrier", audioCentreHz: 1500 } };
		expect([dialKhz(published, own), dialKhz(published, own, { audioCentreHz: 2210 })]).toEqual([8415, 8414.29]);
	});

	it("takes teletype by the decoder's audio centre, 1700 Hz unless told, and says so", () => {
		const published = { hz: khz("10100.8"), means: "centre", emission: "F1B", service: "rtty-weather" } as const;
		expect(dialOf(published, SIDEBANDS_ONLY)).toMatchObject({ dialHz: khz("10099.1"), mode: "USB" });
		expect(dialOf(published, SIDEBANDS_ONLY).why).toContain(
			"1700 Hz below it (the usual audio centre; use the decoder's own where it differs)",
		);
		expect(dialKhz(published, SIDEBANDS_ONLY, { audioCentreHz: 1000 })).toBe(10099.8);
		expect(dialKhz(published, { FSK: { shows: "mark" } })).toBe(10100.575);
		expect(dialKhz(published, { FSK: { shows: "mark" } }, { shiftHz: 850 })).toBe(10100.375);
	});

	it("mirrors the offset on LSB, and calls it second best", () => {
		const dial = dialOf({ hz: khz("518"), means: "assigned", emission: "F1B", service: "navtex" }, SIDEBANDS_ONLY, { mode: "LSB" });
		expect(dial.dialHz).toBe(khz("519.7"));
		expect(dial.why).toContain("LSB is second best: the two tones change places.");
	});
});

describe("dialFor, charts (WMO practice: centre 1900 Hz in the audio)", () => {
	it("tunes 1.9 kHz below the listed centre on USB, 1.9 kHz above it on LSB", () => {
		const published = { hz: khz("8682"), means: "assigned", emission: "F3C", service: "fax" } as const;
		expect(dialOf(published, FSK_CENTRE)).toMatchObject({ dialHz: khz("8680.1"), mode: "USB" });
		expect(dialOf(published, FSK_CENTRE, { mode: "LSB" })).toMatchObject({ dialHz: khz("8683.9") });
		expect(dialOf(published, FSK_CENTRE, { mode: "LSB" }).why).toContain("black and white change places");
	});

	it("is the same for every class of picture, and for a news chart (Japanese figure 3622.5, dial 3620.6)", () => {
		for (const emission of ["F3C", "J3C", "F1C", "J2C"] as const) {
			expect(dialKhz({ hz: khz("3622.5"), means: "assigned", emission }, FSK_CENTRE)).toBe(3620.6);
		}
		expect(dialKhz({ hz: khz("16971"), means: "centre", emission: "F3C", service: "news-broadcast" }, FSK_CENTRE)).toBe(16969.1);
	});

	it("leaves a listed dial or suppressed carrier as it is on USB (some administrations list it: 5855.6 for 5857.5)", () => {
		for (const means of ["dial", "carrier"] as const) {
			expect(dialKhz({ hz: khz("5855.6"), means, emission: "F3C" }, FSK_CENTRE)).toBe(5855.6);
			expect(dialKhz({ hz: khz("5855.6"), means, emission: "F3C" }, FSK_CENTRE, { mode: "FSK" })).toBe(5857.5);
		}
	});

	it("reads a dial listed for the lower sideband the other way round", () => {
		const published = { hz: khz("8683.9"), means: "dial", emission: "F3C", sideband: "lower" } as const;
		expect([dialKhz(published, FSK_CENTRE), dialKhz(published, FSK_CENTRE, { mode: "LSB" })]).toEqual([8680.1, 8683.9]);
	});
});

describe("dialFor, speech and Morse", () => {
	it("shows the carrier; assigned and centre lie 1.4 kHz above it (RR Ap17 Part A: 4066.4 for 4065), below on a lower sideband", () => {
		const speech = (text: string, means: Published["means"], sideband?: "lower") =>
			dialOf({ hz: khz(text), means, emission: "J3E", ...(sideband ? { sideband } : {}) }, ALL_CARRIER);
		expect(speech("4065", "carrier")).toMatchObject({ dialHz: khz("4065"), mode: "USB" });
		expect(speech("4066.4", "assigned").dialHz).toBe(khz("4065"));
		expect(speech("4066.4", "centre").dialHz).toBe(khz("4065"));
		expect(speech("4065", "dial").dialHz).toBe(khz("4065"));
		expect(speech("8828.6", "assigned", "lower")).toMatchObject({ dialHz: khz("8830"), mode: "LSB" });
	});

	it("takes 2182 and 8291 as they are (common practice, no source)", () => {
		for (const text of ["2182", "8291"])
			expect(dialKhz({ hz: khz(text), means: "carrier", emission: "J3E" }, ALL_CARRIER)).toBe(Number(text));
	});

	it("takes double sideband on AM, full-carrier single sideband on USB or else AM, Morse on CW", () => {
		const mode = (emission: Published["emission"], convention: DialConvention) =>
			dialOf({ hz: khz("5000"), means: "carrier", emission }, convention).mode;
		expect(mode("A3E", ALL_CARRIER)).toBe("AM");
		expect(mode("H3E", ALL_CARRIER)).toBe("USB");
		expect(mode("H3E", { AM: { shows: "carrier" } })).toBe("AM");
		expect(mode("A1A", ALL_CARRIER)).toBe("CW");
		expect(mode("A3E", SIDEBANDS_ONLY)).toBe("USB");
	});

	it("leaves AM and Morse as they are; CW with a pitch shows carrier minus pitch", () => {
		const morse = { hz: khz("5000"), means: "carrier", emission: "A1A" } as const;
		expect(dialKhz({ ...morse, emission: "A3E" }, ALL_CARRIER)).toBe(5000);
		expect(dialKhz(morse, ALL_CARRIER)).toBe(5000);
		expect(dialKhz(morse, { CW: { shows: "carrier", pitchHz: 700 } })).toBe(4999.3);
		expect(dialKhz(morse, { CW: { shows: "carrier", pitchHz: 700 } }, { pitchHz: 0 })).toBe(5000);
		expect(dialKhz(morse, SIDEBANDS_ONLY, { pitchHz: 1000 })).toBe(4999);
	});

	it("says why no dial does it", () => {
		const j3e = { hz: khz("8291"), means: "carrier", emission: "J3E" } as const;
		expect(dialFor(j3e, ALL_CARRIER, { mode: "AM" })).toEqual({
			cannot: "AM cannot receive J3E (speech, single sideband, carrier suppressed); USB can.",
		});
		expect(dialFor(j3e, { AM: { shows: "carrier" } })).toEqual({
			cannot: "J3E (speech, single sideband, carrier suppressed) needs USB, and the set has AM.",
		});
		expect(dialFor(j3e, SIDEBANDS_ONLY, { mode: "FSK" })).toEqual({ cannot: "The set has no FSK; it has USB, LSB." });
		expect(dialFor({ hz: khz("1"), means: "centre", emission: "F3C" }, SIDEBANDS_ONLY)).toMatchObject({
			cannot: expect.stringContaining("would lie at -900 Hz"),
		});
	});
});

const display = fc.record(
	{
		shows: fc.constantFrom("carrier" as const, "centre" as const, "mark" as const),
		audioCentreHz: fc.double({ min: 300, max: 3000, noNaN: true }),
		shiftHz: fc.double({ min: 1, max: 1000, noNaN: true }),
		sense: fc.constantFrom("normal" as const, "reversed" as const),
		sideband: fc.constantFrom("upper" as const, "lower" as const),
		pitchHz: fc.double({ min: 0, max: 1500, noNaN: true }),
	},
	{ requiredKeys: ["shows"] },
);
const convention = fc.record(Object.fromEntries(MODES.map((mode) => [mode, display])), {
	requiredKeys: [],
}) as fc.Arbitrary<DialConvention>;
const options = fc.record(
	{
		audioCentreHz: fc.double({ min: 300, max: 3000, noNaN: true }),
		pitchHz: fc.double({ min: 0, max: 1500, noNaN: true }),
		shiftHz: fc.double({ min: 1, max: 1000, noNaN: true }),
	},
	{ requiredKeys: [] },
);
const published = fc.record(
	{
		hz: fc.integer({ min: 10_000, max: 30_000_000 }).map(hz),
		means: fc.constantFrom(...LISTED_MEANS),
		emission: fc.constantFrom(...EMISSION_CLASSES),
		service: fc.constantFrom(...(Object.keys(SERVICE_WORDS) as ServiceId[])),
		sideband: fc.constantFrom("upper" as const, "lower" as const),
	},
	{ requiredKeys: ["hz", "means", "emission"] },
);

describe("there and back", () => {
	it("is the identity for every emission, means, service, sideband, convention, option and mode that has a dial", () => {
		let dials = 0;
		fc.assert(
			fc.property(
				published,
				convention,
				options,
				fc.option(fc.constantFrom(...MODES), { nil: undefined }),
				(listing, set, wishes, mode) => {
					const dial = dialFor(listing, set, { ...wishes, mode });
					if ("cannot" in dial) return;
					dials++;
					expect(publishedFor(dial.dialHz, dial.mode, listing, set, wishes)).toBe(listing.hz);
					expect(dial.why).toMatch(/^[^a-z].* kHz.*\.$/);
				},
			),
			{ seed: 10, numRuns: 3000 },
		);
		expect(dials).toBeGreaterThan(1000);
	});

	it("is the identity for every combination on a usual set, counted", () => {
		let dials = 0;
		for (const emission of EMISSION_CLASSES) {
			for (const means of LISTED_MEANS) {
				for (const sideband of ["upper", "lower"] as const) {
					const { right, poor } = modesThatReceive(emission, sideband);
					for (const mode of [...right, ...poor]) {
						const listing = { hz: khz("8682"), means, emission, sideband };
						const dial = dialOf(listing, FSK_CENTRE, { mode });
						expect(publishedFor(dial.dialHz, mode, listing, FSK_CENTRE)).toBe(listing.hz);
						dials++;
					}
				}
			}
		}
		expect(dials).toBe(4 * 2 * 32); // means, sidebands, modes that receive each class
	});

	it("leads back from a dial in a mode that cannot receive the emission too, so that a list can be matched", () => {
		const j3e = { means: "carrier", emission: "J3E" } as const;
		expect(publishedFor(khz("8291"), "AM", j3e, ALL_CARRIER)).toBe(khz("8291"));
		const chart = { means: "assigned", emission: "F3C" } as const;
		expect(publishedFor(khz("8682"), "CW", chart, ALL_CARRIER)).toBe(khz("8682"));
		expect(publishedFor(khz("8682"), "FSK", chart, {})).toBe(khz("8682"));
	});

	it("never throws, whatever the dial", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 1_000_000_000 }),
				published,
				convention,
				options,
				fc.constantFrom(...MODES),
				(dial, listing, set, wishes, mode) => {
					expect(publishedFor(hz(dial), mode, listing, set, wishes)).toBeGreaterThanOrEqual(0);
				},
			),
			{ seed: 11, numRuns: 1000 },
		);
	});

	it("has a family for every class", () => {
		expect(EMISSION_CLASSES.map(emissionFamily)).toHaveLength(13);
	});
});
