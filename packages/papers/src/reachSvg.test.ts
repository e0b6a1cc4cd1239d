import fc from "fast-check";
import { expect, test } from "vitest";
import { escaped, figure, svgWords } from "./reachSvg.ts";
import { xmlElement } from "./reachXml.sample.ts";
import { printable } from "./typstValue.ts";

test("figures have three decimals at most and no minus before 0", () => {
	expect([0, -0, -0.0004, 1 / 3, 12.5, 1_000].map(figure)).toEqual(["0", "0", "0", "0.333", "12.5", "1000"]);
	expect(() => figure(Number.NaN)).toThrow("Cannot draw at NaN: expected a finite number");
	expect(() => figure(Number.POSITIVE_INFINITY)).toThrow(RangeError);
});

test("any text reads back from markup as the printable text", () => {
	const text = fc.oneof(
		fc.string({ unit: "binary" }),
		fc.string({ unit: fc.constantFrom("&", "<", ">", '"', "'", "]]>", "&amp;", "\ufffe", "\0") }),
	);
	fc.assert(
		fc.property(text, (any) => {
			const printed = printable(any).replace(/[\ufffe\uffff]/g, "\ufffd");
			const element = xmlElement(svgWords("text", { class: any }, any));
			expect(element).toEqual({ name: "text", attributes: { class: printed }, children: [], text: printed });
		}),
		{ seed: 20_261_124, numRuns: 2_000 },
	);
});

test("the reader of these tests refuses what is no XML", () => {
	const wrong = [
		"<a>",
		"<a></b>",
		'<a b="1" b="2"/>',
		"<a>&</a>",
		"<a>&nbsp;</a>",
		"<a/><a/>",
		"x",
		"<a b=1/>",
		"<a>\u0001</a>",
		"<a>\uffff</a>",
		'<a b="<"/>',
		"<a>]]></a>",
	];
	for (const xml of wrong) expect(() => xmlElement(xml), xml).toThrow(SyntaxError);
	expect(escaped("a<b & 'c'")).toBe("a&lt;b &amp; &#39;c&#39;");
});
