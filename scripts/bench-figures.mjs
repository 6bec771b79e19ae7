// What a sample comes to, and the table in BENCH.md.

/** The value below which a share of the sample lies, by nearest rank. */
export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
}

export const median = (values) => quantile(values, 0.5);
export const ms = (value) => `${value.toFixed(value < 100 ? 1 : 0)} ms`;
export const quantiles = (values, shares = [0.5, 0.95]) =>
  shares.map((share) => `p${share * 100} ${ms(quantile(values, share))}`).join(", ");
export const spread = (values) => `${ms(median(values))} (${ms(Math.min(...values))} to ${ms(Math.max(...values))})`;
export const count = (number) => number.toLocaleString("en");

const rows = [];

/** A line of the table that is told and not judged. */
export const tell = (what, figure) => rows.push([what, figure, "", ""]);

/** A line with a limit: `value` is what is held against it. */
export const judge = (what, figure, value, limit, unit) =>
  rows.push([what, figure, `${limit} ${unit}`.trim(), value <= limit ? "met" : "NOT MET"]);

export function table() {
  const line = (cells) => `| ${cells.join(" | ")} |`;
  return [["What", "Figure", "At most", "Met"], ["---", "---", "---", "---"], ...rows].map(line).join("\n");
}
