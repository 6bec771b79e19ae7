// The whole screen in WebKit, the only engine of iPhones: by touch, in real time, without a network.
//
// Debian's WebKitGTK is not Safari, and a desk is not a phone: this finds what the engine can't do,
// not what iOS does to an app. ./scripts/test --webkit runs it; it takes some four minutes.

import { setTimeout as sleep } from "node:timers/promises";
import { expect, test } from "@playwright/test";
import { startServer } from "./support.mjs";
import { ASKED, BUTTONS, FOLDS, PAGES, SAYS, TEXT } from "./walk.mjs";
import { WebKit } from "./webdriver.mjs";

test.skip(!process.env.PENLIGHT_WEBKIT, "only with ./scripts/test --webkit");
test.setTimeout(6 * 60_000);

let server;
let webkit;
test.beforeEach(async () => {
  server = await startServer({ base: "/wards/penlight/" });
  webkit = await WebKit.start();
});
test.afterEach(async () => {
  await webkit?.stop();
  await server?.stop();
});

/** Presses the pad `n` times, `every` ms apart. */
async function count(n, every) {
  for (let i = 0; i < n; i += 1) {
    await sleep(every);
    await webkit.pad();
  }
}

test("stored, offline, a cup of water over a restart, to the text for the nurse", async () => {
  await webkit.open(server.url);
  await webkit.until("stored", async () => (await webkit.says("#app")).includes("Stored on this phone"));
  await server.stop();
  await webkit.open();

  await webkit.press(BUTTONS.swallowScreen);
  await webkit.isOn(PAGES.newVisit);
  await webkit.type("#label", "Bed by the window");
  await webkit.press(BUTTONS.adult);
  await webkit.press(BUTTONS.begin);
  for (const heading of PAGES.gates) {
    await webkit.isOn(heading);
    await webkit.press(BUTTONS.groupHolds);
  }

  // A rate that is typed stays, left or not, when the app ends.
  await webkit.isOn(PAGES.breaths);
  await webkit.press(new RegExp(`^${FOLDS.readings}`));
  await webkit.type("main input", "16");
  await webkit.press(BUTTONS.next);
  await webkit.isOn(PAGES.dry);
  await webkit.open();
  await webkit.isOn(PAGES.dry);

  const before = await webkit.js("return document.querySelector('#pad').getBoundingClientRect().bottom - innerHeight");
  await webkit.pad();
  await count(4, 1_500);
  await webkit.press(BUTTONS.undo);
  expect(await webkit.says("#pad .count")).toBe("3");
  await count(1, 500);
  expect(await webkit.says("#pad .count")).toBe("4");
  const during = await webkit.js("return document.querySelector('#pad').getBoundingClientRect().bottom - innerHeight");
  expect(before, "the pad ends within the screen").toBeLessThanOrEqual(0);
  expect(Math.abs(during - before), "and stays").toBeLessThan(1);
  await webkit.until("30 seconds", async () => (await webkit.says()).includes("4 dry swallows"), 40_000);
  await webkit.takesPresses();
  await webkit.press(BUTTONS.next);

  await webkit.isOn(PAGES.water);
  await webkit.press(ASKED.clear, { group: ASKED.voiceBefore });
  await webkit.pad();
  await count(3, 1_500);
  await webkit.press(BUTTONS.lastSwallow);
  await webkit.takesPresses();
  await webkit.press(ASKED.oneGo, { group: ASKED.cup });
  await webkit.open();
  await webkit.isOn(PAGES.water);
  expect(await webkit.says()).toContain("3 swallows");
  await webkit.until("60 seconds", async () => (await webkit.says()).includes("Voice after: say"), 70_000);
  await webkit.takesPresses();
  expect(await webkit.says()).toContain(SAYS.restarted);
  await webkit.press(ASKED.clear, { group: "Voice after" });
  await webkit.press(BUTTONS.next);

  await webkit.isOn(PAGES.decision);
  await webkit.press(BUTTONS.handover);
  await webkit.isOn(PAGES.handover);
  const text = await webkit.says("pre.handover");
  expect(text).toMatch(TEXT.pass);
  // What was suggested as a label was written over.
  expect(text).toContain("Identify: Bed by the window, adult.");
  expect(text).toContain("breathing 16 a minute");
  expect(text).toContain("4 dry swallows in 30 seconds (3 or more expected)");
  expect(text).toContain("90 mL of water drunk in one go");
  expect(text).not.toContain("..");
  await webkit.press(BUTTONS.copy);
  await webkit.until("copied", async () => (await webkit.says("#app")).includes("Copied at"));
  expect(await webkit.wrong()).toEqual([]);
});
