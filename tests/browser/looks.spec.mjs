// Every page for everybody: axe at WCAG 2.2 AA, light, dark and high contrast, small screen with
// large text, on its side, targets that a gloved thumb hits.

import fs from "node:fs";
import { createRequire } from "node:module";
import { visit } from "./journal.mjs";
import { appStarted, expect, openApp, test } from "./support.mjs";
import { ACTIONS, ASKED, AT, BUTTONS, FIELDS, FOLDS, GATE, ORAL, PAGES, SAYS, SIGNS, SOUND, stopTime, TIMES, VERDICTS, Walk } from "./walk.mjs";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const PHONE = { name: "390 px", width: 390, height: 844, text: "" };
const SMALL = { name: "320 px, text at 200 %", width: 320, height: 640, text: "200%" };
const SIDEWAYS = { name: "on its side", width: 844, height: 390, text: "" };
/** What every control has at least, and what is pressed while the eyes are on the patient. */
const LEAST = 44;
const LEAST_AT_WORK = 64;

/**
 * Looks at the page as it stands, in every size and every look; names what is wrong. `least`: what
 * its controls have at least.
 */
async function inspect(walk, name, { atWork = false, sideways = atWork, least = 56 } = {}) {
  const { page } = walk;
  const wrong = [];
  // What stays at the lower edge covers whatever is scrolled under it; anybody scrolls on.
  await page.evaluate(() => document.querySelector(".settle")?.style.setProperty("position", "static"));
  const note = (where, words) => wrong.push(...words.map((what) => `${name}, ${where}: ${what}`));
  await letGo(page);
  await dress(page, PHONE);
  note(PHONE.name, await measure(page, PHONE, { any: least, work: atWork ? LEAST_AT_WORK : least }));
  note("light", await axe(page, "tag", TAGS));
  // Of all that axe looks at only the contrast goes by the colours ...
  for (const look of ["dark", "contrast"]) {
    await page.evaluate((is) => (document.documentElement.dataset.look = is), look);
    note(look, await axe(page, "rule", ["color-contrast"]));
  }
  await page.evaluate(() => delete document.documentElement.dataset.look);
  // ... and only this by the size.
  for (const size of sideways ? [SMALL, SIDEWAYS] : [SMALL]) {
    await dress(page, size);
    note(size.name, await measure(page, size, { any: LEAST, work: atWork && size === SMALL ? LEAST_AT_WORK : LEAST }));
    note(size.name, await axe(page, "rule", ["target-size", "scrollable-region-focusable"]));
  }
  await dress(page, PHONE);
  // A page that was too wide leaves the browser zoomed out.
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setPageScaleFactor", { pageScaleFactor: 1 });
  await devtools.detach();
  await page.evaluate(() => document.querySelector(".settle")?.style.removeProperty("position"));
  expect.soft(wrong, name).toEqual([]);
}

/** A button that was pressed keeps its pressed look for a moment, by the browser's own clock. */
async function letGo(page) {
  await expect.poll(() => page.evaluate(() => document.querySelectorAll("button:active").length)).toBe(0);
}

async function dress(page, { width, height, text }) {
  await page.setViewportSize({ width, height });
  await page.evaluate((is) => {
    document.documentElement.style.fontSize = is;
    scrollTo(0, 0);
  }, text);
}

/** The axe that belongs to its package for Playwright, whose own way of calling it brings it anew each time. */
const AXE = fs.readFileSync(createRequire(import.meta.resolve("@axe-core/playwright")).resolve("axe-core/axe.min.js"), "utf8");

/** What axe finds: by all rules with these tags, or by these rules. */
async function axe(page, type, values) {
  if (!(await page.evaluate(() => "axe" in window))) {
    await page.evaluate(AXE);
  }
  return page.evaluate(
    async (runOnly) => {
      // It waits by timers, which stand still here, so it gets the browser's own.
      const swap = () => ([window.setTimeout, window.otherTimeout] = [window.otherTimeout, window.setTimeout]);
      swap();
      const { violations } = await window.axe.run(document, { runOnly, resultTypes: ["violations"] });
      swap();
      return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id} at ${node.target}: ${node.failureSummary}`));
    },
    { type, values },
  );
}

/** Widths, heights, and whether every control can be reached. */
function measure(page, { width }, least) {
  return page.evaluate(
    ([wide, least]) => {
      const wrong = [];
      const { scrollWidth } = document.documentElement;
      if (scrollWidth > wide) {
        const widest = [...document.querySelectorAll("#app *")]
          .filter((element) => element.getBoundingClientRect().right > wide + 1)
          .map((element) => `${element.tagName}.${element.className}`);
        wrong.push(`scrolls sideways: ${scrollWidth} px wide, because of ${widest.slice(-3)}`);
      }
      const named = (element) => `"${(element.ariaLabel ?? element.textContent ?? "").trim().slice(0, 40) || element.id}"`;
      for (const control of document.querySelectorAll("button, summary, input, a[href]")) {
        if (!control.checkVisibility()) {
          continue;
        }
        // As the browser does for the focus: no further than needed.
        scrollTo(0, 0);
        control.scrollIntoView({ block: "nearest", behavior: "instant" });
        const box = control.getBoundingClientRect();
        const work = control.matches(".pad, .end, .sign, .undo, .big");
        const wanted = work ? least.work : least.any;
        if (Math.round(box.height) < wanted || Math.round(box.width) < least.any) {
          wrong.push(`${named(control)} is only ${Math.round(box.width)} x ${Math.round(box.height)} px`);
        }
        if (control.scrollWidth > control.clientWidth + 1 && control.tagName !== "INPUT") {
          wrong.push(`${named(control)} is too narrow for its words`);
        }
        const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
        if (!control.contains(hit)) {
          wrong.push(`${named(control)} is covered by ${hit?.tagName}.${hit?.className}`);
        }
      }
      scrollTo(0, 0);
      return wrong;
    },
    [width, least],
  );
}

const swallowed = () => visit().readyForWater().water();
const spoken = (details) => visit({ screen: "OralMotor", age: 30, ...details }).weakness().examined();

test.describe("every page", () => {
  // Each is looked at in three looks and two sizes or three.
  test.setTimeout(process.env.PENLIGHT_LONG ? 15 * 60_000 : 2 * 60_000);

  test.beforeEach(async ({ page, context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await page.addInitScript(() => {
      window.otherTimeout = window.setTimeout.bind(window);
    });
  });

  test("home, settings, sources, a new visit", async ({ page }) => {
    const walk = await Walk.start(page);
    await inspect(walk, "home");
    await walk.press(BUTTONS.settings);
    await inspect(walk, "settings");
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.sources);
    await inspect(walk, "sources");
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.swallowScreen);
    await walk.unfold("Sex, language, setting");
    await walk.field(FIELDS.label).fill("");
    await walk.field(FIELDS.age).fill("121");
    await inspect(walk, "a new visit with messages");
  });

  test("local policy: as it is, with a message, with what would change", async ({ page }) => {
    const walk = await Walk.start(page, "./#policy");
    await inspect(walk, "local policy");
    const field = page.getByLabel(FIELDS.policyFile);
    const offer = (text) => field.setInputFiles({ name: "p.json", mimeType: "application/json", buffer: Buffer.from(text) });
    const file = { penlight_policy: 1, name: "W".repeat(60), settings: { "gate.requests-close": true, "sips.first": 2 } };
    await offer(JSON.stringify({ ...file, settings: { ["x".repeat(400)]: 1 } }));
    await expect(page.getByText(SAYS.policyStays)).toBeVisible();
    await inspect(walk, "local policy, with a message");
    await offer(JSON.stringify(file));
    await expect(page.getByRole("heading", { name: SAYS.wouldChange })).toBeVisible();
    await inspect(walk, "local policy, what would change");
    await walk.press(BUTTONS.usePolicy);
    await inspect(walk, "local policy, changed");
  });

  test("banners on the first page: a policy that can't be used, a store that is missing", async ({ page }) => {
    await page.addInitScript(() => {
      localStorage.setItem("penlight.policy", "{");
      Object.defineProperty(window, "indexedDB", { configurable: true, value: undefined });
    });
    const walk = await Walk.start(page);
    await expect(page.getByText(SAYS.policyLost)).toBeVisible();
    await expect(page.getByText(SAYS.lessSafe)).toBeVisible();
    await inspect(walk, "home with banners");
  });

  test("the gate", async ({ page }) => {
    const walk = await Walk.at(page, visit(), AT.gates[0]);
    for (const heading of PAGES.gates) {
      await walk.isOn(heading);
      const line = page.locator("li.item").last().getByRole("button").first();
      await walk.press(line);
      await walk.press(page.locator("li.item").last().locator("summary"));
      await inspect(walk, String(heading));
      await walk.press(BUTTONS.itHolds);
      await walk.press(BUTTONS.groupHolds);
    }
  });

  test("what the gate found, not done, emergency", async ({ page }) => {
    const walk = await Walk.at(page, visit({ slp: true }).gateHolds({ awake: "no", mouth: "no", suction: "none" }), AT.gateResult);
    await walk.press(BUTTONS.allTheSame);
    await inspect(walk, "gate, found");
    await walk.press(BUTTONS.endNotDone);
    await inspect(walk, "decision, not done");
    await walk.go(AT.gates[3]);
    const [[line, exception]] = Object.entries(GATE.emergency);
    const row = page.locator("li.item", { hasText: line });
    await walk.press(row.getByRole("button").first());
    await walk.press(exception, row);
    await inspect(walk, "gate, emergency");
  });

  test("breaths, by the minute and by taps", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds(), AT.breaths);
    await walk.unfold(FOLDS.readings);
    await inspect(walk, "breaths, ready", { atWork: true });
    await walk.startPad();
    await walk.count(3);
    await inspect(walk, "breaths, running", { atWork: true });
    await page.clock.fastForward(60_000);
    await walk.settle();
    await inspect(walk, "breaths, over", { atWork: true });
    await walk.go(AT.breathTaps);
    await walk.pad.tap();
    await walk.count(3, 2_000);
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await inspect(walk, "breaths by taps, over", { atWork: true });
  });

  test("dry swallows, show to patient", async ({ page }) => {
    const walk = await Walk.at(page, visit().gateHolds().breaths(), AT.dry);
    await inspect(walk, "dry swallows, ready", { atWork: true });
    await walk.press(BUTTONS.show);
    await inspect(walk, "show to patient");
    await walk.press(BUTTONS.back);
    await walk.startPad();
    await walk.count(2);
    await inspect(walk, "dry swallows, running", { atWork: true });
    await walk.wait(28_000);
    await walk.settle();
    await walk.count(1);
    await walk.unfold(FOLDS.notValid);
    await walk.press(walk.fold(FOLDS.why).first());
    await inspect(walk, "dry swallows, late", { atWork: true });
  });

  test("water: held, ready, running, watching", async ({ page }) => {
    const few = visit({ label: "Few" }).readyForWater({ dry: 2 });
    const walk = await Walk.at(page, visit().readyForWater(), AT.water, { others: [few] });
    await inspect(walk, "water, ready", { atWork: true });
    await walk.drink({ end: false });
    await inspect(walk, "water, running", { atWork: true });
    await walk.press(BUTTONS.lastSwallow);
    await walk.settle();
    await walk.answer(ASKED.cup, ASKED.someLeft);
    await inspect(walk, "water, watching", { atWork: true });
    await walk.answer(ASKED.cup, ASKED.oneGo);
    await walk.press(BUTTONS.next);
    await inspect(walk, "decision, watch running");
    await page.goto(`./#visit/${few.id}/${AT.water}`);
    await inspect(walk, "water, held", { atWork: true });
    await walk.press(BUTTONS.allTheSame);
    await inspect(walk, "water, asked why", { atWork: true });
  });

  test("water over, decision, handover: no sign", async ({ page }) => {
    const walk = await Walk.at(page, swallowed(), AT.water);
    await inspect(walk, "water, over", { atWork: true });
    await walk.toDecision(VERDICTS.pass);
    await inspect(walk, "decision, no sign");
    await walk.toHandover();
    await walk.unfold(FOLDS.levels);
    await inspect(walk, "handover, no sign");
  });

  test("choking, stop, handover, the visit at a glance", async ({ page }) => {
    const walk = await Walk.at(page, visit().readyForWater(), AT.water);
    await walk.drink({ end: false });
    await walk.press(walk.sign(SIGNS.cough));
    await walk.press(walk.sign(SIGNS.choke));
    await walk.isOn(PAGES.choking);
    await walk.settle();
    await inspect(walk, "choking", { atWork: true });
    await walk.press(BUTTONS.decision);
    await inspect(walk, "decision, stop");
    await walk.toHandover();
    await walk.press(ACTIONS.keepPlan);
    await walk.unfold(FOLDS.toWhom);
    await walk.press(BUTTONS.copy);
    await inspect(walk, "handover, stop, with a message");
    await walk.press(ACTIONS.nothingByMouth);
    await walk.copy();
    await inspect(walk, "handover, copied");
    await walk.go(AT.overview);
    await walk.unfold(FOLDS.person);
    await walk.unfold(FOLDS.endHere);
    await walk.unfold(FOLDS.keepDelete);
    await walk.press(BUTTONS.deleteVisit);
    await inspect(walk, "the visit at a glance");
  });

  test("small sips, own trials, the timed cup", async ({ page }) => {
    const own = visit({ label: "Own", screen: "OwnTrials", slp: true }).gateHolds().breaths();
    own.own({ level: "d2", amount: "5", by: "spoon" }).own({ level: "f4", amount: "5", by: "spoon", throatClear: 3 });
    const sips = visit({ screen: "Stepped" }).readyForWater();
    const cup = visit({ label: "Cup", screen: "Stepped" }).readyForWater().clearSips();
    const walk = await Walk.at(page, sips, AT.sips, { others: [own, cup] });
    await walk.sip({ before: ASKED.clear, extra: ASKED.both, watch: false });
    await inspect(walk, "sips, watching", { atWork: true });
    await page.goto(`./#visit/${own.id}/${AT.own}`);
    await expect(page.locator(".trials tbody tr")).toHaveCount(2);
    expect(await axe(page, "tag", TAGS), "own trials, the table").toEqual([]);
    await page.goto(`./#visit/${cup.id}/${AT.timed}`);
    await walk.answer(ASKED.cupSize, "100 mL");
    await walk.startPad();
    await walk.count(3, 1_500);
    await walk.press(BUTTONS.larynxRests);
    await walk.settle();
    await walk.answer(ASKED.cup, "Empty");
    await inspect(walk, "timed cup, watching", { atWork: true });
  });

  test("a count, its result, all visits, home with visits", async ({ page }) => {
    const walk = await Walk.home(page, visit());
    await inspect(walk, "home with visits");
    await walk.press(BUTTONS.allVisits);
    await expect(walk.button(/^Visit 1/)).toBeVisible();
    await inspect(walk, "all visits");
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.count);
    await walk.unfold(FOLDS.anotherLength);
    await walk.field(FIELDS.seconds).fill("0");
    await inspect(walk, "count, ready", { atWork: true });
    await walk.startPad();
    await walk.count(3);
    await inspect(walk, "count, running", { atWork: true });
    await walk.press(BUTTONS.stopCount);
    await walk.settle();
    await inspect(walk, "count, over");
  });

  test("repeated syllables, decision and handover without a swallow", async ({ page }) => {
    const walk = await Walk.at(page, spoken(), AT.sequence);
    await inspect(walk, "pa-ta-ka, ready", { atWork: true });
    await walk.startPad();
    await walk.count(5, 200);
    await inspect(walk, "pa-ta-ka, running", { atWork: true });
    await walk.press(BUTTONS.undo);
    await walk.count(20, 190);
    await walk.wait(1_000);
    await walk.settle();
    await walk.answer(ASKED.sound, SOUND.correct);
    await inspect(walk, "pa-ta-ka, over", { atWork: true });
    await walk.press(BUTTONS.nextTrial);
    await inspect(walk, "pa-ta-ka, another trial", { atWork: true });
    await walk.go(AT.decision);
    await inspect(walk, "decision, examined");
    await walk.toHandover();
    await inspect(walk, "handover, examined");
    await walk.go(AT.overview);
    await inspect(walk, "the visit at a glance, speech");
  });

  test("held sounds, the beat, what is heard; a task left out; the list of tasks", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "FullVisit", age: 2 }).gateHolds().held("PitchGlide", 3).held("FiveForFive", 3), AT.pa);
    await inspect(walk, "pa, left out");
    await walk.go(AT.ah);
    await walk.startPad();
    await inspect(walk, "longest ah, running", { atWork: true });
    await walk.wait(9_000);
    await walk.press(walk.pad);
    await walk.settle();
    await inspect(walk, "longest ah, over", { atWork: true });
    await walk.go(AT.glide);
    await inspect(walk, "glide, over", { atWork: true });
    await walk.go(AT.five);
    await inspect(walk, "5 cm, over", { atWork: true });
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.oneTask);
    await inspect(walk, "one task");
    await walk.press(PAGES.countOnBreath);
    await inspect(walk, "counting on one breath, ready", { atWork: true });
    await walk.startPad();
    await walk.wait(4_600);
    await inspect(walk, "counting on one breath, running", { atWork: true });
    await walk.press(walk.pad);
    await walk.settle();
    await walk.field(FIELDS.highest).fill("500");
    await inspect(walk, "counting on one breath, over", { atWork: true });
  });

  test("what can be added: signs after a stroke, cracker, drink thickness", async ({ page }) => {
    const walk = await Walk.at(page, swallowed());
    await walk.unfold(FOLDS.addTo);
    await inspect(walk, "overview, with what can be added", { least: LEAST });
    await walk.go(AT.sixSigns);
    await inspect(walk, "signs after a stroke", { least: LEAST });
    await walk.go(AT.cracker);
    await inspect(walk, "cracker, asked before", { least: LEAST });
    await walk.answer(ASKED.allergy, "No");
    await walk.answer(ASKED.teeth, "Yes");
    await walk.answer(ASKED.dietOrder, ASKED.orderAllows);
    await walk.startPad();
    await walk.settle();
    await inspect(walk, "cracker, running", { least: LEAST, sideways: true });
    await walk.press(BUTTONS.mouthEmpty);
    await page.clock.fastForward(TIMES.watch);
    await walk.settle();
    await inspect(walk, "cracker, over", { least: LEAST });
    await walk.go(AT.thickness);
    await inspect(walk, "thickness, ready", { least: LEAST });
    await walk.startPad();
    await walk.wait(13_000);
    await walk.settle();
    await walk.press("+1");
    await inspect(walk, "thickness, over", { least: LEAST });
  });

  test("at the table, right hand and left", async ({ page }) => {
    const walk = await Walk.at(page, visit(), AT.table);
    await walk.startPad();
    await walk.settle();
    await walk.touch(page.getByRole("group", { name: "Pads" }).getByRole("button").first());
    await page.clock.fastForward(360_000);
    await walk.sign(SIGNS.cough).tap();
    await inspect(walk, "table, running", { least: LEAST, sideways: true });
    await page.evaluate(() => (document.documentElement.dataset.hand = "left"));
    await inspect(walk, "table, running, left hand", { least: LEAST, sideways: true });
    await walk.press(BUTTONS.endTally);
    await walk.settle();
    await inspect(walk, "table, over", { least: LEAST });
  });

  test("the examination of face, mouth and throat, its decision and full note", async ({ page }) => {
    const found = visit({ screen: "OralMotor" }).weakness("known");
    found.found("face.rest", { what: "droop", side: "Left", severity: "Moderate" });
    found.found("lips.smile", { what: "pulled", side: "Right" });
    found.regions(0, 1);
    const walk = await Walk.at(page, found, AT.regions[0]);
    const region = async (at) => {
      await walk.go(AT.regions[at]);
      await walk.isOn(ORAL.pages[at]);
    };
    await inspect(walk, "face with a finding", { least: 48 });
    await region(2);
    await walk.openItem("Mouth opening in millimetres");
    await walk.field("Mouth opening").fill("350");
    await inspect(walk, "jaw with a message", { least: 48 });
    await walk.field("Mouth opening").fill("");
    await region(4);
    await walk.exception("Tongue put out", "Points to one side", ORAL.left);
    await inspect(walk, "tongue", { least: 48 });
    await region(6);
    await walk.openItem("Touch on the forehead");
    await inspect(walk, "touch", { least: 48 });
    await region(8);
    await inspect(walk, "gag", { least: 48 });
    await walk.go(AT.decision);
    await inspect(walk, "decision of an examination", { least: 48 });
    await walk.toHandover();
    await walk.fullNote();
    await inspect(walk, "full note", { least: 48 });
  });
});

test("the phone's own choice of colours is followed, and a choice in Settings goes before it", async ({ page }) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await stopTime(page);
  await openApp(page);
  const walk = new Walk(page);
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const dark = await paper();
  await page.emulateMedia({ colorScheme: "light" });
  const light = await paper();
  expect(light).not.toBe(dark);
  await walk.press(BUTTONS.settings);
  await walk.press("Dark", walk.group("Look"));
  expect(await paper()).toBe(dark);
  await walk.press("Light", walk.group("Look"));
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await paper()).toBe(light);
  // It is kept.
  await page.reload();
  await expect.poll(paper).toBe(light);
});
