// The pad: no tap lost, each at its own time, nothing else happens to the page.

import { expect, openApp, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ASKED, BUTTONS, PAGES, SAYS, TIMES, Walk } from "./walk.mjs";

/** Home to the page of a free count, which has a pad and nothing in its way. */
async function freeCount(walk) {
  await walk.press(BUTTONS.count);
  await walk.isOn(PAGES.count);
}

const taps = async (page) => marksOf(await storedEvents(page), "Tap");

test.describe("two thumbs", () => {
  const PER_SECOND = 15;
  const SECONDS = 10;

  test(`${PER_SECOND} taps a second with a busy main thread: none lost, each with its own time`, async ({ page }) => {
    await openApp(page);
    const walk = new Walk(page, { real: true });
    await freeCount(walk);
    await walk.startPad();
    await walk.saved();
    const box = await walk.pad.boundingBox();
    const thumbs = [0.25, 0.75].map((share, id) => ({
      id,
      x: box.x + box.width * share,
      y: box.y + box.height / 2,
    }));
    await page.evaluate(() => {
      window.pressed = [];
      addEventListener(
        "pointerdown",
        (event) => window.pressed.push({ id: event.pointerId, at: event.timeStamp, late: performance.now() - event.timeStamp }),
        true,
      );
      window.busy = setInterval(() => {
        const until = performance.now() + 40;
        while (performance.now() < until);
      }, 60);
    });
    const devtools = await page.context().newCDPSession(page);
    const sent = [];
    const send = (type, touchPoints) => sent.push(devtools.send("Input.dispatchTouchEvent", { type, touchPoints }));
    const n = PER_SECOND * SECONDS;
    const begun = performance.now();
    for (let i = 0; i < n; i += 1) {
      const now = thumbs[i % 2];
      const other = thumbs[(i + 1) % 2];
      // One thumb comes down while the other is still there, then the other leaves.
      send("touchStart", i === 0 ? [now] : [other, now]);
      if (i > 0) {
        send("touchEnd", [other]);
      }
      const next = begun + ((i + 1) * 1000) / PER_SECOND;
      await new Promise((resolve) => setTimeout(resolve, Math.max(0, next - performance.now())));
    }
    send("touchEnd", []);
    await Promise.all(sent);
    const pressed = await page.evaluate(() => {
      clearInterval(window.busy);
      return window.pressed;
    });

    // The test itself: all arrived as presses of two fingers, and many were handled late.
    expect(pressed).toHaveLength(n);
    expect(pressed.filter(({ late }) => late > 15).length).toBeGreaterThan(n / 10);

    await walk.counted(n);
    await walk.saved();
    const marks = await taps(page);
    expect(marks).toHaveLength(n);
    expect(marks.map(({ at }) => at.m)).toEqual(pressed.map(({ at }) => Math.round(at)));
    await walk.press(BUTTONS.stopCount);
    await expect(page.getByText(new RegExp(`, ${n} taps$`))).toBeVisible();
  });
});

test("a press that the browser calls off still counts", async ({ page }) => {
  const walk = await Walk.start(page);
  await freeCount(walk);
  await walk.startPad();
  const box = await walk.pad.boundingBox();
  const devtools = await page.context().newCDPSession(page);
  const cancelled = page.evaluate(
    () => new Promise((resolve) => addEventListener("pointercancel", () => resolve(true), { once: true })),
  );
  await walk.wait(500);
  await devtools.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x: box.x + 50, y: box.y + 50 }] });
  await devtools.send("Input.dispatchTouchEvent", { type: "touchCancel", touchPoints: [] });
  expect(await cancelled).toBe(true);
  await walk.counted(1);
  await walk.saved();
  expect(await taps(page)).toHaveLength(1);
});

test.describe("keys", () => {
  for (const [where, focus] of [
    ["on the pad", (page) => page.locator("#pad").focus()],
    ["nowhere", (page) => page.evaluate(() => document.activeElement.blur())],
  ]) {
    test(`space, enter and a clicker's key, with the focus ${where}: once each, no repeat`, async ({ page }) => {
      const walk = await Walk.start(page);
      await freeCount(walk);
      await focus(page);
      await page.keyboard.press("Space");
      await expect(walk.pad.locator(".count")).toBeVisible();
      let n = 0;
      await walk.counted(n);
      for (const key of ["Space", "Enter", "PageDown"]) {
        await walk.wait(300);
        await page.keyboard.press(key);
        n += 1;
        await walk.counted(n);
      }
      // Held down, a key repeats.
      await page.keyboard.down("Space");
      await page.keyboard.down("Space");
      await page.keyboard.down("Space");
      await page.keyboard.up("Space");
      n += 1;
      await walk.counted(n);
      await page.keyboard.press("a");
      await walk.counted(n);
      await walk.saved();
      expect(await taps(page)).toHaveLength(n);
      expect(await page.evaluate(() => scrollY)).toBe(0);
    });
  }

  test("on another button they press that button and count nothing", async ({ page }) => {
    const walk = await Walk.start(page);
    await freeCount(walk);
    await walk.startPad();
    await walk.count(2);
    await walk.button(BUTTONS.undo).focus();
    await page.keyboard.press("Space");
    await walk.counted(1);
    await walk.wait(500);
    await walk.button(BUTTONS.stopCount).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByText(/s, 1 tap$/)).toBeVisible();
  });

  test("a screen reader's press, which is a click without a pointer, counts once", async ({ page }) => {
    const walk = await Walk.start(page);
    await freeCount(walk);
    await walk.pad.dispatchEvent("click", { detail: 0 });
    await walk.counted(0);
    await walk.pad.dispatchEvent("click", { detail: 0 });
    await walk.counted(1);
  });
});

test("a tap counts once, though a click follows it", async ({ page }) => {
  const walk = await Walk.start(page);
  await freeCount(walk);
  await walk.pad.click();
  await walk.counted(0);
  await walk.pad.click();
  await walk.pad.tap();
  await walk.counted(2);
});

test("nothing zooms, scrolls or gets selected under the thumb", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 660 });
  await openApp(page);
  const walk = new Walk(page, { real: true });
  await freeCount(walk);
  await walk.startPad();
  // Something to scroll.
  await page.evaluate(() => {
    document.body.style.minHeight = "3000px";
  });
  const devtools = await page.context().newCDPSession(page);
  const drag = async (x, from, to) => {
    await devtools.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y: from }] });
    for (let step = 1; step <= 10; step += 1) {
      const y = from + ((to - from) * step) / 10;
      await devtools.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [{ x, y }] });
    }
    await devtools.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  };
  const stands = () => page.evaluate(() => ({ y: scrollY, scale: visualViewport.scale, chosen: String(getSelection()) }));
  const box = await walk.pad.boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  for (let i = 0; i < 3; i += 1) {
    await page.touchscreen.tap(x, y);
    await page.touchscreen.tap(x, y);
  }
  await drag(x, y, y - 250);
  expect(await stands()).toEqual({ y: 0, scale: 1, chosen: "" });
  await walk.counted(7);
  // The same drag beside the pad scrolls: it would have been seen.
  const heading = await page.getByRole("heading", { name: PAGES.count }).boundingBox();
  await drag(heading.x + 40, heading.y + 300 < box.y ? heading.y + 300 : heading.y + 10, heading.y - 200);
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0);
});

test("undo takes back the newest press, and stands beside the pad", async ({ page }) => {
  const walk = await Walk.start(page);
  await freeCount(walk);
  await expect(walk.button(BUTTONS.undo)).toHaveCount(0);
  await walk.startPad();
  await walk.count(3);
  const [pad, undo] = [await walk.pad.boundingBox(), await walk.button(BUTTONS.undo).boundingBox()];
  expect(undo.y + undo.height <= pad.y || undo.y >= pad.y + pad.height).toBe(true);
  await walk.press(BUTTONS.undo);
  await walk.counted(2);
  await walk.press(BUTTONS.undo);
  await walk.press(BUTTONS.undo);
  await walk.counted(0);
  // The start too.
  await walk.press(BUTTONS.undo);
  await expect(walk.pad).toHaveText("Start");
  // Taken back, not wiped out.
  await walk.saved();
  expect(await taps(page)).toHaveLength(3);
});

test("ready, set, go: what comes before go is kept apart", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.press(BUTTONS.settings);
  await walk.press(page.getByRole("switch", { name: /Ready, set, go/ }));
  await expect(page.getByRole("switch", { name: /Ready, set, go/ })).toHaveAttribute("aria-checked", "true");
  await walk.press(BUTTONS.back);
  await walk.toDry();
  await walk.startPad();
  await expect(walk.pad).toHaveText("Ready");
  await walk.wait(1_500);
  await expect(walk.pad).toHaveText("Set");
  await walk.pad.tap();
  await walk.wait(1_500);
  await walk.counted(1);
  await walk.count(3);
  await walk.wait(TIMES.dry);
  await walk.settle();
  await expect(page.getByText("3 swallows in 30 seconds")).toBeVisible();
  await expect(page.getByText(SAYS.beforeGo)).toHaveText('1 swallow before "go", not counted');
});

test("a press at 30.000 s counts, at 30.001 s it is kept apart", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toDry();
  await walk.startPad();
  await walk.wait(TIMES.dry);
  await walk.pad.tap();
  await walk.wait(1);
  await walk.pad.tap();
  await walk.saved();
  const events = await storedEvents(page);
  const start = marksOf(events, "Start").at(-1).at.m;
  expect(marksOf(events, "Tap").slice(-2).map(({ at }) => at.m - start)).toEqual([30_000, 30_001]);
  await expect(page.getByText("1 swallow in 30 seconds")).toBeVisible();
  await expect(page.getByText(`1 swallow ${SAYS.keptApart}`)).toBeVisible();
});

test("a press is on the screen in the next frame", async ({ page }) => {
  await openApp(page);
  const walk = new Walk(page, { real: true });
  await freeCount(walk);
  await walk.startPad();
  const shown = await page.evaluate(async () => {
    const seen = [];
    for (let i = 0; i < 20; i += 1) {
      const pad = document.querySelector("#pad");
      pad.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, button: 0, pointerType: "touch" }));
      await new Promise(requestAnimationFrame);
      seen.push(document.querySelector("#pad .count").textContent);
    }
    return seen;
  });
  expect(shown).toEqual(Array.from({ length: 20 }, (_, i) => String(i + 1)));
});

test("two presses within 60 ms are both kept, and pointed out", async ({ page }) => {
  const walk = await Walk.start(page);
  await freeCount(walk);
  await walk.startPad();
  await walk.count(2, 1_000);
  await walk.wait(40);
  await walk.pad.tap();
  await walk.counted(3);
  await walk.wait(1_000);
  await walk.press(BUTTONS.stopCount);
  await expect(page.getByText("1 came within 60 ms of the one before: check the count")).toBeVisible();
});

test("saved is said only once the store has confirmed", async ({ page }) => {
  await page.addInitScript(() => {
    window.hold = false;
    window.held = [];
    Object.defineProperty(IDBTransaction.prototype, "oncomplete", {
      set(handler) {
        this.addEventListener("complete", (event) => {
          if (window.hold) {
            window.held.push(() => handler.call(this, event));
          } else {
            handler.call(this, event);
          }
        });
      },
    });
  });
  const walk = await Walk.start(page);
  await freeCount(walk);
  await walk.startPad();
  await walk.saved();
  await page.evaluate(() => (window.hold = true));
  await walk.pad.tap();
  await walk.counted(1);
  await expect.poll(() => page.evaluate(() => window.held.length)).toBe(1);
  await walk.wait(10_000);
  await expect(page.locator(".saved")).toHaveText("Saving");
  await page.evaluate(() => {
    window.hold = false;
    window.held.forEach((tell) => tell());
  });
  await walk.saved();
});

test("a touch that starts is no click on what comes to lie under the finger", async ({ page }) => {
  // Where the page is longer than the screen, the start makes it shorter, and "undo" lies where the pad was.
  await page.setViewportSize({ width: 320, height: 640 });
  const walk = await Walk.start(page);
  await walk.toWater();
  await page.evaluate(() => {
    document.documentElement.style.fontSize = "200%";
    window.clicks = [];
  });
  await walk.answer(ASKED.voiceBefore, ASKED.clear);
  await page.evaluate(() => addEventListener("click", (event) => window.clicks.push(event.target.className), true));
  await walk.startPad();
  await expect(walk.button(BUTTONS.lastSwallow)).toBeVisible();
  expect(await page.evaluate(() => window.clicks)).toEqual([]);
});
