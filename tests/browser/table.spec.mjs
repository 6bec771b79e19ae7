// Drink thickness, the timed cracker, the tally at the table, the signs after a stroke, and pads
// for two hands and for the left one.

import AxeBuilder from "@axe-core/playwright";
import fs from "node:fs";
import { appStarted, expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ASKED, BUTTONS, FIELDS, FOLDS, PAGES, SIGNS, TIMES, VERDICTS, Walk } from "./walk.mjs";

/** The pads, in their order on the page. */
const pads = (page) => page.getByRole("group", { name: "Pads" }).getByRole("button");

/** A press of a finger on its way down, at the page's own time. */
const touch = (pad) => pad.dispatchEvent("pointerdown", { button: 0, isPrimary: true });

async function single(page, button, heading) {
  const walk = await Walk.start(page);
  await walk.press(BUTTONS.oneTask);
  await walk.press(button);
  await walk.isOn(heading);
  return walk;
}

/** The swallow screen up to a clear cup of water, then its overview. */
async function afterWater(page, { finish = true } = {}) {
  await page.addInitScript(() => {
    window.otherTimeout = window.setTimeout.bind(window);
  });
  const walk = await Walk.start(page);
  await walk.toWater({ slp: true });
  await walk.drink();
  if (finish) {
    await walk.finishWater();
  }
  await overview(walk);
  return walk;
}

async function overview(walk) {
  await walk.press(BUTTONS.back);
  await expect(walk.fold(FOLDS.addTo)).toBeVisible();
}

async function beside(walk, button, heading) {
  if (!(await walk.button(button).isVisible())) {
    await walk.unfold(FOLDS.addTo);
  }
  await walk.press(button);
  await walk.isOn(heading);
}

// --- Drink thickness ------------------------------------------------------------------------------

test("drink thickness: 3, 2, 1, ten seconds that end by themselves, and the level of the drink", async ({ page }) => {
  await page.addInitScript(() => {
    window.buzzes = [];
    navigator.vibrate = (pattern) => window.buzzes.push(pattern);
  });
  const walk = await single(page, BUTTONS.thickness, PAGES.thickness);
  await walk.startPad();
  const panel = page.locator(".pad.panel");
  await expect(panel).toContainText("3");
  await walk.wait(2_500);
  await expect(panel).toContainText("1");
  await walk.wait(500);
  await walk.wait(3_000);
  await expect(panel).toContainText("7");
  // Nothing on it can end or count.
  await panel.tap();
  await walk.wait(6_900);
  await expect(panel).toContainText("1");
  await walk.wait(100);
  await expect(panel).toHaveCount(0);
  await walk.settle();
  expect(await page.evaluate(() => window.buzzes.some((b) => b.length === 3))).toBe(true);
  const field = walk.field(FIELDS.leftInSyringe);
  await walk.press("+1");
  await walk.press("+1");
  await walk.press("+1");
  await walk.press("+1");
  await expect(page.getByText(/is the border of level 1 Slightly thick and level 2/)).toBeVisible();
  await walk.press("+0.1");
  await expect(field).toHaveValue("4.1");
  await expect(page.getByText(/this drink flows like level 2 Mildly thick: 4.1 mL/i)).toBeVisible();
  await expect(page.getByText(/It is no advice what anybody is to be given/)).toBeVisible();
  await field.fill("10.1");
  await expect(field).toHaveAccessibleDescription("Between 0 and 10 mL.");
  await field.fill("10");
  await expect(page.getByText(/confirm with fork drip and spoon tilt/).first()).toBeVisible();
  await field.fill("0,9");
  await expect(page.getByText(/level 0 Thin/).first()).toBeVisible();
  const events = await storedEvents(page);
  const [start] = marksOf(events, "Start");
  const [over] = marksOf(events, "WindowOver");
  expect(Math.abs(over.at.m - start.at.m - 10_000)).toBeLessThanOrEqual(50);
});

// --- The cracker ----------------------------------------------------------------------------------

async function toCracker(page) {
  const walk = await afterWater(page);
  await beside(walk, BUTTONS.cracker, PAGES.cracker);
  return walk;
}

async function askBefore(walk, { teeth = "Yes" } = {}) {
  await expect(walk.pad).toHaveCount(0);
  await walk.answer(ASKED.allergy, "No");
  await walk.answer(ASKED.teeth, teeth);
  await expect(walk.pad).toHaveCount(0);
  await walk.answer(ASKED.dietOrder, ASKED.orderAllows);
}

test("a cracker on three pads at exact times: 4 bites, 60 chews, 3 swallows, 48 s", async ({ page }) => {
  const walk = await toCracker(page);
  await askBefore(walk);
  await walk.startPad();
  await walk.settle();
  const [chew, bite, swallow] = [0, 1, 2].map((i) => pads(page).nth(i));
  await expect(bite).toHaveText("1bite");
  for (let i = 0; i < 3; i += 1) {
    await touch(bite);
    for (let n = 0; n < 20; n += 1) {
      await walk.wait(500);
      await touch(chew);
    }
    // Two pads in the same millisecond: both count.
    await touch(swallow);
  }
  await expect(chew).toHaveText("60chews");
  await expect(bite).toHaveText("4bites");
  await expect(swallow).toHaveText("3swallows");
  // Undo says what it takes.
  await touch(chew);
  await walk.press(BUTTONS.undoOf("chew"));
  await expect(chew).toHaveText("60chews");
  await walk.wait(48_000 - 30_000 - TIMES.still);
  await walk.press(BUTTONS.mouthEmpty);
  await walk.settle();
  for (const line of ["60 chews, 4 bites, 3 swallows in 48.0 s", "12.0 s a bite", "15.0 chews a bite", "0.75 swallows a bite", "16.0 s a swallow"]) {
    await expect(page.getByText(line, { exact: true })).toBeVisible();
  }
  await walk.field(FIELDS.whichCracker).fill("plain square");
  await walk.field(FIELDS.whichCracker).blur();
  await walk.wait(TIMES.watch);
  await walk.settle();
  await expect(page.getByText(/One cracker \(plain square\): 4 bites, 60 chews, 3 swallows/)).toBeVisible();
  await walk.press(BUTTONS.next);
  await expect(page.getByText("60 chews, 4 bites, 3 swallows in 48.0 s")).toBeVisible();
});

test("teeth come before the cracker, and a sign with it refers", async ({ page }) => {
  const walk = await toCracker(page);
  await askBefore(walk, { teeth: "No" });
  await expect(page.getByText("No cracker: no teeth and no dentures that fit")).toBeVisible();
  await expect(walk.pad).toHaveCount(0);
  await walk.answer(ASKED.teeth, "Yes");
  await walk.startPad();
  await walk.settle();
  await walk.wait(3_000);
  await walk.sign(SIGNS.cough).tap();
  await expect(page.getByText("Stop. Nothing more to eat.")).toBeVisible();
  await walk.press(BUTTONS.mouthEmpty);
  await walk.wait(TIMES.watch);
  await walk.settle();
  await walk.press(BUTTONS.next);
  await walk.press(BUTTONS.decision);
  await walk.decided(VERDICTS.referOn);
  await expect(page.getByText("With the cracker: coughed")).toBeVisible();
});

// --- At the table ---------------------------------------------------------------------------------

async function hide(page, hidden) {
  await page.evaluate((is) => {
    Object.defineProperty(document, "visibilityState", { configurable: true, get: () => (is ? "hidden" : "visible") });
    Object.defineProperty(document, "hidden", { configurable: true, get: () => is });
    document.dispatchEvent(new Event("visibilitychange"));
  }, hidden);
}

test("a tally of 12 minutes over a locked phone and a reload: every press is there", async ({ page }) => {
  const walk = await single(page, BUTTONS.table, PAGES.table);
  await walk.startPad();
  await walk.settle();
  const [swallow, breath] = [0, 1].map((i) => pads(page).nth(i));
  for (let i = 0; i < 5; i += 1) {
    await walk.wait(20_000);
    await touch(swallow);
    await touch(breath);
  }
  await walk.sign(SIGNS.cough).tap();
  await expect(page.getByText(/^Last: cough at 1 min 40 s/)).toBeVisible();
  // Pressed by mistake, and taken back: the newest of any kind.
  await walk.sign(SIGNS.pause).tap();
  await walk.press(BUTTONS.undoOf("pause"));
  await expect(walk.button(BUTTONS.undoOf("cough"))).toBeVisible();
  // The phone is locked for four minutes.
  await hide(page, true);
  await page.clock.fastForward(240_000);
  await hide(page, false);
  await touch(swallow);
  await walk.field(FIELDS.note).fill("straw from here on");
  await walk.press(BUTTONS.addNote);
  await expect(walk.field(FIELDS.note)).toHaveValue("");
  await walk.saved();
  await page.reload();
  await appStarted(page);
  await expect(swallow).toHaveText("6swallows");
  await walk.wait(300_000);
  await touch(swallow);
  await walk.sign(SIGNS.throatClear).tap();
  const [minutes, seconds] = (await page.locator(".clock b").textContent()).match(/\d+/g).map(Number);
  await walk.wait((12 * 60 - minutes * 60 - seconds) * 1000);
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  const figures = page.locator(".result .figure");
  await expect(figures.first()).toHaveText(/^12 min 0 s: 7 swallows, 5 breaths, 1 cough, 1 throat clear, 1 note/);
  await expect(page.getByText(/^0 to 5 min: 5 swallows, 5 breaths, 1 cough/)).toBeVisible();
  await expect(page.getByText(/^10 to 15 min: 1 swallow, 1 throat clear/)).toBeVisible();
  await expect(page.getByText(/At the table: coughed/)).toBeVisible();
  const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveTally)]);
  expect(download.suggestedFilename()).toMatch(/^penlight-tally-\d+\.csv$/);
  const file = fs.readFileSync(await download.path(), "utf8");
  expect(file).toContain(',note,"straw from here on"');
  expect(file).toContain("\r\n0 to 5 min,5,5,1,");
  const marks = (await storedEvents(page)).map(({ event }) => event?.Mark?.kind).filter(Boolean);
  expect(marks.filter((kind) => kind === "Tap")).toHaveLength(7);
  expect(marks.filter((kind) => kind.Count === "Breath")).toHaveLength(5);
});

test("a meal of 45 minutes and 2,000 presses, four in the same millisecond, over a lock and a reload: nothing is lost", async ({ page }) => {
  test.setTimeout(180_000);
  const walk = await single(page, BUTTONS.table, PAGES.table);
  await walk.startPad();
  await walk.settle();
  /** Four touches without time between them: two pads, and two signs in turn. */
  const four = (i) =>
    page.evaluate(
      ({ first, second }) => {
        const signs = [...document.querySelectorAll(".sign")];
        const sign = (words) => signs.find((s) => s.textContent.startsWith(words));
        for (const target of [...document.querySelectorAll(".pads .pad"), sign(first), sign(second)]) {
          target.dispatchEvent(new PointerEvent("pointerdown", { button: 0, isPrimary: true, bubbles: true }));
        }
      },
      i % 2 ? { first: SIGNS.cough, second: SIGNS.pause } : { first: SIGNS.throatClear, second: SIGNS.voice },
    );
  for (let i = 0; i < 500; i += 1) {
    await page.clock.fastForward(5_400);
    await four(i);
    if (i === 150) {
      await hide(page, true);
      await page.clock.fastForward(240_000);
      await hide(page, false);
    }
    if (i === 250) {
      await walk.wait(100);
      await walk.saved();
      await page.reload();
      await appStarted(page);
      await expect(pads(page).nth(0)).toHaveText("251swallows");
    }
  }
  await walk.wait(100);
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await walk.saved();
  const marks = (await storedEvents(page)).map(({ event }) => event?.Mark?.kind).filter(Boolean);
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

test("choking at the table opens its page, and leads back to the tally", async ({ page }) => {
  const walk = await single(page, BUTTONS.table, PAGES.table);
  await walk.startPad();
  await walk.settle();
  await walk.wait(5_000);
  await walk.sign(SIGNS.choke).tap();
  await walk.isOn(PAGES.choking);
  await walk.settle();
  await walk.press(BUTTONS.baseline);
  await walk.press(BUTTONS.backToTally);
  await walk.isOn(PAGES.table);
  await expect(page.getByText("Stop: nothing more to eat or drink now.")).toBeVisible();
  await expect(walk.button(BUTTONS.undoOf("choking"))).toBeVisible();
});

test("a choking at the table goes with its times into the visit the tally is attached to", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({ screen: "oralMotor", age: "60" });
  await walk.saved();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.back);
  await walk.oneTask(PAGES.table);
  await walk.startPad();
  await walk.settle();
  await walk.wait(5_000);
  await walk.sign(SIGNS.choke).tap();
  await walk.isOn(PAGES.choking);
  await walk.settle();
  await walk.wait(5_000);
  await walk.press(BUTTONS.helpCalled);
  await walk.wait(25_000);
  await walk.press(BUTTONS.baseline);
  await walk.press(BUTTONS.backToTally);
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await walk.attachTo(/^Visit 1/);
  await walk.press(/^Longest "ah"/);
  await walk.press(BUTTONS.skip);
  await walk.decided(VERDICTS.stop);
  await walk.toHandover();
  await expect(walk.text).toContainText("choking: help called after 5 s, back to baseline after 30 s");
});

test("a cough at the table refers the visit it belongs to", async ({ page }) => {
  const walk = await afterWater(page);
  await beside(walk, BUTTONS.table, PAGES.table);
  await walk.startPad();
  await walk.settle();
  await walk.wait(5_000);
  await walk.sign(SIGNS.cough).tap();
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await walk.press(BUTTONS.next);
  await walk.press(BUTTONS.decision);
  await walk.decided(VERDICTS.referOn);
  await expect(page.getByText("At the table: coughed")).toBeVisible();
});

// --- Signs after a stroke -------------------------------------------------------------------------

test("the signs ask nothing twice, and refer from two on", async ({ page }) => {
  const walk = await afterWater(page);
  await beside(walk, BUTTONS.sixSigns, PAGES.sixSigns);
  await expect(page.getByText("0 found, 3 of 5 tested")).toBeVisible();
  await expect(page.getByText("Voice before the water: clear")).toBeVisible();
  await expect(page.getByText("Before you start: coughs on request, or was heard to cough")).toBeVisible();
  // In the open stands only what nobody recorded; heard to cough is no cough on request.
  const asked = page.locator(".six .choices:visible");
  await expect(asked).toHaveCount(2);
  await walk.answer(ASKED.slurred, "Yes");
  await expect(page.getByText("1 found, 4 of 5 tested")).toBeVisible();
  await expect(page.getByText("Counted in this visit's decision")).toBeVisible();
  await expect(page.getByText(/Fewer than two clear nobody/)).toBeVisible();
  await walk.press("Weak, spoken or none");
  await expect(page.getByText("2 found, 5 of 5 tested")).toBeVisible();
  await walk.press(BUTTONS.done);
  await walk.press(BUTTONS.decision);
  await walk.decided(VERDICTS.referOn);
  await expect(page.getByText("Two or more signs seen: slurred speech, weak cough on request (5 of 5 tested)")).toBeVisible();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.sixSigns);
  await walk.press(BUTTONS.leaveSignsOut);
  await walk.press(BUTTONS.done);
  await walk.press(BUTTONS.decision);
  await walk.decided(VERDICTS.pass);
});

test("looking at the signs changes nothing", async ({ page }) => {
  const walk = await afterWater(page);
  await beside(walk, BUTTONS.sixSigns, PAGES.sixSigns);
  await walk.press(BUTTONS.done);
  await walk.press(BUTTONS.decision);
  await walk.decided(VERDICTS.pass);
});

// --- Hands ----------------------------------------------------------------------------------------

async function setting(walk, button) {
  await walk.press(BUTTONS.settings);
  await walk.press(walk.page.getByRole("switch", { name: button }));
  await walk.press(BUTTONS.back);
}

const SIZES = [
  [390, 844],
  [844, 390],
  [320, 568],
];

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
  await setting(walk, BUTTONS.leftHand);
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

test("two pads count the same thing or two, side by side, at every size", async ({ page }) => {
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
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  }
  await touch(left);
  await touch(right);
  await touch(right);
  await expect(left).toHaveText("1tap");
  await expect(right).toHaveText("2taps");
  await walk.wait(2_000);
  await walk.press(BUTTONS.stopCount);
  await expect(page.getByText("on the right pad: 2 taps")).toBeVisible();
  await walk.settle();
  await walk.press(BUTTONS.countAgain);
  await walk.answer(ASKED.pads, "Two, the same thing");
  await walk.startPad();
  await walk.settle();
  await touch(left);
  await touch(right);
  await expect(left).toHaveText("2taps");
  await expect(right).toHaveText("2taps");
});

// --- For everybody --------------------------------------------------------------------------------

async function inspect(walk, name) {
  const { page } = walk;
  const wrong = [];
  for (const [width, height, text] of [...SIZES.map((size) => [...size, ""]), [320, 640, "200%"]]) {
    await page.setViewportSize({ width, height });
    await page.evaluate((is) => (document.documentElement.style.fontSize = is), text);
    if (process.env.PENLIGHT_SHOTS) {
      await page.screenshot({ path: `${process.env.PENLIGHT_SHOTS}/${name}-${width}x${height}${text && "-200"}.png` });
    }
    const at = `${name}, ${width} x ${height} ${text}`;
    wrong.push(
      ...(await page.evaluate(() => {
        const found = [];
        const wide = document.documentElement.scrollWidth;
        if (wide > innerWidth) {
          found.push(`scrolls sideways: ${wide}`);
        }
        for (const control of document.querySelectorAll("button, summary, input")) {
          if (!control.checkVisibility()) {
            continue;
          }
          control.scrollIntoView({ block: "nearest", behavior: "instant" });
          const box = control.getBoundingClientRect();
          const words = (control.textContent || control.id).slice(0, 30);
          if (Math.round(box.height) < 44 || Math.round(box.width) < 44) {
            found.push(`"${words}" is only ${Math.round(box.width)} x ${Math.round(box.height)}`);
          }
          if (control.tagName !== "INPUT" && control.scrollWidth > control.clientWidth + 1) {
            found.push(`"${words}" is too narrow for its words`);
          }
          const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
          if (!control.contains(hit)) {
            found.push(`"${words}" is covered by ${hit?.tagName}.${hit?.className}`);
          }
        }
        scrollTo(0, 0);
        return found;
      })).map((words) => `${at}: ${words}`),
    );
  }
  await page.evaluate(() => (document.documentElement.style.fontSize = ""));
  await page.setViewportSize({ width: 390, height: 844 });
  for (const look of [null, "dark"]) {
    await page.evaluate((is) => (is ? (document.documentElement.dataset.look = is) : delete document.documentElement.dataset.look), look);
    // Axe waits by timers, which stand still here, so it gets the browser's own.
    const swap = () => page.evaluate(() => ([window.setTimeout, window.otherTimeout] = [window.otherTimeout, window.setTimeout]) && undefined);
    await swap();
    const { violations } = await new AxeBuilder({ page }).withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]).setLegacyMode(true).analyze();
    await swap();
    wrong.push(...violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${name}, ${look ?? "light"}: ${id} at ${target}`)));
  }
  await page.evaluate(() => delete document.documentElement.dataset.look);
  expect.soft(wrong, name).toEqual([]);
}

test("every new page for everybody: axe, light and dark, small, on its side, 200 % text", async ({ page }) => {
  test.setTimeout(150_000);
  const walk = await afterWater(page);
  await inspect(walk, "overview");
  await beside(walk, BUTTONS.sixSigns, PAGES.sixSigns);
  await inspect(walk, "signs");
  await walk.press(BUTTONS.done);
  await beside(walk, BUTTONS.cracker, PAGES.cracker);
  await inspect(walk, "cracker-before");
  await askBefore(walk);
  await walk.startPad();
  await walk.settle();
  await touch(pads(page).nth(0));
  await inspect(walk, "cracker-running");
  await walk.press(BUTTONS.mouthEmpty);
  await walk.wait(TIMES.watch);
  await walk.settle();
  await inspect(walk, "cracker-over");
  await walk.press(BUTTONS.next);
  await beside(walk, BUTTONS.thickness, PAGES.thickness);
  await inspect(walk, "thickness-ready");
  await walk.startPad();
  await walk.wait(13_000);
  await walk.settle();
  await walk.press("+1");
  await inspect(walk, "thickness-over");
  await overview(walk);
  await beside(walk, BUTTONS.table, PAGES.table);
  await walk.startPad();
  await walk.settle();
  for (let i = 0; i < 6; i += 1) {
    await walk.wait(60_000);
    await touch(pads(page).nth(0));
  }
  await walk.sign(SIGNS.cough).tap();
  await inspect(walk, "table-running");
  await page.evaluate(() => (document.documentElement.dataset.hand = "left"));
  await inspect(walk, "table-running-left");
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await inspect(walk, "table-over");
});
