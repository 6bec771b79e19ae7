// Signs and the minute after a swallow: what a press on a sign does to page and record, what is
// asked of it afterwards, and the minute that runs on while the page shows something else. What a
// sign means is a matter of the native tests.

import { visit } from "./journal.mjs";
import { appStarted, expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ASKED, AT, BUTTONS, FIELDS, PAGES, SIGNS, TIMES, VERDICTS, Walk } from "./walk.mjs";

const said = (page) => page.locator(".sign-said");
const row = (page, n) => page.locator(".trials tbody tr").nth(n);

const atWater = (page) => Walk.at(page, visit().readyForWater(), AT.water);
const atSips = (page) => Walk.at(page, visit({ screen: "Stepped" }).readyForWater(), AT.sips);
const atOwn = (page) => Walk.at(page, visit({ screen: "OwnTrials", slp: true }).gateHolds().breaths(), AT.own);

/** Given, and two seconds later the last swallow. */
async function given(walk) {
  await walk.press(walk.pad);
  await walk.wait(2_000);
  await walk.press(walk.pad);
  await walk.settle();
}

/** An own trial, and a cough a minute after its watch is over. */
async function lateCough(page) {
  const walk = await atOwn(page);
  await walk.answer(ASKED.whatGiven, "2 Mildly thick");
  await given(walk);
  await page.clock.fastForward(TIMES.watch + 60_000);
  await walk.settle();
  await walk.press(walk.sign(SIGNS.cough));
  return walk;
}

test("every sign is recorded as itself, while drinking and in the minute after; undo takes each back", async ({ page }) => {
  const STORED = {
    [SIGNS.cough]: "Cough",
    [SIGNS.voice]: "VoiceChange",
    [SIGNS.throatClear]: "ThroatClear",
    [SIGNS.pause]: "Pause",
    [SIGNS.spill]: "Spill",
    [SIGNS.breathing]: "BreathingChange",
    [SIGNS.noSwallow]: "NoSwallow",
    [SIGNS.askedToStop]: "AskedToStop",
  };
  const walk = await atWater(page);
  await walk.drink({ end: false });
  const all = async () => {
    for (const sign of Object.keys(STORED)) {
      await walk.press(walk.sign(sign));
      await expect(walk.sign(sign)).toHaveText(`${sign} 1`);
      await walk.press(BUTTONS.undo);
      await expect(walk.sign(sign)).toHaveText(sign);
    }
  };
  await all();
  await walk.press(BUTTONS.lastSwallow);
  await walk.settle();
  await all();
  await walk.saved();
  const signs = marksOf(await storedEvents(page), "Sign").map(({ kind }) => kind.Sign);
  expect(signs).toEqual([...Object.values(STORED), ...Object.values(STORED)]);
});

test("the watch runs on behind another page, which leads back to the signs", async ({ page }) => {
  const walk = await atWater(page);
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.oneGo);
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.decision);
  await walk.wait(20_000 - TIMES.still);
  await expect(page.getByText("Watching: 40 s")).toBeVisible();
  await walk.press(BUTTONS.signSeen);
  await walk.press(walk.sign(SIGNS.cough));
  await walk.wait(40_000);
  await walk.settle();
  await walk.answer(ASKED.voiceAfter, ASKED.clear);
  await walk.toDecision(VERDICTS.refer);
  await expect(walk.main.getByText("Coughed 20 seconds after the last swallow").first()).toBeVisible();
});

// The page looks at its clock every 50 ms: a last swallow that falls between two of these looks
// lets the press come before and after the page knows that the watch is over.
for (const [ms, verdict] of [
  [60_000, VERDICTS.refer],
  [60_020, VERDICTS.late],
]) {
  test(`a cough ${ms} ms after the last swallow`, async ({ page }) => {
    const walk = await atWater(page);
    await walk.drink({ end: false });
    await walk.wait(1_025);
    await walk.press(BUTTONS.lastSwallow);
    await walk.settle();
    await walk.answer(ASKED.cup, ASKED.oneGo);
    await walk.wait(ms - TIMES.still);
    await walk.press(walk.sign(SIGNS.cough));
    await walk.settle();
    await walk.answer(ASKED.voiceAfter, ASKED.clear);
    await walk.toDecision(verdict);
  });
}

test("a sign pressed 60.4 s after the swallow: told, and counted where the clinician says so", async ({ page }) => {
  const walk = await atWater(page);
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
  await walk.toDecision(VERDICTS.late);
  await page.goBack();
  await walk.press(BUTTONS.withinMinute);
  await walk.toDecision(VERDICTS.refer);
});

test.describe("small sips", () => {
  test("the watch shows what is next; neither touch nor key gives it before the minute is over", async ({ page }) => {
    const walk = await atSips(page);
    await expect(walk.pad).toHaveCount(0);
    await expect(page.getByText("First: the voice before")).toBeVisible();
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    await walk.wait(20_000);
    await expect(page.locator(".pad.panel")).toContainText("left to watch");
    await expect(page.locator(".pad.panel")).toContainText("Make ready: 3 mL, 2 of 2");
    await page.locator(".pad.panel").tap();
    await page.keyboard.press("Space");
    await walk.saved();
    const sips = async () => (await storedEvents(page)).filter(({ event }) => event.TrialOpened?.task === "Sips");
    expect(await sips()).toHaveLength(1);
    // The phone lets the page go: the watch and the next sip are found again.
    await page.reload();
    await appStarted(page);
    await walk.isOn(PAGES.sips);
    await expect(page.locator(".pad.panel")).toContainText("Make ready: 3 mL, 2 of 2");
    expect(await sips()).toHaveLength(1);
    await walk.wait(40_000);
    await walk.settle();
    await expect(walk.pad).toContainText("Lip contact: 3 mL, 2 of 2");
    // A sign after the minute is that of the sip before, and undo takes it back.
    await walk.press(walk.sign(SIGNS.cough));
    await expect(walk.main.locator(".flag", { hasText: "Sip of 3 mL: coughed" }).first()).toBeVisible();
    await walk.press(BUTTONS.undo);
    await expect(walk.pad).toContainText("Lip contact: 3 mL, 2 of 2");
  });

  test("a sign in the minute: no further sip, now and when it is over; then the decision, and no cup", async ({ page }) => {
    const walk = await atSips(page);
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    await walk.wait(20_000);
    await walk.press(walk.sign(SIGNS.cough));
    await expect(page.getByText("A sign was seen: give no further sip.")).toBeVisible();
    await walk.wait(60_000);
    await walk.settle();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.next);
    await walk.decided(VERDICTS.refer);
    await expect(walk.button(BUTTONS.goOnWithTrials)).toHaveCount(0);
    await walk.press(BUTTONS.back);
    await expect(page.getByText(PAGES.water)).toHaveCount(0);
  });
});

test.describe("own trials", () => {
  test("two presses a trial; the same again adds up in one line, another has its own", async ({ page }) => {
    const walk = await atOwn(page);
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    await walk.answer(ASKED.howMuch, "5 mL");
    await walk.answer(ASKED.by, "Spoon");
    const before = walk.presses;
    await given(walk);
    await walk.wait(10_000);
    await given(walk);
    expect(walk.presses - before).toBe(4);
    await expect(page.locator(".trials tbody tr")).toHaveCount(1);
    await walk.press(BUTTONS.changeGiven);
    await walk.answer(ASKED.whatGiven, "4 Pureed");
    await given(walk);
    await expect(row(page, 0)).toContainText("4 Pureed, 5 mL, spoon");
    await expect(row(page, 1)).toHaveText("2 Mildly thick, 5 mL, spoon2no sign so far");
  });

  test("millilitres typed, bad ones refused beside the field, a press takes their place", async ({ page }) => {
    const walk = await atOwn(page);
    await walk.answer(ASKED.whatGiven, "0 Thin");
    const field = walk.field(FIELDS.ownMl);
    for (const [typed, words] of [
      ["0", "Between 1 and 250 mL."],
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
    await expect(field).toHaveValue("12.5");
    await walk.answer(ASKED.howMuch, "Teaspoon");
    await expect(field).toHaveValue("");
    await field.fill("30");
    await expect(walk.button("Teaspoon")).toHaveAttribute("aria-pressed", "false");
    await walk.answer(ASKED.howMuch, "20 mL");
    await given(walk);
    // What was given last stands on top.
    await expect(row(page, 0)).toContainText("0 Thin, 20 mL");
    await expect(row(page, 1)).toContainText("0 Thin, 12.5 mL");
  });

  test("a sign in two minutes goes to the other trial by one press, and back", async ({ page }) => {
    const walk = await atOwn(page);
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    await given(walk);
    await walk.wait(10_000);
    await walk.press(BUTTONS.changeGiven);
    await walk.answer(ASKED.whatGiven, "4 Pureed");
    await given(walk);
    await walk.press(walk.sign(SIGNS.throatClear));
    await expect(row(page, 0)).toContainText("4 Pureed");
    await expect(row(page, 0)).toContainText("cleared the throat");
    await expect(page.getByText(/either may be meant/).first()).toBeAttached();
    await walk.press(BUTTONS.itWasWith("2 Mildly thick"));
    await expect(row(page, 0)).toContainText("no sign");
    await expect(row(page, 1)).toContainText("cleared the throat");
    await expect(page.getByText(/either may be meant/)).toHaveCount(0);
    await walk.saved();
    await page.reload();
    await appStarted(page);
    await expect(row(page, 1)).toContainText("cleared the throat");
    await walk.press(BUTTONS.itWasWith("4 Pureed"));
    await expect(row(page, 0)).toContainText("cleared the throat");
  });

  test("a sign long after the minute: asked whether the next was in the mouth, also once that was given", async ({ page }) => {
    const walk = await lateCough(page);
    await walk.settle();
    await expect(page.getByText("Was the next in the mouth?")).toBeVisible();
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, "Needed for the assessment");
    await given(walk);
    await expect(page.getByText("Was the next in the mouth?")).toBeVisible();
    await walk.press(BUTTONS.itWasGiven);
    await expect(page.locator(".trials tbody tr")).toHaveText(["2 Mildly thick2coughed in 1 of 2"]);
    await expect(page.getByText("Was the next in the mouth?")).toHaveCount(0);
  });

  test("asked at once, and it was: the next trial runs, with that sign", async ({ page }) => {
    const walk = await lateCough(page);
    await walk.settle();
    await walk.press(BUTTONS.itWasGiven);
    await walk.settle();
    await expect(walk.sign(SIGNS.cough)).toHaveText("Cough 1");
    await walk.press(walk.pad);
    await walk.settle();
    await expect(page.locator(".trials tbody tr")).toHaveText(["2 Mildly thick2coughed in 1 of 2"]);
  });
});

test("the timed cup: its own end, figures worked out as the answers come, none of what can't be", async ({ page }) => {
  const begun = visit({ screen: "Stepped" }).readyForWater().clearSips();
  const walk = await Walk.at(page, begun, AT.timed);
  await walk.answer(ASKED.cupSize, "100 mL");
  await walk.startPad();
  await walk.count(8, 1_500);
  await walk.wait(500);
  await walk.press(BUTTONS.larynxRests);
  await walk.settle();
  await walk.answer(ASKED.cup, ASKED.someLeft);
  await walk.field(FIELDS.leftInIt).fill("120");
  await expect(page.getByText(/More is left than was offered/).first()).toBeVisible();
  await expect(page.getByText(/mL a second/)).toHaveCount(0);
  await walk.answer(ASKED.cup, "Empty");
  await expect(page.getByText("100 mL in 12.5 s: 8.0 mL a second")).toBeVisible();
  await expect(page.getByText("8 swallows: 12.5 mL and 1.6 seconds for each")).toBeVisible();
});
