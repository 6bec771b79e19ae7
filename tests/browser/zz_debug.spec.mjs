import { test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { SIGNS, Walk, BUTTONS } from "./walk.mjs";
test("debug", async ({ page }) => {
  await page.addInitScript(() => {
    window.log = [];
    for (const t of ["pointerdown", "touchstart", "pointerup", "touchend", "click"])
      addEventListener(t, (e) => window.log.push([t, e.target.textContent?.slice(0, 30), e.detail, e.defaultPrevented, e.target.isConnected, e.pointerType]), true);
  });
  const walk = await Walk.start(page);
  await walk.toWater();
  await walk.drink();
  await page.evaluate(() => (window.log = []));
  await walk.press(walk.sign(SIGNS.choke));
  await page.waitForTimeout(500);
  console.log(JSON.stringify(await page.evaluate(() => window.log), null, 0));
  console.log(await page.locator("h1").textContent());
  console.log(JSON.stringify((await storedEvents(page)).slice(-5).map((e) => e.body)));
});
