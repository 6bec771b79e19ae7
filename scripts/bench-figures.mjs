// The figures of bench.mjs: what a sample comes to, and the lines of its table.

/** The value below which a share of the sample lies, by nearest rank. */
export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
}

export const median = (values) => quantile(values, 0.5);
export const ms = (value) => `${value.toFixed(value < 100 ? 1 : 0)} ms`;
export const quantiles = (values, shares = [0.5, 0.95, 0.99]) =>
  shares.map((share) => `p${share * 100} ${ms(quantile(values, share))}`).join(", ");
export const spread = (values) => `${ms(median(values))} (${ms(Math.min(...values))} to ${ms(Math.max(...values))})`;

export const rows = [];

/** One line of the table; `met` is left out where there is no target. */
export function row(what, value, target = "", met = undefined) {
  rows.push([what, value, target, met === undefined ? "" : met ? "met" : "NOT MET"]);
}

export const atMost = (what, shown, value, most, unit) => row(what, shown, `at most ${most}${unit}`, value <= most);
