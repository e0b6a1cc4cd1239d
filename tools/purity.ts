/** What a pure package's source may not say: it has no files, no clock, no chance, no process, and in places no Math of its engine. */
import { codeOnly, lineOf } from "./code.ts";

/** Packages whose answers must be the same to the bit in every engine: they take sin, exp and the like from units. */
export const SAME_TO_THE_BIT: ReadonlySet<string> = new Set(["sphere", "sky", "planner", "modem"]);

interface Ban {
	readonly pattern: RegExp;
	readonly why: string;
}

const IMPURE: readonly Ban[] = [
	{ pattern: /\bDate\s*\.\s*now\b/g, why: "reads the clock: take the time as an argument" },
	{ pattern: /\bnew\s+Date\b(?!\s*\(\s*[^\s)])/g, why: "reads the clock: take the time as an argument" },
	{ pattern: /(?<!new\s+|[.\w$])Date\s*\(/g, why: "reads the clock: take the time as an argument" },
	{ pattern: /\bMath\s*\.\s*random\b/g, why: "is chance: take the source of numbers as an argument" },
	{ pattern: /(?<![.\w$])(?:process|console|globalThis)\s*(?:\?\.|\.|\[)/g, why: "is the world outside: take it as an argument" },
	{
		pattern: /\.\s*(?:get|set)(?:FullYear|Month|Date|Day|Hours|Minutes|Seconds|Milliseconds|TimezoneOffset)\s*\(/g,
		why: "goes by the machine's time zone: take the UTC one",
	},
	{ pattern: /\.\s*(?:toLocale\w+|localeCompare)\b|\bIntl\b/g, why: "goes by the machine's language" },
	{ pattern: /(?<!\btype\s+\w+\s*)=\s*(?:process|console|globalThis|Math|Date)\b(?!\s*[.(])/g, why: "hides a global behind another name" },
];

/** Math's exact parts: the same in every engine by the language's definition. Everything else of Math is banned where this holds. */
const EXACT = "abs|ceil|clz32|floor|fround|imul|max|min|round|sign|sqrt|trunc|E|LN10|LN2|LOG10E|LOG2E|PI|SQRT1_2|SQRT2";

const INEXACT: readonly Ban[] = [
	{
		pattern: new RegExp(`(?<![.\\w$])Math\\b(?!\\s*\\.\\s*(?:${EXACT})\\b)(?:\\s*\\.\\s*\\w+)?`, "g"),
		why: "differs between engines: take it from @skipwright/units",
	},
	{ pattern: /\*\*=?/g, why: "differs between engines: multiply, or take pow from @skipwright/units" },
];

/** The faults of one source text, each as `line: what was said and why not`. */
export function impurities(packageName: string, source: string): readonly string[] {
	const code = codeOnly(source);
	const bans = SAME_TO_THE_BIT.has(packageName) ? [...IMPURE, ...INEXACT] : IMPURE;
	return bans.flatMap(({ pattern, why }) =>
		[...code.matchAll(pattern)].map((match) => `${lineOf(code, match.index)}: "${match[0].trim()}" ${why}`),
	);
}
