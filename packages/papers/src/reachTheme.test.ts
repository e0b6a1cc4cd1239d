import { expect, test } from "vitest";
import { inkColour, REACH_THEMES } from "./reachTheme.ts";

function channels(colour: string): readonly number[] {
	expect(colour).toMatch(/^#[0-9a-f]{6}$/);
	return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}

/** Relative luminance, WCAG 2.2. */
function luminance(colour: string): number {
	const [r, g, b] = channels(colour).map((channel) => {
		const share = channel / 255;
		return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
	}) as [number, number, number];
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
	const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
	return (light + 0.05) / (dark + 0.05);
}

const THEMES = Object.entries(REACH_THEMES);

test.each(THEMES)("%s: words stand out as WCAG 2.2 asks (1.4.3 and 1.4.11)", (_, theme) => {
	expect(contrast(theme.text, theme.paper)).toBeGreaterThan(7);
	expect(contrast(theme.quiet, theme.paper)).toBeGreaterThan(3);
	expect(contrast(theme.ink, theme.paper)).toBeGreaterThan(4.5);
	expect(contrast(theme.mark, theme.paper)).toBeGreaterThan(7);
});

test.each(THEMES)("%s: every shade lies on the one line from paper to ink", (_, theme) => {
	const [paper, ink] = [channels(theme.paper), channels(theme.ink)];
	for (let i = 0; i <= 20; i++) {
		const shade = channels(inkColour(i / 20, theme));
		for (const [c, value] of shade.entries())
			expect(Math.abs(value - (paper[c]! + (ink[c]! - paper[c]!) * (i / 20)))).toBeLessThanOrEqual(0.5);
	}
	expect(inkColour(0, theme)).toBe(theme.paper);
	expect(inkColour(1, theme)).toBe(theme.ink);
});

test("the lamp's theme keeps green and blue low, but for marks", () => {
	const { mark, ...others } = REACH_THEMES.lamp;
	expect(Object.keys(others).length).toBe(5);
	expect(mark).not.toBe(others.text);
	for (const colour of Object.values(others)) {
		const [r = 0, g = 0, b = 0] = channels(colour);
		expect(Math.max(g, b)).toBeLessThanOrEqual(r / 2);
	}
});
