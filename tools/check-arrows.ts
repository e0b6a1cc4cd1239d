/**
 * Checks that imports follow the arrows: each package.json's dependencies are what its modules import, no more and no less, they
 * keep to the order of order.ts without a cycle, and pure packages stay pure.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { importsOf } from "./code.ts";
import { ORDER, permittedArrows } from "./order.ts";
import { impurities } from "./purity.ts";

const SCOPE = "@skipwright/";
/** What a benchmark takes from outside its package. */
const FOR_BENCHES = ["tools/bench-types.ts", "tools/measure.ts"];

interface Workspace {
	/** Relative to the root, as `packages/units`. */
	readonly folder: string;
	readonly name: string;
	/** Its name in the order: the package's own, or `apps`. */
	readonly part: string;
	readonly pure: boolean;
	readonly dependencies: ReadonlySet<string>;
	readonly forTests: ReadonlySet<string>;
}

export interface ArrowReport {
	readonly modules: number;
	readonly imports: number;
	readonly faults: readonly string[];
}

export function checkArrows(root: string): ArrowReport {
	const workspaces = workspacesOf(root);
	const faults = workspaces.flatMap((workspace) => faultsOfOrder(workspace));
	faults.push(...cyclesOf(workspaces));
	let modules = 0;
	let imports = 0;
	for (const workspace of workspaces) {
		const read = checkModules(root, workspace);
		modules += read.modules;
		imports += read.imports;
		faults.push(...read.faults);
	}
	if (modules === 0) faults.push("no module was read");
	return { modules, imports, faults };
}

function workspacesOf(root: string): readonly Workspace[] {
	const rootForTests = namesIn(root, "devDependencies");
	return ["packages", "apps"].flatMap((kind) => {
		const folders = existsSync(join(root, kind)) ? readdirSync(join(root, kind)).sort() : [];
		return folders
			.filter((folder) => existsSync(join(root, kind, folder, "package.json")))
			.map((folder): Workspace => {
				const path = join(root, kind, folder);
				return {
					folder: `${kind}/${folder}`,
					name: JSON.parse(readFileSync(join(path, "package.json"), "utf8")).name,
					part: kind === "apps" ? "apps" : folder,
					pure: kind === "packages",
					dependencies: new Set(namesIn(path, "dependencies")),
					forTests: new Set([...namesIn(path, "devDependencies"), ...rootForTests]),
				};
			});
	});
}

function namesIn(folder: string, field: "dependencies" | "devDependencies"): readonly string[] {
	return Object.keys(JSON.parse(readFileSync(join(folder, "package.json"), "utf8"))[field] ?? {});
}

function faultsOfOrder({ folder, name, part, pure, dependencies, forTests }: Workspace): string[] {
	const permitted = permittedArrows(ORDER).get(part);
	if (permitted === undefined) return [`${folder}: "${part}" has no place in tools/order.ts`];
	const faults = pure && name !== SCOPE + part ? [`${folder}: is named ${name}, expected ${SCOPE}${part}`] : [];
	const ours = [...dependencies, ...forTests].filter((target) => target.startsWith(SCOPE));
	const against = ours.filter((target) => !permitted.has(target.slice(SCOPE.length)));
	return [...faults, ...against.map((target) => `${folder}: depends on ${target}, against the order of the parts`)];
}

/** Each cycle of dependencies once, as the names along it. */
function cyclesOf(workspaces: readonly Workspace[]): string[] {
	const byName = new Map(workspaces.map((workspace) => [workspace.name, workspace]));
	const done = new Set<string>();
	const cycles: string[] = [];
	const visit = (name: string, path: readonly string[]): void => {
		if (path.includes(name)) {
			cycles.push(`cycle: ${[...path.slice(path.indexOf(name)), name].join(" -> ")}`);
			return;
		}
		if (done.has(name)) return;
		for (const target of byName.get(name)?.dependencies ?? []) visit(target, [...path, name]);
		done.add(name);
	};
	for (const { name } of workspaces) visit(name, []);
	return cycles;
}

function checkModules(root: string, workspace: Workspace): ArrowReport {
	const { folder, dependencies } = workspace;
	const files = modulesIn(root, folder);
	const faults: string[] = [];
	const used = new Set<string>();
	const tested = new Set<string>();
	let imports = 0;
	for (const file of files) {
		const source = readFileSync(join(root, file), "utf8");
		const product = isProduct(file);
		for (const { specifier, line } of importsOf(source)) {
			imports += 1;
			const fault = specifier === null ? "imports a computed name" : faultOfImport(root, workspace, file, specifier);
			if (fault !== null) faults.push(`${file}:${line}: ${fault}`);
			if (specifier !== null) (product ? used : tested).add(packageOf(specifier));
		}
		if (workspace.pure && product) faults.push(...impurities(workspace.part, source).map((fault) => `${file}:${fault}`));
	}
	if (files.length === 0) faults.push(`${folder}: no module was read`);
	const idle = [...dependencies].filter((name) => !used.has(name));
	faults.push(...idle.map((name) => `${folder}: depends on ${name}, but ${tested.has(name) ? "only a test" : "no module"} imports it`));
	return { modules: files.length, imports, faults };
}

/** TypeScript files of a workspace, relative to the root; `truth/` may hold readers of its tables. */
function modulesIn(root: string, folder: string): readonly string[] {
	return ["src", "truth"].flatMap((inner) => {
		const path = join(root, folder, inner);
		if (!existsSync(path)) return [];
		const files = readdirSync(path, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));
		return files.map((file) => `${folder}/${inner}/${file.replaceAll("\\", "/")}`).sort();
	});
}

/** Whether a module ships, rather than tests or measures. */
function isProduct(file: string): boolean {
	return !/\.(?:test|bench)\.ts$|\/truth\//.test(file);
}

function faultOfImport(root: string, workspace: Workspace, file: string, specifier: string): string | null {
	const product = isProduct(file);
	if (specifier.startsWith(".")) {
		const target = relative(root, resolve(root, dirname(file), specifier)).replaceAll("\\", "/");
		if (product && !isProduct(target)) return `"${specifier}" is for tests alone`;
		if (target.startsWith(`${workspace.folder}/`)) return null;
		return file.endsWith(".bench.ts") && FOR_BENCHES.includes(target) ? null : `"${specifier}" leaves ${workspace.folder}`;
	}
	if (specifier.startsWith("node:")) return workspace.pure && product ? `"${specifier}" in a pure package` : null;
	if (specifier.startsWith(SCOPE) && packageOf(specifier) !== specifier) return `"${specifier}" reaches inside a package`;
	const allowed = workspace.dependencies.has(packageOf(specifier)) || (!product && workspace.forTests.has(packageOf(specifier)));
	return allowed ? null : `"${specifier}" is not among the dependencies in ${workspace.folder}/package.json`;
}

/** `@scope/name/deep` is of `@scope/name`, `name/deep` of `name`. */
function packageOf(specifier: string): string {
	return specifier
		.split("/")
		.slice(0, specifier.startsWith("@") ? 2 : 1)
		.join("/");
}

if (import.meta.main) {
	const { modules, imports, faults } = checkArrows(join(import.meta.dirname, ".."));
	for (const fault of faults) console.error(fault);
	console.log(`arrows: ${modules} modules, ${imports} imports, ${faults.length} faults`);
	if (faults.length > 0) process.exitCode = 1;
}
