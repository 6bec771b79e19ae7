// Speech and breath timing: worked examples by presses at exact times, the beat and the stopwatch
// against real time, bad input, and what is handed over.
//
// The examples are those of tests/outside/speech_vectors.rs; the source stands beside each.

import { expect, openApp, test } from "./support.mjs";
import { marksOf, storedEvents } from "./store.mjs";
import {
  ASKED,
  BUTTONS,
  FIELDS,
  FOLDS,
  HOW_LONG,
  ORAL,
  PAGES,
  SAYS,
  SOUND,
  TEXT,
  TIMES,
  VERDICTS,
  Walk,
} from "./walk.mjs";

/** What is said of a result; the rule behind it, folded away, has words of its own. */
const flag = (walk, words) => walk.main.locator(".flag > p", { hasText: words });

/** One of the flags says this. */
const says = (walk, words) => expect(flag(walk, words).first()).toBeVisible();

/** None of them does. */
const silent = (walk, words) => expect(flag(walk, words)).toHaveCount(0);

const figure = (walk, words) => expect(walk.main.locator(".figure", { hasText: words })).toBeVisible();

/** The Oral motor screen on its first task, or straight on another. */
async function oralMotor(page, age, title) {
  const walk = await Walk.start(page);
  await walk.newVisit({ screen: "oralMotor", age });
  if (title) {
    await walk.straightTo(title);
  }
  return walk;
}

/** A Full visit straight on a task, past the gate. */
async function fullVisit(page, title, age) {
  const walk = await Walk.start(page);
  await walk.newVisit({ screen: "fullVisit", age });
  await walk.straightTo(title);
  return walk;
}

async function sight(page, seen) {
  await page.evaluate((visible) => {
    Object.defineProperty(document, "hidden", { configurable: true, get: () => !visible });
    Object.defineProperty(document, "visibilityState", {
      configurable: true,
      get: () => (visible ? "visible" : "hidden"),
    });
    document.dispatchEvent(new Event("visibilitychange"));
  }, seen);
}

test.describe("repeated syllables", () => {
  test("T4: 31 in 5 s are 6.2 a second", async ({ page }) => {
    // Source: arithmetic of a count of 5 seconds (GM08).
    const walk = await oralMotor(page, "30");
    await walk.syllables(31, 5);
    await figure(walk, "31 syllables of pa in 5.0 seconds: 6.2 syllables per second, correct");
    // Source: the tables of single syllables begin at 50 years (TAM25).
    await says(walk, SAYS.noPublished(30));
    await walk.saved();
    const events = await storedEvents(page);
    const start = marksOf(events, "Start")[0].at.m;
    expect(marksOf(events, "Tap").map(({ at }) => at.m - start)).toEqual(Array.from({ length: 31 }, (_, i) => i * 161));
  });

  for (const [name, seconds, said, never] of [
    ["T6: 20 in 6.8 s are slow", 6.8, /6\.8 seconds: .+ slow for this age; 2\.00 standard deviations above/, "in the usual range"],
    ["T7: 20 in 2.6 s are quick, never slow", 2.6, /2\.6 seconds: .+ in the usual range; 2\.20 standard deviations below/, "slow"],
  ]) {
    test(`${name}, at 6 years`, async ({ page }) => {
      // Source: FLE72/UW, pa, 6 years: 4.8 (1.0) seconds.
      const walk = await oralMotor(page, "6");
      await expect(walk.button(HOW_LONG.twenty)).toHaveAttribute("aria-pressed", "true");
      await walk.syllables(20, seconds, { byCount: true });
      await says(walk, said);
      await silent(walk, never);
      await walk.saved();
      const events = await storedEvents(page);
      const [{ at: start }] = marksOf(events, "Start");
      const [{ at: end }] = marksOf(events, "End");
      expect(end.m - start.m).toBe(seconds * 1000);
    });
  }

  test("T2: pa-ta-ka 10 times in 5.7 s, at 13 years", async ({ page }) => {
    // Source: FLE72/UW, pa-ta-ka, 13 years: 5.7 (1.5) seconds.
    const walk = await oralMotor(page, "13", PAGES.sequence);
    await expect(walk.button(HOW_LONG.ten)).toHaveAttribute("aria-pressed", "true");
    await expect(walk.button("pa-ta-ka")).toHaveAttribute("aria-pressed", "true");
    await walk.syllables(10, 5.7, { byCount: true });
    await figure(walk, "10 repetitions of pa-ta-ka in 5.7 seconds: 5.3 syllables per second = 1.8 sequences per second");
    await says(walk, "in the usual range; at the mean");
  });

  test("T12: pa-ta-ka, 25 syllables in 5 s, at 30 years: a note, not below the usual range", async ({ page }) => {
    // Source: IBD14, 6.2 (0.8) syllables per second; the authors' line of 5.4.
    const walk = await oralMotor(page, "30", PAGES.sequence);
    await expect(walk.button("syllable")).toHaveAttribute("aria-pressed", "true");
    await walk.syllables(25, 5);
    await says(walk, /5\.00 syllables per second: below 5\.4/);
    await says(walk, "in the usual range; 1.50 standard deviations below");
    await silent(walk, "below the usual range");
  });

  for (const age of ["14", "5"]) {
    test(`${age} years: no published value, nothing invented`, async ({ page }) => {
      // Source: FLE72/UW has the ages 6 to 13 and no other.
      const walk = await oralMotor(page, age);
      await walk.answer(ASKED.howLong, HOW_LONG.twenty);
      await walk.syllables(20, 5, { byCount: true });
      await figure(walk, "20 repetitions of pa in 5.0 seconds: 4.0 syllables per second");
      await says(walk, SAYS.noPublished(age));
      for (const invented of ["standard deviation", "usual range", "slow", /Published:/]) {
        await silent(walk, invented);
      }
    });
  }

  for (const [name, age, title, seconds, said] of [
    // Source: FLE72/UW, ta, 10 years: 3.8 (0.6) seconds; ka, 12 years: 3.9 (0.6) seconds.
    ["ta at the mean", "10", PAGES.ta, 3.8, "in the usual range; at the mean"],
    ["T10: ka in 4.5 s is worth watching", "12", PAGES.ka, 4.5, /4\.5 seconds: .+ 1\.00 standard deviation/],
  ]) {
    test(`${name}, at ${age} years`, async ({ page }) => {
      const walk = await oralMotor(page, age, title);
      await walk.syllables(20, seconds, { byCount: true });
      await says(walk, said);
    });
  }

  test("the taps on a line of time, and their evenness as the finger's own", async ({ page }) => {
    // Source: AJP19, GM08; ITO09 for more than 7 a second.
    const walk = await oralMotor(page, "30");
    await walk.syllables(35, 5);
    await expect(page.getByRole("img", { name: "The taps on a line of time" }).locator("i")).toHaveCount(35);
    await expect(page.getByText("This is the evenness of the finger, not of the person")).toBeVisible();
    await silent(walk, "miscounts more");
    await walk.press(BUTTONS.nextTrial);
    await walk.syllables(36, 5);
    await says(walk, /7\.2.+ miscounts more|miscounts more/);
  });

  test("the fastest correct one of three is scored", async ({ page }) => {
    // Source: DIE19.
    const walk = await oralMotor(page, "30");
    await walk.syllables(20, 5);
    await walk.press(BUTTONS.nextTrial);
    await walk.syllables(35, 5, { sound: SOUND.distorted });
    await walk.press(BUTTONS.nextTrial);
    await walk.syllables(25, 5);
    await figure(walk, /Trial 1: 20 syllables .+ 4\.0 syllables per second, correct/);
    await figure(walk, /Trial 2: 35 syllables .+ 7\.0 syllables per second, distorted/);
    await figure(walk, /Trial 3: 25 syllables .+ 5\.0 syllables per second, correct/);
    await says(walk, "25 syllables of pa in 5.0 seconds");
    await walk.press(BUTTONS.back);
    await expect(walk.button(/^pa-pa-pa pa 5\.0 syllables per second$/)).toBeVisible();
  });

  test("how it sounded was not said: not scored, and it is said so, in the handover too", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await walk.startPad();
    await walk.count(24, 200);
    await walk.wait(1_000);
    await walk.settle();
    await figure(walk, "25 syllables of pa in 5.0 seconds: 5.0 syllables per second");
    await says(walk, "Pa: how it sounded was not said, so no rate is scored.");
    await walk.straightTo(PAGES.ah);
    await walk.held(12);
    await walk.toDecision(VERDICTS.examined);
    await says(walk, "Pa: how it sounded was not said, so no rate is scored.");
    await walk.toHandover();
    await expect(walk.text).toContainText("pa not scored, how it sounded was not said");
  });

  test("another trial that was opened and not begun takes nothing away", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await walk.syllables(25, 5);
    await walk.press(BUTTONS.nextTrial);
    await expect(walk.pad).toBeVisible();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.ta);
    await walk.press(BUTTONS.back);
    await expect(walk.button(/^pa-pa-pa pa 5\.0 syllables per second$/)).toBeVisible();
  });

  test("children: two single syllables that could not be said, and pa-ta-ka steps aside", async ({ page }) => {
    // Source: DIE19.
    const walk = await oralMotor(page, "4");
    for (const [title, sound] of [
      [PAGES.pa, SOUND.couldNot],
      [PAGES.ta, SOUND.couldNot],
      [PAGES.ka, SOUND.correct],
    ]) {
      await walk.isOn(title);
      await walk.syllables(5, 5, { sound });
      await walk.press(BUTTONS.next);
    }
    await walk.isOn(PAGES.sequence);
    const reason = "Sequences such as pa-ta-ka are left out: 1 of the single syllables succeeded, and it takes 2.";
    await expect(page.getByText(reason)).toBeVisible();
    await expect(walk.pad).toHaveCount(0);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.ah);
    await walk.held(8);
    await walk.toDecision(VERDICTS.examined);
    await says(walk, reason);
  });

  test("adults are asked for pa-ta-ka all the same", async ({ page }) => {
    const walk = await oralMotor(page, "40");
    for (const title of [PAGES.pa, PAGES.ta]) {
      await walk.isOn(title);
      await walk.syllables(5, 5, { sound: SOUND.couldNot });
      await walk.press(BUTTONS.next);
    }
    await walk.press(BUTTONS.skip);
    await walk.isOn(PAGES.sequence);
    await expect(walk.pad).toBeVisible();
  });

  test("under 3 years they step aside", async ({ page }) => {
    // Source: DIE19.
    const walk = await Walk.start(page);
    await walk.newVisit({ screen: "oralMotor", age: "2", first: PAGES.ah });
    await expect(walk.pad).toBeVisible();
    const reason = "Repeated syllables are offered from 3 years; this child is 2 years old.";
    await walk.held(5);
    await walk.toDecision(VERDICTS.examined);
    await says(walk, reason);
    await walk.press(BUTTONS.back);
    for (const title of [PAGES.pa, PAGES.ta, PAGES.ka, PAGES.sequence]) {
      await walk.press(new RegExp(`^${title} left out$`));
      await walk.isOn(title);
      await expect(page.getByText(reason)).toBeVisible();
      await expect(walk.pad).toHaveCount(0);
      await walk.press(BUTTONS.back);
    }
  });
});

test.describe("held sounds", () => {
  test("longest ah of 9.9 s: a note; best of three, with the mean, and no fourth", async ({ page }) => {
    // Source: local policy (VDOC), under 10 seconds.
    const walk = await oralMotor(page, "30", PAGES.ah);
    await walk.held(9.9);
    await figure(walk, "Trial 1: 9.9 s");
    await says(walk, 'Longest "ah": 9.9 seconds (one trial): under 10 seconds.');
    for (const seconds of [9.0, 8.1]) {
      await walk.press(BUTTONS.nextTrial);
      await walk.held(seconds);
    }
    await says(walk, 'Longest "ah": 9.9 seconds, the best of 3 (mean 9.0 seconds, shortest 8.1 seconds): under 10 seconds.');
    await walk.answer(ASKED.voice, "Breathy");
    await figure(walk, "Trial 3: 8.1 s, voice breathy");
    await expect(page.getByText("The spread among healthy people is wide; height, frailty")).toBeVisible();
    await expect(page.getByText(SAYS.noMore)).toBeVisible();
    await expect(walk.button(BUTTONS.nextTrial)).toHaveCount(0);
    await walk.toDecision(VERDICTS.examined);
  });

  test("longest ah of 10.0 s: no note", async ({ page }) => {
    const walk = await oralMotor(page, "30", PAGES.ah);
    await walk.held(10);
    await figure(walk, "Trial 1: 10.0 s");
    await silent(walk, "under 10 seconds");
  });

  for (const [name, s, z, ratio, above] of [
    // Source: EB81, above 1.4 strictly, rounded to hundredths first.
    ["T20: s 15.4, z 11.0 is not above 1.4", 15.4, 11, "1.40", false],
    ["T21: s 20.0, z 14.0 is above 1.4", 20, 14, "1.43", true],
  ]) {
    test(name, async ({ page }) => {
      const walk = await fullVisit(page, PAGES.s, "40");
      await walk.held(s);
      await walk.press(BUTTONS.next);
      await walk.isOn(PAGES.z);
      await walk.held(z);
      await says(walk, `ratio ${ratio} to 1: ${above ? "above 1.4, a reason to have the larynx looked at" : "borderline"}`);
      if (!above) {
        await silent(walk, ": above 1.4");
      }
    });
  }

  test("T22: z never came, so no ratio, and it says why", async ({ page }) => {
    const walk = await fullVisit(page, PAGES.s, "40");
    await walk.held(18);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.z);
    await walk.press(BUTTONS.noVoice);
    await walk.settle();
    await says(walk, "The ratio of s to z cannot be computed: z was not held.");
    await silent(walk, "above 1.4");
  });

  test("a child's ratio is reported, not judged", async ({ page }) => {
    // Source: GP06.
    const walk = await fullVisit(page, PAGES.s, "8");
    await walk.held(10);
    await walk.press(BUTTONS.next);
    await walk.held(5);
    await says(walk, "ratio 2.00 to 1. In children it is reported, not judged");
    await silent(walk, "above 1.4");
  });

  test("s without z: no ratio", async ({ page }) => {
    const walk = await fullVisit(page, PAGES.s, "40");
    await walk.held(15);
    await silent(walk, "ratio");
  });

  test("z without s: no ratio, and it says why", async ({ page }) => {
    const walk = await fullVisit(page, PAGES.z, "40");
    await walk.held(11);
    await says(walk, "The ratio of s to z cannot be computed: there is no time for s.");
  });

  test("the glide is recorded as heard", async ({ page }) => {
    const walk = await fullVisit(page, PAGES.glide);
    await walk.held(4);
    await walk.answer(ASKED.up, "Stepped");
    await walk.answer(ASKED.down, "Smooth");
    await figure(walk, "heard: up stepped, down smooth");
    await expect(page.getByText("As heard; no line is drawn on it.")).toBeVisible();
    await expect(walk.main.locator(".flag")).toHaveCount(0);
  });
});

test.describe("breath", () => {
  for (const [reached, said] of [
    // Source: DIS23, 25 and more; two a second after BAR94.
    ["25", "Counted to 25 on one breath (about 12.5 seconds at 2 a second): 25 and more fits"],
    ["24", "Counted to 24 on one breath (about 12.0 seconds at 2 a second): fewer than 25."],
  ]) {
    test(`T28: counted to ${reached}`, async ({ page }) => {
      const walk = await fullVisit(page, PAGES.countOnBreath, "60");
      await walk.startPad();
      // The first beat is "one", two a second after it.
      await walk.counted(1);
      await walk.wait(499);
      await walk.counted(1);
      await walk.wait(51);
      await walk.counted(2);
      await walk.wait(Number(reached) * 500 - 550);
      await walk.press(walk.pad);
      await walk.settle();
      await walk.field(FIELDS.highest).fill(reached);
      await says(walk, said);
      await figure(walk, `Trial 1: counted to ${reached}, ${reached / 2}`);
    });
  }

  test("a highest number that cannot be", async ({ page }) => {
    const walk = await fullVisit(page, PAGES.countOnBreath, "60");
    await walk.held(12);
    const field = walk.field(FIELDS.highest);
    // Nothing beside it that makes a reading with one stray press.
    await expect(walk.main.locator(".stepper button")).toHaveCount(0);
    for (const [typed, words] of [
      ["500", "Between 0 and 200."],
      ["-1", "Between 0 and 200."],
      ["many", "This is a number, like 15."],
    ]) {
      await field.fill(typed);
      await expect(field).toHaveAccessibleDescription(words);
      await silent(walk, "Counted to");
    }
  });

  test("breath hold is recorded, not judged", async ({ page }) => {
    // Source: common practice for the 5 seconds; CHE13, VER for why nothing is judged.
    const walk = await fullVisit(page, PAGES.hold);
    await walk.held(5.2);
    await says(walk, "Breath held for 5.2 seconds (5 seconds asked): recorded, not judged.");
  });

  for (const [seconds, bubbles, said] of [
    // Source: TEACH2, LAB (secondary).
    [5.0, "Continuous, at 5 cm", "blown for 5.0 seconds; done: the clinician saw continuous bubbles at 5 cm"],
    [4.9, "Continuous, at 5 cm", "blown for 4.9 seconds; not done: shorter than 5.0 seconds"],
    [9.0, "Broken off, or not at 5 cm", "blown for 9.0 seconds; not done: the bubbles broke off"],
    [9.0, "Nobody watched", "blown for 9.0 seconds; not known, nobody saw the bubbles"],
  ]) {
    test(`5 cm of water, ${seconds} s, ${bubbles}`, async ({ page }) => {
      const walk = await fullVisit(page, PAGES.five);
      await walk.held(seconds);
      await says(walk, "what was seen of the bubbles was not said");
      await walk.answer(ASKED.bubbles, bubbles);
      await says(walk, said);
      await silent(walk, "not scored");
    });
  }
});

test.describe("what can go wrong", () => {
  test("no stop before the start; a second touch is no second start", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await expect(walk.button(BUTTONS.stopCount)).toHaveCount(0);
    await walk.startPad();
    await walk.counted(1);
    await walk.pad.tap();
    await walk.counted(2);
    await walk.saved();
    expect(marksOf(await storedEvents(page), "Start")).toHaveLength(1);
  });

  test("a call in the middle: the trial is kept with its reason, and has no rate", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await walk.startPad();
    await walk.count(5, 200);
    await sight(page, false);
    await walk.wait(2_000);
    await sight(page, true);
    await walk.wait(3_000);
    await walk.settle();
    await walk.answer(ASKED.sound, SOUND.correct);
    await figure(walk, "Trial 1: 6 taps, no rate, correct");
    await expect(page.getByText(`${SAYS.outOfSight} 2.0 s during this time: presses may be missing.`)).toBeVisible();
    await says(walk, "no correct trial with a time among 1, so no rate is scored");
    await says(walk, `pa-pa-pa, trial 1: kept, not scored: ${SAYS.outOfSight} 2.0 s during this time.`);
    await expect(walk.main.locator(".figure, .flag", { hasText: "per second" })).toHaveCount(0);
    // The next one counts.
    await walk.press(BUTTONS.nextTrial);
    await walk.syllables(25, 5);
    await says(walk, "25 syllables of pa in 5.0 seconds: 5.0 syllables per second");
  });

  test("a call while a sound is held: the trial is kept with its reason, and told", async ({ page }) => {
    const walk = await oralMotor(page, "30", PAGES.ah);
    await walk.startPad();
    await walk.wait(2_000);
    await sight(page, false);
    await walk.wait(3_000);
    await sight(page, true);
    await walk.press(walk.pad);
    await walk.settle();
    await figure(walk, "Trial 1: 5.0 s, not scored");
    const why = `${SAYS.outOfSight} 3.0 s during this time`;
    await says(walk, `Longest "ah", trial 1: kept, not scored: ${why}.`);
    await silent(walk, "under 10 seconds");
    // It leaves its place to another.
    await expect(walk.button(BUTTONS.nextTrial)).toContainText("1 done, up to 3");
    await walk.toDecision(VERDICTS.examined);
    await says(walk, `kept, not scored: ${why}`);
    await walk.toHandover();
    await expect(walk.text).toContainText(`longest "ah" not scored: ${why}`);
  });

  test("23 of 20: said, not compared", async ({ page }) => {
    const walk = await oralMotor(page, "6");
    await walk.syllables(23, 6.9, { byCount: true });
    await figure(walk, "23 repetitions of pa in 6.9 seconds: 3.3 syllables per second");
    for (const judged of ["standard deviation", "usual range", "slow", /Published:/]) {
      await silent(walk, judged);
    }
    await says(walk, "No published value for pa measured this way; published: seconds for 20 repetitions.");
  });

  test("stopped in the same millisecond: no time, no rate", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await walk.answer(ASKED.howLong, HOW_LONG.twenty);
    await walk.startPad();
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await walk.answer(ASKED.sound, SOUND.correct);
    await expect(page.getByText("Start and stop are the same moment: please time this again.")).toBeVisible();
    await expect(walk.main.locator(".figure, .flag", { hasText: "per second" })).toHaveCount(0);
    await walk.straightTo(PAGES.ah);
    await walk.held(0);
    await figure(walk, "Trial 1: 0.0 s");
    await expect(page.getByText("Start and stop are the same moment: please time this again.")).toBeVisible();
    await says(walk, 'Longest "ah", trial 1: kept, not scored: start and stop are the same moment.');
    await silent(walk, "under 10 seconds");
    await walk.press(BUTTONS.nextTrial);
    await walk.held(12);
    await walk.toDecision(VERDICTS.examined);
    await silent(walk, "0.0 seconds");
  });

  test("reloaded in the middle, a running trial goes on", async ({ page }) => {
    const walk = await oralMotor(page, "30", PAGES.ah);
    await walk.startPad();
    await walk.wait(2_000);
    await walk.saved();
    await page.reload();
    await walk.isOn(PAGES.ah);
    await expect(page.getByRole("timer")).toContainText("2.");
    await walk.wait(3_000);
    await walk.press(walk.pad);
    await walk.settle();
    await figure(walk, /Trial 1: 5\.\d s/);
    await says(walk, `kept, not scored: ${SAYS.restarted}`);
    await silent(walk, "under 10 seconds");
  });

  test("undo of the first tap takes the start back with it", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    const before = await walk.pad.textContent();
    await walk.startPad();
    await walk.count(1, 200);
    await walk.press(BUTTONS.undo);
    await walk.counted(1);
    await walk.press(BUTTONS.undo);
    await expect(walk.pad).toHaveText(before);
    await expect(page.getByRole("timer")).toHaveCount(0);
    // The time counts from the new first tap.
    await walk.wait(4_000);
    await walk.syllables(25, 5);
    await figure(walk, "25 syllables of pa in 5.0 seconds");
  });

  test("a time that ran out keeps its first tap", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await walk.syllables(2, 5);
    await walk.press(BUTTONS.undo);
    await figure(walk, "1 syllables of pa in 5.0 seconds");
    await expect(walk.button(BUTTONS.undo)).toHaveCount(0);
  });

  test("two touches where one was meant: a short trial, which undo takes back", async ({ page }) => {
    const walk = await oralMotor(page, "30", PAGES.ah);
    await walk.held(0.12);
    await figure(walk, "Trial 1: 0.1 s");
    await walk.press(BUTTONS.undo);
    // The end is taken back: the sound goes on, from its own start.
    await walk.wait(11_000);
    await walk.press(walk.pad);
    await walk.settle();
    await figure(walk, /Trial 1: 11\.\d s/);
    await silent(walk, "under 10 seconds");
    // Both, and it is as if nothing had been touched.
    await walk.press(BUTTONS.undo);
    await walk.press(BUTTONS.undo);
    await expect(walk.pad).toHaveText("Touch when it starts");
  });
});

test.describe("handed over", () => {
  test.beforeEach(async ({ context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  });

  test("the Oral motor screen: rates with their units, no swallow, no action asked", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    for (const n of [31, 30, 29, 25]) {
      await walk.syllables(n, 5);
      await walk.press(BUTTONS.next);
    }
    await walk.isOn(PAGES.ah);
    await walk.held(15.4);
    await walk.toDecision(VERDICTS.examined);
    await walk.toHandover();
    await expect(walk.group(ASKED.untilReviewed)).toHaveCount(0);
    const text = await walk.copy();
    expect(text).toMatch(TEXT.examined);
    expect(text).toContain("pa 6.2 syllables per second");
    expect(text).toContain("ta 6.0 syllables per second");
    expect(text).toContain("ka 5.8 syllables per second");
    expect(text).toContain("pa-ta-ka 5.0 syllables per second = 1.7 sequences per second");
    expect(text).toContain('longest "ah" 15.4 seconds');
    expect([...text].length).toBeLessThan(1_200);
    expect(text).not.toMatch(/\bz\b/i);
    // Every figure with a decimal has its unit.
    expect(text.match(/\d+\.\d+(?! (syllables|sequences|seconds))/g)).toBeNull();
    expect(text).not.toContain("NOTHING BY MOUTH");
  });

  test("the Oral motor screen, declined: not finished, and no swallow screen", async ({ page }) => {
    const walk = await oralMotor(page, "30");
    await walk.unfold(FOLDS.endHere);
    await walk.press(BUTTONS.declined);
    await walk.decided(VERDICTS.examined);
    await expect(page.getByText("Not finished: the person declined.")).toBeVisible();
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toMatch(TEXT.notFinished);
    expect(text).toContain("the person declined");
    expect(text).not.toContain("SWALLOW SCREEN");
  });

  test("a Full visit, all clear", async ({ page }) => {
    test.setTimeout(180_000);
    const walk = await Walk.start(page);
    await walk.newVisit({ screen: "fullVisit", age: "30" });
    await walk.gate();
    for (const at of ORAL.pages.slice(0, -1).keys()) {
      await walk.region(at);
    }
    for (const title of [PAGES.pa, PAGES.ta, PAGES.ka, PAGES.sequence]) {
      await walk.isOn(title);
      await walk.syllables(30, 5);
      await walk.press(BUTTONS.next);
    }
    for (const [title, seconds] of [
      [PAGES.ah, 20],
      [PAGES.s, 18],
      [PAGES.z, 18],
    ]) {
      await walk.isOn(title);
      await walk.held(seconds);
      await walk.press(BUTTONS.next);
    }
    await walk.isOn(PAGES.glide);
    await walk.held(4);
    await walk.answer(ASKED.up, "Smooth");
    await walk.answer(ASKED.down, "Smooth");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.countOnBreath);
    await walk.held(22);
    await walk.field(FIELDS.highest).fill("44");
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.hold);
    await walk.held(6);
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.five);
    await walk.held(6);
    await walk.answer(ASKED.bubbles, "Continuous, at 5 cm");
    await walk.press(BUTTONS.next);
    await walk.breaths();
    await walk.press(BUTTONS.next);
    await walk.dry();
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.water);
    await walk.drink();
    await walk.finishWater();
    await walk.press(BUTTONS.next);
    await walk.region(ORAL.pages.length - 1);
    await walk.decided(VERDICTS.pass);
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toMatch(TEXT.pass);
    expect([...text].length).toBeLessThan(1_200);
  });

  test("one task, attached to a visit: shown there, and handed over", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit({ screen: "oralMotor", age: "60" });
    await walk.saved();
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.oneTask(PAGES.countOnBreath);
    await walk.held(12);
    await walk.field(FIELDS.highest).fill("24");
    await says(walk, "Age not given: read by the rule for adults.");
    await walk.attachTo(/^Visit 1/);
    await expect(page.getByRole("heading", { name: SAYS.attached })).toBeVisible();
    await expect(page.getByText("Counting on one breath: counted to 24, 12.0 s")).toBeVisible();
    await walk.press(/^Longest "ah"/);
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.examined);
    await says(walk, "Counted to 24 on one breath");
    await walk.toHandover();
    const text = await walk.copy();
    expect(text).toMatch(TEXT.examined);
    expect(text).toContain("counted to 24 on one breath");
  });

  test("a low count of dry swallows that is attached decides, whatever the screen", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.newVisit({ screen: "oralMotor", age: "60" });
    await walk.saved();
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.oneTask(PAGES.dry);
    await walk.dry(1);
    // Late ones are kept for as long again.
    await walk.wait(TIMES.dry);
    await walk.attachTo(/^Visit 1/);
    await walk.press(/^Longest "ah"/);
    await walk.press(BUTTONS.skip);
    await walk.decided(VERDICTS.refer);
    await says(walk, "1 dry swallow in 30 seconds");
  });
});

test.describe("shown to the patient", () => {
  const ALL = [
    PAGES.pa,
    PAGES.ta,
    PAGES.ka,
    PAGES.sequence,
    PAGES.ah,
    PAGES.s,
    PAGES.z,
    PAGES.glide,
    PAGES.countOnBreath,
    PAGES.hold,
    PAGES.five,
  ];

  test("every task fits the smallest screen with the largest text", async ({ page }) => {
    const walk = await fullVisit(page, ALL[0]);
    await page.setViewportSize({ width: 320, height: 640 });
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    for (const [i, title] of ALL.entries()) {
      if (i > 0) {
        await walk.straightTo(title);
      }
      await walk.press(BUTTONS.show);
      await expect(walk.button(BUTTONS.back)).toBeVisible();
      const wide = await page.evaluate(() => ({
        page: document.documentElement.scrollWidth,
        cut: [...document.querySelectorAll("h1, button")].filter((e) => e.scrollWidth > e.clientWidth + 1).length,
      }));
      expect.soft(wide, title).toEqual({ page: 320, cut: 0 });
      await walk.press(BUTTONS.back);
      await walk.isOn(title);
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

  for (const [name, voices, spoken] of [
    ["no voice at all", [], false],
    ["only a voice that sends the words away", [{ lang: "en-GB", localService: false }], false],
    ["only a voice of another language", [{ lang: "de-DE", localService: true }], false],
    [
      "a voice on the phone",
      [
        { lang: "en-US", localService: false, name: "far" },
        { lang: "en-GB", localService: true, name: "near" },
      ],
      true,
    ],
  ]) {
    test(`said aloud: ${name}`, async ({ page }) => {
      await page.addInitScript((list) => {
        window.spoken = [];
        class SpeechSynthesisVoice {}
        window.SpeechSynthesisVoice = SpeechSynthesisVoice;
        window.SpeechSynthesisUtterance = class {
          constructor(text) {
            this.text = text;
          }
        };
        const voices = list.map((voice) => Object.assign(new SpeechSynthesisVoice(), voice));
        Object.defineProperty(window, "speechSynthesis", {
          configurable: true,
          value: {
            getVoices: () => voices,
            speak: ({ text, voice }) => window.spoken.push([text, voice.name]),
            cancel() {},
          },
        });
      }, voices);
      const walk = await fullVisit(page, PAGES.hold);
      await walk.press(BUTTONS.show);
      await walk.wait(2_000);
      await expect(walk.button(BUTTONS.sayAloud)).toHaveCount(spoken ? 1 : 0);
      if (spoken) {
        await walk.press(BUTTONS.sayAloud);
        const words = await page.getByRole("heading", { level: 1 }).textContent();
        expect(await page.evaluate(() => window.spoken)).toEqual([[words, "near"]]);
      }
    });
  }
});

/** Notes every press on the pad by its own stamp, before the app sees it. */
async function noteThePresses(page) {
  await page.addInitScript(() => {
    window.presses = [];
    addEventListener(
      "pointerdown",
      (event) => {
        if (event.target.closest?.("#pad")) {
          window.presses.push({ at: event.timeStamp, handled: performance.now() });
        }
      },
      true,
    );
  });
}

/** The stored length of every trial beside the one between its presses' own stamps, in ms. */
async function storedBesidePressed(walk) {
  const { page } = walk;
  await walk.saved();
  const events = await storedEvents(page);
  const [starts, ends] = [marksOf(events, "Start"), marksOf(events, "End")];
  const presses = await page.evaluate(() => window.presses);
  expect(presses).toHaveLength(starts.length + ends.length);
  return starts.map(({ at }, i) => ({
    stored: ends[i].at.m - at.m,
    pressed: presses[2 * i + 1].at - presses[2 * i].at,
    late: Math.max(...presses.slice(2 * i, 2 * i + 2).map((press) => press.handled - press.at)),
  }));
}

function near(lengths, info) {
  for (const { stored, pressed, late } of lengths) {
    const error = stored - pressed;
    info.annotations.push({
      type: "stopwatch",
      description: `${(pressed / 1000).toFixed(3)} s: ${error.toFixed(2)} ms off, handled up to ${late.toFixed(0)} ms late`,
    });
    expect(Math.abs(error)).toBeLessThanOrEqual(5);
  }
}

test("0.5 to 60 s by exact presses, handled late, on a phone six times as slow", async ({ page }, info) => {
  test.setTimeout(120_000);
  const walk = await Walk.start(page);
  await walk.oneTask(PAGES.hold);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: 6 });
  /** A press of so long ago by its own stamp, as one that waited for a busy phone. */
  const press = (late) =>
    page.evaluate((ago) => {
      const event = new PointerEvent("pointerdown", { bubbles: true, cancelable: true, button: 0, isPrimary: true });
      const at = performance.now() - ago;
      Object.defineProperty(event, "timeStamp", { value: at });
      document.querySelector("#pad").dispatchEvent(event);
      return at;
    }, late);
  const lengths = [];
  for (const [seconds, late] of [
    [0.5, [0, 83]],
    [1, [240.4, 0]],
    [5, [12.7, 310]],
    [20, [0, 0]],
    [45.678, [180, 9.3]],
    [60, [95.5, 240]],
  ]) {
    // In threes: no more trials are asked for of one task.
    if (lengths.length === 3) {
      await walk.press(BUTTONS.done);
      await walk.oneTask(PAGES.hold);
    } else if (lengths.length > 0) {
      await walk.press(BUTTONS.nextTrial);
    }
    await expect(walk.pad).toHaveText("Touch when held");
    const start = await press(late[0]);
    await expect(walk.pad).toHaveText("Touch when let go");
    await walk.wait(seconds * 1_000 - late[0] + late[1]);
    const end = await press(late[1]);
    await walk.settle();
    lengths.push({ pressed: end - start, late: Math.max(...late) });
  }
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await walk.saved();
  const events = (await storedEvents(page)).sort((a, b) => a.at.w - b.at.w || a.seq - b.seq);
  const [starts, ends] = [marksOf(events, "Start"), marksOf(events, "End")];
  expect(starts).toHaveLength(lengths.length);
  near(
    lengths.map((length, i) => ({ ...length, stored: ends[i].at.m - starts[i].at.m })),
    info,
  );
});

test("a stopwatch on a phone six times as slow", async ({ page }, info) => {
  await noteThePresses(page);
  await openApp(page);
  const walk = new Walk(page, { real: true });
  await walk.oneTask(PAGES.hold);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: 6 });
  for (const [i, seconds] of [0.5, 5, 20].entries()) {
    if (i > 0) {
      await walk.press(BUTTONS.nextTrial);
    }
    await walk.held(seconds);
  }
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const lengths = await storedBesidePressed(walk);
  expect(lengths).toHaveLength(3);
  near(lengths, info);
});

// Real time on a machine that may be busy with something else: another go, never a wider bound.
test.describe("in real time", () => {
  test.describe.configure({ retries: 2 });

  test("the beat: two a second for a minute on one grid, and on it again after ten seconds away", async ({ page }, info) => {
    test.setTimeout(150_000);
    const EVERY = 500;
    await noteThePresses(page);
    await page.addInitScript(() => {
      window.tones = [];
      const { start } = AudioScheduledSourceNode.prototype;
      AudioScheduledSourceNode.prototype.start = function (when) {
        const { currentTime } = this.context;
        window.tones.push({ hertz: this.frequency?.value, when: Math.max(when, currentTime), currentTime, now: performance.now() });
        return start.call(this, when);
      };
    });
    await openApp(page);
    const walk = new Walk(page, { real: true });
    await walk.oneTask(PAGES.countOnBreath);
    await walk.startPad();
    await page.waitForTimeout(60_000);

    // Out of sight, and the page's timers stand still, as on a phone that rings.
    await sight(page, false);
    const away = await page.evaluate(() => {
      const from = performance.now();
      while (performance.now() < from + 10_000);
      return { from, to: performance.now() };
    });
    await sight(page, true);
    await page.waitForTimeout(3_000);
    const devtools = await page.context().newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: 6 });
    await walk.press(walk.pad);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: 1 });

    const tones = await page.evaluate(() => window.tones);
    const [{ at: pressed, handled }] = await page.evaluate(() => window.presses);
    // The page's time of every tone, by the pair of clocks at the first one.
    const [first] = tones;
    const offBy = first.now - first.currentTime * 1000;
    const beats = tones.map(({ when, currentTime, now }) => {
      const at = when * 1000 + offBy - pressed;
      const beat = Math.round(at / EVERY);
      // How far the two clocks have come apart since, as seen at this call.
      return { at, beat, error: at - beat * EVERY, apart: currentTime * 1000 + offBy - now };
    });
    const before = beats.filter(({ at }) => at < 60_000 - EVERY / 2);
    const back = away.to - pressed;
    const after = beats.filter(({ at }) => at >= back);
    const errors = beats.map(({ error }) => error);
    const others = errors.slice(1);
    const apart = beats.map((beat) => beat.apart);
    const [low, high] = [Math.min(...others), Math.max(...others)].map((ms) => ms.toFixed(2));
    info.annotations.push({
      type: "beat",
      description:
        `${before.length} beats in 60.0 s; ${low} to ${high} ms off the grid; the first ${errors[0].toFixed(2)} ms, its press handled ${(handled - pressed).toFixed(2)} ms late; ` +
        `audio against page ${Math.min(...apart).toFixed(1)} to ${Math.max(...apart).toFixed(1)} ms; ` +
        `after ${((away.to - away.from) / 1000).toFixed(1)} s away: ${after.length} beats, ` +
        `the next ${after[0]?.error.toFixed(2)} ms off the grid`,
    });

    // One tick for each beat, and no other tone.
    expect(new Set(tones.map(({ hertz }) => hertz)).size).toBe(1);
    expect(before.map(({ beat }) => beat)).toEqual(Array.from({ length: 120 }, (_, i) => i));
    expect(new Set(beats.map(({ beat }) => beat)).size).toBe(beats.length);
    // The first answers the press, so it can't sound before the press was handled.
    expect(errors[0] - (handled - pressed)).toBeLessThanOrEqual(30);
    for (const { beat, error } of beats.slice(1)) {
      expect(Math.abs(error), `beat ${beat}`).toBeLessThanOrEqual(5);
    }
    // Away they stayed out; back, they go on with the very next one of the grid.
    expect(beats.filter(({ at }) => at > away.from - pressed + EVERY && at < back)).toEqual([]);
    expect(after[0].beat).toBe(Math.ceil((back - 5) / EVERY));
    expect(after.length).toBeGreaterThanOrEqual(5);
    near(await storedBesidePressed(walk), info);
  });
});
