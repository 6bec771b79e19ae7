// The stepped screen, own trials, the timed cup and breathing by taps.

import AxeBuilder from "@axe-core/playwright";
import { appStarted, expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ACTIONS, ASKED, BUTTONS, FIELDS, FOLDS, PAGES, SAYS, SIGNS, TIMES, VERDICTS, Walk } from "./walk.mjs";

const SHOTS = process.env.PENLIGHT_SHOTS;

test.beforeEach(async ({ context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
});

const why = (walk, words) => expect(walk.main.locator(".flag", { hasText: words }).first()).toBeVisible();

/** A picture to look at, where one is asked for. */
async function shot(page, name) {
  if (SHOTS) {
    await page.screenshot({ path: `${SHOTS}/${name}.png` });
  }
}

/** What axe finds. It waits by timers, which stand still here, so it gets the browser's own. */
async function accessible(page) {
  const swap = () =>
    page.evaluate(() => {
      [window.setTimeout, window.otherTimeout] = [window.otherTimeout, window.setTimeout];
    });
  await swap();
  const axe = new AxeBuilder({ page }).withTags(["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]);
  const { violations } = await axe.setLegacyMode(true).analyze();
  await swap();
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(" ")}`)).toEqual([]);
}

/** Home, its time stopped, with the browser's own timers put by. */
async function start(page) {
  await page.addInitScript(() => {
    window.otherTimeout = window.setTimeout.bind(window);
  });
  return Walk.start(page);
}

const now = (page) => page.evaluate(() => Date.now());

test.describe("stepped screen", () => {
  test("all clear to no sign seen: presses and waiting", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await shot(page, "sips-1-ready");
    const [presses, from] = [walk.presses, await now(page)];
    await walk.clearSips();
    await shot(page, "sips-2-done");
    const sips = { presses: walk.presses - presses, ms: (await now(page)) - from };
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.notYet)).toHaveCount(0);
    // The voice after the last sip is taken as the voice before.
    await expect(walk.button(ASKED.clear, walk.group(ASKED.voiceBefore))).toHaveAttribute("aria-pressed", "true");
    await walk.startPad();
    await walk.wait(6_000);
    await walk.press(BUTTONS.lastSwallow);
    await walk.settle();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toContain("small sips of water: 2 of 3 mL, 2 of 5 mL, 2 of 10 mL, each watched for 60 seconds, no sign");
    expect(text.length).toBeLessThan(1_200);
    console.log(`sips: ${sips.presses} presses, ${sips.ms / 1000} s; whole: ${walk.presses} presses`);
    expect(sips.presses).toBeLessThanOrEqual(21);
    // Six minutes of watching, and no more than seconds beside them.
    expect(sips.ms).toBeLessThan(6 * 62_500);
  });

  test("the watch shows what is next and how long is left; a touch gives nothing before it is over", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await expect(walk.pad).toHaveCount(0);
    await expect(page.getByText("First: the voice before")).toBeVisible();
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    await walk.wait(20_000);
    await expect(page.locator(".pad.panel")).toContainText("left to watch");
    await expect(page.locator(".pad.panel")).toContainText("Make ready: 3 mL, 2 of 2");
    await shot(page, "sips-3-watching");
    await expect(walk.pad).toHaveCount(0);
    await page.keyboard.press("Space");
    await walk.saved();
    const sips = (await storedEvents(page)).filter(({ event }) => event.TrialOpened?.task === "Sips");
    expect(sips).toHaveLength(1);
    await accessible(page);
    await walk.wait(40_000);
    await walk.settle();
    await expect(walk.pad).toContainText("Lip contact: 3 mL, 2 of 2");
  });

  test("cough in the watch of the second sip: stops, holds the 90 mL, refers", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await walk.sip({ before: ASKED.clear, extra: ASKED.both });
    await walk.sip({ extra: ASKED.both, watch: false });
    await walk.wait(20_000);
    await walk.press(walk.sign(SIGNS.cough));
    await why(walk, "Sip of 3 mL: coughed");
    await expect(page.getByText("A sign was seen: give no further sip.")).toBeVisible();
    await shot(page, "sips-4-cough");
    await walk.wait(60_000);
    await walk.settle();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.notYet)).toBeVisible();
    await expect(page.getByText("A sign was seen: sip of 3 mL: coughed")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await shot(page, "sips-5-held");
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.refer);
    await shot(page, "sips-6-decision");
    await walk.toHandover();
    await walk.press(ACTIONS.nothingByMouth);
    const text = await walk.copy();
    expect(text).toMatch(/^REFER to /);
    expect(text).toContain("sip of 3 mL: coughed 20 seconds after the swallow");
    expect(text.length).toBeLessThan(1_200);
  });

  test("a sign pressed after the minute, and undo takes it back", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await walk.sip({ before: ASKED.clear, extra: ASKED.both });
    await walk.press(walk.sign(SIGNS.cough));
    await why(walk, "later than the 60 seconds");
    await walk.press(BUTTONS.undo);
    await expect(walk.pad).toContainText("Lip contact: 3 mL, 2 of 2");
  });

  test("killed in the watch: both the watch and the next sip are found", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    await walk.wait(10_000);
    await walk.saved();
    await page.reload();
    await appStarted(page);
    await walk.isOn(PAGES.sips);
    await expect(page.locator(".pad.panel")).toContainText("Make ready: 3 mL, 2 of 2");
    await walk.press(walk.sign(SIGNS.spill));
    await why(walk, "Sip of 3 mL: spilled or drooled");
    expect((await storedEvents(page)).filter(({ event }) => event.TrialOpened?.task === "Sips")).toHaveLength(1);
  });

  test("choking opens its path", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    await walk.press(walk.sign(SIGNS.choke));
    await walk.isOn(PAGES.choking);
  });
});

test.describe("own trials", () => {
  test("two presses a trial, a table, the handover", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ slp: true, screen: "ownScreen" });
    await walk.gate();
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.own);
    await expect(walk.pad).toHaveCount(0);
    await shot(page, "own-1-ready");
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    await walk.answer(ASKED.howMuch, "5 mL");
    await walk.answer(ASKED.by, "Spoon");
    const trial = async () => {
      await walk.press(walk.pad);
      await walk.wait(2_000);
      await walk.press(walk.pad);
      await walk.settle();
    };
    await trial();
    const before = walk.presses;
    for (let n = 0; n < 4; n += 1) {
      await walk.wait(10_000);
      await trial();
    }
    expect(walk.presses - before).toBe(8);
    await shot(page, "own-2-watching");
    await expect(page.locator(".trials tbody tr")).toHaveCount(1);
    await walk.press(BUTTONS.changeGiven);
    await walk.answer(ASKED.whatGiven, "4 Pureed");
    await shot(page, "own-3-change");
    await trial();
    await walk.press(walk.sign(SIGNS.throatClear));
    const row = page.locator(".trials tbody tr");
    await expect(row.nth(0)).toContainText("4 Pureed, 5 mL, spoon");
    await expect(row.nth(0)).toContainText("cleared the throat");
    await expect(row.nth(1)).toHaveText("2 Mildly thick, 5 mL, spoon5no sign so far");
    await accessible(page);
    await shot(page, "own-4-table");
    await walk.wait(TIMES.watch);
    await walk.settle();
    await walk.press(BUTTONS.next);
    await walk.decided(VERDICTS.noted);
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toContain("2 Mildly thick, 5 mL, spoon: given 5 times, no sign");
    expect(text).toContain("4 Pureed, 5 mL, spoon: given once, cleared the throat");
    expect(text.length).toBeLessThan(1_200);
  });

  test("a sign long after the minute may be the next one's: asked, and nothing is clear until it is said", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ slp: true, screen: "ownScreen" });
    await walk.gate();
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    await walk.press(walk.pad);
    await walk.wait(2_000);
    await walk.press(walk.pad);
    await walk.settle();
    await walk.wait(TIMES.watch + 60_000);
    await walk.settle();
    await walk.press(walk.sign(SIGNS.cough));
    await walk.settle();
    await expect(page.getByText("Was the next in the mouth?")).toBeVisible();
    await shot(page, "own-5-late-sign");
    await walk.press(BUTTONS.itWasGiven);
    await walk.settle();
    // The next trial runs, with that sign.
    await expect(walk.sign(SIGNS.cough)).toHaveText("Cough 1");
    await walk.press(walk.pad);
    await walk.settle();
    await expect(page.locator(".trials tbody tr")).toHaveText(["2 Mildly thick2coughed in 1 of 2"]);
    await walk.press(BUTTONS.next);
    await walk.decided(VERDICTS.referOn);
  });

  test("of which trial a late sign was can still be said once the next was given", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ slp: true, screen: "ownScreen" });
    await walk.gate();
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.answer(ASKED.whatGiven, "2 Mildly thick");
    const given = async () => {
      await walk.press(walk.pad);
      await walk.wait(2_000);
      await walk.press(walk.pad);
      await walk.settle();
      await walk.wait(TIMES.watch + 60_000);
      await walk.settle();
    };
    await given();
    await walk.press(walk.sign(SIGNS.cough));
    await walk.settle();
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, "Needed for the assessment");
    await given();
    await expect(page.getByText("Was the next in the mouth?")).toBeVisible();
    await walk.press(BUTTONS.itWasGiven);
    await expect(page.locator(".trials tbody tr")).toHaveText(["2 Mildly thick2coughed in 1 of 2"]);
    await expect(page.getByText("Was the next in the mouth?")).toHaveCount(0);
    await walk.press(BUTTONS.next);
    await walk.decided(VERDICTS.referOn);
  });

  test("after a sign the next trial asks for a reason", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ slp: true, screen: "ownScreen" });
    await walk.gate();
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.answer(ASKED.whatGiven, "0 Thin");
    await walk.press(walk.pad);
    await walk.wait(2_000);
    await walk.press(walk.sign(SIGNS.cough));
    await expect(page.getByText("Stop. Take the cup away.")).toBeVisible();
    await walk.press(walk.pad);
    await walk.settle();
    await expect(page.getByText(SAYS.notYet)).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await shot(page, "own-5-held");
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, "Needed for the assessment");
    await expect(walk.pad).toBeVisible();
  });
});

test("timed cup: held without sips, figures for the clinician, words for the ward", async ({ page }) => {
  const walk = await start(page);
  await walk.toSips();
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.addTo);
  await walk.press(PAGES.timed);
  await walk.isOn(PAGES.timed);
  await expect(page.getByText("no small sips were given before")).toBeVisible();
  await walk.press(BUTTONS.back);
  await walk.press(new RegExp(`^${PAGES.sips}`));
  await walk.clearSips();
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.addTo);
  await walk.press(PAGES.timed);
  await walk.answer(ASKED.cupSize, "100 mL");
  await shot(page, "timed-1-ready");
  await walk.startPad();
  await walk.count(8, 1_500);
  await walk.wait(500);
  await walk.press(BUTTONS.larynxRests);
  await walk.settle();
  // More left than there was: said, and nothing is worked out of it.
  await walk.answer(ASKED.cup, ASKED.someLeft);
  await walk.field(FIELDS.leftInIt).fill("120");
  await expect(page.getByText(/More is left than was offered/).first()).toBeVisible();
  await expect(page.getByText(/mL a second/)).toHaveCount(0);
  await walk.answer(ASKED.cup, "Empty");
  await expect(page.getByText("100 mL in 12.5 s: 8.0 mL a second")).toBeVisible();
  await expect(page.getByText("8 swallows: 12.5 mL and 1.6 seconds for each")).toBeVisible();
  await shot(page, "timed-2-watching");
  await why(walk, "not by itself a sign of aspiration");
  await walk.wait(TIMES.watch);
  await walk.settle();
  await walk.answer(ASKED.voiceAfter, ASKED.clear);
  await accessible(page);
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.water);
  await walk.startPad();
  await walk.wait(6_000);
  await walk.press(BUTTONS.lastSwallow);
  await walk.settle();
  await walk.finishWater();
  await walk.toDecision(VERDICTS.pass);
  await walk.toHandover();
  const text = await walk.copy();
  expect(text).toContain("timed cup of water: 100 of 100 mL drunk, slowly (by itself no sign of aspiration)");
  expect(text).not.toContain("a second");
});

test.describe("breathing by taps", () => {
  async function toTaps(walk, age) {
    await walk.newVisit({ age });
    await walk.gate();
    await walk.isOn(PAGES.breaths);
    await walk.byTaps();
    await walk.isOn(PAGES.breathTaps);
  }

  test("even: the rate grows with its consistency, and does not clear an adult", async ({ page }) => {
    const walk = await start(page);
    await toTaps(walk);
    await walk.pad.tap();
    await walk.count(2, 3_000);
    await expect(page.getByText("about 20 a minute, 2 of 2 within 15 %: 2 more")).toBeVisible();
    await walk.count(2, 3_000);
    await expect(page.getByText("about 20 a minute, 4 of 4 within 15 %: even enough")).toBeVisible();
    await shot(page, "taps-1-even");
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await why(walk, "taps alone do not clear an adult; count for 60 seconds");
    await shot(page, "taps-2-over");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.breaths);
  });

  test("uneven: says so", async ({ page }) => {
    const walk = await start(page);
    await toTaps(walk);
    await walk.pad.tap();
    for (const every of [5_000, 1_000, 5_500]) {
      await walk.count(1, every);
    }
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await why(walk, "too few even ones yet; go on tapping, or count for 60 seconds");
    await accessible(page);
  });

  test("an infant: awake or asleep is asked, the published range is shown", async ({ page }) => {
    const walk = await start(page);
    await walk.press(BUTTONS.swallowScreen);
    await walk.isOn(PAGES.newVisit);
    await walk.press("Months");
    await walk.field(FIELDS.age).fill("6");
    await walk.press(BUTTONS.begin);
    await walk.gate();
    await walk.byTaps();
    await walk.answer(ASKED.awake, "Awake, calm");
    await walk.pad.tap();
    await walk.count(5, 1_500);
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await why(walk, "among the middle 90 of 100 children of 6 months (29.9 to 56.3)");
    await shot(page, "taps-3-infant");
  });
});

test.describe("small screens", () => {
  test.use({ viewport: { width: 320, height: 640 } });

  test("320 px and text of 200 %: nothing is cut, every sign can be pressed", async ({ page }) => {
    const walk = await start(page);
    await walk.toSips();
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    await shot(page, "small-1-watching");
    await walk.press(walk.sign(SIGNS.askedToStop));
    await why(walk, "asked to stop");
  });
});
