// WebKit as Debian has it (WebKitGTK), driven through the W3C's WebDriver, on a screen of its own.
//
// Playwright drives only a WebKit that it has built and downloaded itself. iPhones know no other
// engine, so a walk in the one that can be had is worth this little client.

import { spawn } from "node:child_process";
import net from "node:net";
import { setTimeout as sleep } from "node:timers/promises";

const BROWSER = process.env.PENLIGHT_WEBKIT ?? "";
const PATIENCE = 10_000;

async function freePort() {
  return new Promise((resolve, reject) => {
    const probe = net.createServer();
    probe.on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

/** A screen that nobody sees: resolves with its process and its name. */
async function screen() {
  const server = spawn("Xvfb", ["-displayfd", "3", "-screen", "0", "900x1200x24"], {
    stdio: ["ignore", "ignore", "inherit", "pipe"],
  });
  const number = await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.once("exit", (code) => reject(new Error(`Xvfb ended with ${code}`)));
    server.stdio[3].once("data", (data) => resolve(String(data).trim()));
  });
  return { server, display: `:${number}` };
}

/** Runs in the page: where the middle of what is named lies, or why it can't be pressed. */
const PLACE = `
  const [{ css, words, pattern, group }] = arguments;
  const name = (e) => (e.getAttribute("aria-label") ?? e.innerText).replace(/\\s+/g, " ").trim();
  const fits = (text) => (pattern ? new RegExp(pattern).test(text) : text === words);
  const title = (e) => e.getAttribute("aria-label") ?? e.querySelector("legend")?.innerText
    ?? document.getElementById(e.getAttribute("aria-labelledby"))?.innerText ?? "";
  const within = group ? [...document.querySelectorAll("fieldset, [role=group]")].find((e) => title(e).startsWith(group)) : document;
  if (!within) return "there is no group " + group;
  const shown = [...within.querySelectorAll(css ?? "button, summary")].filter((e) => e.getClientRects().length > 0);
  const found = css ? shown[0] : shown.find((e) => fits(name(e)));
  if (!found) return "not among " + JSON.stringify(shown.map(name));
  found.scrollIntoView({ block: "nearest", behavior: "instant" });
  const box = found.getBoundingClientRect();
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  const top = document.elementFromPoint(x, y);
  if (!found.contains(top)) return "something lies above it: " + top?.outerHTML.slice(0, 80);
  return [Math.round(x), Math.round(y)];`;

/** Notes what goes wrong in the page. To be asked for with `wrong()`. */
const LISTEN = `
  window.wrong = [];
  addEventListener("error", (event) => window.wrong.push(event.message));
  addEventListener("unhandledrejection", (event) => window.wrong.push(String(event.reason)));
  addEventListener("securitypolicyviolation", (event) => window.wrong.push(event.violatedDirective));`;

export class WebKit {
  static async start() {
    const { server, display } = await screen();
    const port = await freePort();
    const driver = spawn("WebKitWebDriver", [`--port=${port}`], {
      // Its own sandbox needs rights that containers don't give; it shows our own page only.
      env: { ...process.env, DISPLAY: display, GDK_BACKEND: "x11", WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1" },
      stdio: "ignore",
    });
    const webkit = new WebKit(`http://127.0.0.1:${port}`, [driver, server]);
    try {
      await webkit.until("the driver answers", () => fetch(`${webkit.address}/status`).then(() => true, () => false));
      const options = { binary: BROWSER, args: ["--automation"] };
      const { sessionId } = await webkit.call("POST", "/session", {
        capabilities: { alwaysMatch: { "webkitgtk:browserOptions": options } },
      });
      webkit.address += `/session/${sessionId}`;
      await webkit.call("POST", "/window/rect", { width: 390, height: 844 });
    } catch (error) {
      await webkit.stop();
      throw error;
    }
    return webkit;
  }

  constructor(address, processes) {
    this.address = address;
    this.processes = processes;
  }

  async stop() {
    await this.call("DELETE", "").catch(() => {});
    for (const process of this.processes) {
      process.kill();
    }
  }

  async call(method, path, body) {
    const answer = await fetch(this.address + path, { method, body: body && JSON.stringify(body) });
    const { value } = await answer.json();
    if (value?.error) {
      throw new Error(`${path}: ${value.error}: ${value.message}`);
    }
    return value;
  }

  /** Runs a script in the page. */
  js(script, ...args) {
    return this.call("POST", "/execute/sync", { script, args });
  }

  /** Waits until `what` holds and resolves with it. */
  async until(words, what, patience = PATIENCE) {
    const end = Date.now() + patience;
    for (;;) {
      const value = await what();
      if (value) {
        return value;
      }
      if (Date.now() > end) {
        throw new Error(`waited ${patience} ms in vain: ${words}`);
      }
      await sleep(100);
    }
  }

  /** Opens an address, or the one it shows once more, and waits for the app. */
  async open(url) {
    await (url ? this.call("POST", "/url", { url }) : this.call("POST", "/refresh", {}));
    await this.until("the app starts", () => this.js("return !document.querySelector('#starting') && document.querySelector('h1:not([hidden] *)') !== null"));
    await this.js(LISTEN);
  }

  wrong() {
    return this.js("return window.wrong");
  }

  /** What the page says, in the words of its main part. */
  says(css = "main") {
    return this.js("return document.querySelector(arguments[0])?.innerText ?? ''", css);
  }

  /** Waits until it stands on the page with this heading, and takes presses. */
  async isOn(heading, patience) {
    const fits = (text) => (typeof heading === "string" ? text === heading : heading.test(text));
    await this.until(`page ${heading}`, async () => fits(await this.says("h1:not([hidden] *)")), patience);
    await this.takesPresses();
  }

  takesPresses() {
    return this.until("the page takes presses", () => this.js("return !document.querySelector('main.still')"));
  }

  /** One touch, by the engine's own events, on a button by its name or on what a selector finds. */
  async press(what, { group, css } = {}) {
    const wanted = { css, group, words: typeof what === "string" ? what : undefined, pattern: what?.source };
    let place;
    const words = () => `${css ?? what}: ${place}`;
    await this.until("", async () => Array.isArray((place = await this.js(PLACE, wanted)))).catch(() => {
      throw new Error(words());
    });
    const [x, y] = place;
    const finger = [
      { type: "pointerMove", duration: 0, x, y },
      { type: "pointerDown", button: 0 },
      { type: "pause", duration: 20 },
      { type: "pointerUp", button: 0 },
    ];
    await this.call("POST", "/actions", {
      actions: [{ type: "pointer", id: "finger", parameters: { pointerType: "touch" }, actions: finger }],
    });
  }

  pad() {
    return this.press(undefined, { css: "#pad" });
  }

  /** Touches a field and types into it as a keyboard does. */
  async type(css, text) {
    await this.press(undefined, { css });
    const keys = [...text].flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]);
    await this.call("POST", "/actions", { actions: [{ type: "key", id: "keys", actions: keys }] });
  }
}
