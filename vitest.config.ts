import { defineConfig } from "vitest/config";

export default defineConfig({
	test: {
		include: ["packages/*/src/**/*.test.ts", "apps/*/src/**/*.test.ts", "tools/**/*.test.ts"],
		testTimeout: 180_000,
		maxWorkers: "100%",
		reporters: ["default"],
	},
});
