// A later release, made of the one in dist/.

import { createHash } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { DIST, rewrite } from "./support.mjs";

/** A copy of dist/ that reads as a later release: one more word in the page's title. */
export function laterRelease() {
  const dir = fs.mkdtempSync(path.join(os.tmpdir(), "penlight-later-"));
  fs.cpSync(DIST, dir, { recursive: true });
  const page = fs.readFileSync(path.join(dir, "index.html"), "utf8").replace("<title>Penlight<", "<title>Penlight later<");
  rewrite(dir, "index.html", page);
  const digest = `sha256-${createHash("sha256").update(page).digest("base64")}`;
  const worker = fs
    .readFileSync(path.join(dir, "sw.js"), "utf8")
    .replace(/"\.\/": "[^"]+"/, `"./": "${digest}"`)
    .replace(/VERSION = "[^"]+"/, 'VERSION = "later"');
  rewrite(dir, "sw.js", worker);
  return dir;
}
