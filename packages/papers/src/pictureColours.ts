import { PAGE_PALETTES, type PagePalette } from "./planPalette.ts";
import { type ReachGrade, shadeOf } from "./reachGrades.ts";
import { inkColour } from "./reachTheme.ts";

/** A colour of the pictures as drawn for paper, and the same in another light. */
export interface PictureColour {
	readonly day: string;
	readonly of: (palette: PagePalette) => string;
}

/** Every colour that pictures of reach are drawn in: the shades of ink by chance, lines and marks. */
export function pictureColours(grades: readonly ReachGrade[]): readonly PictureColour[] {
	const { day } = PAGE_PALETTES;
	const shades = new Set(Array.from({ length: 1_001 }, (_, i) => shadeOf(i / 1_000, grades) ?? 0));
	const inks = [...shades].map((shade) => ({ day: inkColour(shade, day), of: (palette: PagePalette) => inkColour(shade, palette) }));
	const lines = (["quiet", "hatch", "mark"] as const).map((name) => ({ day: day[name], of: (palette: PagePalette) => palette[name] }));
	return [...new Map([...inks, ...lines].map((colour) => [colour.day, colour])).values()];
}

/** Name of the page's variable for a colour of paper. */
export function pictureVariable(day: string): string {
	return `--on-${day.slice(1)}`;
}

/** A picture whose colours are those of the light that the page is read in. */
export function inPageColours(picture: string): string {
	return picture.replace(/ (fill|stroke)="(#[0-9a-f]{6})"/g, (_, key: string, day: string) => ` ${key}="var(${pictureVariable(day)})"`);
}
