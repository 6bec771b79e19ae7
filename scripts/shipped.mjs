// What dist/ holds: the files of the app and, beside each that gains by it, a copy for each
// encoding of HTTP, so that a host has nothing to compress itself.

import fs from "node:fs";
import path from "node:path";
import zlib from "node:zlib";

const { BROTLI_PARAM_QUALITY, BROTLI_MAX_QUALITY, BROTLI_PARAM_SIZE_HINT } = zlib.constants;

/** The encodings, the smallest first: their name in HTTP, the ending of a copy, how one is made. */
export const ENCODINGS = [
  {
    name: "br",
    ending: ".br",
    compress: (bytes) =>
      zlib.brotliCompressSync(bytes, {
        params: { [BROTLI_PARAM_QUALITY]: BROTLI_MAX_QUALITY, [BROTLI_PARAM_SIZE_HINT]: bytes.length },
      }),
  },
  { name: "gzip", ending: ".gz", compress: (bytes) => zlib.gzipSync(bytes, { level: 9 }) },
];

// Pictures are compressed as they are.
const GAINS = /\.(html|js|css|wasm|webmanifest|svg|json|txt)$/;

/** Whether there are copies of a file. */
export const hasCopies = (name) => GAINS.test(name);

/** Whether a file is such a copy. */
export const isCopy = (name) => ENCODINGS.some(({ ending }) => name.endsWith(ending));

/** All files of a folder, as sorted paths with forward slashes. */
export function filesUnder(folder) {
  return fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath ?? entry.path, entry.name)))
    .map((name) => name.split(path.sep).join("/"))
    .sort();
}

/** The files of the app itself. */
export const appFiles = (folder) => filesUnder(folder).filter((name) => !isCopy(name));

/** Writes the copies of all files in a folder. */
export function writeCopies(folder) {
  for (const name of appFiles(folder).filter(hasCopies)) {
    const file = path.join(folder, name);
    const bytes = fs.readFileSync(file);
    for (const { ending, compress } of ENCODINGS) {
      fs.writeFileSync(file + ending, compress(bytes));
    }
  }
}
