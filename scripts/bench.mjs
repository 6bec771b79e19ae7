// Measures the release in dist/ as a phone would use it and prints one Markdown table.
//   node scripts/bench.mjs [--quick]
//
// Progress goes to stderr. A target that is not met changes nothing about the exit status.

import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { chromium } from "@playwright/test";
import { ARGS, BareBrowser, CHROMIUM, cleanups, PHONE, phone, temporaryFolder } from "./bench-browser.mjs";
import { atMost, median, ms, quantile, quantiles, row, rows, spread } from "./bench-figures.mjs";
import { BARE, block, loop, seed, watchStart, watchTaps } from "./bench-page.mjs";
import { MEAL, measureTally } from "./bench-tally.mjs";
import { measure, total } from "./sizes.mjs";
import { marksOf, storedEvents, storedHeads } from "../tests/browser/store.mjs";
import { controlledByServiceWorker, DIST, openApp, startServer } from "../tests/browser/support.mjs";
import { BUTTONS, PAGES, Walk } from "../tests/browser/walk.mjs";

const QUICK = process.argv.includes("--quick");
const STARTS = QUICK ? 5 : 9;
const ROUNDS = QUICK ? 1 : 3;
const MEALS = QUICK ? 2 : 7;
const TAPS = QUICK ? 60 : 110;
const FEW = 10;
const MANY = 1_000;
const SLOW = 4;

/** Presses for the test of lost taps: on each of two touch points. */
const STORM = { seconds: QUICK ? 4 : 10, perSecond: 15, blocked: 40, of: 60 };

const BASE = "/wards/penlight/";

const progress = (text) => console.error(text);

// --- Visits -------------------------------------------------------------------------------------

/** Walks a screen from Home to the copied handover and gives what the app stored of it. */
async function recordVisit(url) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ARGS });
  const { executablePath, args, ...options } = PHONE;
  const context = await browser.newContext({ ...options, permissions: ["clipboard-read", "clipboard-write"] });
  const page = await context.newPage();
  const walk = await Walk.start(page, url);
  await walk.toWater();
  await walk.drink();
  await walk.finishWater();
  await walk.toDecision(/./);
  await walk.toHandover();
  await walk.copy();
  await walk.saved();
  const events = (await storedEvents(page)).map(({ event, ...stored }) => stored);
  const heads = await storedHeads(page);
  const version = browser.version();
  await browser.close();
  if (heads.length !== 1 || !heads[0].issued) {
    throw new Error(`the recorded visit is not as expected: ${JSON.stringify(heads)}`);
  }
  return { events, head: heads[0], version };
}

/** A profile in which Penlight is installed and holds so many visits. */
async function installed(url, visit, copies) {
  const profile = temporaryFolder();
  const context = await phone(profile);
  const page = context.pages()[0];
  await openApp(page, url);
  await controlledByServiceWorker(page);
  await page.evaluate(seed, { ...visit, copies });
  const stored = (await storedHeads(page)).length;
  if (stored !== copies) {
    throw new Error(`${stored} visits stored instead of ${copies}`);
  }
  await context.close();
  return profile;
}

// --- Measurements -------------------------------------------------------------------------------

/** One start in a new browser process. */
async function coldStart(profile, url, { press }) {
  const browser = new BareBrowser(profile);
  try {
    await browser.page(SLOW, `(${watchStart})(${JSON.stringify({ press })})`);
    // The browser itself is still busy with its own start.
    await pause(700);
    await browser.send("Page.navigate", { url });
    if (press) {
      return { interactive: await browser.until("window.bench?.interactive"), button: await browser.evaluate("bench.button") };
    }
    const visits = await browser.until("window.bench?.visits");
    await pause(700);
    const point = await browser.evaluate(`(() => {
      const button = [...document.querySelectorAll("button")].find((b) => b.textContent === "All visits");
      button.scrollIntoView({ block: "center" });
      const box = button.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    })()`);
    await pause(200);
    await browser.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] });
    await browser.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    return { visits, history: await browser.until("window.bench.history") };
  } finally {
    await browser.close();
  }
}

/** A new visit, with its first pad running. */
async function runningPad(context, url, rate) {
  const page = context.pages()[0];
  await page.addInitScript(watchTaps);
  // Home would lead back into the visit of the round before.
  await openApp(page, `${url}#new/swallow`);
  const walk = new Walk(page, { real: true });
  await walk.press(BUTTONS.adult);
  await walk.press(BUTTONS.begin);
  await walk.gate();
  await walk.isOn(PAGES.breaths);
  await walk.startPad();
  await page.locator("#pad .count").waitFor();
  await walk.saved();
  return { page, walk, ...(await touching(context, page, rate)) };
}

/** A finger over the pad of a page, which is slowed down from here on. */
async function touching(context, page, rate) {
  const box = await page.locator("#pad").boundingBox();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
  const touch = (type, ...touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  const at = (share, id) => ({ x: box.x + box.width * share, y: box.y + box.height / 2, id });
  await pause(300);
  return { touch, at };
}

async function tap({ touch, at }) {
  for (let i = 0; i < TAPS; i += 1) {
    await touch("touchStart", at(0.5, 0));
    await pause(30);
    await touch("touchEnd");
    await pause(80 + Math.random() * 140);
  }
  await pause(500);
}

/** The same taps on a page that does nothing but count: what machine and method cost by themselves. */
async function tappingBare(rate) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ARGS });
  try {
    const { executablePath, args, ...options } = PHONE;
    const context = await browser.newContext(options);
    const page = await context.newPage();
    await page.addInitScript(watchTaps);
    await page.goto(`data:text/html,${encodeURIComponent(BARE)}`);
    await tap(await touching(context, page, rate));
    const { taps } = await page.evaluate(() => window.bench);
    if (taps.filter(({ painted }) => painted !== undefined).length !== TAPS) {
      throw new Error(`the bare page did not show ${TAPS} taps`);
    }
    return taps;
  } finally {
    await browser.close();
  }
}

/** Taps as a hand gives them, and what the page noted of each. */
async function tapping(profile, url, rate) {
  const context = await phone(profile);
  try {
    const { page, walk, touch, at } = await runningPad(context, url, rate);
    await tap({ touch, at });
    await walk.saved();
    const notes = await page.evaluate(() => window.bench);
    const whole = notes.taps.filter((tap) => tap.painted !== undefined && tap.kept !== undefined);
    if (whole.length !== TAPS) {
      throw new Error(`${TAPS} taps, but ${whole.length} shown and kept`);
    }
    return notes;
  } finally {
    await context.close();
  }
}

const FRAME = 1_000 / 60;

/** How far the frame with a tap's count reaches beyond the frame the tap fell in. */
function aboveFrame({ at, frame, painted }) {
  return Math.max(0, painted - frame + framesLate({ at, frame }) * FRAME);
}

/** How many frames later than the first that could show it the count stands in one: 0 is the next. */
function framesLate({ at, frame }) {
  return Math.max(0, Math.floor((frame - at) / FRAME));
}

/** Two fingers on a pad whose page is busy. */
async function storm(profile, url) {
  const context = await phone(profile);
  try {
    const { page, walk, touch, at } = await runningPad(context, url, 1);
    await page.evaluate(block, STORM);
    const presses = STORM.seconds * STORM.perSecond;
    const sent = [];
    const finger = async (point, late) => {
      const begun = performance.now() + late;
      for (let i = 0; i < presses; i += 1) {
        await pause(Math.max(0, begun + (i * 1_000) / STORM.perSecond - performance.now()));
        sent.push(touch("touchStart", point));
        await pause(25);
        sent.push(touch("touchEnd", point));
      }
    };
    await Promise.all([finger(at(0.25, 1), 0), finger(at(0.75, 2), 17)]);
    await Promise.all(sent);
    await page.evaluate(() => clearTimeout(window.blocking));
    await pause(1_000);
    await walk.saved();
    const running = (await storedHeads(page)).sort((a, b) => b.touched - a.touched)[0].visit;
    const kept = marksOf(
      (await storedEvents(page)).filter(({ visit }) => visit === running),
      "Tap",
    ).length;
    const reached = await page.evaluate(() => window.bench.downs);
    return { presses: 2 * presses, reached, kept };
  } finally {
    await context.close();
  }
}

/** How long a fixed piece of work takes with and without the slow-down. */
async function slowDown() {
  const browser = new BareBrowser(temporaryFolder());
  try {
    await browser.page(1, "");
    await pause(700);
    const times = [];
    for (const rate of [1, SLOW]) {
      await browser.send("Emulation.setCPUThrottlingRate", { rate });
      const tries = [];
      for (let i = 0; i < 5; i += 1) {
        tries.push(await browser.evaluate(`(${loop})()`));
      }
      times.push(median(tries));
    }
    return times;
  } finally {
    await browser.close();
  }
}

// --- The table ----------------------------------------------------------------------------------

function sizes(folder) {
  const files = measure(folder);
  const figures = ({ raw, gzip, brotli }) => [raw, gzip, brotli].map((n) => n.toLocaleString("en")).join(" / ");
  for (const file of files) {
    row(`Size of ${file.name}: raw / gzip / brotli, bytes`, figures(file));
  }
  const code = total(files, (file) => file.code);
  row("Size of all files", figures(total(files)));
  const shown = `${(code.brotli / 1_000).toFixed(1)} KB (${figures(code)})`;
  atMost("JS + wasm + CSS, brotli", shown, code.brotli / 1_000, 250, " KB");
  atMost("JS + wasm + CSS, brotli, the aim", shown, code.brotli / 1_000, 120, " KB");
}

async function starts(url, empty, full) {
  const none = [];
  const many = [];
  const visits = [];
  for (let i = 0; i < STARTS; i += 1) {
    progress(`cold start ${i + 1} of ${STARTS}`);
    none.push(await coldStart(empty, url, { press: true }));
    many.push(await coldStart(full, url, { press: true }));
    visits.push(await coldStart(full, url, { press: false }));
  }
  for (const [count, samples] of [["0", none], [MANY.toLocaleString("en"), many]]) {
    const values = samples.map(({ interactive }) => interactive);
    const button = ms(median(samples.map((sample) => sample.button)));
    const first = ms(values[0]);
    atMost(
      `Cold start offline to interactive [1], ${count} visits, ${SLOW}x slower`,
      `${spread(values)}; button there ${button}; first after the install ${first}`,
      median(values),
      1_000,
      " ms",
    );
  }
  row(
    `Cold start offline to last visits shown, ${MANY.toLocaleString("en")} visits, ${SLOW}x slower`,
    spread(visits.map((sample) => sample.visits)),
  );
  row(
    `"All visits" from press to 30 rows shown [2], ${MANY.toLocaleString("en")} visits, ${SLOW}x slower`,
    spread(visits.map((sample) => sample.history)),
  );
}

async function presses(url, few, many) {
  const places = [
    { name: FEW, profile: few, rate: 1 },
    { name: MANY, profile: many, rate: 1 },
    { name: MANY, profile: many, rate: SLOW },
  ].map((place) => ({ ...place, taps: [], writes: [], events: [] }));
  const bares = [1, SLOW].map((rate) => ({ rate, taps: [] }));
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const bare of bares) {
      progress(`taps on a bare page, round ${round + 1} of ${ROUNDS}: ${bare.rate}x`);
      bare.taps.push(...(await tappingBare(bare.rate)));
    }
    for (const place of places) {
      progress(`taps, round ${round + 1} of ${ROUNDS}: ${place.name} visits, ${place.rate}x`);
      const notes = await tapping(place.profile, url, place.rate);
      for (const key of ["taps", "writes", "events"]) {
        place[key].push(...notes[key]);
      }
    }
  }
  const [atFew, atMany, slow] = places;

  for (const { rate, taps, events } of [atMany, slow]) {
    const speed = rate === 1 ? "full speed" : `${rate}x slower`;
    const above = taps.map(aboveFrame);
    const floor = bares.find((bare) => bare.rate === rate).taps.map(aboveFrame);
    const size = `${taps.length} taps`;
    row(`Press to its count painted [3], ${speed}, ${size}`, quantiles(taps.map((tap) => tap.painted - tap.at)));
    row(`Press to its count in the page, ${speed}`, quantiles(taps.map((tap) => tap.changed - tap.at)));
    const within = (values) =>
      `${quantiles(values)}; ${((100 * values.filter((late) => late <= 16.7).length) / values.length).toFixed(1)} % within 16.7 ms`;
    atMost(
      `Press to paint, above the frame the press fell in [4], ${speed}`,
      within(above),
      quantile(above, 0.95),
      16.7,
      " ms (p95)",
    );
    row(`The same on a bare page that only counts [5], ${speed}`, within(floor));
    const frames = (of) => [0.5, 0.95, 0.99].map((share) => `p${share * 100} ${quantile(of.map(framesLate), share)}`).join(", ");
    const bare = bares.find((one) => one.rate === rate).taps;
    atMost(
      `Press to paint in whole frames after the next one, ${speed}`,
      `${frames(taps)}; bare page ${frames(bare)}`,
      quantile(taps.map(framesLate), 0.95),
      1,
      " frame (p95)",
    );
    // The browser leaves out those below 16 ms.
    const whole = [...events, ...Array(Math.max(0, taps.length - events.length)).fill(0)];
    const share = whole.filter((duration) => duration <= 32).length / whole.length;
    row(
      `Press to presented frame, by the browser's Event Timing (steps of 8 ms), ${speed}`,
      `p95 ${quantile(whole, 0.95) || "under 16"} ms; within 32 ms: ${(100 * share).toFixed(1)} %`,
    );
  }

  for (const { name, taps, writes } of [atFew, atMany]) {
    const visits = `${name.toLocaleString("en")} visits`;
    const kept = taps.map((tap) => tap.kept - tap.at);
    row(`Append, transaction to complete [6], ${visits}, ${writes.length} appends`, quantiles(writes, [0.5, 0.99]));
    atMost(`Append, press to complete, ${visits}`, quantiles(kept, [0.5, 0.99]), quantile(kept, 0.99), 50, " ms (p99)");
  }
  const ratio = (of, share) => quantile(of(atMany), share) / quantile(of(atFew), share);
  for (const [what, of] of [
    ["transaction", (place) => place.writes],
    ["press to complete", (place) => place.taps.map((tap) => tap.kept - tap.at)],
  ]) {
    const [half, tail] = [0.5, 0.99].map((share) => ratio(of, share));
    atMost(
      `Append at ${MANY.toLocaleString("en")} visits against ${FEW}, ${what}`,
      `p50 ${half.toFixed(2)}, p99 ${tail.toFixed(2)} times`,
      half,
      1.5,
      " times (p50)",
    );
  }
  const worst = slow.taps.map((tap) => tap.kept - tap.at);
  row(`Append, press to complete, ${MANY.toLocaleString("en")} visits, ${SLOW}x slower`, quantiles(worst, [0.5, 0.99]));
}

async function lost(url, profile) {
  progress("taps on a busy page");
  const { presses: sent, reached, kept } = await storm(profile, url);
  row(
    `Taps lost: ${STORM.perSecond}/s on each of two touch points for ${STORM.seconds} s, main thread blocked ${STORM.blocked} of every ${STORM.of} ms`,
    `${sent - kept} (${sent} pressed, ${reached} reached the page, ${kept} marks stored)`,
    "0",
    sent === kept,
  );
}

/** A long meal on a slow phone, each time in a new browser. */
async function meal(url) {
  const times = {};
  for (let round = 0; round < MEALS; round += 1) {
    progress(`a meal of ${MEAL.presses} presses, ${round + 1} of ${MEALS}`);
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: ARGS });
    try {
      const { executablePath, args, ...options } = PHONE;
      const took = await measureTally(await browser.newContext(options), url, SLOW);
      for (const [name, value] of Object.entries(took)) {
        (times[name] ??= []).push(value);
      }
    } finally {
      await browser.close();
    }
  }
  const what = `Tally of ${MEAL.minutes} minutes, ${MEAL.presses.toLocaleString("en")} presses, ${SLOW}x slower [7]`;
  for (const [name, words] of [
    ["end", '"End the tally" to its result'],
    ["open", "its page opened from the visit"],
    ["scroll", "longest frame while scrolling"],
    ["file", "saved as a file"],
    ["decision", "decision"],
    ["handover", "handover text"],
  ]) {
    atMost(`${what}: ${words}`, spread(times[name]), median(times[name]), 100, " ms");
  }
  row(`${what}: a press to its line`, spread(times.press));
  row(`${what}: the visit read from the store and shown`, spread(times.store));
}

const NOTES = `
Every time is one of this machine, shared with whatever else runs on it: medians and quantiles, not best values. The slow-down is the browser's own (Emulation.setCPUThrottlingRate) and holds back the page's main thread only, not the service worker, the store or the disk.

1. The app was installed (service worker in charge, page closed), the server stopped and the browser ended. A new browser process opens the address on the same profile. From performance.timeOrigin, the start of the navigation: Home's "Swallow screen" button is found by a MutationObserver ("button there"); once the frame with it is painted it gets a synthetic click; "interactive" is when the page that answers it is painted. Median of ${STARTS} starts (fastest to slowest).
2. From the time stamp of a real touch on Home's button to the frame with 30 rows painted. Median of ${STARTS}, each the first in its browser process.
3. Real touches (Input.dispatchTouchEvent) at random moments on the running pad of "Breaths in 60 seconds", up to ${TAPS} in one count. From the touch's own time stamp to the end of the main thread's work on the first frame with its count: animation frame after the text changed, then a message posted from it. What the compositor and the screen add is not in it; Event Timing has that, in coarse steps.
4. The same end, counted from the frame boundary after the press, at 60 frames a second. Frame times come from the animation frame. A screen without any delay would show 0.
5. A page with one button whose press puts the next number into it: what browser, machine and this way of measuring cost before Penlight does anything.
6. From IDBDatabase.transaction("readwrite", durability strict) to its "complete"; several taps may share one. "Press to complete" starts at the touch's own time stamp.
7. The presses are written into the store behind a tally that was begun by hand, some ${MEAL.notes} notes among them; the app then finds it as after a crash. From the time stamp of a real touch to the end of the main thread's work on the frame with the page asked for; "saved as a file" to the moment the file is offered to the browser; while scrolling the longest time between two animation frames of a fling down and up. Median of ${MEALS} (fastest to slowest).`;

async function main() {
  const begun = new Date();
  const load = () => os.loadavg()[0].toFixed(1);
  const before = load();
  const dist = path.join(temporaryFolder(), "dist");
  // A build in the meantime must not change what is measured.
  fs.cpSync(DIST, dist, { recursive: true });
  sizes(dist);

  progress("recording a visit");
  const server = await startServer({ dir: dist, base: BASE });
  cleanups.push(() => server.stop());
  const { version, ...visit } = await recordVisit(server.url);
  progress(`installing; ${visit.events.length} events in the visit`);
  const empty = await installed(server.url, visit, 0);
  const few = await installed(server.url, visit, FEW);
  const many = await installed(server.url, visit, MANY);
  await meal(server.url);
  await server.stop();

  const [full, slowed] = await slowDown();
  await starts(server.url, empty, many);
  await presses(server.url, few, many);
  await lost(server.url, few);

  const cpus = os.cpus();
  const missed = rows.filter(([, , , met]) => met === "NOT MET");
  const line = (cells) => `| ${cells.join(" | ")} |`;
  console.log(`Measured ${begun.toISOString().slice(0, 16).replace("T", " ")} UTC${QUICK ? ", quickly: fewer repeats" : ""}.`);
  console.log(
    `${cpus.length} cores, ${cpus[0].model.trim()}, ${os.type()} ${os.arch()}; Chromium ${version}, headless. ` +
      `Load: ${before} before, ${load()} after. A fixed loop takes ${ms(full)} at full speed and ${ms(slowed)} with the slow-down. ` +
      `One stored visit is ${visit.events.length} events.\n`,
  );
  console.log(line(["What", "Measured", "Target", ""]));
  console.log(line(["---", "---", "---", "---"]));
  for (const cells of rows) {
    console.log(line(cells));
  }
  console.log(missed.length === 0 ? "\nAll targets met." : `\nNot met: ${missed.map(([what]) => what).join("; ")}.`);
  console.log(NOTES);
}

await main();
