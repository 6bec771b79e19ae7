// A meal of 45 minutes with 2,000 presses on a slow phone: how long its pages and its files take.

import { expect } from "@playwright/test";
import { storedEvents } from "../tests/browser/store.mjs";
import { appStarted, openApp } from "../tests/browser/support.mjs";
import { BUTTONS, FOLDS, PAGES, SAYS, Walk } from "../tests/browser/walk.mjs";

export const MEAL = { minutes: 45, presses: 2_000, notes: 10 };

// --- What runs in the page ------------------------------------------------------------------------
// Sent there as text, so these may use nothing from around them.

/** `bench.press(words)`: the next press and the frame in which the page with these words is painted. */
function watchPress() {
  const bench = (window.bench = { pressed: undefined, painted: undefined });
  let wanted;
  addEventListener("pointerdown", (event) => (bench.pressed ??= event.timeStamp), true);
  const look = () => {
    if (wanted === undefined || bench.pressed === undefined || !document.body?.textContent.includes(wanted)) {
      return;
    }
    wanted = undefined;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => (bench.painted = performance.now());
      channel.port2.postMessage(0);
    });
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true, characterData: true });
  bench.arm = (words) => {
    Object.assign(bench, { pressed: undefined, painted: undefined });
    wanted = words;
  };
  // A file is offered by a click on a link that stands nowhere in the page.
  const { click } = HTMLAnchorElement.prototype;
  HTMLAnchorElement.prototype.click = function () {
    click.call(this);
    bench.offered = performance.now();
  };
}

/** Writes a meal's presses behind a tally that was just begun, and moves all of it into the past. */
async function fill({ minutes, presses, notes }) {
  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const back = minutes * 60_000;
  const moved = (value) => {
    if (Array.isArray(value)) {
      return value.map(moved);
    }
    if (value === null || typeof value !== "object") {
      return value;
    }
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [key, "mw".includes(key) && typeof item === "number" ? item - back : moved(item)]),
    );
  };
  const database = await done(indexedDB.open("penlight"));
  const writing = database.transaction(["events", "heads"], "readwrite");
  const over = new Promise((resolve, reject) => {
    writing.oncomplete = resolve;
    writing.onabort = () => reject(writing.error);
  });
  const store = writing.objectStore("events");
  const events = await done(store.getAll());
  for (const event of events) {
    store.put({ ...event, at: moved(event.at), body: JSON.stringify(moved(JSON.parse(event.body))) });
  }
  const last = events.at(-1);
  const { Mark: begun } = JSON.parse(last.body);
  const kinds = ["Tap", "Tap", { Count: "Breath" }, "Tap", { Count: "Breath" }, { Sign: "ThroatClear" }, "Tap", { Sign: "Pause" }, { Sign: "Cough" }];
  let { seq } = last;
  const add = (at, body) => store.add({ ...last, seq: (seq += 1), at, body: JSON.stringify(body) });
  for (let i = 1; i <= presses; i += 1) {
    const off = Math.round((i * back) / (presses + 1)) - back;
    const at = { l: begun.at.l, m: begun.at.m + off, w: begun.at.w + off };
    const noted = i % (presses / notes) === 0;
    add(at, { Mark: { trial: begun.trial, at, kind: noted ? { Count: "Note" } : kinds[(i * i) % 31 % kinds.length] } });
    if (noted) {
      add(at, { Answer: { trial: begun.trial, question: `note.${at.w}`, answer: { Words: `note ${i}` } } });
    }
  }
  for (const head of await done(writing.objectStore("heads").getAll())) {
    writing.objectStore("heads").put({ ...head, events: seq + 1 });
  }
  await over;
  database.close();
}

/** The frames while something moves, until told to stop. */
function watchFrames() {
  const frames = (window.gaps = []);
  let last = performance.now();
  const turn = (now) => {
    frames.push(now - last);
    last = now;
    window.framing = requestAnimationFrame(turn);
  };
  window.framing = requestAnimationFrame((now) => {
    last = now;
    turn(now);
    frames.length = 0;
  });
}

// --- The measurement --------------------------------------------------------------------------------

/** One meal from its last press to its file: milliseconds of each step. */
export async function measureTally(context, url, rate) {
  await context.addInitScript(watchPress);
  const page = context.pages()[0] ?? (await context.newPage());
  await openApp(page, `${url}#new/swallow`);
  const walk = new Walk(page, { real: true });
  await walk.press(BUTTONS.adult);
  await walk.press(BUTTONS.begin);
  await walk.isOn(PAGES.gates[0]);
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.addTo);
  await walk.press(BUTTONS.table);
  await walk.isOn(PAGES.table);
  await walk.startPad();
  await walk.settle();
  await walk.saved();
  await page.evaluate(fill, MEAL);
  const marks = (await storedEvents(page)).filter(({ event }) => event.Mark).length;
  expect(marks, "marks stored").toBe(MEAL.presses + 1);

  await page.goto("about:blank");
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
  await openApp(page, url);
  await walk.isOn(PAGES.table);
  await walk.button(BUTTONS.endTally).waitFor();
  await page.waitForTimeout(700);

  const took = {};
  /** Presses and waits for the page that shows these words. */
  const step = async (name, target, words) => {
    const button = typeof target === "string" || target instanceof RegExp ? walk.button(target) : target;
    await button.scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    await page.evaluate((w) => window.bench.arm(w), words);
    await button.tap();
    await page.waitForFunction(() => window.bench.painted !== undefined);
    took[name] = await page.evaluate(() => window.bench.painted - window.bench.pressed);
    await page.waitForTimeout(700);
  };
  const whole = "Save the tally as a file";
  await step("press", page.getByRole("group", { name: "Pads" }).getByRole("button").first(), "Last: swallow at 45 min");
  await step("end", BUTTONS.endTally, whole);

  await page.evaluate(watchFrames);
  await session.send("Input.synthesizeScrollGesture", { x: 195, y: 600, yDistance: -3_000, speed: 2_500, gestureSourceType: "touch" });
  await session.send("Input.synthesizeScrollGesture", { x: 195, y: 300, yDistance: 3_000, speed: 2_500, gestureSourceType: "touch" });
  took.scroll = await page.evaluate(() => {
    cancelAnimationFrame(window.framing);
    return Math.max(...window.gaps);
  });

  await walk.button(BUTTONS.saveTally).scrollIntoViewIfNeeded();
  await page.waitForTimeout(300);
  await page.evaluate(() => window.bench.arm(undefined));
  const [download] = await Promise.all([page.waitForEvent("download"), walk.button(BUTTONS.saveTally).tap()]);
  took.file = await page.evaluate(() => window.bench.offered - window.bench.pressed);
  await download.delete();

  await step("visit", BUTTONS.back, "Person and place");
  await step("open", BUTTONS.table, whole);
  await page.goto("about:blank");
  await openApp(page, `${url}#history`);
  await step("store", page.locator(".heads .head").first(), "Person and place");
  await walk.unfold(FOLDS.endHere);
  await step("decision", BUTTONS.breakOff, "Why");
  await step("handover", BUTTONS.handover, "Copy");
  return took;
}
