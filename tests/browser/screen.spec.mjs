// The whole job: installed, offline, from the first page to the text in the clipboard.

import { appStarted, controlledByServiceWorker, expect, openApp, test } from "./support.mjs";
import { BUTTONS, stopTime, TEXT, Walk } from "./walk.mjs";

const MOST_PRESSES = 20;
const MOST_CHARACTERS = 1_200;

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
  await page.addInitScript(() => {
    window.typed = 0;
    addEventListener("input", () => (window.typed += 1), true);
    addEventListener("keydown", () => (window.typed += 1), true);
  });
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
  expect(await page.evaluate(() => window.typed), "keys and typing").toBe(0);
  expect(text).toMatch(TEXT.pass);
  expect(text).toContain("4 dry swallows in 30 seconds (3 or more expected)");
  expect(text).toContain("breathing 16 a minute (counted for 60 seconds)");
  expect(text).toContain("90 mL of water drunk in one go");
  expect(text).toContain("Policy: ");
  expect(text.length).toBeLessThan(MOST_CHARACTERS);
  await expect(walk.text).toHaveText(text);
  await walk.saved();
});
