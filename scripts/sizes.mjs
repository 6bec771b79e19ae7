// What a phone downloads: every file in dist/ as it is, and as a host would compress it.
//   node scripts/sizes.mjs [folder]

import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import zlib from "node:zlib";

const CODE = new Set([".js", ".wasm", ".css"]);

/** One row per file: { name, raw, gzip, brotli, code }, in bytes. */
export function measure(folder) {
  return fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath ?? entry.path, entry.name))
    .sort()
    .map((file) => {
      const bytes = fs.readFileSync(file);
      return {
        name: path.relative(folder, file).split(path.sep).join("/"),
        raw: bytes.length,
        gzip: zlib.gzipSync(bytes, { level: 9 }).length,
        brotli: zlib.brotliCompressSync(bytes, {
          params: {
            [zlib.constants.BROTLI_PARAM_QUALITY]: 11,
            [zlib.constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
          },
        }).length,
        code: CODE.has(path.extname(file)),
      };
    });
}

/** The sums over those rows, or over some of them. */
export function total(rows, wanted = () => true) {
  const sum = (key) => rows.filter(wanted).reduce((all, row) => all + row[key], 0);
  return { raw: sum("raw"), gzip: sum("gzip"), brotli: sum("brotli") };
}

export function table(rows) {
  const lines = [
    ["file", "raw", "gzip -9", "brotli 11"],
    ...rows.map((row) => [row.name, row.raw, row.gzip, row.brotli]),
  ];
  for (const [name, sums] of [
    ["all files", total(rows)],
    ["JS + wasm + CSS", total(rows, (row) => row.code)],
  ]) {
    lines.push([name, sums.raw, sums.gzip, sums.brotli]);
  }
  const cells = lines.map((line) => line.map((cell) => (typeof cell === "number" ? cell.toLocaleString("en") : cell)));
  const widths = cells[0].map((_, column) => Math.max(...cells.map((line) => line[column].length)));
  return cells
    .map((line) => line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  "))
    .join("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const here = path.dirname(fileURLToPath(import.meta.url));
  console.log(table(measure(process.argv[2] ?? path.join(here, "../dist"))));
}
