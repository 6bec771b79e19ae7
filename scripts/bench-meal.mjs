// A long meal on a slow phone: how long its pages and its file take.

import { withFreshPhone } from "./bench-browser.mjs";
import { count, judge, median, spread, tell } from "./bench-figures.mjs";
import { watchFrames, watchPress } from "./bench-page.mjs";
import { LONG, openLong } from "./bench-presses.mjs";
import { openApp } from "../tests/browser/support.mjs";
import { BUTTONS, FOLDS } from "../tests/browser/walk.mjs";

const STEP = 100;
const STEPS = [
  ["end", '"End the tally" to its result'],
  ["open", "its page opened from the visit"],
  ["scroll", "longest frame while scrolling"],
  ["file", "saved as a file"],
  ["decision", "decision"],
  ["handover", "handover text"],
];

/** One meal from its end to its handover: milliseconds of each step. */
async function measureMeal(context, url, rate, meal) {
  await context.addInitScript(watchPress);
  const page = await context.newPage();
  const walk = await openLong(page, url, LONG.tally, meal);
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });

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
  await step("end", BUTTONS.endTally, BUTTONS.saveTally);

  await page.evaluate(watchFrames);
  const fling = { x: 195, speed: 2_500, gestureSourceType: "touch" };
  await session.send("Input.synthesizeScrollGesture", { ...fling, y: 600, yDistance: -3_000 });
  await session.send("Input.synthesizeScrollGesture", { ...fling, y: 300, yDistance: 3_000 });
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
  await step("open", BUTTONS.table, BUTTONS.saveTally);
  await page.goto("about:blank");
  await openApp(page, `${url}#history`);
  await step("store", page.locator(".heads .head").first(), "Person and place");
  await walk.unfold(FOLDS.endHere);
  await step("decision", BUTTONS.breakOff, "Why");
  await step("handover", BUTTONS.handover, BUTTONS.copy);
  return took;
}

/** Each time in a new browser. */
export async function meals({ url, rate, times, minutes, marks, notes }) {
  const all = [];
  for (let i = 0; i < times; i += 1) {
    all.push(await withFreshPhone((context) => measureMeal(context, url, rate, { minutes, marks, notes })));
  }
  const of = (name) => all.map((took) => took[name]);
  const what = `Tally of ${minutes} minutes, ${count(marks)} marks, ${rate}x slower`;
  for (const [name, words] of STEPS) {
    judge(`${what}: ${words} [5]`, spread(of(name)), median(of(name)), STEP, "ms");
  }
  tell(`${what}: the visit read from the store and shown`, spread(of("store")));
}
