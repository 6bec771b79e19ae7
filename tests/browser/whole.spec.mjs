// The whole job, press by press: the all-clear screen offline from the first page to the text in
// the clipboard, the examination, the sips. How many presses it takes, and what it stores, which is
// what journal.mjs writes for all other tests.

import { visit } from "./journal.mjs";
import { appStarted, controlledByServiceWorker, expect, openApp, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ASKED, AT, BUTTONS, ORAL, PAGES, stopTime, TEXT, Walk } from "./walk.mjs";

const MOST_PRESSES = 20;
const MOST_CHARACTERS = 1_200;

/** Keys and typing are counted as well as presses. */
async function countTyping(page) {
  await page.addInitScript(() => {
    window.typed = 0;
    addEventListener("input", () => (window.typed += 1), true);
    addEventListener("keydown", () => (window.typed += 1), true);
  });
}

const typed = (page) => page.evaluate(() => window.typed);

/** Events without their times, and without the versions, which change with every release. */
function shape(events) {
  const plain = JSON.stringify(events, (key, value) => {
    if (key === "versions" || (value && typeof value === "object" && "w" in value)) {
      return undefined;
    }
    return value;
  });
  return JSON.parse(plain);
}

/** A visit made in journal.mjs says what a hand has stored, from its `from`th event on. */
async function sameAsWalked(page, made, from = 0) {
  const walked = (await storedEvents(page)).map(({ event }) => event);
  const written = made.rows(0).events.map(({ body }) => JSON.parse(body));
  expect(shape(written).slice(from)).toEqual(shape(walked).slice(from, written.length));
}

test("the all-clear screen, offline from a cold start, in at most 20 presses and no typing", async ({
  context,
  ownServer,
}) => {
  const server = await ownServer({ base: "/wards/penlight/" });
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const first = await context.newPage();
  await openApp(first, server.url);
  await controlledByServiceWorker(first);
  await first.close();
  await server.stop();

  const page = await context.newPage();
  await stopTime(page);
  await countTyping(page);
  await page.goto(server.url);
  await appStarted(page);

  const walk = new Walk(page);
  await walk.newVisit();
  await walk.gate();
  await walk.breaths(16);
  await walk.press(BUTTONS.next);
  await walk.dry(4);
  await walk.press(BUTTONS.next);
  await walk.drink();
  await walk.finishWater();
  await walk.toDecision(/No sign seen on this screen/);
  await walk.toHandover();
  const text = await walk.copy();

  console.log(`\nall-clear screen: ${walk.presses} presses, ${text.length} characters of text`);
  expect(walk.presses).toBeLessThanOrEqual(MOST_PRESSES);
  expect(await typed(page), "keys and typing").toBe(0);
  expect(text).toMatch(TEXT.pass);
  expect(text).toContain("4 dry swallows in 30 seconds (3 or more expected)");
  expect(text).toContain("breathing 16 a minute (counted for 60 seconds)");
  expect(text).toContain("90 mL of water drunk in one go");
  expect(text).toContain("\nScreened at ");
  expect(text.length).toBeLessThan(MOST_CHARACTERS);
  await expect(walk.text).toHaveText(text);
  await walk.saved();
  await sameAsWalked(page, visit().readyForWater().water());
});

test("a whole unremarkable examination: at most 20 presses from Home, and no typing", async ({ page }) => {
  await countTyping(page);
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  for (const at of ORAL.pages.keys()) {
    await walk.region(at);
  }
  await expect(walk.pad).toBeVisible();
  console.log(`\nunremarkable examination: ${walk.presses} presses from Home`);
  expect(walk.presses).toBeLessThanOrEqual(MOST_PRESSES);
  expect(await typed(page), "keys and typing").toBe(0);
  await walk.saved();
  await sameAsWalked(page, visit({ screen: "OralMotor" }).weakness().examined());
});

test("the six small sips, all clear: presses and waiting", async ({ page }) => {
  const ready = () => visit({ screen: "Stepped" }).readyForWater();
  const walk = await Walk.at(page, ready(), AT.sips);
  const from = await page.evaluate(() => Date.now());
  await walk.clearSips();
  const ms = (await page.evaluate(() => Date.now())) - from;
  console.log(`\nsips: ${walk.presses} presses, ${ms / 1000} s`);
  expect(walk.presses).toBeLessThanOrEqual(21);
  // Six minutes of watching, and no more than seconds beside them.
  expect(ms).toBeLessThan(6 * 62_500);
  await walk.saved();
  await sameAsWalked(page, ready().clearSips(), ready().written.length);
});

test("own trials: what a hand stores", async ({ page }) => {
  const ready = () => visit({ screen: "OwnTrials", slp: true }).gateHolds().breaths();
  const walk = await Walk.at(page, ready(), AT.own);
  await walk.answer(ASKED.whatGiven, "2 Mildly thick");
  await walk.answer(ASKED.howMuch, "5 mL");
  await walk.answer(ASKED.by, "Spoon");
  await walk.press(walk.pad);
  await walk.wait(2_000);
  await walk.press(walk.pad);
  await walk.wait(60_000);
  await walk.settle();
  await walk.saved();
  await sameAsWalked(page, ready().own({ level: "d2", amount: "5", by: "spoon" }), ready().written.length);
});

test("syllables and a held sound: what a hand stores", async ({ page }) => {
  const walk = await Walk.at(page, visit({ screen: "OralMotor" }), AT.pa);
  await walk.syllables(25, 5);
  await walk.straightTo(PAGES.ah);
  await walk.held(12);
  await walk.saved();
  await sameAsWalked(page, visit({ screen: "OralMotor" }).syllables("SyllablePa", 25).held("LongestAh", 12));
});
