// A browser of its own with a profile on the disk, that a test may kill as a dying battery would.

import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "@playwright/test";
import { openApp, test as base, watchContext } from "./support.mjs";
import { stopTime, store, Walk } from "./walk.mjs";

export const test = base.extend({
  /**
   * `await phone.start()` gives a page at Penlight's start address, the same profile each time, or
   * with `{ at, visit, where }` at a page of a visit that was brought so far;
   * `await phone.kill()` ends the whole browser with SIGKILL.
   */
  phone: async ({ baseURL }, use, info) => {
    const profile = fs.mkdtempSync(path.join(os.tmpdir(), "penlight-profile-"));
    let running = null;
    const start = async ({ at, visit, where } = {}) => {
      const { launchOptions, viewport, deviceScaleFactor, isMobile, hasTouch, locale, headless } = info.project.use;
      const context = await chromium.launchPersistentContext(profile, {
        ...launchOptions,
        viewport,
        deviceScaleFactor,
        isMobile,
        hasTouch,
        locale,
        headless,
      });
      const closed = new Promise((resolve) => context.once("close", resolve));
      running = { context, closed, watch: watchContext(context) };
      const page = context.pages()[0] ?? (await context.newPage());
      if (at) {
        // From here on time passes only when the test says so.
        await stopTime(page, at);
      }
      if (visit) {
        await store(page, [visit], { base: baseURL, now: at });
      }
      await openApp(page, visit ? `${baseURL}#visit/${visit.id}/${where}` : baseURL);
      return new Walk(page, { real: !at });
    };
    const kill = async () => {
      const { closed, watch } = running;
      running = null;
      process.kill(-browserProcess(profile), "SIGKILL");
      await closed;
      watch.check();
    };
    await use({ start, kill });
    if (running) {
      const { context, watch } = running;
      await context.close();
      watch.check();
    }
    fs.rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  },
});

// The browser itself, not one of its helpers. It leads a process group of its own.
function browserProcess(profile) {
  const lines = execFileSync("ps", ["-A", "-ww", "-o", "pid=,args="], { encoding: "utf8" }).split("\n");
  const mine = lines.filter((line) => line.includes(`--user-data-dir=${profile}`) && !line.includes("--type="));
  if (mine.length !== 1) {
    throw new Error(`${mine.length} browsers have the profile ${profile}`);
  }
  return Number.parseInt(mine[0], 10);
}
