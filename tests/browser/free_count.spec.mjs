// Just count something: stopwatch, window, any length, attached to a visit afterwards.

import { expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ASKED, BUTTONS, FIELDS, FOLDS, PAGES, Walk } from "./walk.mjs";

async function freeCount(page) {
  const walk = await Walk.start(page);
  await walk.press(BUTTONS.count);
  await walk.isOn(PAGES.count);
  return walk;
}

test("a stopwatch: time, taps and rate", async ({ page }) => {
  const walk = await freeCount(page);
  await walk.startPad();
  await walk.count(5, 500);
  await expect(page.getByRole("timer")).toContainText("2.5 s");
  await walk.wait(7_500);
  await walk.press(BUTTONS.stopCount);
  await expect(page.getByText("10.0 s, 5 taps")).toBeVisible();
  await expect(page.getByText("2.00 a second from first to last tap (120 a minute)")).toBeVisible();
  await walk.settle();
  await walk.press(BUTTONS.countAgain);
  await expect(walk.pad).toHaveText("Start");
});

test("a stopwatch of zero says so", async ({ page }) => {
  const walk = await freeCount(page);
  await walk.startPad();
  await walk.press(BUTTONS.stopCount);
  await expect(page.getByText("Start and stop are the same moment")).toBeVisible();
});

test("a window of 15 s ends by itself", async ({ page }) => {
  const walk = await freeCount(page);
  await walk.answer(ASKED.howLong, "15 s");
  await expect(page.getByText("15 seconds from the start")).toBeVisible();
  await walk.startPad();
  await walk.count(3);
  await expect(page.getByRole("timer")).toContainText("12 s");
  await walk.wait(12_000);
  await walk.settle();
  await expect(page.getByText("3 taps in 15 seconds")).toBeVisible();
  await expect(walk.pad).toHaveCount(0);
});

test("a length that was typed", async ({ page }) => {
  const walk = await freeCount(page);
  await walk.unfold(FOLDS.anotherLength);
  await walk.field(FIELDS.seconds).fill("20");
  await walk.startPad();
  await walk.count(2);
  await walk.wait(18_000);
  await expect(page.getByText("2 taps in 20 seconds")).toBeVisible();
});

for (const [typed, words] of [
  ["0", "Between 1 and 3600 s."],
  ["5000", "Between 1 and 3600 s."],
  ["-5", "Between 1 and 3600 s."],
  ["abc", "This is a number, like 15."],
]) {
  test(`a length of ${typed} is refused beside the field`, async ({ page }) => {
    const walk = await freeCount(page);
    await walk.unfold(FOLDS.anotherLength);
    const field = walk.field(FIELDS.seconds);
    await field.fill(typed);
    await expect(field).toHaveAttribute("aria-invalid", "true");
    await expect(field).toHaveAccessibleDescription(words);
    await expect(page.getByText(words)).toBeVisible();
    await expect(field).toHaveValue(typed);
    await field.fill("12");
    await expect(field).toHaveAttribute("aria-invalid", "false");
    await expect(page.getByText(words)).toBeHidden();
    await expect(page.getByText("12 seconds from the start")).toBeVisible();
  });
}

test("attached to a visit afterwards, it shows there, and the count says where it went", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.press(BUTTONS.swallowScreen);
  await walk.field(FIELDS.label).fill("Window side");
  await walk.press(BUTTONS.begin);
  await walk.isOn(PAGES.gates[0]);
  await walk.saved();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.count);
  await walk.isOn(PAGES.count);
  await walk.startPad();
  await walk.count(4);
  await walk.wait(1_000);
  await walk.press(BUTTONS.stopCount);
  await walk.settle();
  await walk.attachTo("Window side");
  await expect(page.getByRole("heading", { name: "Attached counts" })).toBeVisible();
  await expect(page.getByText("5.0 s, 4 taps")).toBeVisible();
  await walk.saved();
  const events = await storedEvents(page);
  const copy = events.map(({ event }) => event.Attached).find(Boolean);
  expect(copy.marks).toHaveLength(6);
  const visit = events.find(({ event }) => event.Attached).visit;
  expect(events.find(({ event }) => event.AttachedTo)).toMatchObject({ visit: copy.from, event: { AttachedTo: visit } });
  await page.reload();
  await expect(page.getByText("5.0 s, 4 taps")).toBeVisible();
});

test("without a visit it is kept, and found again", async ({ page }) => {
  const walk = await freeCount(page);
  await walk.startPad();
  await walk.count(2);
  await walk.wait(1_000);
  await walk.press(BUTTONS.stopCount);
  await walk.settle();
  await expect(page.getByText("There is no visit on this phone yet. The count is kept.")).toBeVisible();
  await walk.saved();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.allVisits);
  await walk.isOn(PAGES.history);
  await walk.press(/^Count /);
  await expect(page.getByText("3.0 s, 2 taps")).toBeVisible();
});
