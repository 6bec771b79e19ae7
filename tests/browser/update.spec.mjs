// A new version: offered on the first page, never taken while something runs, whole once taken.

import fs from "node:fs";
import { laterRelease } from "./later.mjs";
import { appStarted, controlledByServiceWorker, expect, openApp, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { BUTTONS, PAGES, SAYS, Walk } from "./walk.mjs";

/** The browser looks for a new version, as it does by itself from time to time. */
async function lookForUpdate(page) {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update();
    const worker = registration.installing ?? registration.waiting;
    while (worker.state === "installing") {
      await new Promise((resolve) => worker.addEventListener("statechange", resolve, { once: true }));
    }
  });
}

test("a new version waits for a word on the first page, and a running count goes before it", async ({
  page,
  ownServer,
}) => {
  const old = await ownServer({ base: "/a/" });
  await openApp(page, old.url);
  await controlledByServiceWorker(page);
  const walk = new Walk(page, { real: true });
  const offer = page.getByText(SAYS.newVersion);
  await walk.newVisit();
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.count);
  await walk.isOn(PAGES.count);
  await walk.startPad();
  await walk.pad.tap();
  await old.stop();
  const dir = laterRelease();
  await ownServer({ dir, base: "/a/", port: old.port });
  await lookForUpdate(page);

  // Not in the middle of a count ...
  await expect(offer).toHaveCount(0);
  // ... nor on the first page while one runs ...
  await walk.press(BUTTONS.back);
  await walk.isOn(PAGES.home);
  await expect(walk.button(BUTTONS.goOnVisit)).toContainText("running");
  await expect(offer).toHaveCount(0);
  await walk.press(BUTTONS.goOnVisit);
  await walk.counted(1);
  await walk.press(BUTTONS.stopCount);
  await walk.settle();
  await expect(offer).toHaveCount(0);
  // ... and not by itself.
  await walk.saved();
  await page.reload();
  await appStarted(page);
  await expect(page).toHaveTitle("Penlight");
  const before = await storedEvents(page);
  expect(before.length).toBeGreaterThan(3);

  await walk.press(BUTTONS.back);
  await walk.isOn(PAGES.home);
  await expect(offer).toBeVisible();
  await Promise.all([page.waitForEvent("load"), walk.press(BUTTONS.useUpdate)]);
  await appStarted(page);
  await expect(page).toHaveTitle("Penlight later");
  await expect(offer).toHaveCount(0);
  expect(await storedEvents(page)).toEqual(before);
  fs.rmSync(dir, { recursive: true });
});

test("a server that is gone, or has nothing new, changes nothing", async ({ page, ownServer }) => {
  const server = await ownServer({ base: "/a/" });
  await openApp(page, server.url);
  await controlledByServiceWorker(page);
  await server.stop();
  await page.reload();
  await appStarted(page);
  await expect(page.getByText(SAYS.newVersion)).toHaveCount(0);
  await ownServer({ base: "/a/", port: server.port });
  await page.reload();
  await appStarted(page);
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await expect(page.getByText(SAYS.newVersion)).toHaveCount(0);
});
