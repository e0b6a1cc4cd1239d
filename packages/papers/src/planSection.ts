import { htmlElement, htmlWords } from "./htmlMarkup.ts";

/** A part of the page with its heading, which the list of parts leads to. */
export interface PageSection {
	readonly id: string;
	readonly heading: string;
	/** Markup. */
	readonly body: readonly string[];
}

export function planSection({ id, heading, body }: PageSection): string {
	return htmlElement("section", { id, "aria-labelledby": `${id}-heading` }, [htmlWords("h2", { id: `${id}-heading` }, heading), ...body]);
}

/** Cells of one row; `cells` are markup. */
export function headRow(heads: readonly { readonly text: string; readonly class?: string }[]): string {
	const cells = heads.map(({ text, ...rest }) => htmlWords("th", { scope: "col", ...rest }, text));
	return htmlElement("thead", {}, [htmlElement("tr", {}, cells)]);
}

export function plural(count: number, one: string, many: string): string {
	return `${count} ${count === 1 ? one : many}`;
}

export function capital(text: string): string {
	return text.slice(0, 1).toUpperCase() + text.slice(1);
}
