/** Findings in the order of their lines. */
import type { Finding } from "./check.ts";

/** Sorts them by place, where they are; quick where they are made of parts that are sorted. */
export function inFileOrder(findings: Finding[]): Finding[] {
  return findings.sort((a, b) => a.lineIndex - b.lineIndex || a.start - b.start);
}
