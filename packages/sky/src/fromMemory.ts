/**
 * Every constant of this package that rests on memory: nobody has yet held it against the printed page. Code takes the values from
 * here, and an answer's basis lists the `id`s that moved it, so that a reader knows what to doubt first.
 *
 * Marks: `M` a Recommendation's or another standard's figure as remembered; `own` a stand-in of this project, where the published
 * table could not be had or none exists. Figures read in a published text stand beside the code that uses them instead.
 */
export interface FromMemory {
	readonly id: string;
	readonly mark: "M" | "own";
	/** What it is, whose it would be, and how far off it may be. */
	readonly what: string;
	readonly unit: string;
	readonly value: unknown;
}

export const MEMORY = {
	// ---- ground wave ----
	groundConstants: {
		id: "groundConstants",
		mark: "M",
		what: "Conductivity and relative permittivity of dry and very dry ground, fresh water and sea of low salinity, after ITU-R P.368",
		unit: "S/m and 1",
		value: { dry: [3e-4, 7], veryDry: [1e-4, 3], freshWater: [0.003, 80], lowSalinitySea: [1, 80] },
	},
	mixedPath: {
		id: "mixedPath",
		mark: "M",
		what: "Field over land and sea in turn: forward and reverse sums of the curves, and their mean in dB, after ITU-R P.368 Annex 2",
		unit: "rule",
		value: "mean of forward and reverse",
	},
	seaAreaA2: {
		id: "seaAreaA2",
		mark: "M",
		what: "IMO A.801(19) Annex 3 for 2182 kHz, beside `safetySpeech`: ship's peak power, aerial's efficiency, margin for fading",
		unit: "W; 1; dB",
		value: { peakW: 60, efficiency: 0.25, fadingMarginDb: 3 },
	},
	// ---- noise ----
	noiseField: {
		id: "noiseField",
		mark: "M",
		what: "Constant of ITU-R P.372 between noise above kT0b and field at a short vertical monopole over perfect ground",
		unit: "dB(uV/m) at 1 MHz and 1 Hz",
		value: -95.5,
	},
	manMadeNoise: {
		id: "manMadeNoise",
		mark: "M",
		what: "Median man-made noise c - d log10(f / MHz), 0.3-30 MHz, its deciles in time and its spread (1 sigma) from site to site, ITU-R P.372",
		unit: "dB above kT0b; dB",
		value: {
			city: { c: 76.8, d: 27.7, upperDecile: 11, lowerDecile: 6.7, siteSigma: 8.4 },
			residential: { c: 72.5, d: 27.7, upperDecile: 10.6, lowerDecile: 5.3, siteSigma: 5.8 },
			rural: { c: 67.2, d: 27.7, upperDecile: 9.2, lowerDecile: 4.6, siteSigma: 6.8 },
			quietRural: { c: 53.6, d: 28.6, upperDecile: 9.2, lowerDecile: 4.6, siteSigma: 6.8 }, // spreads: those of rural
		},
	},
	manMadeClassOf: {
		id: "manMadeClassOf",
		mark: "own",
		what: "Class of man-made noise that stands in for a vessel at work, a quiet vessel and a coast station; no table has ships",
		unit: "class",
		value: { vessel: "residential", quietVessel: "rural", coastStation: "rural" },
	},
	galacticNoise: {
		id: "galacticNoise",
		mark: "M",
		what: "Median noise of the galaxy c - d log10(f / MHz) where it comes through the ionosphere, and its deciles, ITU-R P.372",
		unit: "dB above kT0b; dB",
		value: { c: 52, d: 23, upperDecile: 2, lowerDecile: 2 },
	},
	atmosphericLevels: {
		id: "atmosphericLevels",
		mark: "own",
		what: "Coarse world model of atmospheric noise at 1 MHz, shaped on remembered levels of ITU-R P.372's charts: within 10 dB or so",
		unit: "dB above kT0b; degrees",
		value: {
			stormLatitude: 8, // of the thunderstorms' middle in July; as far south in January
			// by four hours of local time from 00-04 on: at the thunderstorms, at 90 degrees from them, local season's swing
			blocks: [
				[85, 40, 4],
				[78, 34, 4],
				[62, 12, 4],
				[70, 14, 7],
				[80, 28, 7],
				[87, 40, 5],
			],
			// degrees north and east
			centres: [
				[-5, -60],
				[5, 20],
				[0, 110],
				[25, -85],
			],
			centreDb: 6,
			quietZones: [
				[-20, -120],
				[-30, -15],
				[25, -150],
			],
			quietZoneDb: -4,
			zoneRadius: 25,
			halfPolewardOf: 50,
			localTimeFadesPolewardOf: 80, // to the mean of the day at the pole, where all hours meet
		},
	},
	atmosphericByFrequency: {
		id: "atmosphericByFrequency",
		mark: "own",
		what: "Fall of atmospheric noise with frequency, by night and by day, from its level at 1 MHz; and its deciles",
		unit: "dB; at 10 MHz dB above kT0b",
		value: {
			night: { at10MHz: 34, slope: 0.33, around: 60, dip: 0, perDecadeAbove: 55, upperDecile: 8, lowerDecile: 6 },
			day: { at10MHz: 30, slope: 0.2, around: 40, dip: 32, perDecadeAbove: 40, upperDecile: 11, lowerDecile: 8 },
		},
	},
	noiseCombination: {
		id: "noiseCombination",
		mark: "M",
		what: "Sum of noises as of log-normal powers, capped by the sum of their medians, ITU-R P.372",
		unit: "rule",
		value: "log-normal",
	},
	receiverNoise: {
		id: "receiverNoise",
		mark: "own",
		what: "Noise figure of a marine receiver with its tuner and cable",
		unit: "dB",
		value: 15,
	},
	// ---- need ----
	requiredSnr: {
		id: "requiredSnr",
		mark: "M",
		what:
			"Required signal to noise in 1 Hz, each within 2 dB, no diversity, as [stable, fading], ITU-R F.339; the signal's peak power (for " +
			"telephony of one sideband) or its steady power. One figure where the Recommendation has one for all grades",
		unit: "dB Hz",
		value: {
			telephony: { bandwidthHz: 3000, justUsable: [47, 48], marginal: [56, 64], good: [64, 72] },
			morse: { bandwidthHz: 500, justUsable: [31, 38], marginal: [31, 38], good: [31, 38] },
			keyed100: { bandwidthHz: 300, justUsable: [43, 52], marginal: [43, 52], good: [43, 52] },
			keyed50: { bandwidthHz: 250, justUsable: [39, 53], marginal: [41, 63], good: [42, 74] }, // stable 39 and 42: by the textbook error curve from 41
			facsimile: { bandwidthHz: 1100, justUsable: [50, 58], marginal: [58, 65], good: [66, 73] }, // good: as far above marginal as in telephony
		},
	},
	safetySpeech: {
		id: "safetySpeech",
		mark: "M",
		what: "S/N in 3 kHz that IMO A.801(19) asks of speech on 2182 kHz, of mean power 8 dB under peak; a handbook's least for one sideband too",
		unit: "dB",
		value: { snrDb: 9, bandwidthHz: 3000, meanBelowPeakDb: 8 },
	},
	otherTelephony: {
		id: "otherTelephony",
		mark: "own",
		what: "Peak power that full (H3E) and reduced (R3E) carrier cost against none, from their carriers 6 and 18 dB under peak",
		unit: "dB",
		value: { H3E: 6, R3E: 1 },
	},
	keyedSafetyFading: {
		id: "keyedSafetyFading",
		mark: "own",
		what: "What fading adds to IMO's S/N for NAVTEX by ground wave: the difference of ITU-R F.339's two columns",
		unit: "dB",
		value: 9,
	},
	// ---- antennas ----
	shortVertical: {
		id: "shortVertical",
		mark: "own",
		what:
			"Vessel's end-fed aerial: 40 pi^2 (h / wavelength)^2 ohms of radiation up to 36.6, against losses of ground, tuner and rigging by " +
			"[MHz, ohms]; drawn to give the 10 to 25 % of handbooks near 2 MHz. Some decibels off below 4 MHz would be no surprise",
		unit: "ohm; share of the length that counts as height",
		value: {
			lossOhms: [
				[1.6, 10],
				[2.2, 9],
				[4.1, 8],
				[6.2, 6],
				[8.3, 5],
				[12.3, 4],
				[16.5, 3.5],
			],
			mostRadiationOhms: 36.6,
			heightShare: 0.8,
		},
	},
	coastAntenna: {
		id: "coastAntenna",
		mark: "own",
		what: "Coast station's aerial where none is published: a vertical by the shore, with this efficiency below and from 4 MHz",
		unit: "1",
		value: { below4MHz: 0.7, from4MHz: 0.9 },
	},
	steepestGain: {
		id: "steepestGain",
		mark: "own",
		what: "Floor of a vertical's pattern towards the zenith, against its gain at the horizon: wires slope, nearby metal radiates",
		unit: "dB",
		value: -12,
	},
	// ---- reliability ----
	signalDeciles: {
		id: "signalDeciles",
		mark: "M",
		what: "Sky wave from day to day: deciles under and over the median by frequency over basic MUF and by geomagnetic latitude, ITU-R P.842",
		unit: "dB",
		value: {
			overMuf: [0.8, 1, 1.2, 1.4, 1.6, 1.8, 2, 3, 4, 5],
			below60: { lower: [8, 12, 13, 10, 8, 8, 8, 7, 6, 5], upper: [6, 8, 12, 13, 12, 9, 9, 8, 7, 7] },
			from60: { lower: [11, 16, 17, 13, 11, 11, 11, 9, 8, 7], upper: [9, 11, 12, 13, 12, 9, 9, 8, 7, 7] },
		},
	},
	withinHour: {
		id: "withinHour",
		mark: "M",
		what: "Sky wave within the hour: deciles under and over the median, ITU-R P.842",
		unit: "dB",
		value: { lower: 8, upper: 5 },
	},
	groundWaveFading: {
		id: "groundWaveFading",
		mark: "M",
		what: "Decile of a ground wave's fading, both ways; by night its own sky wave makes it worse, which is not counted",
		unit: "dB",
		value: 3,
	},
} as const satisfies Readonly<Record<string, FromMemory>>;

export type MemoryId = keyof typeof MEMORY;
