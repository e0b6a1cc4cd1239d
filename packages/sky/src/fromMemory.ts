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
	// ---- sky wave ----
	seasons: {
		id: "seasons",
		mark: "M",
		what: "Seasons of the tables of ITU-R P.533 and P.1239 north of the equator, by month from January; summer and winter change places south of it",
		unit: "season",
		value: ["winter", "winter", "equinox", "equinox", "summer", "summer", "summer", "summer", "equinox", "equinox", "winter", "winter"],
	},
	controlPoints: {
		id: "controlPoints",
		mark: "M",
		what:
			"Where on a path the ionosphere is asked, ITU-R P.533 table 1: the middle up to a length, beyond it this far from the ends, and the " +
			"middle of the first and last hop; screening by the greater foE; the E layer's MUF by the lower one",
		unit: "km",
		value: { middleUpTo: 2000, fromEnds: 1000 },
	},
	lowestElevation: {
		id: "lowestElevation",
		mark: "M",
		what: "Elevation under which no mode counts; it also raises the least number of hops by the F2 layer, from some 3000 km on",
		unit: "degrees",
		value: 3,
	},
	f2Spread: {
		id: "f2Spread",
		mark: "own",
		what:
			"Deciles of foF2 over its median from day to day, in place of ITU-R P.1239's tables: from five stations of 2019, at the least of the " +
			"sun's activity; from latitude 60 on a guess. By local time from 22-04 on",
		unit: "1",
		value: {
			blocks: { from: 22, hours: 6 },
			latitudes: [30, 60],
			lower: [
				[0.81, 0.88, 0.87, 0.82],
				[0.87, 0.88, 0.9, 0.86],
				[0.75, 0.82, 0.85, 0.78],
			],
			upper: [
				[1.27, 1.15, 1.16, 1.23],
				[1.16, 1.13, 1.11, 1.16],
				[1.3, 1.22, 1.18, 1.25],
			],
		},
	},
	operationalRatio: {
		id: "operationalRatio",
		mark: "M",
		what: "Operational over basic MUF of the F2 layer as [night, day], up to a radiated power and over it, ITU-R P.1240",
		unit: "dBW; 1",
		value: {
			eirpDbw: 30,
			upTo: { summer: [1.2, 1.1], equinox: [1.25, 1.15], winter: [1.3, 1.2] },
			over: { summer: [1.25, 1.15], equinox: [1.3, 1.2], winter: [1.35, 1.25] },
		},
	},
	dayAtMiddle: {
		id: "dayAtMiddle",
		mark: "own",
		what: "Day and night of the operational MUF: by the sun's zenith angle over the middle of the path",
		unit: "degrees",
		value: 90,
	},
	screening: {
		id: "screening",
		mark: "M",
		what: "The E layer hides the F2 layer up to this multiple of its MUF at that slant, ITU-R P.533",
		unit: "1",
		value: 1.05,
	},
	rayAboveMuf: {
		id: "rayAboveMuf",
		mark: "M",
		what: "Above a mode's MUF its ray stays that of the MUF, ITU-R P.533",
		unit: "rule",
		value: "ray of the MUF",
	},
	fieldConstant: {
		id: "fieldConstant",
		mark: "M",
		what: "Field of 1 kW from an isotropic aerial without loss, 20 log f and basic loss left out, ITU-R P.533; derived, it would be 137.2",
		unit: "dB(uV/m)",
		value: 136.6,
	},
	absorption: {
		id: "absorption",
		mark: "M",
		what:
			"Absorption below the layers after CCIR Report 252's family, in place of ITU-R P.533's, whose figures could not be had; by day " +
			"within 5 dB below 10 MHz, rather too much than too little",
		unit: "dB; MHz; km",
		value: {
			strength: 677.2,
			power: 1.98,
			added: 10.2,
			heightKm: 100,
			perSunspot: 0.0037,
			zenithPower: 1.3,
			zenithShare: 0.881,
			zenithMostDeg: 102,
			least: 0.1,
		},
	},
	winterAnomaly: {
		id: "winterAnomaly",
		mark: "M",
		what:
			"Greater absorption of winter days at latitude 60, by month from January in the north, falling evenly to none at 30 and at the pole; " +
			"six months on in the south. Part of the long path form; of the other only on request",
		unit: "1; degrees",
		value: { at60: [1.3, 1.15, 1.03, 1, 1, 1, 1, 1, 1, 1.03, 1.15, 1.3], fromLat: 30, mostAtLat: 60 },
	},
	aboveMuf: {
		id: "aboveMuf",
		mark: "M",
		what:
			"Loss over a mode's MUF, ITU-R P.533: by E and by F2 up to a length of path a multiple of the root of the excess, beyond it of the " +
			"excess, with a step, up to a most",
		unit: "dB; km",
		value: {
			e: { times: 46, plus: 5, most: 58 },
			f2Near: { times: 36, plus: 5, most: 60 },
			f2Far: { times: 70, plus: 8, most: 80 },
			nearUpToKm: 3000,
		},
	},
	groundReflection: {
		id: "groundReflection",
		mark: "M",
		what: "Loss at each reflection from the ground between hops, ITU-R P.533",
		unit: "dB",
		value: 2,
	},
	otherLosses: {
		id: "otherLosses",
		mark: "M",
		what: "Losses not otherwise included, ITU-R P.533; 9.9 in older editions, fitted there with the Recommendation's own absorption",
		unit: "dB",
		value: 8.72,
	},
	auroralLoss: {
		id: "auroralLoss",
		mark: "M",
		what:
			"Auroral and other losses by geomagnetic latitude (rows from 77.5 down in steps of 5, none below 42.5), local time at the middle of " +
			"the path (columns from 01-04 on) and season, up to a length of path and over it, ITU-R P.533 table 2",
		unit: "dB; km",
		value: {
			nearUpToKm: 2500,
			fromLat: 77.5,
			step: 5,
			blocks: { from: 1, hours: 3 },
			near: {
				winter: [
					[2, 6.6, 6.2, 1.5, 0.5, 1.4, 1.5, 1],
					[3.4, 8.3, 8.6, 0.9, 0.5, 2.5, 3, 3],
					[6.2, 15.6, 12.8, 2.3, 1.5, 4.6, 7, 5],
					[7, 16, 14, 3.6, 2, 6.8, 9.8, 6.6],
					[2, 4.5, 6.6, 1.4, 0.8, 2.7, 3, 2],
					[1.3, 1, 3.2, 0.3, 0.4, 1.8, 2.3, 0.9],
					[0.9, 0.6, 2.2, 0.2, 0.2, 1.2, 1.5, 0.6],
					[0.4, 0.3, 1.1, 0.1, 0.1, 0.6, 0.7, 0.3],
				],
				equinox: [
					[1.4, 2.5, 7.4, 3.8, 1, 2.4, 2.4, 3.3],
					[3.3, 11, 11.6, 5.1, 2.6, 4, 6, 7],
					[6.5, 12, 21.4, 8.5, 4.8, 6, 10, 13.7],
					[6.7, 11.2, 17, 9, 7.2, 9, 10.9, 15],
					[2.4, 4.4, 7.5, 5, 2.6, 4.8, 5.5, 6.1],
					[1.7, 2, 5, 3, 2.2, 4, 3, 4],
					[1.1, 1.3, 3.3, 2, 1.4, 2.6, 2, 2.6],
					[0.5, 0.6, 1.6, 1, 0.7, 1.3, 1, 1.3],
				],
				summer: [
					[2.2, 2.7, 1.2, 2.3, 2.2, 3.8, 4.2, 3.8],
					[2.4, 3, 2.8, 3, 2.7, 4.2, 4.8, 4.5],
					[4.9, 4.2, 6.2, 4.5, 3.8, 5.4, 7.7, 7.2],
					[6.5, 4.8, 9, 6, 4.8, 9.1, 9.5, 8.9],
					[3.2, 2.7, 4, 3, 3, 6.5, 6.7, 5],
					[2.5, 1.8, 2.4, 2.3, 2.6, 5, 4.6, 4],
					[1.6, 1.2, 1.6, 1.5, 1.7, 3.3, 3.1, 2.6],
					[0.8, 0.6, 0.8, 0.7, 0.8, 1.6, 1.5, 1.3],
				],
			},
			far: {
				winter: [
					[1.5, 2.7, 2.5, 0.8, 0, 0.9, 0.8, 1.6],
					[2.5, 4.5, 4.3, 0.8, 0.3, 1.6, 2, 4.8],
					[5.5, 5, 7, 1.9, 0.5, 3, 4.5, 9.6],
					[5.3, 7, 5.9, 2, 0.7, 4, 4.5, 10],
					[1.6, 2.4, 2.7, 0.6, 0.4, 1.7, 1.8, 3.5],
					[0.9, 1, 1.3, 0.1, 0.1, 1, 1.5, 1.4],
					[0.6, 0.6, 0.8, 0.1, 0.1, 0.6, 1, 0.5],
					[0.3, 0.3, 0.4, 0, 0, 0.3, 0.5, 0.4],
				],
				equinox: [
					[1, 1.2, 2.7, 3, 0.6, 2, 2.3, 1.6],
					[1.8, 2.9, 4.1, 5.7, 1.5, 3.2, 5.6, 3.6],
					[3.7, 5.6, 7.7, 8.1, 3.5, 5, 9.5, 7.3],
					[3.9, 5.2, 7.6, 9, 5, 7.5, 10, 7.9],
					[1.4, 2, 3.2, 3.8, 1.8, 4, 5.4, 3.4],
					[0.9, 0.9, 1.8, 2, 1.3, 3.1, 2.7, 2],
					[0.6, 0.6, 1.2, 1.3, 0.8, 2, 1.8, 1.3],
					[0.3, 0.3, 0.6, 0.6, 0.4, 1, 0.9, 0.6],
				],
				summer: [
					[1.9, 3.8, 2.2, 1.1, 2.1, 1.2, 2.3, 2.4],
					[1.9, 4.6, 2.9, 1.3, 2.2, 1.3, 2.8, 2.7],
					[4.4, 6.3, 5.9, 1.9, 3.3, 1.7, 4.4, 4.5],
					[5.5, 8.5, 7.6, 2.6, 4.2, 3.2, 5.5, 5.7],
					[2.8, 3.8, 3.7, 1.4, 2.7, 1.6, 4.5, 3.2],
					[2.2, 2.4, 2.2, 1, 2.2, 1.2, 4.4, 2.5],
					[1.4, 1.6, 1.4, 0.6, 1.4, 0.8, 2.9, 1.6],
					[0.7, 0.8, 0.7, 0.3, 0.7, 0.4, 1.4, 0.8],
				],
			},
		},
	},
	longPath: {
		id: "longPath",
		mark: "M",
		what:
			"Form for paths from 9000 km on, ITU-R P.533 section 5.3: hops up to a length at a height, lowest and highest frequency, W, X and Y of " +
			"the latter, the field of 3 MW, focusing at the antipode",
		unit: "km; degrees; dB; 1",
		value: {
			hopKm: 4000,
			mirrorKm: 300,
			absorbingKm: 90,
			fieldDb: 139.6,
			constantDb: -30,
			otherDb: -0.14,
			mostFocusDb: 15,
			lowAngleDeg: 8,
			over3000: 1.1,
			eastWest: { w: 0.1, x: 1.2, y: 0.6 },
			northSouth: { w: 0.2, x: 0.2, y: 0.4 },
			noonRatio: 1.2,
			lowest: { times: 5.3, perSunspot: 0.009, logOf: 9.5e6 },
			winterAtEnds: { excess: [0.1, 0.05, 0, 0, 0, 0, 0, 0, 0, 0, 0.05, 0.1], fromLat: 35 },
			night: { km: 3000, falls: 0.23, hours: 3 },
		},
	},
	longPathJoin: {
		id: "longPathJoin",
		mark: "M",
		what: "Between these lengths the two forms are mixed: the hundredth part of their decibels as powers of ten, by distance, ITU-R P.533 section 5.4",
		unit: "km",
		value: { from: 7000, to: 9000 },
	},
	// ---- maps and sunspots ----
	foF2R12Cap: {
		id: "foF2R12Cap",
		mark: "M",
		what: "foF2 rises no more with the smoothed sunspot number beyond this one, ITU-R P.533 section 3.4",
		unit: "R12",
		value: 160,
	},
	m3000F2Floor: {
		id: "m3000F2Floor",
		mark: "own",
		what: "M(3000)F2 of the maps is taken no lower: the equation of B in ITU-R P.1240 misbehaves near 2",
		unit: "1",
		value: 1.8,
	},
	sunspotScale: {
		id: "sunspotScale",
		mark: "M",
		what: "Factor from the sunspot numbers published since 2015 to the scale before, on which R12 of ITU-R P.371 and the maps stand",
		unit: "1",
		value: 0.7,
	},
	sunspotSpread: {
		id: "sunspotSpread",
		mark: "own",
		what:
			"How far a smoothed sunspot number may lie off, as a share of itself and at least so many of the new scale: of a forecast (one of " +
			"May 2023 put the peak of 2024 a third too low) and of a figure taken across a gap or from an earlier cycle",
		unit: "1 and sunspots",
		value: { forecast: { share: 0.3, least: 10 }, guessed: { share: 0.5, least: 25 } },
	},
	solarCycle: {
		id: "solarCycle",
		mark: "own",
		what: "Length of a solar cycle: past the last forecast the same month one cycle earlier stands in",
		unit: "months",
		value: 132,
	},
} as const satisfies Readonly<Record<string, FromMemory>>;

export type MemoryId = keyof typeof MEMORY;
