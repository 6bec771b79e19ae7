// What every browser test needs: a page that is watched while it is used, and a
// server of its own for tests that take the network away.

import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test as base } from "@playwright/test";
import { ENCODINGS } from "../../scripts/shipped.mjs";

export { expect };

export const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), "../..");
export const DIST = path.join(ROOT, "dist");

/**
 * Watches a context: notes when a page logs an error or warning, throws, breaks the Content
 * Security Policy (which is logged as an error), or asks anything outside its own origin.
 *
 * `allow(/pattern/)` is for errors that a test provokes; `check()` fails on all others.
 */
export function watchContext(context) {
  const seen = [];
  const allowed = [];
  const note = (text) => seen.push(text);
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) {
      note(`${message.type()}: ${message.text()} (${message.location().url})`);
    }
  });
  context.on("weberror", (error) => note(`uncaught: ${error.error()}`));
  context.on("request", (request) => {
    const url = new URL(request.url());
    if (!["data:", "blob:", "about:"].includes(url.protocol) && url.hostname !== "localhost") {
      note(`left the origin: ${request.url()}`);
    }
  });
  return {
    seen,
    allow: (pattern) => allowed.push(pattern),
    check: () => {
      const left = seen.filter((text) => !allowed.some((pattern) => pattern.test(text)));
      expect(left, "errors, warnings and foreign requests").toEqual([]);
    },
  };
}

export const test = base.extend({
  /** The context of every test is watched. A test that provokes errors says `watch.allow(/.../)`. */
  watch: [
    async ({ context }, use) => {
      const watch = watchContext(context);
      await use(watch);
      watch.check();
    },
    { auto: true },
  ],

  /** Starts servers that a test may stop: `const server = await ownServer({ base: "/x/" })`. */
  ownServer: async ({}, use) => {
    const servers = [];
    await use(async (options) => {
      const server = await startServer(options);
      servers.push(server);
      return server;
    });
    await Promise.all(servers.map((server) => server.stop()));
  },
});

/** Serves `dir` under `base` at a free or given port; resolves with `{ url, port, stop }`. */
export async function startServer({ dir = DIST, base = "/", port = 0 } = {}) {
  const child = spawn(
    process.execPath,
    [path.join(ROOT, "scripts/serve.mjs"), "--dir", dir, "--base", base, "--port", String(port), "--strict-port"],
    { stdio: ["ignore", "pipe", "inherit"] },
  );
  const ended = new Promise((resolve) => child.once("exit", resolve));
  const url = await new Promise((resolve, reject) => {
    let output = "";
    child.stdout.on("data", (chunk) => {
      output += chunk;
      const found = output.match(/http:\S+/);
      if (found) {
        resolve(found[0]);
      }
    });
    ended.then((code) => reject(new Error(`the server ended with ${code}`)));
  });
  return {
    url,
    port: Number(new URL(url).port),
    stop: async () => {
      child.kill();
      await ended;
    },
  };
}

/** Opens the app and waits until the wasm has replaced the static start text. */
export async function openApp(page, url = "./") {
  await page.goto(url);
  await appStarted(page);
}

export async function appStarted(page) {
  await expect(page.locator("#starting")).toHaveCount(0);
  await expect(page.locator("#app")).not.toBeEmpty();
}

/** Registers the service worker as the app does and waits until it controls the page. */
export async function controlledByServiceWorker(page) {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
    const { serviceWorker } = navigator;
    // Not just any controller: a Penlight in a folder above may be in charge until ours is.
    while (!registration.active || serviceWorker.controller?.scriptURL !== registration.active.scriptURL) {
      await new Promise((resolve) => serviceWorker.addEventListener("controllerchange", resolve, { once: true }));
    }
  });
}

/** Gives a file of a release other words. Its compressed copies would still have the old ones. */
export function rewrite(dir, name, text) {
  const file = path.join(dir, name);
  fs.writeFileSync(file, text);
  for (const { ending } of ENCODINGS) {
    fs.rmSync(file + ending);
  }
}
