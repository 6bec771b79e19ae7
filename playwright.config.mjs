// Browser tests: the release build in dist/, in the Chromium of this machine, at
// the size of a phone. ./scripts/test --browser builds and runs them.

import { execFileSync } from "node:child_process";
import net from "node:net";
import { defineConfig } from "@playwright/test";

// A sub-path, since that is where many will host it and where mistakes show.
const BASE = "/wards/penlight/";

function findChromium() {
  if (process.env.PENLIGHT_CHROMIUM) {
    return process.env.PENLIGHT_CHROMIUM;
  }
  for (const name of ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]) {
    try {
      return execFileSync("sh", ["-c", `command -v ${name}`], { encoding: "utf8" }).trim();
    } catch {
      // Try the next name.
    }
  }
  throw new Error("No Chromium found. Install it or set PENLIGHT_CHROMIUM.");
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = net.createServer();
    probe.on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

// Workers read this file again and must arrive at the same port.
process.env.PENLIGHT_TEST_PORT ??= String(await freePort());
const port = process.env.PENLIGHT_TEST_PORT;
const reporters = [["line"]];
if (process.env.PLAYWRIGHT_REPORT) {
  reporters.push(["json", { outputFile: process.env.PLAYWRIGHT_REPORT }]);
}

export default defineConfig({
  testDir: "tests/browser",
  testMatch: "**/*.spec.mjs",
  outputDir: "test-results",
  // Each test has a context of its own, and most go by a clock that stands still. On two cores four
  // at a time use the moments in which one of them only waits.
  fullyParallel: true,
  workers: process.env.PENLIGHT_LONG ? 1 : Number(process.env.PENLIGHT_WORKERS ?? 4),
  // No second go: it would hide a tap or a record that is lost once in many runs.
  retries: 0,
  forbidOnly: Boolean(process.env.CI),
  timeout: process.env.PENLIGHT_LONG ? 15 * 60_000 : 60_000,
  reporter: reporters,
  webServer: {
    command: `node scripts/serve.mjs --port ${port} --strict-port --base ${BASE}`,
    url: `http://localhost:${port}${BASE}`,
    reuseExistingServer: false,
    timeout: 15_000,
  },
  use: {
    baseURL: `http://localhost:${port}${BASE}`,
    browserName: "chromium",
    headless: true,
    viewport: { width: 390, height: 844 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    locale: "en-GB",
    serviceWorkers: "allow",
    // Costs every test its time: --trace on, for the one that is looked into.
    trace: "off",
    launchOptions: {
      executablePath: findChromium(),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
});
