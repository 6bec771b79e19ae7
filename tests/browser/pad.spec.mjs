// The pad: no tap lost, each at its own time, nothing else happens to the page.

import { visit } from "./journal.mjs";
import { expect, openApp, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ASKED, AT, BUTTONS, PAGES, TIMES, Walk } from "./walk.mjs";

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
  test("space, enter and a clicker's key, with the focus on the pad or nowhere: once each, no repeat", async ({ page }) => {
    const walk = await Walk.start(page);
    await freeCount(walk);
    await walk.pad.focus();
    await page.keyboard.press("Space");
    await expect(walk.pad.locator(".count")).toBeVisible();
    let n = 0;
    for (const focus of [() => document.querySelector("#pad").focus(), () => document.activeElement.blur()]) {
      await page.evaluate(focus);
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
    }
    await walk.saved();
    expect(await taps(page)).toHaveLength(n);
    expect(await page.evaluate(() => scrollY)).toBe(0);
  });

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
  const walk = await Walk.at(page, visit().readyForWater(), AT.water);
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

test.describe("a pad that is start and stop, or counts from its first touch", () => {
  const spoken = () => visit({ screen: "OralMotor", age: 30 });

  test("no stop before the start, no second start; undo of the first tap takes the start back with it", async ({ page }) => {
    const walk = await Walk.at(page, spoken(), AT.pa);
    await expect(walk.button(BUTTONS.stopCount)).toHaveCount(0);
    const before = await walk.pad.textContent();
    await walk.startPad();
    await walk.counted(1);
    await walk.pad.tap();
    await walk.counted(2);
    await walk.saved();
    expect(marksOf(await storedEvents(page), "Start")).toHaveLength(1);
    await walk.press(BUTTONS.undo);
    await walk.counted(1);
    await walk.press(BUTTONS.undo);
    await expect(walk.pad).toHaveText(before);
    await expect(page.getByRole("timer")).toHaveCount(0);
    // The time counts from the new first tap; once it ran out, that one stays.
    await walk.wait(4_000);
    await walk.syllables(2, 5);
    await walk.press(BUTTONS.undo);
    await expect(walk.main.locator(".figure", { hasText: "1 syllables of pa in 5.0 seconds" })).toBeVisible();
    await expect(walk.button(BUTTONS.undo)).toHaveCount(0);
  });

  test("two touches where one was meant: a short trial, which undo takes back", async ({ page }) => {
    const walk = await Walk.at(page, spoken(), AT.ah);
    await walk.held(0.12);
    await expect(walk.main.locator(".figure", { hasText: "Trial 1: 0.1 s" })).toBeVisible();
    await walk.press(BUTTONS.undo);
    // The end is taken back: the sound goes on, from its own start.
    await walk.wait(11_000);
    await walk.press(walk.pad);
    await walk.settle();
    await expect(walk.main.locator(".figure", { hasText: /Trial 1: 11\.\d s/ })).toBeVisible();
    // Both, and it is as if nothing had been touched.
    await walk.press(BUTTONS.undo);
    await walk.press(BUTTONS.undo);
    await expect(walk.pad).toHaveText("Touch when it starts");
  });
});

test.describe("several pads", () => {
  /** The pads, in their order on the page. */
  const pads = (page) => page.getByRole("group", { name: "Pads" }).getByRole("button");

  test("a cracker on three pads at exact times: 4 bites, 60 chews, 3 swallows, 48 s", async ({ page }) => {
    const walk = await Walk.at(page, visit({ slp: true }).readyForWater().water(), AT.cracker);
    await walk.answer(ASKED.allergy, "No");
    await walk.answer(ASKED.teeth, "Yes");
    await walk.answer(ASKED.dietOrder, ASKED.orderAllows);
    await walk.startPad();
    await walk.settle();
    const [chew, bite, swallow] = [0, 1, 2].map((i) => pads(page).nth(i));
    await expect(bite).toHaveText("1bite");
    for (let i = 0; i < 3; i += 1) {
      await walk.touch(bite);
      for (let n = 0; n < 20; n += 1) {
        await walk.wait(500);
        await walk.touch(chew);
      }
      // Two pads in the same millisecond: both count.
      await walk.touch(swallow);
    }
    await expect(chew).toHaveText("60chews");
    await expect(bite).toHaveText("4bites");
    await expect(swallow).toHaveText("3swallows");
    // Undo says what it takes.
    await walk.touch(chew);
    await walk.press(BUTTONS.undoOf("chew"));
    await expect(chew).toHaveText("60chews");
    await walk.wait(48_000 - 30_000 - TIMES.still);
    await walk.press(BUTTONS.mouthEmpty);
    await walk.settle();
    await expect(page.getByText("60 chews, 4 bites, 3 swallows in 48.0 s", { exact: true })).toBeVisible();
    await walk.saved();
    const events = await storedEvents(page);
    const [start] = marksOf(events, "Start").slice(-1);
    const swallows = events.filter(({ event }) => event.Mark?.kind?.Count === "Swallow").map(({ event }) => event.Mark.at.m - start.at.m - TIMES.still);
    expect(swallows).toEqual([10_000, 20_000, 30_000]);
  });

  test("two pads count two things, or the same thing", async ({ page }) => {
    const walk = await Walk.start(page);
    await freeCount(walk);
    await walk.answer(ASKED.pads, "Two things");
    await walk.startPad();
    await walk.settle();
    const [left, right] = [0, 1].map((i) => pads(page).nth(i));
    await walk.touch(left);
    await walk.touch(right);
    await walk.touch(right);
    await expect(left).toHaveText("1tap");
    await expect(right).toHaveText("2taps");
    await walk.wait(2_000);
    await walk.press(BUTTONS.stopCount);
    await expect(page.getByText("on the right pad: 2 taps")).toBeVisible();
    await walk.settle();
    await walk.press(BUTTONS.countAgain);
    await walk.answer(ASKED.pads, "Two, the same thing");
    await walk.startPad();
    await walk.settle();
    await walk.touch(left);
    await walk.touch(right);
    await expect(left).toHaveText("2taps");
    await expect(right).toHaveText("2taps");
  });
});
