// What a phone downloads: every file in dist/ as it is, and as its compressed copies are.
//   node scripts/sizes.mjs [folder]

import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { appFiles, ENCODINGS, hasCopies } from "./shipped.mjs";

const KINDS = ["raw", "gzip", "br"];

/** One row per file: { name, raw, gzip, br }, in bytes. What has no copies is sent as it is. */
export function measure(folder) {
  const size = (name) => fs.statSync(path.join(folder, name)).size;
  return appFiles(folder).map((name) => {
    const copies = ENCODINGS.map((encoding) => [encoding.name, size(hasCopies(name) ? name + encoding.ending : name)]);
    return { name, raw: size(name), ...Object.fromEntries(copies) };
  });
}

/** The sums over rows. */
export const total = (rows) => Object.fromEntries(KINDS.map((kind) => [kind, rows.reduce((sum, row) => sum + row[kind], 0)]));

function table(rows) {
  const lines = [...rows, { name: "all files", ...total(rows) }].map((row) => [
    row.name,
    ...KINDS.map((kind) => row[kind].toLocaleString("en")),
  ]);
  const cells = [["file", "as it is", "gzip", "brotli"], ...lines];
  const widths = cells[0].map((_, column) => Math.max(...cells.map((line) => line[column].length)));
  return cells
    .map((line) => line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  "))
    .join("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const here = path.dirname(fileURLToPath(import.meta.url));
  console.log(table(measure(process.argv[2] ?? path.join(here, "../dist"))));
}
