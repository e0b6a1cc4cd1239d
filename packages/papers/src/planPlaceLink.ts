import type { Profile } from "@skipwright/set";
import { htmlElement, htmlWords } from "./htmlMarkup.ts";

/** Id of a place's cell on the page. */
export function cellId(bank: string, place: number): string {
	return `cell-${bank}-${place}`;
}

/** Id of a place's reason on the page. */
export function reasonId(bank: string, place: number): string {
	return `why-${bank}-${place}`;
}

/** What stands before a place number where there is little room: nothing where the set has one bank, else as few letters as tell them apart. */
export function bankLetters({ banks }: Profile): ReadonlyMap<string, string> {
	if (banks.length === 1) return new Map(banks.map(({ id }) => [id, ""]));
	return new Map(
		banks.map(({ id }) => {
			const lengths = Array.from({ length: id.length }, (_, i) => i + 1);
			const enough = lengths.find((length) => banks.every((other) => other.id === id || !other.id.startsWith(id.slice(0, length))));
			return [id, id.slice(0, enough ?? id.length)];
		}),
	);
}

/** `v9`, leading to the place's cell. */
export function placeLink(bank: string, place: number, letters: ReadonlyMap<string, string>, name: "b" | "span" = "span"): string {
	const link = htmlWords("a", { href: `#${cellId(bank, place)}` }, `${letters.get(bank) ?? bank}${place}`);
	return htmlElement(name, {}, [link]);
}
