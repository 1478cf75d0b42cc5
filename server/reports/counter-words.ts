/** Lengths out as they are read off: `96 ft`, `5½ colors`, `10 colors and 60 ft`. */
import type { CounterReading } from "../analysis/counter-reading.ts";

type Counted = Pick<CounterReading, "out" | "unit" | "backing">;

/** In words. */
export function counterWords(counted: Counted): string {
  const { unit, backing } = counted;
  if (unit !== "colors") return `${counted.out} ${unit}`;
  return backing === null ? colors(counted.out) : `${colors(counted.out)} and ${backing.out} ${backing.unit}`;
}

/** In a table whose heading says the unit: `96`, `5½ colors`, `10 colors + 60 ft`. */
export function counterCell(counted: Counted): string {
  return counted.unit === "colors" ? counterWords(counted).replace(" and ", " + ") : String(counted.out);
}

/** As a journal's `out` takes it: `96 ft`, `5.5 colors`, `10 colors 60 ft`. */
export function counterValue({ out, unit, backing }: Counted): string {
  const own = `${out} ${unit === "colors" && out === 1 ? "color" : unit}`;
  return backing === null ? own : `${own} ${backing.out} ${backing.unit}`;
}

function colors(out: number): string {
  const whole = Math.floor(out);
  const number = out - whole === 0.5 ? `${whole === 0 ? "" : whole}½` : String(out);
  return `${number} ${out > 1 ? "colors" : "color"}`;
}
