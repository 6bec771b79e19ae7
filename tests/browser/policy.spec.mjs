// The local policy: a file in, a file out, what is in force, and every bad file.

import fs from "node:fs";
import { visit } from "./journal.mjs";
import { appStarted, expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { AT, BUTTONS, FIELDS, FOLDS, PAGES, SAYS, Walk } from "./walk.mjs";

const KEPT = "penlight.policy";
const NAME = "Ward 4, spring";
const good = (settings = { "gate.no-suction-closes": true }) => ({ penlight_policy: 1, name: NAME, settings });

test.beforeEach(async ({ context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
});

/** Home to the page of the policy. */
async function toPolicy(walk) {
  await walk.press(BUTTONS.settings);
  await walk.press(BUTTONS.policy);
  await walk.isOn(PAGES.policy);
}

const field = (walk) => walk.page.getByLabel(FIELDS.policyFile);

/** Takes a file in: a text, or what is to be written as JSON. */
function takeIn(walk, what) {
  const text = typeof what === "string" ? what : JSON.stringify(what);
  return field(walk).setInputFiles({ name: "ours.json", mimeType: "application/json", buffer: Buffer.from(text) });
}

const inForce = (walk, name) => expect(walk.main.getByText(`In force: ${name}.`)).toBeVisible();
const offered = (walk) => walk.main.locator("section", { hasText: SAYS.wouldChange });

/** The file is refused with this one message beside the field; what was in force stays. */
async function refused(walk, words, before) {
  const message = walk.page.locator("#policy-problem");
  await expect(message).toHaveText(`${words} ${SAYS.policyStays}`);
  await expect(field(walk)).toHaveAccessibleDescription(`${words} ${SAYS.policyStays}`);
  const [at, said] = [await field(walk).boundingBox(), await message.boundingBox()];
  expect(said.y - (at.y + at.height), "beside the field").toBeLessThan(40);
  await expect(offered(walk)).toBeHidden();
  await inForce(walk, before);
}

test("out, changed, in: kept after a reload, in force for a new visit and named in its handover", async ({ page }) => {
  const walk = await Walk.start(page);
  await toPolicy(walk);
  await inForce(walk, "Penlight default 1");
  const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.savePolicy)]);
  expect(download.suggestedFilename()).toMatch(/^penlight-policy-\d+\.json$/);
  const file = JSON.parse(fs.readFileSync(await download.path(), "utf8"));
  expect(file).toMatchObject({ penlight_policy: 1, name: "Penlight default 1" });
  const settings = Object.keys(file.settings);
  expect(settings.length).toBeGreaterThan(20);
  // Each stands on the page, with its value, where it comes from and why.
  for (const key of settings) {
    await expect(walk.main.locator("li", { hasText: `In the file: ${key}, ` })).toHaveCount(1);
  }

  // What no file changes is listed too, with why.
  await walk.unfold(FOLDS.fixed);
  const fixed = walk.main.locator("details li", { hasText: "Fixed: " });
  expect(await fixed.count()).toBeGreaterThan(60);
  await expect(fixed.filter({ hasText: "best-interest route" })).toHaveCount(1);

  file.name = NAME;
  file.settings["gate.no-suction-closes"] = true;
  file.settings["gate.drowsy-wait"] = 45;
  await takeIn(walk, JSON.stringify(file, null, 2));
  await expect(offered(walk).locator("li")).toHaveText([
    `Name: ${NAME}Now Penlight default 1`,
    "No suction within reach closes the gate: onNow off",
    "Wait before asking again, when tired or drowsy: 45 minutesNow 30 minutes",
  ]);
  // Shown is not in force.
  await inForce(walk, "Penlight default 1");
  await walk.press(BUTTONS.usePolicy);
  await expect(page.getByText(SAYS.policyUsed)).toBeVisible();
  await expect(offered(walk)).toBeHidden();
  await inForce(walk, NAME);

  await page.reload();
  await appStarted(page);
  await walk.isOn(PAGES.policy);
  await expect(walk.main.getByText(`In force: ${NAME}. 2 of ${settings.length} settings differ`)).toBeVisible();
  const changed = walk.main.locator("li", { hasText: "Differs from Penlight's default: " });
  await expect(changed).toHaveCount(2);
  await expect(changed.first()).toContainText("closes the gate: on");

  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.back);
  await walk.newVisit();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.decisionSoFar);
  await walk.toHandover();
  await walk.fullNote();
  await expect(walk.text).toContainText(`Policy: ${NAME}.`);
  const [{ event }] = await storedEvents(page);
  expect(event.Opened.policy).toMatchObject({ name: NAME, suction_blocks: true, drowsy_wait: 45, breaths_low: 8 });
});

test("a visit that has begun keeps its policy; back to the default", async ({ page }) => {
  const walk = await Walk.at(page, visit().gateHolds({ suction: "none" }), AT.gateResult);
  await page.goto("./#policy");
  await walk.isOn(PAGES.policy);
  await takeIn(walk, good());
  await walk.press(BUTTONS.usePolicy);
  await inForce(walk, NAME);
  await page.goBack();
  await expect(walk.main.getByText("With care: you decide")).toBeVisible();
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.endHere);
  await walk.press(BUTTONS.breakOff);
  await walk.toHandover();
  await walk.fullNote();
  await expect(walk.text).toContainText("Policy: Penlight default 1.");

  await page.goto("./#policy");
  await walk.isOn(PAGES.policy);
  await walk.press(BUTTONS.defaultPolicy);
  await expect(offered(walk).locator("li")).toHaveCount(2);
  await walk.press(BUTTONS.leavePolicy);
  await expect(offered(walk)).toBeHidden();
  await inForce(walk, NAME);
  await walk.press(BUTTONS.defaultPolicy);
  await walk.press(BUTTONS.usePolicy);
  await inForce(walk, "Penlight default 1");
  expect(await page.evaluate((key) => localStorage.getItem(key), KEPT)).toBeNull();
  await walk.press(BUTTONS.defaultPolicy);
  await expect(page.getByText(SAYS.nothingChanges)).toBeVisible();
});

test("bad files: one message beside the field that names the place, and the policy before it stays", async ({ page }) => {
  const walk = await Walk.start(page);
  await toPolicy(walk);
  await takeIn(walk, good());
  await walk.press(BUTTONS.usePolicy);
  await inForce(walk, NAME);
  const kept = () => page.evaluate((key) => JSON.parse(localStorage.getItem(key)), KEPT);
  for (const [file, words] of [
    ["", "The file ends too soon, in line 1 at column 1: it is not complete."],
    ["%PDF-1.7", "Line 1, column 1 can't be read: it is not JSON as a policy file is."],
    [
      good({ "breathing.block-at-or-above": 30 }),
      '"breathing.block-at-or-above" in "settings": allowed is a whole number from 22 to 25 (breaths a minute).',
    ],
    [" ".repeat(10_000_000), "The file is too large: a policy file has at most 64 KB."],
  ]) {
    await takeIn(walk, file);
    await refused(walk, words, NAME);
    expect(await kept()).toMatchObject({ name: NAME, settings: { "gate.no-suction-closes": true } });
  }
  // A file of 10 MB is not read at all; one that went away meanwhile is named so.
  await page.evaluate(() => {
    Blob.prototype.text = () => Promise.reject(new DOMException("it is gone", "NotFoundError"));
  });
  await takeIn(walk, "");
  await expect(page.locator("#policy-problem")).toHaveText("The file could not be opened (NotFoundError: it is gone).");
  await takeIn(walk, " ".repeat(10_000_000));
  await refused(walk, "The file is too large: a policy file has at most 64 KB.", NAME);
  // A good one can be taken in at once.
  await page.reload();
  await appStarted(page);
  await inForce(walk, NAME);
  await takeIn(walk, good({ "sips.first": 2 }));
  await expect(page.locator("#policy-problem")).toBeEmpty();
  await expect(offered(walk)).toBeVisible();
});

test("a phone that keeps nothing: it says so, and the policy before stays", async ({ page }) => {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  const walk = await Walk.start(page);
  await toPolicy(walk);
  await takeIn(walk, good());
  await walk.press(BUTTONS.usePolicy);
  await expect(page.locator("#policy-problem")).toHaveText(
    "This phone keeps nothing for Penlight, so the policy in force stays.",
  );
  await inForce(walk, "Penlight default 1");
});

test("a kept policy that can't be used: the default is in force, and home says so until pressed away", async ({ page }) => {
  const walk = await Walk.start(page);
  const kept = JSON.stringify(good({ "gate.drowsy-wait": 600 }));
  await page.evaluate(([key, text]) => localStorage.setItem(key, text), [KEPT, kept]);
  await page.reload();
  await appStarted(page);
  const banner = page.locator(".banner", { hasText: SAYS.policyLost });
  await expect(banner).toContainText('"gate.drowsy-wait" in "settings": allowed is a whole number from 15 to 60 (minutes).');
  await expect(banner).toContainText("Penlight's default is in force.");
  // It is said on the first page, and again until it was read.
  await walk.press(BUTTONS.swallowScreen);
  await expect(walk.main.getByText("Local policy: Penlight default 1")).toBeVisible();
  await expect(banner).toHaveCount(0);
  await page.goto("./");
  await appStarted(page);
  await page.reload();
  await appStarted(page);
  await walk.press(BUTTONS.withDefault);
  await expect(banner).toHaveCount(0);
  await page.reload();
  await appStarted(page);
  await walk.isOn(PAGES.home);
  await expect(banner).toHaveCount(0);
});

test("the field is reached and opened by keyboard, and large enough; the way from Sources", async ({ page }) => {
  const walk = await Walk.start(page);
  // Asked for long before: a chooser that opens before the browser was told is never seen.
  const choosing = page.waitForEvent("filechooser");
  await walk.press(BUTTONS.sources);
  await walk.press(BUTTONS.policy);
  await walk.isOn(PAGES.policy);
  await page.getByRole("heading", { level: 1 }).focus();
  for (let i = 0; i < 3 && !(await field(walk).evaluate((e) => e === document.activeElement)); i += 1) {
    await page.keyboard.press("Tab");
  }
  await expect(field(walk)).toBeFocused();
  await page.keyboard.press("Enter");
  const chooser = await choosing;
  expect(chooser.isMultiple()).toBe(false);
  expect((await field(walk).boundingBox()).height).toBeGreaterThanOrEqual(48);
});
