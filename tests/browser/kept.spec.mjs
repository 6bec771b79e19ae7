// Nothing recorded is lost: killed, reloaded, no store, full store, damaged record.

import fs from "node:fs";
import { loose, visit } from "./journal.mjs";
import { test } from "./killable.mjs";
import { appStarted, expect, openApp } from "./support.mjs";
import { marksOf, storedEvents, storedHeads } from "./store.mjs";
import { ASKED, AT, BUTTONS, FIELDS, FOLDS, ORAL, PAGES, SAYS, SIGNS, stopTime, TIMES, VERDICTS, Walk } from "./walk.mjs";

/** What is stored, without what comes with the time. */
const bodies = async (page) => (await storedEvents(page)).map(({ seq, body }) => [seq, body]);

test.describe("killed", () => {
  test("in the gate: it opens at the next group, and every answer is there", async ({ phone }) => {
    const before = await phone.start();
    await before.newVisit();
    await before.press(BUTTONS.groupHolds);
    await before.isOn(PAGES.gates[1]);
    const row = before.page.locator("li.item", { hasText: "No fluid restriction" });
    await before.press(row.getByRole("button").first());
    await before.press("Fluid restriction", row);
    await before.press(BUTTONS.groupHolds);
    await before.isOn(PAGES.gates[2]);
    await before.saved();
    const kept = await bodies(before.page);
    await phone.kill();

    const after = await phone.start();
    await after.isOn(PAGES.gates[2]);
    expect(await bodies(after.page)).toEqual(kept);
    await after.press(BUTTONS.back);
    await expect(after.button(/^The person holds/)).toBeVisible();
    await expect(after.button(/^Orders and limits 1 noted/)).toBeVisible();
    await expect(after.button(/^Airway and chest not asked/)).toBeVisible();
  });

  test("in a running count: it goes on by the phone's clock, and the result says so", async ({ phone }) => {
    const before = await phone.start({ at: new Date(), visit: visit().gateHolds().breaths(), where: AT.dry });
    await before.startPad();
    await before.pad.tap();
    await before.pad.tap();
    await before.saved();
    const kept = await bodies(before.page);
    expect(marksOf(await storedEvents(before.page), "Tap").slice(-2)).toHaveLength(2);
    const started = marksOf(await storedEvents(before.page), "Start").at(-1).at.w;
    await phone.kill();

    // Ten seconds after the start, by the clock on the wall.
    const after = await phone.start({ at: new Date(started + 10_000) });
    await after.isOn(PAGES.dry);
    await after.counted(2);
    await expect(after.page.getByRole("timer")).toContainText("20 s");
    expect((await bodies(after.page)).slice(0, kept.length)).toEqual(kept);
    await after.wait(1_000);
    await after.pad.tap();
    await after.counted(3);
    await after.wait(20_000);
    await after.settle();
    await expect(after.page.getByText("3 swallows in 30 seconds")).toBeVisible();
    await expect(after.page.getByText(SAYS.restarted).first()).toBeVisible();
    await after.press(BUTTONS.next);
    await after.press(BUTTONS.skip);
    await after.decided(VERDICTS.incomplete);
  });

  test("in a running watch: the sign is there, the watch goes on, the result says so", async ({ phone }) => {
    const before = await phone.start({ at: new Date(), visit: visit().readyForWater(), where: AT.water });
    await before.drink();
    await before.answer(ASKED.cup, ASKED.oneGo);
    await before.press(before.sign(SIGNS.cough));
    await before.saved();
    const kept = await bodies(before.page);
    const end = marksOf(await storedEvents(before.page), "End").at(-1).at.w;
    await phone.kill();

    const after = await phone.start({ at: new Date(end + 20_000) });
    await after.isOn(PAGES.water);
    expect((await bodies(after.page)).slice(0, kept.length)).toEqual(kept);
    await expect(after.page.getByText("40 s")).toBeVisible();
    await expect(after.sign(SIGNS.cough)).toHaveText("Cough 1");
    await after.wait(40_000);
    await after.settle();
    await after.answer(ASKED.voiceAfter, ASKED.clear);
    await expect(after.page.getByText(SAYS.restarted).first()).toBeVisible();
    await after.toDecision(VERDICTS.refer);
    await expect(after.main.locator(".flag", { hasText: "Coughed" })).toBeVisible();
  });

  test("with a stopwatch running: it has not stopped", async ({ phone }) => {
    const before = await phone.start();
    await before.press(BUTTONS.count);
    await before.isOn(PAGES.count);
    await before.startPad();
    await before.pad.tap();
    await before.saved();
    const started = marksOf(await storedEvents(before.page), "Start").at(-1).at.w;
    await phone.kill();

    const after = await phone.start({ at: new Date(started + 90_000) });
    await after.isOn(PAGES.count);
    await expect(after.page.getByRole("timer")).toContainText("90.");
    await after.counted(1);
  });

  test("long after its end: a watch that ran out unseen is not taken for a whole one in silence", async ({ phone }) => {
    const before = await phone.start({ at: new Date(), visit: visit().readyForWater(), where: AT.water });
    await before.drink();
    await before.saved();
    const end = marksOf(await storedEvents(before.page), "End").at(-1).at.w;
    await phone.kill();

    const after = await phone.start({ at: new Date(end + 600_000) });
    await after.isOn(PAGES.water);
    await after.settle();
    await after.answer(ASKED.cup, ASKED.oneGo);
    await after.answer(ASKED.voiceAfter, ASKED.clear);
    await expect(after.page.getByText(SAYS.restarted).first()).toBeVisible();
  });
});

test.describe("reloaded", () => {
  test("at any address of the visit, that page comes back", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
    for (const go of [BUTTONS.show, BUTTONS.back]) {
      await walk.press(go);
      const heading = await page.locator("#app h1").textContent();
      await page.reload();
      await appStarted(page);
      await walk.isOn(heading);
    }
  });

  test("in the middle of an examination everything is there", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "OralMotor" }).weakness().regions(0), AT.regions[1]);
    await walk.exception("Wide smile", "Moves less", ORAL.right, "Mild");
    await walk.saved();
    await page.reload();
    await expect(walk.item("Wide smile")).toContainText("moves less on the right, mild");
    await walk.press(BUTTONS.back);
    await expect(walk.button(/^Face and neck/)).toContainText("done");
  });

  test("closed and opened anew: it is where it was, and Home lies behind it", async ({ page, context, baseURL }) => {
    const walk = await Walk.at(page, visit(), AT.gates[0]);
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.gates[1]);
    await walk.saved();
    await page.close();
    const again = await context.newPage();
    await stopTime(again);
    await openApp(again, baseURL);
    const after = new Walk(again);
    await after.isOn(PAGES.gates[1]);
    await again.goBack();
    await after.isOn(PAGES.home);
    await expect(after.button(BUTTONS.goOnVisit)).toBeVisible();
  });

  test("words still being typed belong to the trial they were typed under when the pad begins the next", async ({ page }) => {
    const given = visit({ screen: "OwnTrials", slp: true }).gateHolds().breaths().own({ level: "d0", amount: "teaspoon" });
    const walk = await Walk.at(page, given, AT.own);
    await walk.field(FIELDS.remark).pressSequentially("head tilted");
    await walk.press(walk.pad);
    await walk.wait(2_000);
    await walk.press(walk.pad);
    await walk.settle();
    await walk.saved();
    const answers = (await storedEvents(page)).map(({ event }) => event.Answer).filter((answer) => answer?.question === "remark");
    expect(answers[0]).toMatchObject({ trial: 1, answer: { Words: "head tilted" } });
  });
});

test.describe("outside a visit", () => {
  test("a task on its own, opened and left without a press, stores nothing; reloaded it is there", async ({ page }) => {
    const walk = await Walk.start(page);
    for (const title of [PAGES.pa, PAGES.hold, PAGES.table]) {
      await walk.oneTask(title);
      await expect(walk.button(BUTTONS.skip)).toHaveCount(0);
      await walk.press(BUTTONS.back);
      await walk.isOn(PAGES.home);
      await expect(walk.button(BUTTONS.goOnVisit)).toHaveCount(0);
    }
    await walk.wait(500);
    expect(await storedEvents(page)).toEqual([]);
    expect(await storedHeads(page)).toEqual([]);
    // Before the first press and after it.
    await walk.oneTask(PAGES.ka);
    await page.reload();
    await walk.isOn(PAGES.ka);
    await walk.syllables(25, 5);
    await walk.saved();
    await page.reload();
    await walk.isOn(PAGES.ka);
    await expect(walk.main.locator(".figure", { hasText: "Trial 1: 25 syllables of ka" })).toBeVisible();
  });

  test("a count is attached after it was asked whether; both journals know of the other", async ({ page }) => {
    const walk = await Walk.home(page, visit({ label: "Window side" }));
    await walk.press(BUTTONS.count);
    await walk.isOn(PAGES.count);
    await walk.startPad();
    await walk.count(4);
    await walk.wait(1_000);
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await walk.press(/^Window side/);
    await expect(page.getByText(/^To Window side, 4 Mar 2026 \d\d:\d\d, Swallow screen\?$/)).toBeVisible();
    // Not this one: nothing was attached.
    await walk.press(BUTTONS.anotherVisit);
    await walk.saved();
    expect((await storedEvents(page)).filter(({ event }) => event.Attached)).toEqual([]);
    await walk.press(/^Window side/);
    await walk.press(BUTTONS.attach);
    await walk.isOn("Window side");
    await expect(page.getByRole("heading", { name: "Attached counts" })).toBeVisible();
    await expect(page.getByText("5.0 s, 4 taps")).toBeVisible();
    await walk.saved();
    const events = await storedEvents(page);
    const copy = events.map(({ event }) => event.Attached).find(Boolean);
    expect(copy.marks).toHaveLength(6);
    const to = events.find(({ event }) => event.Attached).visit;
    expect(events.find(({ event }) => event.AttachedTo)).toMatchObject({ visit: copy.from, event: { AttachedTo: to } });
    await page.reload();
    await expect(page.getByText("5.0 s, 4 taps")).toBeVisible();
    // It was the wrong visit: there it counts no longer, and the count is free for another.
    await walk.press(BUTTONS.detach);
    await walk.press(BUTTONS.detachIt);
    await expect(page.getByText("5.0 s, 4 taps")).toHaveCount(0);
    await walk.saved();
    const detached = async () => (await storedEvents(page)).map(({ event }) => event);
    await expect.poll(async () => (await detached()).some((event) => event.DetachedFrom === to)).toBe(true);
    expect((await detached()).find((event) => event.Detached)).toEqual({ Detached: { trial: copy.trial } });
  });

  for (const [task, title, at, shown] of [
    ["LongestAh", PAGES.ah, AT.ah, "12.0 s"],
    ["BreathCount", PAGES.countOnBreath, AT.countOnBreath, "counted to 30, 12.0 s"],
    ["BreathHold", PAGES.hold, AT.hold, "could not"],
  ]) {
    test(`${title}, ${shown}: attached with its answers`, async ({ page }) => {
      const alone = loose();
      if (shown === "could not") {
        alone.open(task).answer("could-not", "could-not");
      } else {
        alone.held(task, 12);
      }
      if (task === "BreathCount") {
        alone.answer("reached", 30);
      }
      const walk = await Walk.home(page, visit(), alone);
      await page.goto(`./#count/${alone.id}/${at.replace("task/", "")}`);
      await walk.attachTo(/^Visit 1/);
      await expect(walk.main.locator("li", { hasText: `${title}: ` }).filter({ hasText: shown })).toBeVisible();
    });
  }

  test("without a visit it is kept, and found again", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.press(BUTTONS.count);
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
});

test.describe("the store", () => {
  test("missing: it says so, and the screen works", async ({ page }) => {
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", { configurable: true, value: undefined });
    });
    const walk = await Walk.start(page);
    await expect(page.getByText(SAYS.lessSafe)).toBeVisible();
    await walk.toDry();
    await walk.dry();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await walk.saved();
    await expect(page.getByText(SAYS.lessSafe)).toBeVisible();
    const kept = await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("penlight.e.")));
    expect(kept.length).toBeGreaterThan(25);
    await page.reload();
    await appStarted(page);
    await walk.isOn(PAGES.water);
    await walk.press(BUTTONS.back);
    await expect(walk.button(/^Dry swallows in 30 seconds 4 swallows/)).toBeVisible();
  });

  test("missing at first: what the fallback took is moved once the safe store can be had", async ({ page, context, baseURL }) => {
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", { configurable: true, value: undefined });
    });
    const walk = await Walk.start(page);
    await walk.newVisit();
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.gates[1]);
    await walk.saved();
    await page.close();
    const again = await context.newPage();
    await stopTime(again);
    await openApp(again, baseURL);
    const after = new Walk(again);
    await after.isOn(PAGES.gates[1]);
    await expect(again.getByText(SAYS.lessSafe)).toHaveCount(0);
    expect((await storedEvents(again)).map(({ seq }) => seq)).toEqual([0, 1]);
    expect(await again.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("penlight.e.")))).toEqual([]);
  });

  test("without an answer: it says so after five seconds, and the screen works", async ({ page }) => {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => new EventTarget();
    });
    await stopTime(page);
    await page.goto("./");
    await appStarted(page);
    await page.clock.runFor(5_100);
    await expect(page.getByText(SAYS.lessSafe)).toBeVisible();
    const walk = new Walk(page);
    await walk.newVisit();
    await walk.press(BUTTONS.groupHolds);
    await walk.isOn(PAGES.gates[1]);
    await walk.saved();
  });

  test("full: it says so, gives a copy, and saves everything once there is room", async ({ page }) => {
    await page.addInitScript(() => {
      window.room = Infinity;
      const { add } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.add = function (...args) {
        if (window.room < 1) {
          throw new DOMException("no room", "QuotaExceededError");
        }
        window.room -= 1;
        return add.apply(this, args);
      };
    });
    const walk = await Walk.at(page, visit().gateHolds().breaths(), AT.dry);
    await walk.startPad();
    await walk.saved();
    const before = (await storedEvents(page)).length;
    await page.evaluate(() => (window.room = 1));
    await walk.count(4);
    const banner = page.getByRole("alert").filter({ hasText: SAYS.notSaved });
    await expect(banner).toBeVisible();
    await expect(banner).toContainText("no space left");
    await expect(page.locator(".saved")).toHaveText(SAYS.notSaved);
    await walk.counted(4);
    const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveUnsaved)]);
    const lines = fs.readFileSync(await download.path(), "utf8").trim().split("\n").map((line) => JSON.parse(line));
    expect(lines.map(({ seq }) => seq)).toEqual([before + 1, before + 2, before + 3]);
    expect(lines.every(({ body }) => JSON.parse(body).Mark.kind === "Tap")).toBe(true);
    // Still refused when asked again ...
    await walk.press(BUTTONS.tryAgain);
    await expect(banner).toBeVisible();
    // ... and saved by itself once there is room.
    await page.evaluate(() => (window.room = Infinity));
    await walk.wait(2_100);
    await walk.saved();
    await expect(banner).toHaveCount(0);
    const events = await storedEvents(page);
    expect(events.map(({ seq }) => seq)).toEqual(events.map((_, i) => i));
    expect(events.slice(before).filter(({ event }) => event.Mark?.kind === "Tap")).toHaveLength(4);
    await walk.wait(TIMES.dry);
    await walk.settle();
    await expect(page.getByText("4 swallows in 30 seconds")).toBeVisible();
  });

  test("has what was pressed in the very turn in which the page is left", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds().breaths(), AT.dry);
    await walk.startPad();
    await walk.saved();
    const before = (await storedEvents(page)).length;
    const loaded = page.waitForEvent("load");
    await page.evaluate(() => {
      document.querySelector("#pad").dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, button: 0 }));
      location.reload();
    });
    await loaded;
    await appStarted(page);
    await walk.counted(1);
    const events = (await storedEvents(page)).slice(before);
    expect(marksOf(events, "Tap")).toHaveLength(1);
  });

  test("used by another window for the same visit: it says so, and what is here can be taken out", async ({ page, context }) => {
    const walk = await Walk.at(page, visit(), AT.gates[0]);
    await walk.isOn(PAGES.gates[0]);
    const other = await context.newPage();
    await stopTime(other);
    await openApp(other, page.url());
    const second = new Walk(other);
    await second.isOn(PAGES.gates[0]);
    await second.press(BUTTONS.groupHolds);
    await second.isOn(PAGES.gates[1]);
    await second.saved();
    await walk.press(BUTTONS.groupHolds);
    await expect(page.getByRole("alert").filter({ hasText: "changed in another window" })).toBeVisible();
    const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveUnsaved)]);
    expect(fs.readFileSync(await download.path(), "utf8")).toContain('\\"Gate\\"');
    expect((await storedEvents(page)).map(({ seq }) => seq)).toEqual([0, 1]);
  });
});

test.describe("a record that can't be read", () => {
  const change = (page, seq, patch) =>
    page.evaluate(
      async ([number, fields]) => {
        const done = (request) =>
          new Promise((resolve, reject) => {
            request.onsuccess = () => resolve(request.result);
            request.onerror = () => reject(request.error);
          });
        const database = await done(indexedDB.open("penlight"));
        const store = database.transaction("events", "readwrite").objectStore("events");
        const row = (await done(store.getAll())).find(({ seq: n }) => n === number);
        await done(store.put({ ...row, ...fields }));
        database.close();
      },
      [seq, patch],
    );

  for (const [what, patch, words] of [
    ["damaged", { body: "{broken" }, "damaged"],
    ["written by a newer version", { schema: 99 }, "newer Penlight"],
    ["no envelope at all", { at: "never", body: 7 }, "damaged"],
  ]) {
    test(`${what}: set aside, can be taken out, and never passes`, async ({ page }) => {
      const walk = await Walk.at(page, visit().readyForWater().water(), AT.decision);
      await walk.decided(VERDICTS.pass);
      // A breath: nothing a rule looks at would miss it.
      const events = await storedEvents(page);
      const breath = events.find(({ event }) => event.Mark?.kind === "Tap");
      await change(page, breath.seq, patch);
      await page.reload();
      await appStarted(page);
      await walk.decided(VERDICTS.incomplete);
      const banner = page.locator(".banner", { hasText: SAYS.cantBeRead });
      await expect(banner).toContainText(words);
      const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveAside)]);
      const text = fs.readFileSync(await download.path(), "utf8");
      expect(text).toContain(String(patch.body ?? patch.schema));
      // It is still in the store.
      expect(await storedEvents(page)).toHaveLength(events.length);
      // And the visit can be worked on.
      await walk.press(BUTTONS.back);
      await expect(walk.button(/^Dry swallows in 30 seconds 4 swallows/)).toBeVisible();
    });
  }

  test("a record that is missing keeps the visit from passing", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater().water(), AT.decision);
    await walk.decided(VERDICTS.pass);
    const breath = (await storedEvents(page)).find(({ event }) => event.Mark?.kind === "Tap");
    await page.evaluate(async ([visit, seq]) => {
      const database = await new Promise((resolve) => {
        const request = indexedDB.open("penlight");
        request.onsuccess = () => resolve(request.result);
      });
      const writing = database.transaction("events", "readwrite");
      writing.objectStore("events").delete([visit, seq]);
      await new Promise((resolve) => (writing.oncomplete = resolve));
      database.close();
    }, [breath.visit, breath.seq]);
    await page.reload();
    await appStarted(page);
    await walk.decided(VERDICTS.incomplete);
  });
});

test("a deleted visit leaves nothing but its tombstone", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.press(BUTTONS.swallowScreen);
  await walk.field(FIELDS.label).fill("Zebra seven");
  await walk.press(BUTTONS.begin);
  await walk.press(BUTTONS.groupHolds);
  await walk.press(BUTTONS.back);
  await walk.unfold(FOLDS.keepDelete);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    walk.press("Save the whole record as a file"),
  ]);
  expect(fs.readFileSync(await download.path(), "utf8")).toContain("Zebra seven");
  await walk.press(BUTTONS.deleteVisit);
  await walk.press(BUTTONS.deleteForGood);
  await walk.isOn(PAGES.home);
  await expect(walk.button(/Zebra/)).toHaveCount(0);
  const events = await storedEvents(page);
  expect(events.map(({ body }) => body)).toEqual(['"Deleted"']);
  const everything = JSON.stringify([
    events,
    await storedHeads(page),
    await page.evaluate(() => Object.entries(localStorage)),
  ]);
  expect(everything).not.toMatch(/zebra/i);
  await page.reload();
  await appStarted(page);
  await walk.isOn(PAGES.home);
  await expect(walk.button(BUTTONS.goOnVisit)).toHaveCount(0);
});
