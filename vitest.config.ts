import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("./", import.meta.url));

export default defineConfig({
	resolve: {
		alias: [
			{ find: /^@\//, replacement: root },
			{ find: "server-only", replacement: `${root}tests/empty.ts` },
		],
	},
	test: {
		include: ["tests/**/*.test.{ts,tsx}"],
		environment: "node",
		pool: "forks",
		maxWorkers: 2,
		testTimeout: 20_000,
		setupFiles: ["tests/silence.ts"],
	},
});
