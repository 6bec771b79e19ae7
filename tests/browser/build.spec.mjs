// What is shipped: it starts, keeps its policy, works without a network, says so when it can't start.

import { createHash } from "node:crypto";
import fs from "node:fs";
import http from "node:http";
import os from "node:os";
import path from "node:path";
import zlib from "node:zlib";
import { appFiles, filesUnder } from "../../scripts/shipped.mjs";
import { laterRelease } from "./later.mjs";
import {
  appStarted,
  controlledByServiceWorker,
  DIST,
  expect,
  openApp,
  rewrite,
  test,
} from "./support.mjs";

const read = (name) => fs.readFileSync(path.join(DIST, name));

// The list the service worker would store: address -> digest.
function precacheList(dir = DIST) {
  const source = fs.readFileSync(path.join(dir, "sw.js"), "utf8");
  return JSON.parse(source.match(/const FILES = (\{[^}]*\});/)[1]);
}

const cacheNames = (page) => page.evaluate(() => caches.keys());

test.describe("start", () => {
  test("the wasm fills the page, under a sub-path", async ({ page }) => {
    await openApp(page);
    expect(new URL(page.url()).pathname).toBe("/wards/penlight/");
    await expect(page.locator("#cannot-start")).toBeHidden();
    await expect(page).toHaveTitle("Penlight");
  });

  test("the module is fetched once", async ({ page }) => {
    const fetched = [];
    page.on("response", (response) => fetched.push(new URL(response.url()).pathname.split("/").pop()));
    await openApp(page);
    expect(fetched.filter((name) => name.endsWith(".wasm"))).toHaveLength(1);
    expect(new Set(fetched).size).toBe(fetched.length);
  });

  test("an inline script and a foreign address are refused", async ({ page, watch }) => {
    watch.allow(/Content Security Policy/);
    await openApp(page);
    const outcome = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.textContent = "window.inlineRan = true";
      document.head.append(script);
      const fetched = await fetch("https://example.org/").then(
        () => "fetched",
        () => "refused",
      );
      return { inlineRan: window.inlineRan === true, fetched };
    });
    expect(outcome).toEqual({ inlineRan: false, fetched: "refused" });
    expect(watch.seen.some((text) => text.includes("script-src"))).toBe(true);
    expect(watch.seen.some((text) => text.includes("connect-src"))).toBe(true);
  });
});

test.describe("when it can't start", () => {
  test("no WebAssembly (as in Lockdown Mode)", async ({ page, watch }) => {
    watch.allow(/WebAssembly is switched off/);
    await page.addInitScript(() => {
      delete globalThis.WebAssembly;
    });
    await page.goto("./");
    await expect(page.locator("#cannot-start")).toBeVisible();
    await expect(page.locator("#cannot-start")).toContainText("Lockdown Mode");
    await expect(page.locator("#app")).toBeHidden();
  });

  for (const [what, pattern] of [
    ["the module", "**/*.wasm"],
    ["its JavaScript", "**/penlight-*.js"],
  ]) {
    test(`${what} can't be had`, async ({ page, watch }) => {
      watch.allow(/./);
      await page.route(pattern, (route) => route.abort());
      await page.goto("./");
      await expect(page.locator("#cannot-start")).toBeVisible();
      await expect(page.locator("#cannot-start-detail")).toContainText("Error");
    });
  }

  test("a broken module", async ({ page, watch }) => {
    watch.allow(/./);
    await page.route("**/*.wasm", (route) => route.fulfill({ contentType: "application/wasm", body: "not a module" }));
    await page.goto("./");
    await expect(page.locator("#cannot-start")).toBeVisible();
  });

  test("no JavaScript", async ({ browser, baseURL }) => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(baseURL);
    await expect(page.getByRole("heading", { name: "Penlight needs JavaScript" })).toBeVisible();
    await context.close();
  });
});

test.describe("files", () => {
  test("the list to store is every file but the worker, with its digest", () => {
    const expected = appFiles(DIST)
      .filter((name) => name !== "sw.js")
      .map((name) => [
        name === "index.html" ? "./" : name,
        `sha256-${createHash("sha256").update(read(name)).digest("base64")}`,
      ]);
    expect(precacheList()).toEqual(Object.fromEntries(expected));
  });

  test("every js, wasm and css file is named after its content", () => {
    const code = appFiles(DIST).filter((name) => /\.(js|wasm|css)$/.test(name) && name !== "sw.js");
    expect(code).toHaveLength(4);
    for (const name of code) {
      const hash = createHash("sha256").update(read(name)).digest("hex").slice(0, 12);
      expect(name).toContain(`-${hash}.`);
    }
  });

  test("every file but the pictures lies there as brotli and gzip too, with the same content", () => {
    const names = filesUnder(DIST);
    const plain = appFiles(DIST).filter((name) => !name.endsWith(".png"));
    expect(plain).toContain("index.html");
    expect(names.filter((name) => /\.(br|gz)$/.test(name))).toEqual(plain.flatMap((name) => [`${name}.br`, `${name}.gz`]).sort());
    for (const name of plain) {
      expect(zlib.brotliDecompressSync(read(`${name}.br`)).equals(read(name)), name).toBe(true);
      expect(zlib.gunzipSync(read(`${name}.gz`)).equals(read(name)), name).toBe(true);
    }
  });

  test("the server sends the copy that a client takes", async ({ ownServer }) => {
    const { port } = await ownServer();
    const module = appFiles(DIST).find((name) => name.endsWith(".wasm"));
    const ask = (name, headers) =>
      new Promise((resolve, reject) => {
        http.get({ port, host: "127.0.0.1", path: `/${name}`, headers }, (response) => {
          const parts = [];
          response.on("data", (part) => parts.push(part));
          response.on("end", () => resolve({ status: response.statusCode, headers: response.headers, body: Buffer.concat(parts) }));
        }).on("error", reject);
      });
    const tags = new Set();
    for (const [takes, encoding, ending] of [
      ["gzip, deflate, br", "br", ".br"],
      ["br;q=0, gzip;q=0.5", "gzip", ".gz"],
      ["*", "br", ".br"],
      ["deflate", undefined, ""],
      [undefined, undefined, ""],
    ]) {
      const { status, headers, body } = await ask(module, takes === undefined ? {} : { "Accept-Encoding": takes });
      expect([status, headers["content-encoding"], headers.vary, headers["content-type"]], takes).toEqual([
        200,
        encoding,
        "Accept-Encoding",
        "application/wasm",
      ]);
      expect(Number(headers["content-length"]), takes).toBe(body.length);
      expect(body.equals(read(module + ending)), takes).toBe(true);
      tags.add(headers.etag);
      const again = await ask(module, { ...(takes && { "Accept-Encoding": takes }), "If-None-Match": headers.etag });
      expect([again.status, again.headers.vary, again.body.length], takes).toEqual([304, "Accept-Encoding", 0]);
    }
    // Each form of a file has a tag of its own.
    expect(tags.size).toBe(3);
    const picture = await ask("icons/icon-192.png", { "Accept-Encoding": "br" });
    expect([picture.headers["content-encoding"], picture.headers.vary]).toEqual([undefined, undefined]);
  });

  test("no file names a folder of the machine that built it", () => {
    const home = os.homedir();
    for (const name of filesUnder(DIST)) {
      const text = read(name).toString("latin1");
      for (const folder of [path.join(home, ".cargo"), path.resolve(DIST, "..")]) {
        expect(text.includes(`${folder}/`), `${folder} in ${name}`).toBe(false);
      }
    }
  });

  test("the manifest can be installed, and its icons have the sizes it claims", async ({ page }) => {
    await openApp(page);
    const devtools = await page.context().newCDPSession(page);
    const { errors } = await devtools.send("Page.getAppManifest");
    expect(errors).toEqual([]);
    const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
    expect(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito")).toEqual([]);
    // Two Penlights under one host are two apps.
    const { appId } = await devtools.send("Page.getAppId");
    expect(new URL(appId).pathname).toBe("/wards/penlight/");

    const manifest = JSON.parse(read("manifest.webmanifest"));
    expect(manifest).toMatchObject({ start_url: "./", scope: "./", display: "standalone", short_name: "Penlight" });
    expect(manifest.orientation).toBeUndefined();
    const wanted = manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`);
    expect(wanted).toEqual(["192x192 any", "512x512 any", "512x512 maskable"]);
    for (const { src, sizes } of [...manifest.icons, { src: "icons/apple-touch-180.png", sizes: "180x180" }]) {
      const png = read(src);
      expect(png.subarray(1, 4).toString()).toBe("PNG");
      expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(sizes);
    }
  });
});

test.describe("offline", () => {
  for (const base of ["/", "/wards/penlight/"]) {
    test(`starts again with the server gone, at ${base}`, async ({ page, ownServer }) => {
      const server = await ownServer({ base });
      await openApp(page, server.url);
      await controlledByServiceWorker(page);
      await server.stop();
      await page.reload();
      await appStarted(page);
      // As started from the home screen or from a link with something after the address.
      await page.goto(`${server.url}?from=home#visit`);
      await appStarted(page);
      await page.goto(`${server.url}index.html`);
      await appStarted(page);
    });
  }

  test("only its own list is answered; anything else goes to the network", async ({ page, ownServer, watch }) => {
    watch.allow(/Failed to load resource/);
    const server = await ownServer({ base: "/a/" });
    await openApp(page, server.url);
    await controlledByServiceWorker(page);
    const statuses = await page.evaluate(async () => {
      const status = async (url, options) => (await fetch(url, options)).status;
      return [await status("./not-ours.txt"), await status("./", { method: "POST" })];
    });
    expect(statuses).toEqual([404, 405]);
    const held = await page.evaluate(async () => {
      const [name] = await caches.keys();
      return (await (await caches.open(name)).keys()).map(({ url }) => url);
    });
    expect(held).toHaveLength(Object.keys(precacheList()).length);
  });

  test("a file of another release is not stored", async ({ page, ownServer, watch }) => {
    watch.allow(/./);
    const dir = fs.mkdtempSync(path.join(os.tmpdir(), "penlight-mixed-"));
    fs.cpSync(DIST, dir, { recursive: true });
    rewrite(dir, "manifest.webmanifest", `${read("manifest.webmanifest")}\n`);
    const server = await ownServer({ dir });
    await openApp(page, server.url);
    const state = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
      const worker = registration.installing;
      await new Promise((resolve) => {
        worker.addEventListener("statechange", () => ["redundant", "installed"].includes(worker.state) && resolve());
      });
      return worker.state;
    });
    expect(state).toBe("redundant");
    expect(await cacheNames(page)).toEqual([]);
    fs.rmSync(dir, { recursive: true });
  });

  test("two sub-paths on one host keep their own files", async ({ page, ownServer }) => {
    const outer = await ownServer({ base: "/a/" });
    await openApp(page, outer.url);
    await controlledByServiceWorker(page);
    await outer.stop();
    const inner = await ownServer({ base: "/a/b/", port: outer.port });
    // The worker of /a/ is asked for /a/b/ first and must leave it alone.
    await openApp(page, inner.url);
    await controlledByServiceWorker(page);
    await inner.stop();
    for (const url of [outer.url, inner.url]) {
      await page.goto(url);
      await appStarted(page);
    }
    const prefixes = (await cacheNames(page)).map((name) => name.split(" ").slice(0, 2).join(" "));
    expect(prefixes.sort()).toEqual(["penlight /a/", "penlight /a/b/"]);
  });

  test("a new release waits until it is called, then replaces the old one whole", async ({ page, ownServer }) => {
    const old = await ownServer({ base: "/a/" });
    await openApp(page, old.url);
    await controlledByServiceWorker(page);
    await page.evaluate(() => caches.open("someone else's"));
    const before = await cacheNames(page);
    await old.stop();

    const dir = laterRelease();
    await ownServer({ dir, base: "/a/", port: old.port });
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration.update();
      const worker = registration.installing ?? registration.waiting;
      while (worker.state !== "installed") {
        await new Promise((resolve) => worker.addEventListener("statechange", resolve, { once: true }));
      }
    });
    // The old release stays in charge, over a reload too.
    await page.reload();
    await appStarted(page);
    await expect(page).toHaveTitle("Penlight");
    expect(await cacheNames(page)).toEqual(expect.arrayContaining(before));

    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      const changed = new Promise((resolve) => {
        navigator.serviceWorker.addEventListener("controllerchange", resolve, { once: true });
      });
      registration.waiting.postMessage({ type: "activate-update" });
      await changed;
    });
    await page.reload();
    await appStarted(page);
    await expect(page).toHaveTitle("Penlight later");
    await expect
      .poll(async () => (await cacheNames(page)).sort())
      .toEqual(["penlight /a/ later", "someone else's"]);
    fs.rmSync(dir, { recursive: true });
  });
});
