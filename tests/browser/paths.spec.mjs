// Every way to refer, to stop, to "not done", and what the text then says and needs.

import fs from "node:fs";
import { expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ACTIONS, ASKED, BUTTONS, FIELDS, FOLDS, GATE, PAGES, SAYS, SIGNS, TEXT, TIMES, VERDICTS, Walk } from "./walk.mjs";

const REASON = "The team agreed";

test.beforeEach(async ({ context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
});

/** Says what to do until review and copies. */
async function handOver(walk, action = ACTIONS.nothingByMouth) {
  await walk.toHandover();
  await walk.press(action);
  return walk.copy();
}

const why = (walk, words) => expect(walk.main.locator(".flag", { hasText: words }).first()).toBeVisible();

test("the decision so far, from the visit at a glance, without going through what is left out", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.decisionSoFar);
  await walk.isOn(PAGES.decision);
  await walk.decided(VERDICTS.incomplete);
});

test.describe("dry swallows", () => {
  test("none: stop, and no water can be started", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toDry();
    await walk.dry(0);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.notForNow)).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    // A clicker's key must not start it either.
    await page.keyboard.press("Space");
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.stop);
    await why(walk, "No dry swallow in 30 seconds");
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.stop);
    expect(text).toContain("no dry swallow in 30 seconds (3 or more expected)");
    const opened = (await storedEvents(page)).filter(({ event }) => event.TrialOpened?.task === "Water90");
    expect(opened).toEqual([]);
  });

  test("two: refer, the water is held until somebody says why it is given", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater({ dry: 2 });
    await expect(page.getByText("2 dry swallows in 30 seconds (3 or more expected)")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.allTheSame);
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.thisReason);
    await expect(page.getByText("Say why, in a few words.")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.answer(ASKED.goOnBecause, REASON);
    await walk.drink();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.refer);
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.refer);
    expect(text).toContain("2 dry swallows in 30 seconds (3 or more expected)");
    expect(text).toContain(TEXT.givenDespite("2 dry swallows in 30 seconds (3 or more expected)", REASON.toLowerCase()));
  });

  test("late ones are told, and do not count", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toDry();
    await walk.dry(2);
    await walk.count(1, 5_000);
    await expect(page.getByText(`1 swallow ${SAYS.keptApart}`)).toBeVisible();
    await walk.press(BUTTONS.next);
    await expect(page.getByText("2 dry swallows in 30 seconds (3 or more expected), 1 more within 60 seconds")).toBeVisible();
  });

  test("not valid: incomplete, never a low count", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toDry();
    await walk.dry(1);
    await walk.unfold(FOLDS.notValid);
    await walk.answer(FOLDS.notValid, "Could not feel the larynx");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.incomplete);
    await why(walk, "Dry swallows not valid: could not feel the larynx");
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.incomplete);
    expect(text).not.toContain("1 dry swallow");
  });
});

test.describe("signs", () => {
  const OUTCOMES = [
    [SIGNS.cough, VERDICTS.refer, "Coughed"],
    [SIGNS.voice, VERDICTS.refer, "Voice turned wet or changed"],
    [SIGNS.throatClear, VERDICTS.incomplete, "Cleared the throat"],
    [SIGNS.pause, VERDICTS.refer, "Paused"],
    [SIGNS.spill, VERDICTS.refer, "Spilled or drooled"],
    [SIGNS.breathing, VERDICTS.stop, "Breathing changed"],
    [SIGNS.noSwallow, VERDICTS.stop, "No swallow was seen or felt"],
    [SIGNS.askedToStop, VERDICTS.refer, "Asked to stop"],
  ];

  test("each of them while drinking; undo takes it back", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    for (const [sign, verdict, words] of OUTCOMES) {
      await walk.press(walk.sign(sign));
      await walk.wait(1_000);
      await walk.press(BUTTONS.lastSwallow);
      await walk.settle();
      await walk.toDecision(verdict);
      await why(walk, `${words} while drinking`);
      await walk.press(BUTTONS.signSeen);
      await walk.isOn(PAGES.water);
      await walk.press(BUTTONS.undo);
      await walk.press(BUTTONS.undo);
      await expect(walk.button(sign, walk.group("Signs"))).toBeVisible();
    }
  });

  test("each of them during the watch, with the seconds", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    let seconds = TIMES.still / 1_000;
    for (const [sign, verdict, words] of OUTCOMES) {
      await walk.wait(1_000);
      seconds += 1;
      await walk.press(walk.sign(sign));
      await walk.toDecision(verdict);
      await why(walk, `${words} ${Math.floor(seconds)} second`);
      await walk.press(BUTTONS.signSeen);
      await walk.press(BUTTONS.undo);
    }
    await expect(page.getByText("left to watch")).toBeVisible();
  });

  test("a cough 20 seconds into the watch, from another page: refer", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
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
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.refer);
    expect(text).toContain("coughed 20 seconds after the last swallow");
    expect(text).toContain(TEXT.nothingByMouth);
    expect(text).toContain(TEXT.medicines);
    expect(text.length).toBeLessThan(1_200);
  });

  // The page looks at its clock every 50 ms: a last swallow that falls between two of these looks
  // lets the press come before and after the page knows that the watch is over.
  for (const [ms, verdict, words] of [
    [60_000, VERDICTS.refer, "coughed 60 seconds after the last swallow"],
    [60_020, VERDICTS.late, "LATER: coughed 61 seconds after the last swallow of the 90 mL."],
    [75_000, VERDICTS.late, "LATER: coughed 75 seconds after the last swallow of the 90 mL."],
  ]) {
    test(`a cough ${ms} ms after the last swallow`, async ({ page }) => {
      const walk = await Walk.start(page);
      await walk.toWater();
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
      await walk.toHandover();
      if (verdict !== VERDICTS.late) {
        await walk.press(ACTIONS.nothingByMouth);
      }
      expect(await walk.copy()).toContain(words);
    });
  }
});

test.describe("the cup and the voice", () => {
  test("wet voice after: refer", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.finishWater({ after: ASKED.wet });
    await walk.toDecision(VERDICTS.refer);
    expect(await handOver(walk)).toContain("voice wet after the water, clear before");
  });

  test("a voice that is wet before: no water by a trained screener", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.answer(ASKED.voiceBefore, ASKED.wet);
    await expect(page.getByText(SAYS.notYet)).toBeVisible();
    await expect(page.getByText(SAYS.onlySlp)).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
  });

  test("a voice that was hoarse before and stayed so decides nothing", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ before: ASKED.hoarse });
    await walk.finishWater({ after: ASKED.hoarse });
    await walk.toDecision(VERDICTS.pass);
  });

  test("paused: refer", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.finishWater({ cup: ASKED.paused });
    await walk.toDecision(VERDICTS.refer);
    expect(await handOver(walk)).toContain("did not drink the 90 mL in one go");
  });

  test("15 mL left: refer, with the figure", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.answer(ASKED.cup, ASKED.someLeft);
    await walk.field(FIELDS.left).fill("15");
    await walk.wait(TIMES.watch);
    await walk.settle();
    await walk.answer(ASKED.voiceAfter, ASKED.clear);
    await walk.toDecision(VERDICTS.refer);
    expect(await handOver(walk)).toContain("15 of 90 mL left in the cup");
  });

  test("a watch cut short by nothing grave: incomplete", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.answer(ASKED.cup, ASKED.oneGo);
    await walk.unfold(FOLDS.watchCut);
    await walk.press("Called away");
    await walk.answer(ASKED.voiceAfter, ASKED.clear);
    await walk.toDecision(VERDICTS.incomplete);
    await why(walk, "ended early: called away");
  });
});

test.describe("oxygen saturation", () => {
  test("asked after the water only where it was read before; a fall stops, and says what it is not", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate();
    await walk.unfold(FOLDS.readings);
    await walk.field(FIELDS.spo2).fill("96");
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.dry();
    await walk.press(BUTTONS.next);
    await walk.drink();
    await walk.finishWater();
    await walk.field(FIELDS.lowestSpo2).fill("92");
    // Whatever came out, the rules that read it are a press away.
    await walk.unfold(FOLDS.readBy);
    await expect(walk.main.getByText("Rule water.left.")).toBeVisible();
    await expect(walk.main.locator("li b", { hasText: "SLK09" }).first()).toBeVisible();
    await walk.toDecision(VERDICTS.stop);
    await expect(page.getByText("does not show aspiration").first()).toBeVisible();
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.stop);
    expect(text).toContain("oxygen saturation fell from 96 to 92 % during the trial");
  });

  test("not asked where nobody read it", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.finishWater();
    await expect(walk.field(FIELDS.lowestSpo2)).toHaveCount(0);
  });
});

test.describe("choking", () => {
  test("its page: the local procedure, a clock, help, baseline; then stop", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    await walk.press(walk.sign(SIGNS.choke));
    await walk.isOn(PAGES.choking);
    await expect(page.getByText(SAYS.emergencyLine)).toBeVisible();
    await walk.wait(65_000);
    await expect(page.getByRole("timer")).toHaveText("1:05");
    await walk.press(BUTTONS.helpCalled);
    await expect(page.getByText("Help called after 1:05")).toBeVisible();
    await walk.wait(30_000);
    await walk.press(BUTTONS.baseline);
    await expect(page.getByText("Back to baseline after 1:35")).toBeVisible();
    // Its clock stands then.
    await walk.wait(5_000);
    await expect(page.getByRole("timer")).toHaveText("1:35");
    await walk.press(BUTTONS.decision);
    await walk.decided(VERDICTS.stop);
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.stop);
    expect(text).toContain("choked while drinking");
  });

  test("pressed by mistake: back at the task, and nothing of it decides", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    await walk.press(walk.sign(SIGNS.choke));
    await walk.settle();
    await walk.press(BUTTONS.mistake);
    await walk.isOn(PAGES.water);
    await walk.wait(1_000);
    await walk.press(BUTTONS.lastSwallow);
    await walk.settle();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
    await walk.toHandover();
    expect(await walk.copy()).not.toMatch(/chok(ed|ing:)/i);
    // It stays in the journal.
    const events = await storedEvents(page);
    expect(events.filter(({ event }) => event.Choking)).toHaveLength(1);
    expect(events.filter(({ event }) => event === "NotChoking")).toHaveLength(1);
  });

  // On the new page another button lies where the finger still is.
  test("pressed during the watch, the same press takes nothing back", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.press(walk.sign(SIGNS.choke));
    await walk.settle();
    await walk.isOn(PAGES.choking);
    await walk.saved();
    const events = (await storedEvents(page)).map(({ event }) => event);
    expect(events.filter((event) => event === "NotChoking" || event.Undo || event.HelpCalled)).toEqual([]);
    expect(marksOf(await storedEvents(page), "Sign")).toHaveLength(1);
  });

  test("a second time, by the button of a page: a clock of its own, and both are told", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    await walk.press(walk.sign(SIGNS.choke));
    await walk.settle();
    await walk.wait(10_000);
    // Not over: the strip above another page has its time and leads back to the same one.
    await walk.press(BUTTONS.decision);
    await expect(walk.button(BUTTONS.choking)).toHaveCount(0);
    await walk.press(BUTTONS.backToChoking);
    await expect(page.getByRole("timer")).toHaveText("0:10");
    await walk.press(BUTTONS.baseline);
    await walk.press(BUTTONS.decision);
    await walk.wait(60_000);
    await walk.press(BUTTONS.choking);
    await expect(page.getByRole("timer")).toHaveText("0:00");
    await walk.settle();
    await walk.press(BUTTONS.helpCalled);
    await walk.press(BUTTONS.baseline);
    await walk.press(BUTTONS.decision);
    const text = await handOver(walk);
    expect(text).toContain("choked 2 times, the last time: help called after 0 s, back to baseline after 0 s");
    // By mistake: only the newest is taken back.
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await walk.press(BUTTONS.mistake);
    await walk.saved();
    const events = (await storedEvents(page)).map(({ event }) => event);
    expect(events.filter((event) => event.Choking)).toHaveLength(3);
    expect(events.filter((event) => event === "NotChoking")).toHaveLength(1);
    await page.goBack();
    await page.goBack();
    await walk.isOn(PAGES.decision);
    await walk.toHandover();
    await expect(walk.text).toContainText("choked 2 times");
  });

  test("a slip on the button after a choking that is over takes nothing of that one back", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    // No sign of a trial: by the button of the page alone.
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await walk.press(BUTTONS.helpCalled);
    await walk.press(BUTTONS.baseline);
    await walk.press(BUTTONS.decision);
    await walk.decided(VERDICTS.stop);
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await walk.press(BUTTONS.mistake);
    await walk.saved();
    await page.goBack();
    await page.goBack();
    await walk.decided(VERDICTS.stop);
  });

  test("a slip on the button while nobody pressed baseline takes nothing of the choking back", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await walk.press(BUTTONS.helpCalled);
    await walk.press(BUTTONS.decision);
    await walk.decided(VERDICTS.stop);
    await walk.wait(600_000);
    // Ten minutes later what leads there opens the page of the real one.
    await walk.press(BUTTONS.backToChoking);
    await expect(walk.button(BUTTONS.baseline)).toBeVisible();
    await expect(walk.button(BUTTONS.mistake)).toHaveCount(0);
  });

  test("a slip is one for two minutes, and none once help was called", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await expect(walk.button(BUTTONS.mistake)).toBeVisible();
    await walk.wait(121_000);
    await expect(walk.button(BUTTONS.mistake)).toHaveCount(0);
    await walk.press(BUTTONS.baseline);
    await walk.press(BUTTONS.decision);
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await expect(walk.button(BUTTONS.mistake)).toBeVisible();
    await walk.press(BUTTONS.helpCalled);
    await expect(walk.button(BUTTONS.mistake)).toHaveCount(0);
  });

  test("while it runs every page has its time and the way back, above pads and signs, and choking stands in one place", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    // Before the start there are no signs, and the page has the button.
    await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
    await walk.drink({ end: false });
    // Once they stand there, choking is one of them.
    await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
    await expect(walk.sign(SIGNS.choke)).toBeVisible();
    await walk.press(walk.sign(SIGNS.choke));
    await walk.settle();
    await expect(walk.button(BUTTONS.backToChoking)).toHaveCount(0);
    await walk.wait(65_000 - TIMES.still);
    const strip = page.locator(".banner", { hasText: "Choking:" });
    const back = async () => {
      await expect(strip.getByRole("timer")).toHaveText("1:05");
      await expect(walk.button(BUTTONS.choking)).toHaveCount(0);
      await walk.press(BUTTONS.backToChoking);
      await walk.isOn(PAGES.choking);
      await walk.press(BUTTONS.back);
    };
    await walk.press(BUTTONS.back);
    await back();
    for (const way of [/^The person/, /^Breaths in 60/, /^Dry swallows/]) {
      await walk.press(way);
      await back();
    }
    await walk.press(/^90 mL/);
    const [above, signs, pad] = await Promise.all(
      [strip, walk.group("Signs"), walk.pad].map((part) => part.boundingBox()),
    );
    expect(above.y + above.height).toBeLessThan(Math.min(signs.y, pad?.y ?? signs.y));
    // One that nobody closed is told in hours, not in thousands of minutes.
    await page.clock.fastForward(24 * 3_600_000);
    await expect(strip.getByRole("timer")).toHaveText("24 h 1 min");
    await walk.press(BUTTONS.backToChoking);
    await walk.press(BUTTONS.baseline);
    await walk.press(BUTTONS.decision);
    await expect(strip).toHaveCount(0);
    await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
    await walk.toHandover();
    await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
  });

  test("what the gate found and the signs after a stroke have the way to it too", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate(GATE.block);
    await walk.isOn(PAGES.gateResult);
    await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
    await walk.press(BUTTONS.back);
    await walk.unfold(FOLDS.addTo);
    await walk.press(BUTTONS.sixSigns);
    await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
  });

  test("one whose end nobody marked does not swallow the next", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.press(BUTTONS.choking);
    await walk.settle();
    await expect(walk.button(BUTTONS.newChoking)).toHaveCount(0);
    await walk.press(BUTTONS.helpCalled);
    await walk.wait(600_000);
    await walk.press(BUTTONS.newChoking);
    await walk.settle();
    // The clock is the new one's, and so is what is noted of it.
    await expect(walk.button(BUTTONS.newChoking)).toHaveCount(0);
    await expect(walk.button(BUTTONS.helpCalled)).toBeVisible();
    await walk.press(BUTTONS.baseline);
    await walk.press(BUTTONS.decision);
    await expect(walk.main.getByText(SAYS.doctorNow)).toBeVisible();
    const text = await handOver(walk);
    expect(text).toContain("choked 2 times, the last time: help call not recorded, back to baseline after 0 s " +
      "(before that: back to baseline not recorded)");
  });

  test("left without a word, it is where the visit goes on", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    await walk.press(walk.sign(SIGNS.choke));
    await walk.settle();
    await walk.isOn(PAGES.choking);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.goOn);
    await walk.isOn(PAGES.choking);
  });
});

test.describe("the gate", () => {
  test("a block: a trained screener can't go on", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate(GATE.block);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByText(SAYS.onlySlp)).toBeVisible();
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    await walk.press(BUTTONS.endNotDone);
    await walk.decided(VERDICTS.notDone);
    // Nor by the way through the visit's own page.
    await walk.press(BUTTONS.back);
    await walk.press(/^90 mL of water/);
    await expect(page.getByText(SAYS.onlySlp).first()).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await page.goBack();
    await page.goBack();
    await walk.isOn(PAGES.decision);
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.notDone);
    expect(text).toContain("cannot stay awake");
  });

  test("a block: a speech-language pathologist goes on, and the reason is handed over", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit({ slp: true });
    await walk.gate(GATE.block);
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, "Needed for the assessment");
    await walk.press(BUTTONS.goOn);
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.dry();
    await walk.press(BUTTONS.next);
    await walk.drink();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toContain("cannot stay awake");
    expect(text).toContain(TEXT.goneOnDespite("needed for the assessment"));
  });

  test("put right, then asked again", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate(GATE.fix);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByText("Mouth care first, then ask again.")).toBeVisible();
    await walk.press(BUTTONS.askAgain);
    await walk.isOn(PAGES.gates[3]);
    await walk.press(Object.values(GATE.fix)[0]);
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.breaths);
  });

  test("not put right: the water is held", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate(GATE.fix);
    await walk.press(BUTTONS.goOn);
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.dry();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText("Mouth dry or not clean")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
  });

  test("a caution goes along into the text", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate(GATE.caution);
    await walk.press(BUTTONS.goOn);
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.dry();
    await walk.press(BUTTONS.next);
    await walk.drink();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
    await walk.toHandover();
    expect(await walk.copy()).toContain("no suction within reach");
  });

  test("a line that was opened is not settled with the others: it asks what is the case", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.isOn(PAGES.gates[0]);
    const lines = page.locator("li.item button.line");
    const ids = await lines.evaluateAll((all) => all.map((line) => line.id));
    await walk.press(lines.nth(1));
    await expect(walk.button(BUTTONS.groupHolds)).toHaveCount(0);
    await walk.press(BUTTONS.sayTheCase);
    await walk.wait(1);
    await walk.isOn(PAGES.gates[0]);
    await expect(lines.nth(1)).toBeFocused();
    await expect(lines.nth(1)).toBeInViewport();
    expect((await storedEvents(page)).filter(({ event }) => event.Gate)).toEqual([]);
    // It holds after all: said for the line, and then for the others.
    await walk.press(BUTTONS.itHolds);
    await expect(lines.nth(1)).toHaveAttribute("aria-expanded", "false");
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.gates[1]);
    await walk.saved();
    const settled = (await storedEvents(page)).flatMap(({ event }) => event.Gate ?? []);
    expect(settled[0]).toEqual([ids[1], "holds"]);
    expect(new Set(settled.map(([id]) => id))).toEqual(new Set(ids));
    // Closed without an answer it counts with the others.
    await walk.press(lines.nth(0));
    await walk.press(lines.nth(0));
    await expect(walk.button(BUTTONS.groupHolds)).toHaveCount(1);
  });

  test("an emergency: the local procedure first, last well in the text", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate(GATE.emergency);
    await expect(page.getByRole("alert").filter({ hasText: "use your local emergency procedure now" })).toBeVisible();
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    await walk.field(FIELDS.lastWell).fill("today, 08:15");
    await walk.press(BUTTONS.endEmergency);
    await walk.decided(VERDICTS.emergency);
    // Its text waits for no further press.
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toMatch(TEXT.emergency);
    expect(text).toMatch(/last well: today, 08:15/i);
    expect(text).toContain(TEXT.nothingByMouth);
  });

  test("28 breaths a minute: no water", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate();
    await walk.breaths(28);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByText(SAYS.onlySlp)).toBeVisible();
    await walk.press(BUTTONS.endNotDone);
    await walk.decided(VERDICTS.notDone);
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.notDone);
    expect(text).toContain("breathing 28 a minute (counted for 60 seconds)");
  });

  test("a rate and an SpO2 that were read elsewhere", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.gate();
    await walk.unfold(FOLDS.readings);
    await walk.field(FIELDS.rate).fill("18");
    await walk.field(FIELDS.spo2).fill("90");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByText("Oxygen saturation 90 %")).toBeVisible();
    await walk.press(BUTTONS.endNotDone);
    const text = await handOver(walk);
    expect(text).toContain("breathing 18 a minute (counted elsewhere)");
    expect(text).toContain("oxygen saturation 90 %");
  });
});

test.describe("an early end", () => {
  test("refused at the gate, taken up again", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.gates[1]);
    await walk.press(BUTTONS.back);
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.declined);
    await walk.decided(VERDICTS.notDone);
    await walk.press(BUTTONS.takeUp);
    await walk.isOn(PAGES.gates[1]);
  });

  test("wants to stop in a running count", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toDry();
    await walk.startPad();
    await walk.count(1);
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.wantsToStop);
    await walk.decided(VERDICTS.notDone);
    // Nobody counts on: the 30 seconds never run out.
    await walk.wait(31_000);
    await walk.decided(VERDICTS.notDone);
    const text = await handOver(walk);
    expect(text).toMatch(TEXT.notDone);
    expect(text).toContain("the person wanted to stop");
  });

  test("wants to stop with water swallowed: the minute is watched, and a late cough counts", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.wantsToStop);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.watchOn)).toBeVisible();
    await expect(walk.fold(FOLDS.endHere)).toHaveCount(0);
    await walk.wait(40_000);
    await walk.press(walk.sign(SIGNS.cough));
    await walk.wait(20_000);
    await walk.settle();
    await walk.toDecision(VERDICTS.refer);
    await expect(page.getByText("Coughed 40 seconds after the 90 mL were stopped")).toBeVisible();
  });

  test("wants to stop: nothing more is given before the screen is taken up again", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.wantsToStop);
    await walk.decided(VERDICTS.notDone);
    await walk.press(BUTTONS.back);
    await walk.press(/^90 mL/);
    await expect(page.getByText("The screen was ended: the person wanted to stop")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.takeUp);
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    await expect(walk.pad).toBeVisible();
  });

  test("broken off with water swallowed: nothing counts as watched", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.breakOff);
    await walk.decided(VERDICTS.notDone);
    await walk.wait(61_000);
    await expect(page.getByText("the watch of 60 seconds was ended early: called away")).toBeVisible();
  });

  test("broken off before the water, taken up again, gone through", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.breakOff);
    await walk.decided(VERDICTS.notDone);
    await walk.press(BUTTONS.takeUp);
    await walk.isOn(PAGES.water);
    await walk.drink();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
  });

  test("broken off, taken up after 90 minutes: airway, readiness, breaths and voice are asked again", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.breakOff);
    await walk.decided(VERDICTS.notDone);
    await page.clock.fastForward(90 * 60_000);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await expect(walk.button(BUTTONS.goOnVisit)).toContainText(SAYS.brokenOffLine);
    await walk.press(BUTTONS.goOnVisit);
    await expect(page.getByRole("heading", { name: SAYS.brokenOff })).toBeVisible();
    await walk.press(BUTTONS.takeUp);
    // No line counts as held, and one press a group asks all of it anew.
    for (const group of [PAGES.gates[2], PAGES.gates[3]]) {
      await walk.isOn(group);
      await expect(page.getByText(SAYS.lookAgain)).toBeVisible();
      await expect(page.locator(".item.held")).toHaveCount(0);
      await walk.press(BUTTONS.groupHolds);
    }
    await walk.isOn(PAGES.breaths);
    await walk.press(BUTTONS.next);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.oldBreaths)).toBeVisible();
    await walk.press(walk.button(BUTTONS.askAgain).first());
    await walk.press(BUTTONS.countAgain);
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.oldVoice)).toBeVisible();
    await walk.press(BUTTONS.askAgain);
    await expect(page.getByText(SAYS.oldVoice)).toHaveCount(0);
    await walk.drink();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toMatch(/broken off by the clinician at \d\d:\d\d, taken up again at \d\d:\d\d/);
  });

  test("a sign outranks it", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink({ end: false });
    await walk.press(walk.sign(SIGNS.cough));
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.wantsToStop);
    // The minute is still to be watched.
    await walk.toDecision(VERDICTS.refer);
  });
});

test.describe("the text", () => {
  /** A refer, at the handover page. */
  async function referred(page) {
    const walk = await Walk.start(page);
    await walk.toWater({ dry: 2 });
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.refer);
    await walk.toHandover();
    return walk;
  }

  const issued = async (page) => (await storedEvents(page)).filter(({ event }) => event.Issued);

  test("who was told of it is named on decision and handover once it no longer stands", async ({ context, page }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.drink();
    await walk.finishWater();
    await walk.toDecision(VERDICTS.pass);
    await walk.toHandover();
    await walk.copy();
    await walk.press("Told the nurse in charge");
    const old = page.getByRole("alert").filter({ hasText: "what was told no longer stands. Tell again." });
    await expect(old).toHaveCount(0);
    await page.goBack();
    await page.goBack();
    await walk.isOn(PAGES.water);
    await walk.answer(ASKED.voiceAfter, ASKED.wet);
    await walk.toDecision(VERDICTS.refer);
    await expect(old).toBeInViewport({ ratio: 1 });
    await walk.toHandover();
    await expect(old).toBeInViewport({ ratio: 1 });
    await walk.press(ACTIONS.nothingByMouth);
    await walk.copy();
    await expect(page.getByText(SAYS.copied)).toBeInViewport({ ratio: 1 });
    await expect(old).toHaveCount(1);
    await walk.press("Told the nurse in charge");
    await expect(old).toHaveCount(0);
  });

  test("does not leave by any way before somebody pressed what to do", async ({ page }) => {
    await page.addInitScript(() => {
      window.shared = [];
      navigator.share = async (data) => void window.shared.push(data.text);
    });
    const walk = await referred(page);
    await page.evaluate(() => navigator.clipboard.writeText("before"));
    let downloads = 0;
    page.on("download", () => (downloads += 1));
    for (const way of [BUTTONS.copy, BUTTONS.share, BUTTONS.saveText]) {
      await walk.press(way);
      const message = page.getByRole("alert").filter({ hasText: SAYS.pressFirst });
      await expect(message).toBeVisible();
      // Beside the button, not somewhere above the fold.
      const [said, button] = [await message.boundingBox(), await walk.button(way).boundingBox()];
      expect(Math.abs(button.y - said.y)).toBeLessThan(260);
    }
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe("before");
    expect(await page.evaluate(() => window.shared)).toEqual([]);
    expect(downloads).toBe(0);
    await walk.saved();
    expect(await issued(page)).toEqual([]);

    await walk.press(ACTIONS.nothingByMouth);
    await expect(page.getByText(SAYS.pressFirst)).toBeHidden();
    const copied = await walk.copy();
    expect(copied.split("\n").slice(0, 3)).toEqual([
      "REFER to speech-language pathology today.",
      TEXT.nothingByMouth,
      TEXT.medicines,
    ]);
    await walk.press(BUTTONS.share);
    await expect.poll(() => page.evaluate(() => window.shared)).toEqual([copied]);
    const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveText)]);
    expect(fs.readFileSync(await download.path(), "utf8")).toBe(copied);
    await walk.saved();
    const out = await issued(page);
    expect(out.map(({ event }) => event.Issued.route)).toEqual(["Copied", "Shared", "Saved"]);
    expect(out.every(({ event }) => event.Issued.text === copied)).toBe(true);
  });

  test("a share that was called off is not taken for one", async ({ page }) => {
    await page.addInitScript(() => {
      navigator.share = async () => {
        throw new DOMException("closed", "AbortError");
      };
    });
    const walk = await referred(page);
    await walk.press(ACTIONS.nothingByMouth);
    await walk.press(BUTTONS.share);
    await expect(page.getByText("Not shared: it was called off.")).toBeVisible();
    await walk.saved();
    expect(await issued(page)).toEqual([]);
  });

  test("keeping the current plan needs its reason", async ({ page }) => {
    const walk = await referred(page);
    await walk.press(ACTIONS.keepPlan);
    await walk.press(BUTTONS.copy);
    await expect(page.getByText(SAYS.sayWhyKept)).toBeVisible();
    await walk.answer(ASKED.because, "The doctor decided so");
    const text = await walk.copy();
    expect(text).toContain("Keep the current plan for eating and drinking, because the doctor decided so.");
    expect(text).not.toContain(TEXT.nothingByMouth);
  });

  test("a plan with acknowledged risks, to another person, by another time", async ({ page }) => {
    const walk = await referred(page);
    await walk.press(ACTIONS.acknowledgedRisk);
    // Nobody knew of such a plan before: it needs its reason.
    await walk.press(BUTTONS.copy);
    await expect(page.getByText(SAYS.sayWhyRisk)).toBeVisible();
    await walk.answer(ASKED.because, "The doctor decided so");
    await walk.unfold(FOLDS.toWhom);
    await walk.answer("To", "The nurse in charge");
    await walk.answer("By", "Within 24 hours");
    const text = await walk.copy();
    expect(text).toMatch(/^REFER to the nurse in charge within 24 hours\./);
    expect(text).toContain(TEXT.acknowledgedRisk);
  });

  test("a change after it left makes a corrected one; none does not", async ({ page }) => {
    const walk = await referred(page);
    await walk.press(ACTIONS.nothingByMouth);
    const first = await walk.copy();
    expect(first).toMatch(/^REFER/);
    await walk.wait(5 * 60_000);
    expect(await walk.copy()).toMatch(/^REFER/);
    await walk.wait(15 * 60_000);
    const times = (await issued(page)).map(({ event }) => event.Issued.clock);
    await walk.press(ACTIONS.keepPlan);
    await walk.answer(ASKED.because, "Comfort comes first");
    await page.evaluate(() => navigator.clipboard.writeText("before"));
    await walk.press(BUTTONS.copy);
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).not.toBe("before");
    const corrected = await page.evaluate(() => navigator.clipboard.readText());
    await walk.saved();
    const now = (await issued(page)).at(-1).event.Issued.clock;
    expect(now).not.toBe(times.at(-1));
    expect(corrected.split("\n")[0]).toBe(`CORRECTED ${now}, replaces ${times.at(-1)}.`);
    // The earlier texts stand as they left.
    expect((await issued(page)).map(({ event }) => event.Issued.text)[0]).toBe(first);
  });

  test("whom it was told, and whether it was read back", async ({ page }) => {
    const walk = await referred(page);
    await expect(walk.button(/^Told /)).toHaveCount(0);
    await walk.press(ACTIONS.nothingByMouth);
    await walk.copy();
    await walk.press("Told the nurse in charge");
    await walk.press("Told the doctor, and read back");
    await expect(page.getByRole("listitem").filter({ hasText: /^The nurse in charge at \d\d:\d\d: the text of \d\d:\d\d$/ })).toBeVisible();
    await expect(page.getByRole("listitem").filter({ hasText: /^The doctor.* at \d\d:\d\d, read back: the text of \d\d:\d\d$/ })).toBeVisible();
    await walk.saved();
    const told = (await storedEvents(page)).flatMap(({ event }) => event.Told ?? []);
    expect(told.map(({ read_back }) => read_back)).toEqual([false, true]);
    expect(told[0].whom).toBe("the nurse in charge");
    expect(told[1].whom).toMatch(/^the doctor/);
  });

  test("levels only where somebody picked them", async ({ page }) => {
    const walk = await referred(page);
    await expect(walk.text).not.toContainText("level");
    await walk.unfold(FOLDS.levels);
    await walk.answer("Drinks", "2 Mildly thick");
    await walk.press(ACTIONS.acknowledgedRisk);
    await walk.answer(ASKED.because, "The doctor decided so");
    expect(await walk.copy()).toContain(TEXT.level);
  });

  test("the decision, its reasons and the versions are in the journal", async ({ page }) => {
    const walk = await referred(page);
    await walk.saved();
    const events = await storedEvents(page);
    const decided = events.map(({ event }) => event.Decided).find(Boolean);
    expect(decided.verdict).toBe("refer");
    expect(decided.reasons[0][0]).toBe("dry.few");
    expect(decided.versions.rules).not.toBe("");
    expect(decided.policy).toMatch(/^Penlight default/);
    expect(marksOf(events, "Tap")).toHaveLength(18);
    expect(events.map(({ seq }) => seq)).toEqual(events.map((_, i) => i));
  });
});
