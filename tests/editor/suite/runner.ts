/** A small runner for tests inside the editor: one after another, each with a bound, one printed line each. */

/** One test: a full sentence's claim, and the steps that throw when it doesn't hold; they may answer a measurement. */
export interface EditorTest {
  readonly name: string;
  run(): Promise<string | undefined> | Promise<void>;
}

/** How one test ended; `failure` is absent when it passed. */
export interface TestResult {
  readonly name: string;
  readonly ms: number;
  readonly failure?: string;
  /** What the test measured, for the log. */
  readonly measured?: string;
}

/** How long a single test may take before it counts as failed. */
const testBoundMs = 60_000;

/** Runs every test in order and answers all results; one failing test doesn't keep the next from running. */
export async function runAll(tests: readonly EditorTest[]): Promise<TestResult[]> {
  const results: TestResult[] = [];
  for (const test of tests) {
    const result = await runOne(test);
    results.push(result);
    console.log(`${result.failure === undefined ? "ok" : "not ok"} - ${result.name} (${result.ms} ms)`);
    if (result.failure !== undefined) console.log(result.failure);
  }
  return results;
}

async function runOne(test: EditorTest): Promise<TestResult> {
  const started = performance.now();
  const took = (): number => Math.round(performance.now() - started);
  try {
    const measured = await withBound<unknown>(test.run(), testBoundMs, "the test did not end");
    const result = { name: test.name, ms: took() };
    return typeof measured === "string" ? { ...result, measured } : result;
  } catch (error) {
    const failure = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { name: test.name, ms: took(), failure };
  }
}

/** Settles as `promise` does, or fails when it hasn't within `boundMs`; `what` says what was waited for. */
export function withBound<T>(promise: Thenable<T>, boundMs: number, what: string): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`${what} within ${boundMs / 1000} s`)), boundMs);
    promise.then(resolve, reject).then(() => clearTimeout(timer));
  });
}
