// Choking: its page and its clock, the way to it from everywhere, and slips. What is told of it is
// a matter of the native tests.

import { visit } from "./journal.mjs";
import { expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { AT, BUTTONS, FOLDS, GATE, PAGES, SAYS, SIGNS, TIMES, VERDICTS, Walk } from "./walk.mjs";

const timer = (page) => page.getByRole("timer");

/** The page of the water, before the start. */
const atWater = (page) => Walk.at(page, visit().readyForWater(), AT.water);

/** Choking, pressed among the signs while the water is drunk. */
async function choked(page) {
  const walk = await atWater(page);
  await walk.drink({ end: false });
  await walk.press(walk.sign(SIGNS.choke));
  await walk.isOn(PAGES.choking);
  await walk.settle();
  return walk;
}

test("its page: the local procedure, a clock, help, baseline; then stop", async ({ page }) => {
  const walk = await choked(page);
  await expect(page.getByText(SAYS.emergencyLine)).toBeVisible();
  await walk.wait(65_000 - TIMES.still);
  await expect(timer(page)).toHaveText("1:05");
  await walk.press(BUTTONS.helpCalled);
  await expect(page.getByText("Help called after 1:05")).toBeVisible();
  await walk.wait(30_000);
  await walk.press(BUTTONS.baseline);
  await expect(page.getByText("Back to baseline after 1:35")).toBeVisible();
  // Its clock stands then.
  await walk.wait(5_000);
  await expect(timer(page)).toHaveText("1:35");
  await walk.press(BUTTONS.decision);
  await walk.decided(VERDICTS.stop);
});

test("pressed by mistake: back at the task, and nothing of it decides", async ({ page }) => {
  const walk = await choked(page);
  await walk.press(BUTTONS.mistake);
  await walk.isOn(PAGES.water);
  await walk.press(BUTTONS.lastSwallow);
  await walk.settle();
  await walk.finishWater();
  await walk.toDecision(VERDICTS.pass);
  // It stays in the journal.
  const events = await storedEvents(page);
  expect(events.filter(({ event }) => event.Choking)).toHaveLength(1);
  expect(events.filter(({ event }) => event === "NotChoking")).toHaveLength(1);
});

// On the new page another button lies where the finger still is.
test("pressed during the watch, the same press takes nothing back", async ({ page }) => {
  const walk = await atWater(page);
  await walk.drink();
  await walk.press(walk.sign(SIGNS.choke));
  await walk.settle();
  await walk.isOn(PAGES.choking);
  await walk.saved();
  const events = await storedEvents(page);
  expect(events.filter(({ event }) => event === "NotChoking" || event.Undo || event.HelpCalled)).toEqual([]);
  expect(marksOf(events, "Sign")).toHaveLength(1);
});

test("at a sip and at the table it opens its page too; from the table it leads back to the tally", async ({ page }) => {
  const walk = await Walk.at(page, visit({ screen: "Stepped" }).readyForWater(), AT.sips);
  await walk.sip({ before: "Clear", extra: "Both", watch: false });
  await walk.press(walk.sign(SIGNS.choke));
  await walk.isOn(PAGES.choking);
  await walk.settle();
  await walk.press(BUTTONS.mistake);
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.back);
  await walk.oneTask(PAGES.table);
  await walk.startPad();
  await walk.settle();
  await walk.press(walk.sign(SIGNS.choke));
  await walk.isOn(PAGES.choking);
  await walk.settle();
  await walk.press(BUTTONS.baseline);
  await walk.press(BUTTONS.backToTally);
  await walk.isOn(PAGES.table);
  await expect(page.getByText("Stop: nothing more to eat or drink now.")).toBeVisible();
  await expect(walk.button(BUTTONS.undoOf("choking"))).toBeVisible();
});

test("a second time has a clock of its own, and a mistake takes back the newest only", async ({ page }) => {
  const walk = await choked(page);
  await walk.press(BUTTONS.baseline);
  await walk.press(BUTTONS.decision);
  await walk.wait(60_000);
  await walk.press(BUTTONS.choking);
  await expect(timer(page)).toHaveText("0:00");
  await walk.settle();
  await walk.press(BUTTONS.helpCalled);
  await walk.press(BUTTONS.baseline);
  await walk.press(BUTTONS.decision);
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
  await walk.decided(VERDICTS.stop);
});

test("a slip is one for two minutes, and none once help was called", async ({ page }) => {
  const walk = await atWater(page);
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

test("one whose end nobody marked: what leads there opens it, and a new one is a press of its own", async ({ page }) => {
  const walk = await atWater(page);
  await walk.press(BUTTONS.choking);
  await walk.settle();
  await expect(walk.button(BUTTONS.newChoking)).toHaveCount(0);
  await walk.press(BUTTONS.helpCalled);
  await walk.press(BUTTONS.decision);
  await page.clock.fastForward(600_000);
  await walk.press(BUTTONS.backToChoking);
  await expect(walk.button(BUTTONS.baseline)).toBeVisible();
  await expect(walk.button(BUTTONS.mistake)).toHaveCount(0);
  await walk.press(BUTTONS.newChoking);
  await walk.settle();
  // The clock is the new one's, and so is what is noted of it.
  await expect(walk.button(BUTTONS.newChoking)).toHaveCount(0);
  await expect(walk.button(BUTTONS.helpCalled)).toBeVisible();
  await walk.press(BUTTONS.baseline);
  await walk.press(BUTTONS.decision);
  await expect(walk.main.getByText(SAYS.doctorNow)).toBeVisible();
});

test("while it runs every page has its time and the way back, above pads and signs, and choking stands in one place", async ({ page }) => {
  const walk = await atWater(page);
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
  // Left without a word, it is where the visit goes on.
  await walk.press(BUTTONS.goOn);
  await walk.isOn(PAGES.choking);
  await walk.press(BUTTONS.back);
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
  const walk = await Walk.at(page, visit().gateHolds({ awake: "no" }), AT.gateResult);
  await expect(page.getByText(Object.values(GATE.block)[0])).toBeVisible();
  await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.addTo);
  await walk.press(BUTTONS.sixSigns);
  await expect(walk.button(BUTTONS.choking)).toHaveCount(1);
});
