// What stays and what goes when a page is drawn anew or left.

import { expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ASKED, BUTTONS, FIELDS, FOLDS, PAGES, SIGNS, Walk } from "./walk.mjs";

const answers = async (page, question) =>
  (await storedEvents(page)).map(({ event }) => event?.Answer).filter((answer) => answer?.question === question);

test("words still being typed belong to the trial they were typed under when the pad begins the next", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toOwn();
  await walk.answer(ASKED.whatGiven, "0 Thin");
  await walk.answer(ASKED.howMuch, "Teaspoon");
  await walk.press(walk.pad);
  await walk.wait(2_000);
  await walk.press(walk.pad);
  await walk.settle();
  await walk.field(FIELDS.remark).pressSequentially("head tilted");
  await walk.press(walk.pad);
  await walk.wait(2_000);
  await walk.press(walk.pad);
  await walk.settle();
  await walk.saved();
  const [remark] = await answers(page, "remark");
  expect(remark).toMatchObject({ trial: 1, answer: { Words: "head tilted" } });
});

test("words still being typed are kept when the page is left by the phone's own back", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toWater();
  await walk.drink();
  await walk.finishWater();
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.decision);
  await walk.toHandover();
  await walk.unfold(FOLDS.levels);
  await walk.field(FIELDS.remark).pressSequentially("glasses on");
  await page.goBack();
  await walk.isOn(PAGES.decision);
  await walk.saved();
  const plans = (await storedEvents(page)).map(({ event }) => event?.Plan).filter(Boolean);
  expect(plans.at(-1).remark).toBe("glasses on");
  await walk.toHandover();
  await expect(walk.text).toContainText("glasses on");
});

test("a page that follows another is announced: its heading takes the focus", async ({ page }) => {
  const walk = await Walk.start(page);
  for (const name of [BUTTONS.settings, BUTTONS.policy]) {
    await walk.press(name);
    await walk.wait(100);
    const heading = page.getByRole("heading", { level: 1, name });
    await expect(heading).toBeFocused();
    await heading.evaluate((h1) => (h1.seen = true));
  }
  await walk.press(BUTTONS.back);
  await walk.wait(100);
  await expect(page.getByRole("heading", { level: 1, name: PAGES.settings })).toBeFocused();
  // A heading of its own, not the one before with other words.
  expect(await page.locator("h1").last().evaluate((h1) => h1.seen)).toBeUndefined();
});

test("where something comes from is never unfolded with nothing in it", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toWater();
  await walk.drink();
  await walk.press(walk.sign(SIGNS.cough));
  await walk.press(walk.fold(FOLDS.why).first());
  const open = page.locator("details.why[open]");
  await expect(open.first()).toContainText("Rule ");
  await walk.press(walk.sign(SIGNS.throatClear));
  for (const fold of await open.all()) {
    await expect(fold).toContainText("Rule ");
  }
});

test("the picture of a tally is drawn", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oneTask(PAGES.table);
  await walk.startPad();
  await walk.settle();
  await walk.press(walk.sign(SIGNS.cough));
  await walk.wait(60_000);
  await walk.press(BUTTONS.endTally);
  await walk.settle();
  await expect(page.locator(".tally-picture svg path").first()).toBeAttached();
  const drawn = await page.locator(".tally-picture svg").boundingBox();
  expect(drawn.width).toBeGreaterThan(200);
});
