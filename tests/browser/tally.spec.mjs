// The tally at the table: many presses over a long time, a locked phone and a reload, and the file.

import fs from "node:fs";
import { loose } from "./journal.mjs";
import { appStarted, expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { BUTTONS, FIELDS, PAGES, SIGNS, Walk } from "./walk.mjs";

/** The pads, in their order on the page. */
const pads = (page) => page.getByRole("group", { name: "Pads" }).getByRole("button");

const kinds = async (page) => (await storedEvents(page)).map(({ event }) => event?.Mark?.kind).filter(Boolean);

test("a tally of 12 minutes over a locked phone and a reload: every press is there", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oneTask(PAGES.table);
  await walk.startPad();
  await walk.settle();
  const [swallow, breath] = [0, 1].map((i) => pads(page).nth(i));
  for (let i = 0; i < 5; i += 1) {
    await page.clock.fastForward(20_000);
    await walk.touch(swallow);
    await walk.touch(breath);
  }
  await walk.sign(SIGNS.cough).tap();
  await expect(page.getByText(/^Last: cough at 1 min 40 s/)).toBeVisible();
  // Pressed by mistake, and taken back: the newest of any kind.
  await walk.sign(SIGNS.pause).tap();
  await walk.press(BUTTONS.undoOf("pause"));
  await expect(walk.button(BUTTONS.undoOf("cough"))).toBeVisible();
  // The phone is locked for four minutes.
  await walk.sight(false);
  await page.clock.fastForward(240_000);
  await walk.sight(true);
  await walk.touch(swallow);
  await walk.field(FIELDS.note).fill("straw from here on");
  await walk.press(BUTTONS.addNote);
  await expect(walk.field(FIELDS.note)).toHaveValue("");
  await walk.saved();
  await page.reload();
  await appStarted(page);
  await expect(swallow).toHaveText("6swallows");
  await page.clock.fastForward(300_000);
  await walk.touch(swallow);
  await walk.sign(SIGNS.throatClear).tap();
  const [minutes, seconds] = (await page.locator(".clock b").textContent()).match(/\d+/g).map(Number);
  await page.clock.fastForward((12 * 60 - minutes * 60 - seconds) * 1000);
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  const figures = page.locator(".result .figure");
  await expect(figures.first()).toHaveText(/^12 min 0 s: 7 swallows, 5 breaths, 1 cough, 1 throat clear, 1 note/);
  // Its picture is drawn.
  await expect(page.locator(".tally-picture svg path").first()).toBeAttached();
  expect((await page.locator(".tally-picture svg").first().boundingBox()).width).toBeGreaterThan(200);
  const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveTally)]);
  expect(download.suggestedFilename()).toMatch(/^penlight-tally-\d+\.csv$/);
  const file = fs.readFileSync(await download.path(), "utf8");
  expect(file).toContain(',note,"straw from here on"');
  expect(file).toContain("\r\n0 to 5 min,5,5,1,");
  const marks = await kinds(page);
  expect(marks.filter((kind) => kind === "Tap")).toHaveLength(7);
  expect(marks.filter((kind) => kind.Count === "Breath")).toHaveLength(5);
});

test("a meal of 45 minutes and 2,000 presses, the last 400 four in the same millisecond, over a lock and a reload: nothing is lost", async ({ page }) => {
  const [ROUNDS, BY_HAND, EVERY] = [500, 100, 5_400];
  const pairs = [
    ["throatClear", "voice"],
    ["cough", "pause"],
  ];
  const meal = loose().open("Meal").mark("Start");
  for (let i = 0; i < ROUNDS - BY_HAND; i += 1) {
    meal.wait(EVERY).mark("Tap").mark({ Count: "Breath" });
    pairs[i % 2].forEach((sign) => meal.sign(sign));
  }
  const walk = await Walk.at(page, meal);
  await expect(pads(page).nth(0)).toHaveText(`${ROUNDS - BY_HAND}swallows`);
  /** Four touches without time between them: two pads, and two signs in turn. */
  const four = (i) =>
    page.evaluate((names) => {
      const signs = [...document.querySelectorAll(".sign")];
      const sign = (words) => signs.find((s) => s.textContent.startsWith(words));
      for (const target of [...document.querySelectorAll(".pads .pad"), ...names.map(sign)]) {
        target.dispatchEvent(new PointerEvent("pointerdown", { button: 0, isPrimary: true, bubbles: true }));
      }
    }, pairs[i % 2].map((name) => SIGNS[name]));
  for (let i = 0; i < BY_HAND; i += 1) {
    await page.clock.fastForward(EVERY);
    await four(i);
    if (i === 30) {
      await walk.sight(false);
      await page.clock.fastForward(60_000);
      await walk.sight(true);
    }
    if (i === 60) {
      await walk.wait(100);
      await walk.saved();
      await page.reload();
      await appStarted(page);
      await expect(pads(page).nth(0)).toHaveText(`${ROUNDS - BY_HAND + 61}swallows`);
    }
  }
  await walk.wait(100);
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await walk.saved();
  const marks = await kinds(page);
  const count = (is) => marks.filter(is).length;
  expect(count((kind) => kind === "Tap")).toBe(500);
  expect(count((kind) => kind.Count === "Breath")).toBe(500);
  for (const sign of ["Cough", "Pause", "ThroatClear", "VoiceChange"]) {
    expect(count((kind) => kind.Sign === sign), sign).toBe(250);
  }
  await expect(page.locator(".result .figure").first()).toHaveText(/^4\d min \d+ s: 500 swallows, 500 breaths, 250 coughs, /);
  await expect(page.getByText(/^45 to 50 min: /)).toHaveCount(1);
  const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveTally)]);
  const lines = fs.readFileSync(await download.path(), "utf8").split("\r\n");
  expect(lines.filter((line) => /^[\d.]+,(swallow|breath|cough|pause|throat clear|wet voice),/.test(line))).toHaveLength(2_000);
});
