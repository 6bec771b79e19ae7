// The way through a visit: what a page asks before it lets anybody on, where an end and a break
// lead, and what can be changed or added on the way. What is in the way, and why, is a matter of
// the native tests.

import { visit } from "./journal.mjs";
import { expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ASKED, AT, BUTTONS, FIELDS, FOLDS, GATE, ORAL, PAGES, SAYS, SIGNS, TEXT, VERDICTS, Walk } from "./walk.mjs";

const REASON = "The team agreed";

test.beforeEach(async ({ context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
});

const order = (walk) => walk.main.locator(".order li b");

test.describe("the gate", () => {
  test("a line that was opened is not settled with the others: it asks what is the case", async ({ page }) => {
    const walk = await Walk.at(page, visit(), AT.gates[0]);
    const lines = page.locator("li.item button.line");
    await expect(lines.first()).toBeVisible();
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

  test("a block ends a trained screener's way, on its page and on the water's", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds({}, 3), AT.gates[3]);
    const [[line, exception]] = Object.entries(GATE.block);
    const row = page.locator("li.item", { hasText: line });
    await walk.press(row.getByRole("button").first());
    await walk.press(exception, row);
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByText(SAYS.onlySlp)).toBeVisible();
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    await walk.press(BUTTONS.endNotDone);
    await walk.decided(VERDICTS.notDone);
    await walk.press(BUTTONS.back);
    await walk.press(/^90 mL of water/);
    await expect(page.getByText(SAYS.onlySlp).first()).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
  });

  test("past a block a speech-language pathologist goes on with a reason", async ({ page }) => {
    const walk = await Walk.at(page, visit({ slp: true }).gateHolds({ awake: "no" }), AT.gateResult);
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, "Needed for the assessment");
    await walk.press(BUTTONS.goOn);
    await walk.isOn(PAGES.breaths);
    await expect(walk.pad).toBeVisible();
  });

  test("put right, then asked again", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds({ mouth: "no" }), AT.gateResult);
    await expect(page.getByText("Mouth care first, then ask again.")).toBeVisible();
    await walk.press(BUTTONS.askAgain);
    await walk.isOn(PAGES.gates[3]);
    await walk.press(Object.values(GATE.fix)[0]);
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.breaths);
  });

  test("an emergency waits for no other question, and its text for no press", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds({}, 3), AT.gates[3]);
    const [[line, exception]] = Object.entries(GATE.emergency);
    const row = page.locator("li.item", { hasText: line });
    await walk.press(row.getByRole("button").first());
    await walk.press(exception, row);
    await expect(page.getByRole("alert").filter({ hasText: "use your local emergency procedure now" })).toBeVisible();
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    await walk.field(FIELDS.lastWell).fill("today, 08:15");
    await walk.press(BUTTONS.endEmergency);
    await walk.decided(VERDICTS.emergency);
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toMatch(TEXT.emergency);
    expect(text).toMatch(/last well: today, 08:15/i);
  });

  test("an order to fast ends it there and then, and one press leads to a text that may leave", async ({ page }) => {
    const walk = await Walk.at(page, visit({ slp: true }).gateHolds({}, 1), AT.gates[1]);
    const row = page.locator("li.item", { hasText: "No nothing-by-mouth order" });
    await walk.press(row.getByRole("button").first());
    await walk.press("Nothing by mouth for another reason", row);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByRole("alert").filter({ hasText: "Nothing by mouth" })).toBeVisible();
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    await walk.press(BUTTONS.endStopped);
    await walk.isOn(PAGES.handover);
    expect(await walk.copy()).toContain("that order stands");
  });

  test("a rate and an SpO2 that were read elsewhere lead on, or to what they close", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds(), AT.breaths);
    await walk.unfold(FOLDS.readings);
    await walk.field(FIELDS.rate).fill("18");
    await walk.field(FIELDS.spo2).fill("90");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.gateResult);
    await expect(page.getByText("Oxygen saturation 90 %")).toBeVisible();
    await walk.press(BUTTONS.back);
    await walk.press(/^Breaths in 60/);
    await walk.unfold(FOLDS.readings);
    await walk.field(FIELDS.spo2).fill("96");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.dry);
  });
});

test.describe("what keeps a task from being given", () => {
  test("no dry swallow: no pad, no key that starts it, and for a screener only the count to go on with", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater({ dry: 0 }), AT.water);
    await expect(page.getByText("Moisten the mouth and count again.")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await expect(walk.button(BUTTONS.allTheSame)).toHaveCount(0);
    await page.keyboard.press("Space");
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.refer);
    expect((await storedEvents(page)).filter(({ event }) => event.TrialOpened?.task === "Water90")).toEqual([]);
  });

  test("after a cough a speech-language pathologist goes on by a press, to own trials and a reason", async ({ page }) => {
    const coughed = visit({ slp: true }).readyForWater().water({ cough: 12 });
    const walk = await Walk.at(page, coughed, AT.decision);
    await walk.press(BUTTONS.goOnWithTrials);
    await walk.isOn(PAGES.own);
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, REASON);
    await expect(page.getByText(ASKED.whatGiven).first()).toBeVisible();
  });

  test("two dry swallows: the pad waits for a reason, and the reason is asked for", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater({ dry: 2 }), AT.water);
    await expect(page.getByText("2 dry swallows in 30 seconds (3 or more expected)")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.allTheSame);
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.thisReason);
    await expect(page.getByText("Say why, in a few words.")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.answer(ASKED.goOnBecause, REASON);
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    await expect(walk.pad).toBeVisible();
    await walk.saved();
    const wentOn = (await storedEvents(page)).flatMap(({ event }) => event.WentOn ?? []);
    expect(wentOn.map(({ because, by }) => [because.toLowerCase(), by])).toEqual([[REASON.toLowerCase(), "Screener"]]);
  });

  test("a voice that is wet before takes the pad away at once", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    await expect(walk.pad).toBeVisible();
    await walk.answer(ASKED.voiceBefore, ASKED.wet);
    await expect(page.getByText(SAYS.notYet)).toBeVisible();
    await expect(page.getByText(SAYS.onlySlp)).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
  });

  test("a sign in an own trial: what to do at once, and the next asks for a reason", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "OwnTrials", slp: true }).gateHolds().breaths(), AT.own);
    await expect(walk.pad).toHaveCount(0);
    await walk.answer(ASKED.whatGiven, "0 Thin");
    await walk.press(walk.pad);
    await walk.wait(2_000);
    await walk.press(walk.sign(SIGNS.cough));
    await expect(page.getByText("Stop. Take the cup away.")).toBeVisible();
    await walk.press(walk.pad);
    await walk.settle();
    await expect(page.getByText(SAYS.notYet)).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.allTheSame);
    await walk.answer(ASKED.goOnBecause, "Needed for the assessment");
    await expect(walk.pad).toBeVisible();
  });

  test("teeth come before the cracker, each question before its pad", async ({ page }) => {
    const walk = await Walk.at(page, visit({ slp: true }).readyForWater().water(), AT.cracker);
    await walk.answer(ASKED.allergy, "No");
    await walk.answer(ASKED.teeth, "No");
    await expect(walk.pad).toHaveCount(0);
    await walk.answer(ASKED.dietOrder, ASKED.orderAllows);
    await expect(page.getByText("No cracker: no teeth and no dentures that fit")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.answer(ASKED.teeth, "Yes");
    await expect(walk.pad).toBeVisible();
  });

  test("full visit: the gag waits for the swallow trials", async ({ page }) => {
    const begun = visit({ screen: "FullVisit" }).gateHolds().examined({ but: [8] });
    const walk = await Walk.at(page, begun, AT.regions[8]);
    await expect(page.getByText(ORAL.gagWaits)).toBeVisible();
    await expect(page.locator("li.item")).toHaveCount(0);
  });
});

test.describe("from page to page", () => {
  test("a Full visit leads through every task, then to the gag, then to the decision", async ({ page }) => {
    const begun = visit({ screen: "FullVisit", age: 30 }).gateHolds().examined({ but: [7, 8] });
    const walk = await Walk.at(page, begun, AT.regions[7]);
    await walk.region(7);
    for (const title of [
      PAGES.pa,
      PAGES.ta,
      PAGES.ka,
      PAGES.sequence,
      PAGES.ah,
      PAGES.s,
      PAGES.z,
      PAGES.glide,
      PAGES.countOnBreath,
      PAGES.hold,
      PAGES.five,
      PAGES.breaths,
      PAGES.dry,
      PAGES.water,
    ]) {
      await walk.isOn(title);
      await walk.press(BUTTONS.skip);
    }
    await walk.isOn(ORAL.pages[8]);
    await walk.press(BUTTONS.next);
    await walk.decided(VERDICTS.incomplete);
  });

  test("the decision so far, from the visit at a glance", async ({ page }) => {
    const walk = await Walk.at(page, visit());
    await walk.press(BUTTONS.decisionSoFar);
    await walk.isOn(PAGES.decision);
    await walk.decided(VERDICTS.incomplete);
  });

  test("after the sips the 90 mL, with the voice heard last", async ({ page }) => {
    const given = visit({ screen: "Stepped" }).readyForWater().clearSips();
    const walk = await Walk.at(page, given, AT.sips);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.notYet)).toHaveCount(0);
    await expect(walk.button(ASKED.clear, walk.group(ASKED.voiceBefore))).toHaveAttribute("aria-pressed", "true");
    await expect(walk.pad).toBeVisible();
  });

  test("breaths by taps and of 30 seconds stand behind a fold, and lead back to the minute", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds(), AT.breaths);
    await expect(walk.button(BUTTONS.thirtyOnly)).toBeHidden();
    await walk.unfold(FOLDS.otherWay);
    await walk.press(BUTTONS.thirtyOnly);
    await walk.isOn(PAGES.breaths30);
    await walk.startPad();
    await walk.count(9, 3_000);
    await walk.wait(3_000);
    await walk.settle();
    await expect(page.getByText("breathing 18 a minute (counted for 30 seconds, doubled)", { exact: false }).first()).toBeVisible();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.breaths);
    await walk.byTaps();
    await walk.isOn(PAGES.breathTaps);
    await walk.pad.tap();
    await walk.count(2, 3_000);
    // The rate is worked out anew at every tap.
    await expect(page.getByText("about 20 a minute, 2 of 2 within 15 %: 2 more")).toBeVisible();
    await walk.count(2, 3_000);
    await expect(page.getByText("about 20 a minute, 4 of 4 within 15 %: even enough")).toBeVisible();
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.breaths);
  });

  test("the visit has one list of what can be added; what was begun stands with its steps", async ({ page }) => {
    const walk = await Walk.at(page, visit());
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

  test("the signs after a stroke: asked in the open is only what nobody recorded; counted in, and left out again", async ({ page }) => {
    const walk = await Walk.at(page, visit({ slp: true }).readyForWater().water());
    await walk.unfold(FOLDS.addTo);
    await walk.press(BUTTONS.sixSigns);
    await walk.isOn(PAGES.sixSigns);
    await expect(page.locator(".six .choices:visible")).toHaveCount(2);
    // A look at them changes nothing.
    await walk.press(BUTTONS.done);
    await walk.press(BUTTONS.decision);
    await walk.decided(VERDICTS.pass);
    await walk.press(BUTTONS.back);
    await walk.unfold(FOLDS.addTo);
    await walk.press(BUTTONS.sixSigns);
    await walk.answer(ASKED.slurred, "Yes");
    await expect(page.getByText("1 found, 4 of 5 tested")).toBeVisible();
    await expect(page.getByText("Counted in this visit's decision")).toBeVisible();
    await walk.press("Weak, spoken or none");
    await expect(page.getByText("2 found, 5 of 5 tested")).toBeVisible();
    await walk.press(BUTTONS.done);
    await walk.press(BUTTONS.decision);
    await walk.decided(VERDICTS.referOn);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.sixSigns);
    await walk.press(BUTTONS.leaveSignsOut);
    await walk.press(BUTTONS.done);
    await walk.press(BUTTONS.decision);
    await walk.decided(VERDICTS.pass);
  });
});

test.describe("an early end", () => {
  test("declined at the gate, taken up again where it was", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds({}, 1));
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.declined);
    await walk.decided(VERDICTS.notDone);
    await walk.press(BUTTONS.takeUp);
    await walk.isOn(PAGES.gates[1]);
  });

  test("wants to stop in a running count: its time never runs out", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds().breaths(), AT.dry);
    await walk.startPad();
    await walk.count(1);
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.wantsToStop);
    await walk.decided(VERDICTS.notDone);
    await walk.wait(31_000);
    await walk.decided(VERDICTS.notDone);
    await walk.saved();
    expect((await storedEvents(page)).filter(({ event }) => event.Mark?.kind === "WindowOver" && event.Mark.trial === 1)).toEqual([]);
  });

  test("wants to stop with water swallowed: the minute is watched on the same page", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
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

  test("nothing more is given before the screen is taken up again", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater().ended("Withdrew"), AT.water);
    await expect(page.getByText("The screen was ended: the person wanted to stop")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.takeUp);
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    await expect(walk.pad).toBeVisible();
  });

  test("broken off with water swallowed: no watch goes on behind it", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
    await walk.drink();
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.breakOff);
    await walk.decided(VERDICTS.notDone);
    await walk.wait(61_000);
    await expect(page.getByText("the watch of 60 seconds was ended early: called away")).toBeVisible();
  });

  test("broken off, taken up after 90 minutes: airway, readiness, breaths and voice are asked again", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
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
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.oldBreaths)).toBeVisible();
    await walk.press(walk.button(BUTTONS.countAgain).first());
    await walk.isOn(PAGES.breaths);
    await walk.press(BUTTONS.countAgain);
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await expect(page.getByText(SAYS.oldVoice)).toBeVisible();
    await walk.press(BUTTONS.hearAgain);
    await expect(page.getByText(SAYS.oldVoice)).toHaveCount(0);
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    await expect(walk.pad).toBeVisible();
  });
});

test.describe("order and choice of the syllables", () => {
  test("one press a change where the flow begins; it leads on, and is kept by a press of its own", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "OralMotor", age: 40 }).weakness().examined(), AT.pa);
    await walk.unfold(FOLDS.order);
    await expect(walk.button(BUTTONS.keepOrder)).toHaveCount(0);
    await walk.press(BUTTONS.earlier(PAGES.ka));
    await expect(order(walk)).toHaveText([PAGES.pa, PAGES.ka, PAGES.ta, PAGES.sequence]);
    await walk.press(BUTTONS.leaveOut(PAGES.sequence));
    await walk.press(BUTTONS.leaveOut(PAGES.ta));
    await expect(order(walk)).toHaveText([PAGES.pa, PAGES.ka, PAGES.ta, PAGES.sequence]);
    await walk.press(BUTTONS.askForIt(PAGES.ta));
    await walk.press(BUTTONS.leaveOut(PAGES.ka));
    await walk.saved();
    expect((await storedEvents(page)).flatMap(({ event }) => (event.Order ? [event.Order] : []))).toEqual([
      ["SyllablePa", "SyllableKa", "SyllableTa", "Sequence"],
      ["SyllablePa", "SyllableKa", "SyllableTa"],
      ["SyllablePa", "SyllableKa"],
      ["SyllablePa", "SyllableKa", "SyllableTa"],
      ["SyllablePa", "SyllableTa"],
    ]);
    await walk.press(BUTTONS.keepOrder);
    await expect(walk.button(BUTTONS.keepOrder)).toHaveCount(0);
    for (const title of [PAGES.pa, PAGES.ta]) {
      await walk.isOn(title);
      await walk.press(BUTTONS.skip);
    }
    await walk.isOn(PAGES.ah);
    // Reloaded, the order is that of the journal.
    await page.reload();
    await walk.press(BUTTONS.back);
    await expect(walk.main.locator(".steps b", { hasText: PAGES.ta })).toHaveCount(1);
    await expect(walk.main.locator(".steps b", { hasText: PAGES.ka })).toHaveCount(0);
    // Said before it holds for the next visit; other screens have none of it.
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.oralMotor);
    await expect(page.getByText(`${SAYS.keptOrder}pa-pa-pa, ta-ta-ta`)).toBeVisible();
    await walk.press(BUTTONS.adult);
    await walk.press(BUTTONS.begin);
    await walk.straightTo(PAGES.pa);
    await walk.press(BUTTONS.skip);
    await walk.isOn(PAGES.ta);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.swallowScreen);
    await expect(page.getByText(SAYS.keptOrder)).toHaveCount(0);
  });

  test("on the visit's page what was begun stays, and the first in order is gone on with", async ({ page }) => {
    const begun = visit({ screen: "OralMotor", age: 40 }).weakness().examined().syllables("SyllablePa", 25);
    const walk = await Walk.at(page, begun);
    await walk.unfold(FOLDS.order);
    await expect(walk.button(BUTTONS.leaveOut(PAGES.pa))).toHaveCount(0);
    await walk.press(BUTTONS.earlier(PAGES.sequence));
    await walk.press(BUTTONS.earlier(PAGES.sequence));
    await walk.press(BUTTONS.leaveOut(PAGES.ka));
    await expect(walk.main.locator(".steps b", { hasText: PAGES.ka })).toHaveCount(0);
    await walk.press(BUTTONS.goOn);
    await walk.isOn(PAGES.sequence);
    await walk.press(BUTTONS.skip);
    await walk.isOn(PAGES.ta);
  });

  test("a child's pa-ta-ka stands last and can't be put first; what steps aside shows no pad", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "OralMotor", age: 5 }).weakness().examined(), AT.pa);
    await walk.unfold(FOLDS.order);
    await expect(walk.button(BUTTONS.earlier(PAGES.sequence))).toHaveCount(0);
    await walk.press(BUTTONS.leaveOut(PAGES.ta));
    await walk.press(BUTTONS.earlier(PAGES.ka));
    await expect(order(walk)).toHaveText([PAGES.ka, PAGES.pa, PAGES.sequence, PAGES.ta]);
    for (const title of [PAGES.pa, PAGES.ka]) {
      await walk.straightTo(title);
      await walk.press(BUTTONS.couldNot);
      await walk.settle();
    }
    await walk.straightTo(PAGES.sequence);
    await expect(page.getByText("0 of the single syllables succeeded, and it takes 2.")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
  });
});

test.describe("coming back", () => {
  test("back after five minutes: whose visit it is, until something is pressed in it", async ({ page }) => {
    const walk = await Walk.at(page, visit({ age: 70 }), AT.gates[0]);
    const still = page.getByText("Still Visit 1, 09:30, 70 years?");
    await walk.sight(false);
    await page.clock.fastForward(240_000);
    await walk.sight(true);
    await expect(still).toHaveCount(0);
    await walk.sight(false);
    await page.clock.fastForward(360_000);
    await walk.sight(true);
    await expect(still).toBeVisible();
    await expect(still).toBeInViewport();
    // It costs no press.
    await walk.press(BUTTONS.groupHolds);
    await expect(still).toHaveCount(0);
    await walk.saved();
    // The phone let the page go, and opens it again a quarter of an hour later.
    await page.clock.fastForward(900_000);
    await page.reload();
    await expect(page.getByText(/^Still Visit 1, 09:30, 70 years\?/)).toBeVisible();
    await walk.press(BUTTONS.anotherPerson);
    await walk.isOn(PAGES.home);
    await expect(still).toHaveCount(0);
  });

  test("an earlier refer that nobody closed shows at a new visit, however many came since", async ({ page }) => {
    const referred = visit({ label: "Zebra" }).readyForWater({ dry: 1 }).listed({ unclosed: true, verdict: "Refer" });
    const since = Array.from({ length: 9 }, (_, i) => visit({ label: `Visit ${i + 2}` }));
    const walk = await Walk.home(page, referred.ago(60_000), ...since);
    await walk.press(BUTTONS.swallowScreen);
    await walk.isOn(PAGES.newVisit);
    await expect(page.getByRole("heading", { name: "Earlier, and not closed. Same person?" })).toBeVisible();
    await expect(walk.main.locator("ul.heads li")).toHaveCount(1);
    await expect(walk.main.locator("ul.heads li")).toContainText("Zebra");
  });

  test("visits of one and the same millisecond all come, page by page, also by the list's own address", async ({ page }) => {
    const walk = await Walk.home(page, ...Array.from({ length: 71 }, (_, i) => visit({ label: `Visit ${i + 1}` })));
    await walk.press(BUTTONS.allVisits);
    await walk.isOn(PAGES.history);
    const listed = walk.main.locator("ul.heads li");
    await expect(listed).toHaveCount(30);
    await walk.press(BUTTONS.olderVisits);
    await walk.press(BUTTONS.olderVisits);
    await expect(listed).toHaveCount(71);
    await expect(walk.button(BUTTONS.olderVisits)).toHaveCount(0);
    await page.reload();
    await expect(listed).toHaveCount(30);
  });

  test("an address of nothing is the first page; of a visit that is not here, it says so", async ({ page }) => {
    const walk = await Walk.start(page, "./#visit/../../etc");
    await walk.isOn(PAGES.home);
    await page.goto("./#visit/0123456789abcdef/decision");
    await expect(page.getByText("This visit is not on this phone.")).toBeVisible();
    await walk.press(BUTTONS.back);
    await walk.isOn(PAGES.home);
    await page.reload();
    await walk.isOn(PAGES.home);
    expect(await storedEvents(page)).toEqual([]);
  });
});
