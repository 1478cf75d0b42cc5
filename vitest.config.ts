/** The suite: everything that runs without an editor. The editor's own tests and the benchmarks have their own runners. */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["**/node_modules/**", "tests/editor/**", "tests/bench/**"],
    // No test is timed; this only ends one that hangs, on a slow and busy machine too.
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
