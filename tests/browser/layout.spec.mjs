// Where things lie: the pad under the thumb, what must be seen without scrolling, and both hands.

import { visit } from "./journal.mjs";
import { appStarted, expect, test } from "./support.mjs";
import { ASKED, AT, BUTTONS, PAGES, SIGNS, TIMES, Walk } from "./walk.mjs";

const SIZES = [
  [390, 844],
  [844, 390],
  [320, 568],
];

const pads = (page) => page.getByRole("group", { name: "Pads" }).getByRole("button");
const row = (page, n) => page.locator(".trials tbody tr").nth(n);
const scrollsSideways = (page) => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

for (const width of [390, 320]) {
  test(`${width} px: the pad stays where the thumb is, before and after the start`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    // At 320 px the heading takes two lines and more: the head is as high as it is.
    const atTheEdge = async () => {
      const box = await walk.pad.boundingBox();
      expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
      expect(box.y + box.height).toBeGreaterThan(844 - 24);
      expect(box.y + box.height).toBeLessThanOrEqual(844);
      return box.y;
    };
    const ready = await atTheEdge();
    await walk.startPad();
    expect(Math.abs((await atTheEdge()) - ready)).toBeLessThan(1);
  });
}

test("on the smallest screen the pad is in sight before the start", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 568 });
  const walk = await Walk.at(page, visit({ screen: "OralMotor", age: 8 }).weakness().examined(), AT.pa);
  for (const task of ["pa", "sequence", "ah"]) {
    await walk.go(AT[task]);
    await walk.isOn(PAGES[task]);
    const ready = await walk.pad.boundingBox();
    expect.soft(ready.y + ready.height, task).toBeLessThanOrEqual(568);
    expect.soft(ready.height, task).toBeGreaterThanOrEqual(120);
    await walk.startPad();
    const running = await walk.pad.boundingBox();
    // It stays where it was touched.
    expect.soft(running.y, task).toBeLessThanOrEqual(ready.y + 8);
    expect.soft(running.y + running.height, task).toBeGreaterThanOrEqual(ready.y + ready.height - 8);
    await walk.wait(1_000);
    await walk.press(task === "ah" ? walk.pad : BUTTONS.stopCount);
    await walk.settle();
  }
});

for (const [width, height] of [
  [320, 568],
  [390, 844],
]) {
  test(`${width} px: what a sign asks for is in sight, and moves nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
    await walk.drink({ end: false });
    const cough = walk.sign(SIGNS.cough);
    const before = await cough.boundingBox();
    await walk.press(cough);
    await expect(page.getByRole("alert").filter({ hasText: "Stop. Take the cup away." })).toBeInViewport({ ratio: 1 });
    const after = await cough.boundingBox();
    expect(Math.abs(after.y - before.y)).toBeLessThan(2);
    await walk.press(BUTTONS.lastSwallow);
    await walk.settle();

    // A second after the minute: whether it belongs to it is asked where the signs are.
    await walk.wait(TIMES.watch + 1_000 - TIMES.still);
    await walk.settle();
    const up = page.getByText("What comes next stands above");
    if (height < 640) {
      await walk.press(up);
      await expect(walk.group(ASKED.voiceAfter)).toBeInViewport({ ratio: 1 });
    } else {
      await expect(up).toBeHidden();
    }
    await walk.press(walk.sign(SIGNS.voice));
    await expect(walk.button(BUTTONS.withinMinute)).toBeInViewport({ ratio: 1 });
  });

  test(`own trials at ${width} x ${height}: what was given and its signs are seen without scrolling`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    const walk = await Walk.at(page, visit({ screen: "OwnTrials", slp: true }).gateHolds().breaths(), AT.own);
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    await walk.answer(ASKED.howMuch, "5 mL");
    await walk.press(walk.pad);
    await walk.wait(2_000);
    await walk.press(walk.pad);
    await walk.settle();
    await walk.press(walk.sign(SIGNS.throatClear));
    await expect(page.locator(".lately")).toHaveText("2 Mildly thick, 5 mL: given once, cleared the throat");
    await expect(page.locator(".lately")).toBeInViewport({ ratio: 1 });
    if (height > 600) {
      await expect(row(page, 0)).toBeInViewport({ ratio: 1 });
    }
    // The time left stands in large figures on the pad.
    await expect(walk.pad).toContainText("60 s left to watch");
    const size = await walk.pad.locator(".left").evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
    expect(size).toBeGreaterThan(30);
  });
}

test("left hand: end stands on the thumb's side, undo beside it, at every size", async ({ page }) => {
  const walk = await Walk.start(page);
  const sides = async () => {
    const end = await walk.button(BUTTONS.stopCount).boundingBox();
    const undo = await walk.button(BUTTONS.undo).boundingBox();
    return end.x - undo.x;
  };
  await walk.press(BUTTONS.count);
  await walk.startPad();
  expect(await sides()).toBeGreaterThan(0);
  await walk.press(BUTTONS.stopCount);
  await walk.settle();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.settings);
  await walk.press(page.getByRole("switch", { name: BUTTONS.leftHand }));
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.count);
  await walk.startPad();
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    expect(await sides(), `${width} x ${height}`).toBeLessThan(0);
  }
  // It is kept.
  await walk.saved();
  await page.reload();
  await appStarted(page);
  expect(await sides()).toBeLessThan(0);
});

test("left hand: the signs change sides upright, pad and signs on the phone's side", async ({ page }) => {
  const walk = await Walk.at(page, visit({ screen: "Stepped" }).readyForWater(), AT.sips);
  await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
  const x = async (sign) => (await walk.sign(sign).boundingBox()).x;
  const hand = (left) => page.evaluate((is) => (is ? (document.documentElement.dataset.hand = "left") : delete document.documentElement.dataset.hand), left);
  expect(await x(SIGNS.choke)).toBeGreaterThan(await x(SIGNS.noSwallow));
  await hand(true);
  expect(await x(SIGNS.choke)).toBeLessThan(await x(SIGNS.noSwallow));
  await page.setViewportSize({ width: 844, height: 390 });
  const panel = page.locator(".pad.panel");
  for (const left of [true, false]) {
    await hand(left);
    const [pad, sign] = [await panel.boundingBox(), await walk.sign(SIGNS.cough).boundingBox()];
    expect(pad.x < sign.x, left ? "left" : "right").toBe(left);
    expect(await scrollsSideways(page)).toBeLessThanOrEqual(0);
  }
});

test("two pads lie side by side, in sight, at every size", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.press(BUTTONS.count);
  await walk.answer(ASKED.pads, "Two things");
  await walk.startPad();
  await walk.settle();
  const [left, right] = [0, 1].map((i) => pads(page).nth(i));
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    const [a, b] = [await left.boundingBox(), await right.boundingBox()];
    expect(b.x, `${width} x ${height}`).toBeGreaterThanOrEqual(a.x + a.width);
    expect(Math.min(a.width, b.width, a.height, b.height)).toBeGreaterThanOrEqual(120);
    expect(Math.max(a.y + a.height, b.y + b.height), "both in sight without scrolling").toBeLessThanOrEqual(height);
    expect(await scrollsSideways(page)).toBeLessThanOrEqual(0);
  }
});
