// The flow of the repeated syllables, what could not be begun, a beat that the phone silenced, and
// tasks on their own.

import { expect, openApp, test } from "./support.mjs";
import { marksOf, storedEvents, storedHeads } from "./store.mjs";
import { ASKED, BUTTONS, FIELDS, FOLDS, PAGES, SAYS, SOUND, TEXT, VERDICTS, Walk, stopTime } from "./walk.mjs";

const says = (walk, words) => expect(walk.main.locator(".flag > p", { hasText: words }).first()).toBeVisible();
const figure = (walk, words) => expect(walk.main.locator(".figure", { hasText: words })).toBeVisible();

/** The Oral motor screen on its first task. */
async function oralMotor(page, age) {
  const walk = await Walk.start(page);
  await walk.newVisit({ screen: "oralMotor", age });
  return walk;
}

const orders = async (page) => (await storedEvents(page)).map(({ event }) => event.Order).filter(Boolean);

/** The lines of the fold, in order. */
const lines = (walk) => walk.main.locator(".order li b");

test.describe("order and choice of the syllables", () => {
  test("one press a change, where the flow begins; it leads on, and is handed over", async ({ page }) => {
    const walk = await oralMotor(page, "40");
    await walk.unfold(FOLDS.order);
    await walk.press(BUTTONS.earlier(PAGES.ka));
    await expect(lines(walk)).toHaveText([PAGES.pa, PAGES.ka, PAGES.ta, PAGES.sequence]);
    await walk.press(BUTTONS.leaveOut(PAGES.sequence));
    await walk.press(BUTTONS.leaveOut(PAGES.ta));
    await expect(lines(walk)).toHaveText([PAGES.pa, PAGES.ka, PAGES.ta, PAGES.sequence]);
    await walk.press(BUTTONS.askForIt(PAGES.ta));
    await walk.saved();
    expect(await orders(page)).toEqual([
      ["SyllablePa", "SyllableKa", "SyllableTa", "Sequence"],
      ["SyllablePa", "SyllableKa", "SyllableTa"],
      ["SyllablePa", "SyllableKa"],
      ["SyllablePa", "SyllableKa", "SyllableTa"],
    ]);
    for (const title of [PAGES.pa, PAGES.ka, PAGES.ta]) {
      await walk.isOn(title);
      await walk.syllables(25, 5);
      await walk.press(BUTTONS.next);
    }
    await walk.isOn(PAGES.ah);
    await walk.held(15);
    await walk.toDecision(VERDICTS.examined);
    await walk.toHandover();
    await expect(walk.text).toContainText("not part of this examination: pa-ta-ka");
    await expect(walk.text).not.toContainText("not done");
    await expect(walk.text).toHaveText(TEXT.examined);
  });

  test("on the visit's page: what was begun stays, what goes on is the first in order", async ({ page }) => {
    const walk = await oralMotor(page, "40");
    await walk.syllables(25, 5);
    await walk.press(BUTTONS.back);
    await walk.unfold(FOLDS.order);
    await expect(walk.button(BUTTONS.leaveOut(PAGES.pa))).toHaveCount(0);
    await walk.press(BUTTONS.earlier(PAGES.sequence));
    await walk.press(BUTTONS.earlier(PAGES.sequence));
    await walk.press(BUTTONS.leaveOut(PAGES.ka));
    await expect(walk.main.locator(".steps b").nth(10)).toHaveText(PAGES.sequence);
    await expect(walk.main.locator(".steps b", { hasText: PAGES.ka })).toHaveCount(0);
    await walk.press(/^pa-ta-ka not done/);
    await walk.syllables(25, 5);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.ta);
    await walk.press(BUTTONS.skip);
    await walk.isOn(PAGES.ah);
    // Reloaded, the order is that of the journal.
    await page.reload();
    await walk.press(BUTTONS.back);
    await expect(walk.main.locator(".steps b", { hasText: PAGES.ka })).toHaveCount(0);
  });

  test("kept for the next visits by a press of its own, and said before it holds", async ({ page }) => {
    const walk = await oralMotor(page, "40");
    await walk.unfold(FOLDS.order);
    await expect(walk.button(BUTTONS.keepOrder)).toHaveCount(0);
    await walk.press(BUTTONS.leaveOut(PAGES.ta));
    await walk.press(BUTTONS.keepOrder);
    await expect(walk.button(BUTTONS.keepOrder)).toHaveCount(0);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.oralMotor);
    await expect(page.getByText(`${SAYS.keptOrder}pa-pa-pa, ka-ka-ka, pa-ta-ka`)).toBeVisible();
    await walk.press(BUTTONS.adult);
    await walk.press(BUTTONS.begin);
    await walk.straightTo(PAGES.pa);
    await walk.press(BUTTONS.skip);
    await walk.isOn(PAGES.ka);
    // Other screens have none of it.
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.swallowScreen);
    await expect(page.getByText(SAYS.keptOrder)).toHaveCount(0);
  });

  test("a child's pa-ta-ka stands last, and still steps aside", async ({ page }) => {
    // Source: DIE19.
    const walk = await oralMotor(page, "5");
    await walk.unfold(FOLDS.order);
    await expect(walk.button(BUTTONS.earlier(PAGES.sequence))).toHaveCount(0);
    await walk.press(BUTTONS.leaveOut(PAGES.ta));
    await walk.press(BUTTONS.earlier(PAGES.ka));
    await expect(lines(walk)).toHaveText([PAGES.ka, PAGES.pa, PAGES.sequence, PAGES.ta]);
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.sequence);
    await walk.straightTo(PAGES.ka);
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.pa);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.sequence);
    await expect(page.getByText("0 of the single syllables succeeded, and it takes 2.")).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
  });
});

test.describe("could not, without a touch of the pad", () => {
  test("a child who can't begin: tried, told, and pa-ta-ka steps aside", async ({ page }) => {
    // Source: DIE19.
    const walk = await oralMotor(page, "4");
    for (const title of [PAGES.pa, PAGES.ta]) {
      await walk.isOn(title);
      await walk.press(BUTTONS.couldNot);
      await walk.settle();
      await figure(walk, "Trial 1: could not");
      await walk.press(BUTTONS.next);
    }
    await walk.isOn(PAGES.ka);
    await walk.press(BUTTONS.skip);
    await walk.isOn(PAGES.sequence);
    const aside = "Sequences such as pa-ta-ka are left out: 0 of the single syllables succeeded, and it takes 2.";
    await expect(page.getByText(aside)).toBeVisible();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.ah);
    await walk.press(BUTTONS.noVoice);
    await walk.settle();
    await figure(walk, "Trial 1: no voice came");
    await expect(walk.group(ASKED.voice)).toHaveCount(0);
    await walk.toDecision(VERDICTS.examined);
    await says(walk, 'Longest "ah", trial 1: kept, not scored: no voice came.');
    await walk.toHandover();
    for (const told of [
      "pa could not be said",
      "ta could not be said",
      "not done: ka-ka-ka",
      "sequences such as pa-ta-ka are left out",
      'longest "ah" not scored: no voice came',
    ]) {
      await expect(walk.text).toContainText(told);
    }
    await walk.saved();
    expect(marksOf(await storedEvents(page), "Start")).toEqual([]);
  });

  test("heard and not timed; taken back; and with a trial that was timed", async ({ page }) => {
    const walk = await oralMotor(page, "40");
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await walk.answer(ASKED.sound, SOUND.correct);
    await figure(walk, "Trial 1: not timed, correct");
    await walk.field(FIELDS.remark).fill("laughed");
    await walk.field(FIELDS.remark).blur();
    await figure(walk, "Trial 1: not timed, correct, laughed");
    await walk.press(BUTTONS.takeBack);
    await expect(walk.pad).toBeVisible();
    await expect(walk.button(BUTTONS.skip)).toBeVisible();
    await walk.syllables(25, 5);
    await walk.press(BUTTONS.nextTrial);
    // At every trial, not only at the first.
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await figure(walk, "Trial 2: could not");
    await says(walk, "25 syllables of pa in 5.0 seconds: 5.0 syllables per second");
  });

  test("reloaded, it is over still", async ({ page }) => {
    const walk = await oralMotor(page, "40");
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await walk.saved();
    await page.reload();
    await walk.isOn(PAGES.pa);
    await figure(walk, "Trial 1: could not");
    await expect(walk.pad).toHaveCount(0);
  });

  for (const title of [PAGES.s, PAGES.z, PAGES.glide, PAGES.countOnBreath, PAGES.hold, PAGES.five]) {
    test(`${title}: nothing more is asked, and it is no "not done"`, async ({ page }) => {
      const walk = await Walk.start(page);
      await walk.newVisit({ screen: "fullVisit", age: "60" });
      await walk.straightTo(title);
      await walk.press(BUTTONS.couldNot);
      await walk.settle();
      await figure(walk, /could not$/);
      await expect(walk.main.locator(".questions .number, .questions .choices")).toHaveCount(0);
      await says(walk, `${title}, trial 1: kept, not scored: could not.`);
      await expect(walk.button(BUTTONS.skip)).toHaveCount(0);
      await walk.press(BUTTONS.back);
      await expect(walk.button(new RegExp(`^${title} .*not scored: could not$`))).toBeVisible();
    });
  }
});

test.describe("what is asked after it was not answered", () => {
  for (const [title, said] of [
    [PAGES.five, "6.0 s timed, what was seen of the bubbles was not said"],
    [PAGES.countOnBreath, "6.0 s timed, the highest number was not said"],
  ]) {
    test(title, async ({ page }) => {
      const walk = await Walk.start(page);
      await walk.newVisit({ screen: "fullVisit", age: "60" });
      await walk.straightTo(title);
      await walk.held(6);
      await says(walk, `${title}, trial 1: kept, not scored: ${said}.`);
      await walk.press(BUTTONS.back);
      await expect(walk.button(new RegExp(`^${title} .*${said}$`))).toBeVisible();
    });
  }
});

test.describe("a beat that the phone silenced", () => {
  /** Audio that goes and stops as told; its clock stands while it is stopped. */
  async function audio(page, { state = "running", allowed = true } = {}) {
    await page.addInitScript(
      ([state, allowed]) => {
        window.tones = [];
        window.AudioContext = class {
          constructor() {
            Object.assign(this, { state, destination: {}, at: 0, since: performance.now() });
            window.audio = this;
          }
          get currentTime() {
            return (this.at + (this.state === "running" ? performance.now() - this.since : 0)) / 1000;
          }
          stop(now) {
            this.at = this.currentTime * 1000;
            this.state = now;
          }
          resume() {
            if (!allowed) {
              return new Promise(() => {});
            }
            Object.assign(this, { state: "running", since: performance.now() });
            return Promise.resolve();
          }
          createGain() {
            const gain = { setValueAtTime() {}, linearRampToValueAtTime() {} };
            return { gain, connect() {} };
          }
          createOscillator() {
            const ahead = (when) => (when - this.currentTime) * 1000 + performance.now();
            return { frequency: {}, connect() {}, stop() {}, start: (when) => window.tones.push(ahead(when)) };
          }
        };
      },
      [state, allowed],
    );
  }

  async function beating(page) {
    await page.addInitScript(() => {
      addEventListener("pointerdown", (event) => (window.pressed ??= event.target.closest?.("#pad") && event.timeStamp), true);
    });
    await stopTime(page);
    await openApp(page);
    const walk = new Walk(page);
    await walk.oneTask(PAGES.countOnBreath);
    await walk.startPad();
    await walk.wait(2_900);
    return walk;
  }

  const message = (page) => page.getByRole("alert").filter({ hasText: SAYS.noSound });

  for (const state of ["suspended", "interrupted"]) {
    test(`${state} in the middle: said, the light goes on, one press brings the sound back on the grid`, async ({ page }) => {
      await audio(page);
      const walk = await beating(page);
      await walk.counted(6);
      await expect(message(page)).toHaveCount(0);
      await page.evaluate((state) => window.audio.stop(state), state);
      await walk.wait(50);
      await expect(message(page)).toContainText("The light goes on with the beat.");
      const before = await page.evaluate(() => window.tones.length);
      // 2.95 s since the press; the light goes by the grid of the press.
      await walk.wait(100);
      await walk.counted(7);
      await expect(walk.pad).not.toHaveCSS("box-shadow", "none");
      await walk.wait(500);
      await walk.counted(8);
      await expect(walk.pad).toHaveCSS("box-shadow", "none");
      await walk.wait(4_680);
      expect(await page.evaluate(() => window.tones.length)).toBe(before);
      await walk.press(BUTTONS.soundOn);
      await walk.wait(3_000);
      await expect(message(page)).toHaveCount(0);
      const [tones, pressed] = await page.evaluate(() => [window.tones, window.pressed]);
      const after = tones.slice(before).map((at) => at - pressed);
      expect(after.length).toBeGreaterThanOrEqual(6);
      expect(Math.round(after[0] / 500)).toBe(17);
      for (const at of after) {
        expect(Math.abs(at - Math.round(at / 500) * 500)).toBeLessThanOrEqual(5);
      }
      expect(new Set(after.map((at) => Math.round(at / 500))).size).toBe(after.length);
    });
  }

  test("never allowed: said, and the light goes on all the same", async ({ page }) => {
    await audio(page, { state: "suspended", allowed: false });
    const walk = await beating(page);
    await expect(message(page)).toBeVisible();
    await walk.counted(6);
    await walk.press(BUTTONS.soundOn);
    await walk.wait(1_000);
    await expect(message(page)).toBeVisible();
    await walk.counted(8);
    expect(await page.evaluate(() => window.tones)).toEqual([]);
    // The pad ends the time as ever.
    await walk.press(walk.pad);
    await walk.settle();
    await expect(message(page)).toHaveCount(0);
    await walk.field(FIELDS.highest).fill("8");
    await figure(walk, /^Trial 1: counted to 8, \d/);
  });
});

/** Every task of speech and breath, and how it is gone through. */
const ALONE = [
  ...[PAGES.pa, PAGES.ta, PAGES.ka, PAGES.sequence].map((title) => [title, (walk) => walk.syllables(25, 5), "25 syllables"]),
  ...[PAGES.ah, PAGES.s, PAGES.z, PAGES.hold].map((title) => [title, (walk) => walk.held(12), "12.0 s"]),
  [
    PAGES.glide,
    async (walk) => {
      await walk.held(4);
      await walk.answer(ASKED.up, "Smooth");
      await walk.answer(ASKED.down, "Stepped");
    },
    "heard: up smooth, down stepped",
  ],
  [
    PAGES.countOnBreath,
    async (walk) => {
      await walk.held(15);
      await walk.field(FIELDS.highest).fill("30");
    },
    "counted to 30, 15.0 s",
  ],
  [
    PAGES.five,
    async (walk) => {
      await walk.held(6);
      await walk.answer(ASKED.bubbles, "Continuous, at 5 cm");
    },
    "6.0 s",
  ],
];

test.describe("a task on its own", () => {
  test("opened and left without a press, nothing is stored; nothing is skipped or held up", async ({ page }) => {
    const walk = await Walk.start(page);
    for (const [title] of ALONE) {
      await walk.oneTask(title);
      await expect(walk.button(BUTTONS.skip)).toHaveCount(0);
      await expect(page.getByRole("heading", { name: SAYS.notYet })).toHaveCount(0);
      await walk.press(BUTTONS.show);
      await walk.press(BUTTONS.back);
      await walk.isOn(title);
      await walk.press(BUTTONS.back);
      await walk.isOn(PAGES.home);
      await expect(walk.button(BUTTONS.goOnVisit)).toHaveCount(0);
    }
    await walk.wait(500);
    expect(await storedEvents(page)).toEqual([]);
    expect(await storedHeads(page)).toEqual([]);
    // Reloaded before the first press it is there still.
    await walk.oneTask(PAGES.ka);
    await page.reload();
    await walk.isOn(PAGES.ka);
    await walk.syllables(25, 5);
    await walk.saved();
    await page.reload();
    await walk.isOn(PAGES.ka);
    await figure(walk, "Trial 1: 25 syllables of ka");
  });

  test("every one is attached to a visit afterwards, after it was asked whether", async ({ page }) => {
    test.setTimeout(120_000);
    const walk = await Walk.start(page);
    await walk.newVisit({ age: "60" });
    await walk.saved();
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    for (const [at, [title, through, shown]] of ALONE.entries()) {
      await walk.oneTask(title);
      await through(walk);
      await walk.press(/^Visit 1/);
      await expect(page.getByText(/^To Visit 1, 09:30, 4 Mar 2026 09:30, Swallow screen\? It stays there\.$/)).toBeVisible();
      if (at === 0) {
        // Not this one: nothing was attached.
        await walk.press(BUTTONS.anotherVisit);
        await walk.saved();
        expect((await storedEvents(page)).filter(({ event }) => event.Attached)).toEqual([]);
        await walk.press(/^Visit 1/);
      }
      await walk.press(BUTTONS.attach);
      await walk.isOn(/^Visit 1/);
      await expect(walk.main.locator("li", { hasText: `${title}: ` }).filter({ hasText: shown })).toBeVisible();
      await walk.press(BUTTONS.back);
    }
  });

  test("could not is attached too", async ({ page }) => {
    const walk = await oralMotor(page, "60");
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.oneTask(PAGES.hold);
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await walk.attachTo(/^Visit 1/);
    await expect(page.getByText("Breath hold: could not")).toBeVisible();
  });
});

test("on the smallest screen the pad is in sight before the start", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 568 });
  const walk = await oralMotor(page, "8");
  for (const title of [PAGES.pa, PAGES.ta, PAGES.ka, PAGES.sequence, PAGES.ah]) {
    await walk.straightTo(title);
    const ready = await walk.pad.boundingBox();
    expect.soft(ready.y + ready.height, title).toBeLessThanOrEqual(568);
    expect.soft(ready.height, title).toBeGreaterThanOrEqual(120);
    await walk.startPad();
    const running = await walk.pad.boundingBox();
    // It stays where it was touched.
    expect.soft(running.y, title).toBeLessThanOrEqual(ready.y + 8);
    expect.soft(running.y + running.height, title).toBeGreaterThanOrEqual(ready.y + ready.height - 8);
    await walk.wait(1_000);
    await walk.press(title === PAGES.ah ? walk.pad : BUTTONS.stopCount);
    await walk.settle();
  }
});
