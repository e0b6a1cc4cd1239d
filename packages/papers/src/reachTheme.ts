/** Colours of a picture of reach, as `#rrggbb`. */
export interface ReachTheme {
	readonly paper: string;
	/** The one hue that stands for chance: full at chance 1, gone at chance 0. */
	readonly ink: string;
	readonly text: string;
	/** Lines and figures that only help to read off. */
	readonly quiet: string;
	readonly hatch: string;
	readonly mark: string;
}

export type ReachThemeName = "paper" | "lamp";

/** Own choice: blue-black on white for print and daylight; reds alone on near black for a dark cabin. */
export const REACH_THEMES: Readonly<Record<ReachThemeName, ReachTheme>> = {
	paper: { paper: "#ffffff", ink: "#0f3050", text: "#14181d", quiet: "#59626c", hatch: "#97a1ac", mark: "#000000" },
	lamp: { paper: "#0c0000", ink: "#f0402c", text: "#ff705c", quiet: "#b8473a", hatch: "#7a2a20", mark: "#ffd2ca" },
};

/** Colour of a shade, 0 (bare paper) to 1 (full ink): always the one hue. */
export function inkColour(shade: number, { paper, ink }: ReachTheme): string {
	const channels = [1, 3, 5].map((at) => {
		const [from, to] = [paper, ink].map((colour) => Number.parseInt(colour.slice(at, at + 2), 16)) as [number, number];
		return Math.round(from + (to - from) * shade)
			.toString(16)
			.padStart(2, "0");
	});
	return `#${channels.join("")}`;
}
