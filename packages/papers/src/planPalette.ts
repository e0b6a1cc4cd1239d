import { inkColour, REACH_THEMES, type ReachTheme } from "./reachTheme.ts";

/** Colours of a page in one light. */
export interface PagePalette extends ReachTheme {
	/** Behind cells. */
	readonly card: string;
}

/** Own choice: by day, by night on a screen, and in a dark cabin. */
export const PAGE_PALETTES: Readonly<Record<"day" | "dark" | "lamp", PagePalette>> = {
	day: { ...REACH_THEMES.paper, card: "#f5f7f9" },
	dark: { paper: "#11161c", card: "#1a212a", ink: "#a9cdf2", text: "#eef2f6", quiet: "#aab5c1", hatch: "#5a6876", mark: "#ffffff" },
	lamp: { ...REACH_THEMES.lamp, card: "#190303", quiet: "#dc5a4a", mark: "#ff8a78" },
};

/** How much ink lies behind words, by grade from the best: little enough to read them on it. */
export const TINTS: readonly number[] = [0.3, 0.16, 0.06];

/** Background behind words in a grade. */
export function tintOf(grade: number, palette: PagePalette): string {
	return inkColour(TINTS[grade] ?? 0, palette);
}
