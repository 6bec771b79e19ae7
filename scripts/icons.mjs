// Draws the PNG icons from public/icons/icon.svg. Run it by hand after a change
// of the drawing and commit the result; the build only copies the files.
//   node scripts/icons.mjs      (needs `npm ci` and a Chromium on PATH or in PENLIGHT_CHROMIUM)

import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";

const folder = path.join(path.dirname(fileURLToPath(import.meta.url)), "../public/icons");
const drawing = fs.readFileSync(path.join(folder, "icon.svg"), "utf8");

// Systems that cut the icon to their own shape want it filled to the edges.
const filled = drawing.replace(/(<rect id="ground"[^>]*) rx="\d+"/, "$1");
// Of a maskable icon only the inner circle, four fifths wide, is sure to be seen.
const shrunk = filled.replace('<g id="art">', '<g id="art" transform="translate(256 256) scale(0.78) translate(-256 -256)">');

const ICONS = [
  ["icon-192.png", 192, drawing],
  ["icon-512.png", 512, drawing],
  ["maskable-512.png", 512, shrunk],
  ["apple-touch-180.png", 180, filled],
];

const browser = await chromium.launch({
  executablePath: process.env.PENLIGHT_CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
for (const [name, size, svg] of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`);
  await page.screenshot({ path: path.join(folder, name), omitBackground: true });
  await page.close();
}
await browser.close();
