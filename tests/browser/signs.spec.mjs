// Signs and what is said of them afterwards, what feeds the signs after a stroke, hands, and coming
// back to a visit.

import { appStarted, expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ASKED, BUTTONS, FIELDS, FOLDS, ORAL, PAGES, SIGNS, TIMES, VERDICTS, Walk } from "./walk.mjs";

async function sight(page, hidden) {
  await page.evaluate((is) => {
    Object.defineProperty(document, "visibilityState", { configurable: true, get: () => (is ? "hidden" : "visible") });
    Object.defineProperty(document, "hidden", { configurable: true, get: () => is });
    document.dispatchEvent(new Event("visibilitychange"));
  }, hidden);
}

const said = (page) => page.locator(".sign-said");
const row = (page, n) => page.locator(".trials tbody tr").nth(n);

async function toOwn(page) {
  const walk = await Walk.start(page);
  await walk.toOwn();
  return walk;
}

/** Given, and two seconds later the last swallow. */
async function given(walk) {
  await walk.press(walk.pad);
  await walk.wait(2_000);
  await walk.press(walk.pad);
  await walk.settle();
}

// --- Own trials -----------------------------------------------------------------------------------

test("own trials: millilitres typed, bad ones refused beside the field, a press takes their place", async ({ page }) => {
  const walk = await toOwn(page);
  await walk.answer(ASKED.whatGiven, "0 Thin");
  const field = walk.field(FIELDS.ownMl);
  for (const [typed, words] of [
    ["0", "Between 1 and 250 mL."],
    ["900", "Between 1 and 250 mL."],
    ["two", "This is a number, like 15."],
  ]) {
    await field.fill(typed);
    await expect(field).toHaveAttribute("aria-invalid", "true");
    await expect(field).toHaveAccessibleDescription(words);
    await expect(field).toHaveValue(typed);
  }
  await field.fill("12,5");
  await expect(field).toHaveAccessibleDescription("");
  await given(walk);
  await expect(row(page, 0)).toContainText("0 Thin, 12.5 mL");
  await walk.press(BUTTONS.changeGiven);
  await expect(walk.field(FIELDS.ownMl)).toHaveValue("12.5");
  await walk.answer(ASKED.howMuch, "Teaspoon");
  await expect(walk.field(FIELDS.ownMl)).toHaveValue("");
  await walk.field(FIELDS.ownMl).fill("30");
  await expect(walk.button("Teaspoon")).toHaveAttribute("aria-pressed", "false");
  await walk.answer(ASKED.howMuch, "20 mL");
  await given(walk);
  // What was given last stands on top.
  await expect(row(page, 0)).toContainText("0 Thin, 20 mL");
  await expect(row(page, 1)).toContainText("0 Thin, 12.5 mL");
});

test("own trials: a sign in two minutes goes to the other trial by one press, and back", async ({ page }) => {
  const walk = await toOwn(page);
  await walk.answer(ASKED.whatGiven, "2 Mildly thick");
  await given(walk);
  await walk.wait(10_000);
  await walk.press(BUTTONS.changeGiven);
  await walk.answer(ASKED.whatGiven, "4 Pureed");
  await given(walk);
  await walk.press(walk.sign(SIGNS.throatClear));
  await expect(row(page, 0)).toContainText("4 Pureed");
  await expect(row(page, 0)).toContainText("cleared the throat in 1");
  await expect(page.getByText(/either may be meant/).first()).toBeAttached();
  const before = walk.presses;
  await walk.press(BUTTONS.itWasWith("2 Mildly thick"));
  expect(walk.presses - before).toBe(1);
  await expect(row(page, 0)).toContainText("no sign");
  await expect(row(page, 1)).toContainText("cleared the throat in 1");
  await expect(page.getByText(/either may be meant/)).toHaveCount(0);
  await walk.saved();
  await page.reload();
  await appStarted(page);
  await expect(row(page, 1)).toContainText("cleared the throat in 1");
  await walk.press(BUTTONS.itWasWith("4 Pureed"));
  await expect(row(page, 0)).toContainText("cleared the throat in 1");
});

for (const [width, height] of [
  [390, 844],
  [320, 568],
]) {
  test(`own trials at ${width} x ${height}: what was given and its signs are seen without scrolling`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    const walk = await toOwn(page);
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    await walk.answer(ASKED.howMuch, "5 mL");
    await given(walk);
    await walk.press(walk.sign(SIGNS.throatClear));
    await expect(page.locator(".lately")).toHaveText("2 Mildly thick, 5 mL: given once, cleared the throat in 1");
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

// --- The watch ------------------------------------------------------------------------------------

test("a sign pressed 60.4 s after the swallow: told, and counted where the clinician says so", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toWater();
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.oneGo);
  await walk.wait(60_400 - TIMES.still);
  // The page stands still for a moment: the sign takes its press all the same.
  await walk.press(walk.sign(SIGNS.cough));
  await walk.settle();
  await expect(said(page)).toContainText("Coughed: pressed after 61 seconds, told, not counted.");
  await walk.answer(ASKED.voiceAfter, ASKED.clear);
  await walk.press(BUTTONS.withinMinute);
  await expect(said(page)).toContainText("counted, as you said");
  await walk.press(BUTTONS.wasLater);
  await expect(said(page)).toContainText("told, not counted");
  await walk.toDecision(VERDICTS.pass);
  await page.goBack();
  await walk.press(BUTTONS.withinMinute);
  await walk.toDecision(VERDICTS.refer);
  await expect(page.getByText(/coughed 60 seconds after the last swallow/i).first()).toBeVisible();
  await expect(page.getByText(/seen within the 60 as the clinician says/)).toBeVisible();
});

test("the watch of 60 seconds is right to 50 ms after 40 seconds in a hidden page", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toWater();
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.oneGo);
  await walk.wait(10_000 - TIMES.still);
  await sight(page, true);
  // A hidden page gets no ticks: the clock goes on without them.
  await page.clock.fastForward(40_000);
  await sight(page, false);
  await expect(page.locator(".pad.panel .start")).toHaveText("10 s");
  await walk.wait(9_900);
  await expect(page.locator(".pad.panel .start")).toHaveText("1 s");
  await walk.wait(150);
  await walk.settle();
  await walk.saved();
  const events = await storedEvents(page);
  const end = marksOf(events, "End").at(-1);
  const over = marksOf(events, "WatchOver").at(-1);
  const off = over.at.m - end.at.m - 60_000;
  expect(off).toBeGreaterThanOrEqual(0);
  expect(off).toBeLessThanOrEqual(50);
});

test("a phone locked through the end of the watch: it is over when somebody looks, and says so", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toWater();
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.oneGo);
  await walk.wait(10_000);
  await sight(page, true);
  await page.clock.fastForward(90_000);
  await sight(page, false);
  await walk.settle();
  await walk.answer(ASKED.voiceAfter, ASKED.clear);
  await walk.toDecision(VERDICTS.pass);
  await expect(page.getByText(/Watch of 60 seconds: /).first()).toBeVisible();
});

// --- Breaths --------------------------------------------------------------------------------------

test("30 seconds only: behind a fold, doubled with its warning, clears no adult", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({});
  await walk.gate();
  await walk.isOn(PAGES.breaths);
  await expect(walk.button(BUTTONS.thirtyOnly)).toBeHidden();
  await walk.unfold(FOLDS.otherWay);
  await walk.press(BUTTONS.thirtyOnly);
  await walk.isOn(PAGES.breaths30);
  await walk.startPad();
  await walk.count(9, 3_000);
  await walk.wait(3_000);
  await walk.settle();
  await expect(page.getByText("breathing 18 a minute (counted for 30 seconds, doubled): that does not clear an adult", { exact: false }).first()).toBeVisible();
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.breaths);
});

test("a rate of 140 is refused, one of 3 closes the gate", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({});
  await walk.gate();
  await walk.unfold(FOLDS.readings);
  const field = walk.field(FIELDS.rate);
  await field.fill("140");
  await expect(field).toHaveAttribute("aria-invalid", "true");
  await expect(field).toHaveAccessibleDescription(/Between 1 and 120/);
  await field.fill("3");
  await expect(field).toHaveAttribute("aria-invalid", "false");
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.gateResult);
  await expect(walk.main.getByText(/3 a minute/).first()).toBeVisible();
});

// --- Signs after a stroke ---------------------------------------------------------------------------

test("the signs after a stroke take what the examination of the mouth found, and ask the rest", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({ screen: "fullVisit" });
  await walk.gate();
  await walk.press(BUTTONS.back);
  await walk.press(/^Voice and throat/);
  await walk.isOn(ORAL.pages[7]);
  await walk.exception("Cough on request", "Weak");
  await walk.exception("Speech", "Slow or halting");
  await walk.exception('Voice on "ah"', "Hoarse voice");
  await walk.asExpected();
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.addTo);
  await walk.press(BUTTONS.sixSigns);
  await walk.isOn(PAGES.sixSigns);
  await expect(page.getByText('From the examination of the mouth, voice on "ah": hoarse voice')).toBeVisible();
  await expect(page.getByText(/from the examination of the mouth, cough on request: weak/i)).toBeVisible();
  await expect(page.getByText("Recorded, and not the same: from the examination of the mouth, speech: slow or halting.")).toBeVisible();
  await expect(page.getByText(/^2 found, 2 of 5 tested/)).toBeVisible();
  // Only what nobody settled is asked in the open.
  await expect(page.locator(".six .choices:visible")).toHaveCount(1);
  await walk.answer(ASKED.slurred, "No");
  await expect(page.getByText(/^2 found, 3 of 5 tested/)).toBeVisible();
  await expect(page.getByText("Two or more signs seen: changed voice, weak cough on request (3 of 5 tested)")).toBeVisible();
});

test("the visit has one list of what can be added; what was begun stands with its steps", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({});
  await walk.press(BUTTONS.back);
  const fold = page.locator("details", { has: page.locator("summary", { hasText: FOLDS.addTo }) });
  await expect(fold).toHaveCount(1);
  await walk.unfold(FOLDS.addTo);
  for (const name of [PAGES.sips, PAGES.timed, PAGES.own, PAGES.cracker, PAGES.table, PAGES.thickness, PAGES.sixSigns]) {
    await expect(fold.getByRole("button", { name })).toHaveCount(1);
  }
  await walk.press(BUTTONS.table);
  await walk.startPad();
  await walk.settle();
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await walk.press(BUTTONS.next);
  await expect(fold.getByRole("button", { name: PAGES.table })).toHaveCount(0);
  await expect(walk.button(/^At the table/)).toBeVisible();
});

// --- Hands ------------------------------------------------------------------------------------------

test("left hand: the signs change sides upright, pad and signs on the phone's side", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toSips();
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
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(844);
  }
});

// --- Coming back ------------------------------------------------------------------------------------

test("back after five minutes: whose visit it is, until something is pressed in it", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({ age: "70" });
  const still = page.getByText("Still Visit 1, 09:30, 70 years?");
  await sight(page, true);
  await page.clock.fastForward(240_000);
  await sight(page, false);
  await expect(still).toHaveCount(0);
  await sight(page, true);
  await page.clock.fastForward(360_000);
  await sight(page, false);
  await expect(still).toBeVisible();
  await expect(still).toBeInViewport();
  const before = walk.presses;
  await walk.press(BUTTONS.groupHolds);
  await expect(still).toHaveCount(0);
  expect(walk.presses - before, "it costs no press").toBe(1);
  await walk.saved();
  // The phone let the page go, and opens it again a quarter of an hour later.
  await page.clock.fastForward(900_000);
  await page.reload();
  await appStarted(page);
  await expect(page.getByText(/^Still Visit 1, 09:30, 70 years\?/)).toBeVisible();
  await walk.press(BUTTONS.anotherPerson);
  await walk.isOn(PAGES.home);
  await expect(still).toHaveCount(0);
});

test("all visits, opened by its address, are there", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({});
  await walk.saved();
  await page.goto("about:blank");
  await page.goto("./#history");
  await appStarted(page);
  await expect(page.locator(".heads .head")).toHaveCount(1);
});

for (const [width, height] of [
  [320, 568],
  [390, 844],
]) {
  test(`${width} px: what a sign asks for is in sight, and moves nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    const walk = await Walk.start(page);
    await walk.toWater();
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
}
