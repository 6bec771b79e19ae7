// What stays and what goes when a page is drawn anew or left, and what a page shows or says to
// somebody who does not read it.

import { visit } from "./journal.mjs";
import { expect, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import { ASKED, AT, BUTTONS, FIELDS, FOLDS, PAGES, SIGNS, SOUND, Walk } from "./walk.mjs";

test("a page that follows another is announced: its heading takes the focus", async ({ page }) => {
  const walk = await Walk.start(page);
  for (const name of [BUTTONS.settings, BUTTONS.policy]) {
    await walk.press(name);
    await walk.wait(100);
    const heading = page.getByRole("heading", { level: 1, name });
    await expect(heading).toBeFocused();
    await heading.evaluate((h1) => (h1.seen = true));
  }
  await walk.press(BUTTONS.back);
  await walk.wait(100);
  await expect(page.getByRole("heading", { level: 1, name: PAGES.settings })).toBeFocused();
  // A heading of its own, not the one before with other words.
  expect(await page.locator("h1").last().evaluate((h1) => h1.seen)).toBeUndefined();
});

test("where something comes from is never unfolded with nothing in it", async ({ page }) => {
  const walk = await Walk.at(page, visit().readyForWater().water({ cough: 2, after: null }), AT.water);
  await walk.press(walk.fold(FOLDS.why).first());
  const open = page.locator("details.why[open]");
  await expect(open.first()).toContainText("Rule ");
  await walk.press(walk.sign(SIGNS.throatClear));
  for (const fold of await open.all()) {
    await expect(fold).toContainText("Rule ");
  }
  // Whatever came out, the rules that read it are a press away.
  await walk.unfold(FOLDS.readBy);
  await expect(walk.main.getByText("Rule water.left.")).toBeVisible();
  await expect(walk.main.locator("li b", { hasText: "SLK09" }).first()).toBeVisible();
});

test("saturation is asked after the water only where it was read before", async ({ page }) => {
  const read = visit({ label: "Read" }).readyForWater({ spo2: 96 }).water();
  const walk = await Walk.at(page, visit().readyForWater().water(), AT.water, { others: [read] });
  await expect(walk.group(ASKED.voiceAfter)).toBeVisible();
  await expect(walk.field(FIELDS.lowestSpo2)).toHaveCount(0);
  await page.goto(`./#visit/${read.id}/${AT.water}`);
  await expect(walk.field(FIELDS.lowestSpo2)).toHaveCount(1);
});

test.describe("could not, without a touch of the pad", () => {
  test("tried, taken back, and again at the next trial; reloaded, it is over still", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "OralMotor", age: 40 }), AT.pa);
    const figure = (words) => expect(walk.main.locator(".figure", { hasText: words })).toBeVisible();
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await figure("Trial 1: could not");
    await walk.answer(ASKED.sound, SOUND.correct);
    await figure("Trial 1: not timed, correct");
    await walk.field(FIELDS.remark).fill("laughed");
    await walk.field(FIELDS.remark).blur();
    await figure("Trial 1: not timed, correct, laughed");
    await walk.press(BUTTONS.takeBack);
    await expect(walk.pad).toBeVisible();
    await expect(walk.button(BUTTONS.skip)).toBeVisible();
    await walk.syllables(25, 5);
    await walk.press(BUTTONS.nextTrial);
    // At every trial, not only at the first.
    await walk.press(BUTTONS.couldNot);
    await walk.settle();
    await figure("Trial 2: could not");
    await walk.saved();
    await page.reload();
    await walk.isOn(PAGES.pa);
    await figure("Trial 2: could not");
    await expect(walk.pad).toHaveCount(0);
    expect(marksOf(await storedEvents(page), "Start")).toHaveLength(1);
  });

  test("nothing more is asked, and it is no \"not done\"", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "FullVisit", age: 60 }).gateHolds(), AT.glide);
    for (const title of [PAGES.glide, PAGES.countOnBreath, PAGES.five]) {
      await walk.straightTo(title);
      await walk.press(BUTTONS.couldNot);
      await walk.settle();
      await expect(walk.main.locator(".figure", { hasText: /could not$/ })).toBeVisible();
      await expect(walk.main.locator(".questions .number, .questions .choices")).toHaveCount(0);
      await expect(walk.button(BUTTONS.skip)).toHaveCount(0);
    }
    await walk.press(BUTTONS.back);
    await expect(walk.button(new RegExp(`^${PAGES.five} .*not scored: could not$`))).toBeVisible();
  });
});

test("another trial that was opened and not begun takes nothing away", async ({ page }) => {
  const spoken = visit({ screen: "OralMotor", age: 30 }).weakness().examined().syllables("SyllablePa", 25);
  const walk = await Walk.at(page, spoken, AT.pa);
  await walk.press(BUTTONS.nextTrial);
  await expect(walk.pad).toBeVisible();
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.ta);
  await walk.press(BUTTONS.back);
  await expect(walk.button(/^pa-pa-pa pa 5\.0 syllables per second$/)).toBeVisible();
});

test.describe("shown to the patient", () => {
  const ALL = ["pa", "ta", "ka", "sequence", "ah", "s", "z", "glide", "countOnBreath", "hold", "five", "dry", "water", "sips"];

  test("every task fits the smallest screen with the largest text, in large type", async ({ page }) => {
    await page.setViewportSize({ width: 320, height: 640 });
    const walk = await Walk.at(page, visit({ screen: "FullVisit" }).readyForWater());
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    for (const task of ALL) {
      await walk.go(AT[task].replace("task/", "show/"));
      await expect(page.locator(".show h1, h1").first()).not.toHaveText(PAGES[task]);
      await expect(walk.button(BUTTONS.back)).toBeVisible();
      const wide = await page.evaluate(() => ({
        page: document.documentElement.scrollWidth,
        cut: [...document.querySelectorAll("h1, button")].filter((e) => e.scrollWidth > e.clientWidth + 1).length,
        small: Number.parseFloat(getComputedStyle(document.querySelector("h1")).fontSize) < 32,
      }));
      expect.soft(wide, task).toEqual({ page: 320, cut: 0, small: false });
    }
  });

  test("a task on its own: back leads to it", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.oneTask(PAGES.hold);
    await walk.press(BUTTONS.show);
    await walk.press(BUTTONS.back);
    await walk.isOn(PAGES.hold);
    expect(new URL(page.url()).hash).toMatch(/^#count\//);
  });

  test("said aloud only by a voice on the phone, in the language of the words", async ({ page }) => {
    await page.addInitScript(() => {
      window.spoken = [];
      class SpeechSynthesisVoice {}
      window.SpeechSynthesisVoice = SpeechSynthesisVoice;
      window.SpeechSynthesisUtterance = class {
        constructor(text) {
          this.text = text;
        }
      };
      window.hasVoices = (list) => (window.voices = list.map((voice) => Object.assign(new SpeechSynthesisVoice(), voice)));
      window.hasVoices([]);
      Object.defineProperty(window, "speechSynthesis", {
        configurable: true,
        value: {
          getVoices: () => window.voices,
          speak: ({ text, voice }) => window.spoken.push([text, voice.name]),
          cancel() {},
        },
      });
    });
    const walk = await Walk.at(page, visit({ screen: "FullVisit" }), AT.hold);
    for (const [voices, spoken] of [
      [[], false],
      // One that sends the words away, and one of another language.
      [[{ lang: "en-GB", localService: false }], false],
      [[{ lang: "de-DE", localService: true }], false],
      [
        [
          { lang: "en-US", localService: false, name: "far" },
          { lang: "en-GB", localService: true, name: "near" },
        ],
        true,
      ],
    ]) {
      await page.evaluate((list) => void window.hasVoices(list), voices);
      await walk.press(BUTTONS.show);
      await walk.wait(2_000);
      await expect(walk.button(BUTTONS.sayAloud)).toHaveCount(spoken ? 1 : 0);
      if (spoken) {
        await walk.press(BUTTONS.sayAloud);
        const words = await page.getByRole("heading", { level: 1 }).textContent();
        expect(await page.evaluate(() => window.spoken)).toEqual([[words, "near"]]);
      }
      await walk.press(BUTTONS.back);
      await walk.isOn(PAGES.hold);
    }
  });
});
