// The text and how it leaves: by which ways, not before it is said what to do, and what is stored
// of it. What it says is a matter of the native tests.

import fs from "node:fs";
import { visit } from "./journal.mjs";
import { expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ACTIONS, ASKED, AT, BUTTONS, FIELDS, FOLDS, PAGES, SAYS, TEXT, VERDICTS, Walk } from "./walk.mjs";

test.beforeEach(async ({ context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
});

const few = () => visit().readyForWater({ dry: 2 });

/** A refer, on its way from the decision to the handover. */
async function referred(page) {
  const walk = await Walk.at(page, few(), AT.decision);
  await walk.decided(VERDICTS.refer);
  await walk.toHandover();
  return walk;
}

const issued = async (page) => (await storedEvents(page)).filter(({ event }) => event.Issued);
const clipboard = (page) => page.evaluate(() => navigator.clipboard.readText());

test("it does not leave by any way before somebody pressed what to do; then by all three, as it stands", async ({ page }) => {
  await page.addInitScript(() => {
    window.shared = [];
    navigator.share = async (data) => void window.shared.push(data.text);
  });
  const walk = await referred(page);
  await page.evaluate(() => navigator.clipboard.writeText("before"));
  let downloads = 0;
  page.on("download", () => (downloads += 1));
  const refused = async (ways) => {
    for (const way of ways) {
      await walk.press(way);
      const message = page.getByRole("alert").filter({ hasText: SAYS.pressFirst });
      await expect(message).toBeVisible();
      // Beside the button, not somewhere above the fold.
      const [said, button] = [await message.boundingBox(), await walk.button(way).boundingBox()];
      expect(Math.abs(button.y - said.y)).toBeLessThan(260);
    }
  };
  await refused([BUTTONS.copy, BUTTONS.share, BUTTONS.saveText]);
  await walk.fullNote();
  await refused([BUTTONS.copy, BUTTONS.saveText]);
  expect(await clipboard(page)).toBe("before");
  expect(await page.evaluate(() => window.shared)).toEqual([]);
  expect(downloads).toBe(0);
  await walk.saved();
  expect(await issued(page)).toEqual([]);

  await walk.press(ACTIONS.nothingByMouth);
  await expect(page.getByText(SAYS.pressFirst)).toBeHidden();
  const full = await walk.copy();
  expect(full).toBe(await walk.text.textContent());
  expect(full).toContain(TEXT.nothingByMouth);
  await walk.press(BUTTONS.forNurse);
  await expect(walk.text).not.toContainText("FULL NOTE");
  await walk.press(BUTTONS.copy);
  await expect.poll(() => clipboard(page)).not.toBe(full);
  const copied = await clipboard(page);
  expect(copied).toBe(await walk.text.textContent());
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
  const out = (await issued(page)).map(({ event }) => event.Issued);
  expect(out.map(({ route, which, text }) => [route, which, text])).toEqual([
    ["Copied", "FullNote", full],
    ["Copied", undefined, copied],
    ["Shared", undefined, copied],
    ["Saved", undefined, copied],
  ]);
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

test("a full note is saved under a name of its own", async ({ page }) => {
  const walk = await referred(page);
  await walk.press(ACTIONS.nothingByMouth);
  await walk.fullNote();
  const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveText)]);
  expect(download.suggestedFilename()).toMatch(/full-note/);
});

test("a plan that goes on needs its reason; levels, whom and by when stand in the text at once", async ({ page }) => {
  const walk = await referred(page);
  await expect(walk.text).not.toContainText("level");
  for (const [action, message] of [
    [ACTIONS.keepPlan, SAYS.sayWhyKept],
    [ACTIONS.acknowledgedRisk, SAYS.sayWhyRisk],
  ]) {
    await walk.press(action);
    await walk.press(BUTTONS.copy);
    await expect(page.getByText(message)).toBeVisible();
  }
  expect(await issued(page)).toEqual([]);
  await walk.answer(ASKED.because, "The doctor decided so");
  await walk.unfold(FOLDS.toWhom);
  await walk.answer("To", "The nurse in charge");
  await walk.answer("By", "Within 24 hours");
  await walk.unfold(FOLDS.levels);
  await walk.answer("Drinks", "2 Mildly thick");
  const text = await walk.copy();
  expect(text).toMatch(/^REFER to the nurse in charge within 24 hours\./);
  expect(text).toContain(TEXT.acknowledgedRisk);
  expect(text).toContain(TEXT.level);
});

test("a change after it left makes a corrected one; none does not", async ({ page }) => {
  const walk = await referred(page);
  await walk.press(ACTIONS.nothingByMouth);
  const first = await walk.copy();
  await walk.wait(5 * 60_000);
  expect(await walk.copy()).toMatch(/^REFER/);
  await page.clock.fastForward(15 * 60_000);
  const times = (await issued(page)).map(({ event }) => event.Issued.clock);
  await walk.press(ACTIONS.keepPlan);
  await walk.answer(ASKED.because, "Comfort comes first");
  await page.evaluate(() => navigator.clipboard.writeText("before"));
  await walk.press(BUTTONS.copy);
  await expect.poll(() => clipboard(page)).not.toBe("before");
  const corrected = await clipboard(page);
  await walk.saved();
  const now = (await issued(page)).at(-1).event.Issued.clock;
  expect(now).not.toBe(times.at(-1));
  expect(corrected.split("\n")[0]).toBe(`CORRECTED ${now}, replaces ${times.at(-1)}.`);
  // The earlier texts stand as they left.
  expect((await issued(page)).map(({ event }) => event.Issued.text)[0]).toBe(first);
});

test("whom it was told, whether it was read back, and who is to be told again once it no longer stands", async ({ page }) => {
  const walk = await Walk.at(page, visit().readyForWater().water(), AT.water);
  await walk.toDecision(VERDICTS.pass);
  await walk.toHandover();
  await expect(walk.button(/^Told /)).toHaveCount(0);
  await walk.copy();
  await walk.press("Told the nurse in charge");
  await walk.press("Told the doctor, and read back");
  await expect(page.getByRole("listitem").filter({ hasText: /^The nurse in charge at \d\d:\d\d: the text of \d\d:\d\d$/ })).toBeVisible();
  await expect(page.getByRole("listitem").filter({ hasText: /^The doctor.* at \d\d:\d\d, read back: the text of \d\d:\d\d$/ })).toBeVisible();
  await walk.saved();
  const told = (await storedEvents(page)).flatMap(({ event }) => event.Told ?? []);
  expect(told.map(({ whom, read_back }) => [whom.replace(/^the doctor.*/, "the doctor"), read_back])).toEqual([
    ["the nurse in charge", false],
    ["the doctor", true],
  ]);
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
  await walk.press("Told the doctor, and read back");
  await expect(old).toHaveCount(0);
});

test("the decision, its reasons and the versions are in the journal once the handover is opened", async ({ page }) => {
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

test("words still being typed are kept when the page is left by the phone's own back", async ({ page }) => {
  const walk = await Walk.at(page, visit().readyForWater().water(), AT.decision);
  await walk.decided(VERDICTS.pass);
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
