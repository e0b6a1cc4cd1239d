/** A few cautions under one heading. */
export interface CautionGroup {
	readonly heading: string;
	readonly lines: readonly string[];
}

/** What every paper of the pack says about law and harm. One list: the papers print it, none rewords it. */
export const CAUTIONS: readonly CautionGroup[] = [
	{
		heading: "Before anyone transmits",
		lines: [
			"Only with the ship and the operator licence, within national rules, on a set approved for the service it sends in.",
			"A ship licence covers no coast station's frequency. Amateur frequencies only with an amateur licence.",
			"Sending in harbour may need local permission.",
			"Tuning up radiates: listen first, low power, on a working carrier, never on a guarded frequency.",
		],
	},
	{
		heading: "Distress",
		lines: [
			"Never test with the distress function.",
			"Distress and calling frequencies are guarded: not for chat, not for tuning up.",
			"A place marked receive only stays locked or empty on the transmit side.",
		],
	},
	{
		heading: "People",
		lines: [
			"High voltage at tuner, lead and antenna while sending: nobody aloft, near, or touching stays or tuner.",
			"People with implants keep clear. Exposure figures are floors: measure where people sit.",
			"No sending while fuelling or near gas or explosives.",
			"Check the autopilot before sending under way.",
		],
	},
	{
		heading: "Installation",
		lines: [
			"Supply isolated and tagged before anyone works at tuner or antenna.",
			"In thunder, antenna disconnected and grounded.",
			"Battery work and wiring to local codes, by competent hands.",
		],
	},
	{
		heading: "What this paper is worth",
		lines: [
			"Official publications prevail over every figure printed here.",
			"Predictions are monthly medians, not promises. The fitter and the skipper decide.",
		],
	},
];

/** Of a set that only receives: what holds without a transmitter, and the one thing that other sets on board add to it. */
export const RECEIVER_CAUTIONS: readonly CautionGroup[] = [
	{ heading: "People", lines: ["Another set on board may send: nobody aloft or at an antenna while it does."] },
	...CAUTIONS.filter(({ heading }) => heading === "Installation" || heading === "What this paper is worth"),
];
