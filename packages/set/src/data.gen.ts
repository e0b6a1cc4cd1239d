// Written by tools/generate.ts from data/; do not edit.
export const RECEIVER_100_JSON = `{
	"format": "skipwright-set",
	"version": 1,
	"id": "receiver-100",
	"name": "Receiver with 100 places, knob and keypad",
	"source": "Invented: no maker's set. Figures chosen to be typical of a marine communications receiver.",
	"banks": [{ "id": "memory", "places": 100, "blockLength": 10 }],
	"tag": { "length": 8, "characters": "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 -./" },
	"receive": [{ "fromHz": 30000, "toHz": 29999990 }],
	"transmit": [],
	"tuningStepsHz": [10, 100, 1000, 100000],
	"stepsCarry": true,
	"entry": "both",
	"modes": {
		"USB": { "shows": "carrier" },
		"LSB": { "shows": "carrier" },
		"AM": { "shows": "carrier" },
		"CW": { "shows": "carrier", "pitchHz": 700 },
		"FSK": { "shows": "mark", "audioCentreHz": 1700, "shiftHz": 170, "sense": "normal", "sideband": "upper" }
	},
	"modeNames": { "J3E": "USB", "A3E": "AM", "A1A": "CW", "RTTY": "FSK", "NAVTEX": "FSK", "FAX": "USB" },
	"receivers": 1,
	"fineTune": null,
	"scan": {
		"stopsOn": "nothing",
		"dwellMs": 2000,
		"holdMs": 0,
		"resumeMs": 0,
		"skipsEmpty": true,
		"sweptFlag": "place",
		"startsFrom": "block-edge"
	}
}
`;
export const SINGLE_200_JSON = `{
	"format": "skipwright-set",
	"version": 1,
	"id": "single-200",
	"name": "One bank of 200 places, keypad",
	"source": "Invented: no maker's set. Figures chosen to be typical of a small vessel's MF/HF radiotelephone.",
	"banks": [{ "id": "memory", "places": 200, "blockLength": 10 }],
	"tag": { "length": 6, "characters": "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 -" },
	"receive": [{ "fromHz": 150000, "toHz": 29999900 }],
	"transmit": [
		{ "fromHz": 1600000, "toHz": 2999900 },
		{ "fromHz": 4000000, "toHz": 27500000 }
	],
	"tuningStepsHz": [100],
	"stepsCarry": true,
	"entry": "keypad",
	"modes": {
		"USB": { "shows": "carrier" },
		"LSB": { "shows": "carrier" },
		"AM": { "shows": "carrier" },
		"CW": { "shows": "carrier", "pitchHz": 800 }
	},
	"modeNames": { "J3E": "USB", "H3E": "AM", "A1A": "CW", "FAX": "USB" },
	"receivers": 2,
	"fineTune": null,
	"scan": {
		"stopsOn": "speech",
		"dwellMs": 800,
		"holdMs": 0,
		"resumeMs": 3000,
		"skipsEmpty": true,
		"sweptFlag": "place",
		"startsFrom": "current-place"
	},
	"dscWatch": { "size": 6 }
}
`;
export const TWIN_180_JSON = `{
	"format": "skipwright-set",
	"version": 1,
	"id": "twin-180",
	"name": "Two banks, 180 voice and 120 data places, knob",
	"source": "Invented: no maker's set. Figures chosen to be typical of a small vessel's MF/HF radiotelephone.",
	"banks": [
		{ "id": "voice", "places": 180, "blockLength": 20, "holds": "speech" },
		{ "id": "data", "places": 120, "blockLength": 20, "holds": "data" }
	],
	"tag": { "length": 10, "characters": "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 -./+" },
	"receive": [{ "fromHz": 500000, "toHz": 29999900 }],
	"transmit": [{ "fromHz": 1600000, "toHz": 27500000 }],
	"tuningStepsHz": [100, 1000, 10000, 1000000],
	"stepsCarry": true,
	"entry": "knob",
	"modes": {
		"USB": { "shows": "carrier" },
		"LSB": { "shows": "carrier" },
		"AM": { "shows": "carrier" },
		"CW": { "shows": "carrier" },
		"FSK": { "shows": "centre", "audioCentreHz": 1700, "shiftHz": 170, "sense": "normal" }
	},
	"modeNames": { "J3E": "USB", "H3E": "AM", "A3E": "AM", "A1A": "CW", "F1B": "FSK", "J2B": "FSK", "DATA": "FSK" },
	"receivers": 1,
	"fineTune": { "rangeHz": 200, "stepHz": 10 },
	"scan": {
		"stopsOn": "squelch",
		"dwellMs": 500,
		"holdMs": 5000,
		"resumeMs": 2000,
		"skipsEmpty": true,
		"sweptFlag": "block",
		"startsFrom": "block-edge"
	},
	"dscWatch": { "size": 6 }
}
`;
