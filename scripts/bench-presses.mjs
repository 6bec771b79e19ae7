// What one press costs: on a pad that was just begun, behind thousands of marks, on a busy page.

import { setTimeout as pause } from "node:timers/promises";
import { phone, withFreshPhone } from "./bench-browser.mjs";
import { count, judge, median, ms, quantile, quantiles, tell } from "./bench-figures.mjs";
import { BARE, block, seedMarks, watchTaps } from "./bench-page.mjs";
import { marksOf, storedEvents, storedHeads } from "../tests/browser/store.mjs";
import { openApp } from "../tests/browser/support.mjs";
import { BUTTONS, FOLDS, PAGES, Walk } from "../tests/browser/walk.mjs";

const WORK = 8;
const FRAMES_LATE = 1;
const STORED = 50;
const STORED_RATIO = 1.5;
const MARKS_RATIO = 1.2;

// --- A finger ---------------------------------------------------------------------------------------

/** A finger over the pad of a page, which is slowed down from here on. */
async function fingerOn(context, page, rate) {
  const box = await page.locator("#pad").boundingBox();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
  const touch = (type, ...touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  const at = (share, id) => ({ x: box.x + box.width * share, y: box.y + box.height / 2, id });
  await pause(300);
  return { touch, at };
}

/** Taps as a hand gives them, and what the page noted of each. */
async function tap(context, page, { rate, taps }) {
  const { touch, at } = await fingerOn(context, page, rate);
  for (let i = 0; i < taps; i += 1) {
    await touch("touchStart", at(0.5, 0));
    await pause(30);
    await touch("touchEnd");
    await pause(80 + Math.random() * 140);
  }
  await pause(500);
  const noted = await page.evaluate(() => window.bench.taps);
  if (noted.filter(({ painted }) => painted !== undefined).length !== taps) {
    throw new Error(`${taps} taps, but not as many shown`);
  }
  return noted;
}

const toPage = (taps) => taps.map((tap) => tap.shown - tap.at);
const inPage = (taps) => taps.map((tap) => tap.shown - tap.came);
const toStore = (taps) => taps.map((tap) => tap.kept - tap.at);

/** How many frames later than the first that could show it the count stands in one: 0 is the next. */
const framesLate = ({ at, frame }) => Math.max(0, Math.floor((frame - at) / (1_000 / 60)));

// --- On a pad that was just begun -------------------------------------------------------------------

/** Leads from the gate of a new visit to its first pad, and starts it. */
async function startBreaths(walk) {
  await walk.gate();
  await walk.isOn(PAGES.breaths);
  await walk.startPad();
  await walk.page.locator("#pad .count").waitFor();
  await walk.saved();
}

/** A new visit, opened past Home, which would lead back into the visit of the round before. */
async function newVisit(page, url) {
  await openApp(page, `${url}#new/swallow`);
  const walk = new Walk(page, { real: true });
  await walk.press(BUTTONS.adult);
  await walk.press(BUTTONS.begin);
  await walk.isOn(PAGES.gates[0]);
  return walk;
}

async function onRunningPad(profile, url, use) {
  const context = await phone(profile);
  try {
    const page = context.pages()[0];
    await page.addInitScript(watchTaps);
    await startBreaths(await newVisit(page, url));
    return await use(context, page);
  } finally {
    await context.close();
  }
}

/** The same taps where nothing but counting is done: what machine and method cost by themselves. */
const onBarePage = (settings) =>
  withFreshPhone(async (context) => {
    const page = await context.newPage();
    await page.addInitScript(watchTaps);
    await page.goto(`data:text/html,${encodeURIComponent(BARE)}`);
    return tap(context, page, settings);
  });

/** `few` and `many`: how many visits the phone holds, and its profile. */
export async function presses({ url, rate, rounds, taps, few, many }) {
  const at = { few: [], many: [], slow: [], bare: [] };
  const onPad = (profile, speed) => onRunningPad(profile, url, (context, page) => tap(context, page, { rate: speed, taps }));
  for (let round = 0; round < rounds; round += 1) {
    at.few.push(...(await onPad(few.profile, 1)));
    at.many.push(...(await onPad(many.profile, 1)));
    at.slow.push(...(await onPad(many.profile, rate)));
    at.bare.push(...(await onBarePage({ rate, taps })));
  }

  const slower = `${rate}x slower`;
  const besideBare = (of) => `${quantiles(of(at.slow))}; bare page ${quantiles(of(at.bare))}`;
  judge(`One press, ${slower}: from its arrival in the page to its count there [2]`, besideBare(inPage), quantile(inPage(at.slow), 0.95), WORK, "ms (p95)");
  tell(`One press, ${slower}: the same from the touch's own stamp`, besideBare(toPage));
  const frames = (of) => [0.5, 0.95].map((share) => `p${share * 100} ${quantile(of.map(framesLate), share)}`).join(", ");
  judge(
    `One press, ${slower}: frames between the next one and that with its count`,
    `${frames(at.slow)}; bare page ${frames(at.bare)}`,
    quantile(at.slow.map(framesLate), 0.95),
    FRAMES_LATE,
    "(p95)",
  );
  for (const [visits, of] of [[few.visits, at.few], [many.visits, at.many]]) {
    judge(`One press, ${count(visits)} visits: to stored [3]`, quantiles(toStore(of), [0.5, 0.99]), quantile(toStore(of), 0.99), STORED, "ms (p99)");
  }
  const ratio = median(toStore(at.many)) / median(toStore(at.few));
  judge(`One press to stored, ${count(many.visits)} visits against ${few.visits}`, `${ratio.toFixed(2)} times (p50)`, ratio, STORED_RATIO, "times");
  tell(`One press, ${count(many.visits)} visits, ${slower}: to stored`, quantiles(toStore(at.slow), [0.5, 0.99]));
}

// --- Behind many marks ------------------------------------------------------------------------------

/** The counts that can grow long, how to begin one, and what stands in it. */
export const LONG = {
  count: {
    name: "Just count something",
    heading: PAGES.count,
    kinds: ["Tap"],
    begin: async (page, url) => {
      await openApp(page, url);
      const walk = new Walk(page, { real: true });
      await walk.press(BUTTONS.count);
      return walk;
    },
  },
  tally: {
    name: "At the table",
    heading: PAGES.table,
    kinds: ["Tap", "Tap", { Count: "Breath" }, "Tap", { Count: "Breath" }, { Sign: "ThroatClear" }, "Tap", { Sign: "Pause" }, { Sign: "Cough" }],
    begin: async (page, url) => {
      const walk = await newVisit(page, url);
      await walk.press(BUTTONS.back);
      await walk.unfold(FOLDS.addTo);
      await walk.press(BUTTONS.table);
      return walk;
    },
  },
};

/** A count begun by hand and filled in the store; the app then finds it as after a crash. */
export async function openLong(page, url, { heading, kinds, begin }, { minutes, marks, notes = 0 }) {
  const walk = await begin(page, url);
  await walk.isOn(heading);
  await walk.startPad();
  await walk.settle();
  await walk.saved();
  await page.evaluate(seedMarks, { minutes, marks, notes, kinds });
  const stored = (await storedEvents(page)).filter(({ event }) => event.Mark).length;
  if (stored !== marks + 1) {
    throw new Error(`${stored} marks stored instead of ${marks + 1}`);
  }
  await page.goto("about:blank");
  await openApp(page, url);
  await walk.isOn(heading);
  await page.locator("#pad .count").waitFor();
  await page.waitForTimeout(700);
  return walk;
}

/** What a press costs at the first of `marks`, and how many times as much at the others. */
export async function pressesBehind({ url, rate, marks, taps, minutes }) {
  const [first, ...rest] = marks;
  for (const long of Object.values(LONG)) {
    const at = new Map();
    for (const number of marks) {
      const noted = await withFreshPhone(async (context) => {
        const page = await context.newPage();
        await page.addInitScript(watchTaps);
        await openLong(page, url, long, { minutes, marks: number });
        return tap(context, page, { rate, taps });
      });
      at.set(number, { shown: median(inPage(noted)), kept: median(noted.map((one) => one.kept - one.came)) });
    }
    const base = at.get(first);
    for (const number of rest) {
      const here = at.get(number);
      const [shown, kept] = ["shown", "kept"].map((key) => here[key] / base[key]);
      judge(
        `"${long.name}", ${rate}x slower: a press at mark ${count(number)} against mark ${first} (p50) [4]`,
        `to its count ${shown.toFixed(2)} times (${ms(here.shown)}, ${ms(base.shown)}), to stored ${kept.toFixed(2)} times (${ms(here.kept)}, ${ms(base.kept)})`,
        Math.max(shown, kept),
        MARKS_RATIO,
        "times",
      );
    }
  }
}

// --- On a busy page ---------------------------------------------------------------------------------

/** Two fingers on a pad whose page is busy: how many presses are not in the store afterwards. */
export async function lostPresses({ url, profile, seconds, perSecond, blocked, of }) {
  const number = seconds * perSecond;
  const { reached, kept } = await onRunningPad(profile, url, async (context, page) => {
    const { touch, at } = await fingerOn(context, page, 1);
    await page.evaluate(block, { blocked, of });
    const sent = [];
    const finger = async (point, late) => {
      const begun = performance.now() + late;
      for (let i = 0; i < number; i += 1) {
        await pause(Math.max(0, begun + (i * 1_000) / perSecond - performance.now()));
        sent.push(touch("touchStart", point));
        await pause(25);
        sent.push(touch("touchEnd", point));
      }
    };
    await Promise.all([finger(at(0.25, 1), 0), finger(at(0.75, 2), 17)]);
    await Promise.all(sent);
    await page.evaluate(() => clearTimeout(window.blocking));
    await pause(1_000);
    await new Walk(page, { real: true }).saved();
    const { visit } = (await storedHeads(page)).sort((a, b) => b.touched - a.touched)[0];
    const events = (await storedEvents(page)).filter((event) => event.visit === visit);
    return { reached: await page.evaluate(() => window.bench.taps.length), kept: marksOf(events, "Tap").length };
  });
  judge(
    `Presses lost: ${perSecond}/s on each of two touch points for ${seconds} s, main thread blocked ${blocked} of every ${of} ms`,
    `${2 * number - kept} (${2 * number} pressed, ${reached} reached the page, ${kept} stored)`,
    2 * number - kept,
    0,
    "",
  );
}
