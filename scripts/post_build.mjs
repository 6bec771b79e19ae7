// trunk's last step. Takes what trunk staged and makes the files that are shipped:
//   1. wasm-opt on the module (release only)
//   2. style and public files
//   3. names that carry the hash of their own content
//   4. the service worker with the complete list of files
//   5. compressed copies beside them (release only)

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { transformSync } from "esbuild";
import fs from "node:fs";
import path from "node:path";
import { filesUnder, writeCopies } from "./shipped.mjs";

const root = process.env.TRUNK_SOURCE_DIR ?? process.cwd();
const staging = process.env.TRUNK_STAGING_DIR;
const release = process.env.TRUNK_PROFILE === "release";

const STYLES = ["style/tokens.css", "style/base.css", "style/components.css"];
const TEMPLATE = "sw.template.js";
const WASM_OPT_VERSION = 132;

if (!staging) {
  throw new Error("TRUNK_STAGING_DIR is not set: trunk runs this, see Trunk.toml");
}

const staged = (name) => path.join(staging, name);
const read = (name) => fs.readFileSync(staged(name), "utf8");
const write = (name, text) => fs.writeFileSync(staged(name), text);
const digest = (name, algorithm, encoding) =>
  createHash(algorithm).update(fs.readFileSync(staged(name))).digest(encoding);

function optimise(name) {
  const tool = path.join(root, "node_modules/.bin/wasm-opt");
  const version = execFileSync(tool, ["--version"], { encoding: "utf8" }).trim();
  // An older wasm-opt ends well and writes a module that doesn't start.
  if (!new RegExp(`version ${WASM_OPT_VERSION}\\b`).test(version)) {
    throw new Error(`wasm-opt ${WASM_OPT_VERSION} is needed, found "${version}". Run npm ci.`);
  }
  const passes = ["-O2", "--strip-debug", "--strip-producers", "--strip-target-features"];
  execFileSync(tool, [...passes, staged(name), "-o", staged(name)], { stdio: "inherit" });
}

// Renames a file after its content and returns the new name.
function addHash(name) {
  const { dir, name: stem, ext } = path.parse(name);
  const hashed = path.posix.join(dir, `${stem}-${digest(name, "sha256", "hex").slice(0, 12)}${ext}`);
  fs.renameSync(staged(name), staged(hashed));
  return hashed;
}

// Puts the final names of other files into a file that mentions them.
function rename(inFile, renames) {
  let text = read(inFile);
  for (const [from, to] of renames) {
    if (!text.includes(from)) {
      throw new Error(`${inFile} does not mention ${from}`);
    }
    text = text.replaceAll(from, to);
  }
  write(inFile, text);
}

// Comments and long names are for us, not for the phone.
function shrink(name, loader) {
  write(name, transformSync(read(name), { loader, minify: true, format: loader === "js" ? "esm" : undefined }).code);
}

write("style.css", STYLES.map((file) => fs.readFileSync(path.join(root, file), "utf8")).join("\n"));
if (release) {
  optimise("penlight_bg.wasm");
  shrink("penlight.js", "js");
  shrink("style.css", "css");
}
fs.cpSync(path.join(root, "public"), staging, { recursive: true });
fs.rmSync(staged(TEMPLATE));

// What a file mentions must have its final name before the file itself gets one.
const wasm = ["penlight_bg.wasm", addHash("penlight_bg.wasm")];
rename("penlight.js", [wasm]);
const glue = ["penlight.js", addHash("penlight.js")];
rename("boot.js", [wasm, glue]);
const boot = ["boot.js", addHash("boot.js")];
const style = ["style.css", addHash("style.css")];
rename("index.html", [wasm, glue, boot, style]);
// Without its own script to inject, trunk leaves its mark in the page.
write("index.html", read("index.html").replace(/^ *<link data-trunk [^>]*>\n/m, ""));

const names = filesUnder(staging);
// The page goes by the address of its folder: many hosts redirect index.html
// there, and a browser refuses a redirected answer for a page.
const files = Object.fromEntries(
  names.map((name) => [name === "index.html" ? "./" : name, `sha256-${digest(name, "sha256", "base64")}`]),
);
const list = JSON.stringify(files, null, 2);
// The worker's own code counts too: a change in it alone is a new version.
const template = fs.readFileSync(path.join(root, "public", TEMPLATE), "utf8");
const version = createHash("sha256").update(list).update(template).digest("hex").slice(0, 16);
write("sw.js", template.replace("__VERSION__", version).replace("__FILES__", () => list));

// Last: nothing may change a file behind its copies, and the worker's list knows none of them.
if (release) {
  writeCopies(staging);
}
