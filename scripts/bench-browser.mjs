// The browsers that the bench measures in: a phone's screen, a profile, a process with nothing attached.

import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { chromium } from "@playwright/test";

const CHROMIUM = process.env.PENLIGHT_CHROMIUM;
if (!CHROMIUM) {
  throw new Error("PENLIGHT_CHROMIUM is not set. ./scripts/bench finds a Chromium and sets it.");
}
const ARGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
const SCREEN = { width: 390, height: 844, deviceScaleFactor: 2 };
const PHONE = {
  executablePath: CHROMIUM,
  args: ARGS,
  viewport: { width: SCREEN.width, height: SCREEN.height },
  deviceScaleFactor: SCREEN.deviceScaleFactor,
  isMobile: true,
  hasTouch: true,
  locale: "en-GB",
};

export const cleanups = [];
process.on("exit", () => cleanups.reverse().forEach((cleanup) => cleanup()));
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.once(signal, () => process.exit(130));
}

export function temporaryFolder() {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "penlight-bench-"));
  cleanups.push(() => fs.rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }));
  return folder;
}

/**
 * A new browser process with nothing attached but what the measurement needs. A test tool would
 * stop the service worker's start until it has attached itself to it, and be part of the figure.
 */
export class BareBrowser {
  constructor(profile) {
    this.process = spawn(
      CHROMIUM,
      ["--headless=new", ...ARGS, `--user-data-dir=${profile}`, "--remote-debugging-pipe", "about:blank"],
      { stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] },
    );
    cleanups.push(() => this.process.kill());
    this.asked = 0;
    this.waiting = new Map();
    this.ended = new Promise((resolve, reject) => {
      this.process.once("exit", resolve);
      this.process.once("error", reject);
    });
    let rest = "";
    this.process.stdio[4].setEncoding("utf8").on("data", (chunk) => {
      const messages = (rest + chunk).split("\0");
      rest = messages.pop();
      for (const { id, result, error } of messages.map((text) => JSON.parse(text))) {
        const { resolve, reject } = this.waiting.get(id) ?? {};
        this.waiting.delete(id);
        if (error) {
          reject?.(new Error(error.message));
        } else {
          resolve?.(result);
        }
      }
    });
  }

  send(method, params = {}, sessionId = this.session) {
    const id = (this.asked += 1);
    const answer = new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
    this.process.stdio[3].write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
    return answer;
  }

  /** Attaches to the first page and makes a phone of it: so many times slower, on a network if one is given. */
  async page({ rate, network, script = "" }) {
    let target;
    while (!target) {
      const { targetInfos } = await this.send("Target.getTargets");
      target = targetInfos.find(({ type }) => type === "page");
    }
    const { sessionId } = await this.send("Target.attachToTarget", { targetId: target.targetId, flatten: true });
    this.session = sessionId;
    await this.send("Page.enable");
    await this.send("Emulation.setDeviceMetricsOverride", { ...SCREEN, mobile: true });
    await this.send("Emulation.setTouchEmulationEnabled", { enabled: true });
    await this.send("Emulation.setCPUThrottlingRate", { rate });
    if (network) {
      await this.send("Network.enable");
      await this.send("Network.emulateNetworkConditions", { offline: false, ...network });
    }
    await this.send("Page.addScriptToEvaluateOnNewDocument", { source: script });
    // The browser itself is still busy with its own start.
    await pause(700);
  }

  async evaluate(expression) {
    const { result } = await this.send("Runtime.evaluate", { expression, returnByValue: true });
    return result.value;
  }

  /** Asks seldom, so that asking does not slow what it waits for. */
  async until(expression) {
    for (let tries = 0; tries < 150; tries += 1) {
      const value = await this.evaluate(expression);
      if (value !== undefined && value !== null) {
        return value;
      }
      await pause(200);
    }
    throw new Error(`no answer within 30 s: ${expression}`);
  }

  async close() {
    this.session = undefined;
    // The answer may be lost with the browser.
    this.send("Browser.close").catch(() => {});
    const late = setTimeout(() => this.process.kill("SIGKILL"), 10_000);
    await this.ended;
    clearTimeout(late);
  }
}

/** A phone whose profile stays. */
export const phone = (profile) => chromium.launchPersistentContext(profile, PHONE);

/** Gives `use` a phone of its own, and what comes of it back. */
export async function withFreshPhone(use, more = {}) {
  const { executablePath, args, ...options } = PHONE;
  const browser = await chromium.launch({ executablePath, args });
  try {
    return await use(await browser.newContext({ ...options, ...more }), browser);
  } finally {
    await browser.close();
  }
}
