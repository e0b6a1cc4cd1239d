import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, describe, expect, test } from "vitest";
import { alone, packagesAreCurrent } from "./install.mjs";

let folder = mkdtempSync(join(tmpdir(), "install-"));
afterEach(() => {
	rmSync(folder, { recursive: true, force: true });
	folder = mkdtempSync(join(tmpdir(), "install-"));
});

const LOCKED = {
	"": { name: "root" },
	"node_modules/a": { version: "1.0.0", integrity: "sha512-a" },
	"node_modules/other-platform": { version: "1.0.0", integrity: "sha512-o", optional: true },
	"node_modules/@skipwright/units": { resolved: "packages/units", link: true },
	"packages/units": { version: "0.1.0" },
};

function write(file: string, packages: Record<string, object>): void {
	writeFileSync(join(folder, file), JSON.stringify({ packages }));
}

describe("packagesAreCurrent", () => {
	const { "": _, "node_modules/other-platform": __, ...installed } = LOCKED;
	const record = () => join(folder, "node_modules", ".lock-hash");

	test("no, where nothing is installed", () => {
		write("package-lock.json", LOCKED);
		expect(packagesAreCurrent(folder)).toBe(false);
	});

	test("yes, after an installation by hand, and it records that; no, when the lock file changes", () => {
		mkdirSync(join(folder, "node_modules"));
		write("package-lock.json", LOCKED);
		write("node_modules/.package-lock.json", installed);
		expect(packagesAreCurrent(folder)).toBe(true);
		expect(readFileSync(record(), "utf8")).toMatch(/^[0-9a-f]{64}$/);
		write("package-lock.json", { ...LOCKED, "node_modules/a": { version: "1.0.1", integrity: "sha512-b" } });
		expect(packagesAreCurrent(folder)).toBe(false);
	});

	const differing: readonly (readonly [string, Record<string, object>])[] = [
		["a package is missing", { ...installed, "node_modules/a": undefined as never }],
		["a version differs", { ...installed, "node_modules/a": { version: "0.9.0", integrity: "sha512-a" } }],
		["content differs", { ...installed, "node_modules/a": { version: "1.0.0", integrity: "sha512-z" } }],
		["a package is too many", { ...installed, "node_modules/b": { version: "1.0.0" } }],
		["a part of ours is not linked", { ...installed, "node_modules/@skipwright/units": { version: "0.1.0" } }],
	];
	test.each(differing)("no, when %s", (_name, found) => {
		mkdirSync(join(folder, "node_modules"));
		write("package-lock.json", LOCKED);
		write("node_modules/.package-lock.json", found);
		expect(packagesAreCurrent(folder)).toBe(false);
		expect(existsSync(record())).toBe(false);
	});
});

describe("alone", () => {
	test("five processes take turns", async () => {
		const log = join(folder, "log");
		const lock = join(folder, "lock");
		const program = `
			import { appendFileSync } from "node:fs";
			import { alone } from ${JSON.stringify(pathToFileURL(join(import.meta.dirname, "install.mjs")).href)};
			await alone(${JSON.stringify(lock)}, () => undefined, async () => {
				appendFileSync(${JSON.stringify(log)}, "in ");
				await new Promise((resolve) => setTimeout(resolve, 20));
				appendFileSync(${JSON.stringify(log)}, "out ");
			});`;
		const ends = Array.from({ length: 5 }, () => {
			const child = spawn(process.execPath, ["--input-type=module", "-e", program], { stdio: "inherit" });
			return new Promise((resolve) => child.on("close", resolve));
		});
		expect(await Promise.all(ends)).toEqual([0, 0, 0, 0, 0]);
		expect(readFileSync(log, "utf8")).toBe("in out ".repeat(5));
		expect(readdirSync(folder)).toEqual(["log"]);
	});

	test("takes a lock over whose owner is gone, and gives it back when the work fails", async () => {
		const lock = join(folder, "lock");
		const gone = spawn(process.execPath, ["-e", ""]);
		await new Promise((resolve) => gone.on("close", resolve));
		writeFileSync(lock, String(gone.pid));
		const work = alone(
			lock,
			() => undefined,
			async () => await Promise.reject(new Error("no network")),
		);
		await expect(work).rejects.toThrow("no network");
		expect(existsSync(lock)).toBe(false);
	});
});
