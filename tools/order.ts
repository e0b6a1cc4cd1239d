/** The order of the parts: who may import from whom. ARCHITECTURE.md draws the same lines, and a test compares them. */
export const ORDER: readonly string[] = [
	"units <- rules, sphere <- directory <- set <- job <- planner, proving <- papers <- apps",
	"units, sphere <- sky <- apps",
	"units <- modem <- proving",
	"rules <- fitting <- job",
];

/** For each part, the parts to its left: those that it may import from. */
export function permittedArrows(order: readonly string[]): ReadonlyMap<string, ReadonlySet<string>> {
	const arrows = new Map<string, Set<string>>();
	for (const line of order) {
		const groups = line.split("<-").map((group) => group.split(",").map((name) => name.trim()));
		groups.forEach((group, i) => {
			for (const name of group) {
				const targets = arrows.get(name) ?? new Set();
				for (const left of groups[i - 1] ?? []) targets.add(left);
				arrows.set(name, targets);
			}
		});
	}
	return new Map([...arrows.keys()].map((name) => [name, reachable(name, arrows)]));
}

function reachable(name: string, arrows: ReadonlyMap<string, ReadonlySet<string>>): ReadonlySet<string> {
	const seen = new Set<string>();
	const open = [name];
	for (let next = open.pop(); next !== undefined; next = open.pop()) {
		for (const target of arrows.get(next) ?? []) {
			if (seen.has(target)) continue;
			seen.add(target);
			open.push(target);
		}
	}
	return seen;
}
