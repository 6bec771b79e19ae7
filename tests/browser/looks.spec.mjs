// Every page for everybody: axe at WCAG 2.2 AA, light, dark and high contrast, small screen with
// large text, targets that a gloved thumb hits.

import AxeBuilder from "@axe-core/playwright";
import { appStarted, expect, openApp, test } from "./support.mjs";
import { ACTIONS, ASKED, BUTTONS, FIELDS, FOLDS, GATE, PAGES, SAYS, SIGNS, SOUND, stopTime, VERDICTS, Walk } from "./walk.mjs";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const LOOKS = [null, "dark", "contrast"];
const SIZES = [
  { name: "390 px", width: 390, height: 844, text: "" },
  { name: "320 px, text at 200 %", width: 320, height: 640, text: "200%" },
];
/** What every control has at least, and what is pressed while the eyes are on the patient. */
const LEAST = 56;
const LEAST_AT_WORK = 64;

/** Looks at the page as it stands, in every size and, at the first, every look; names what is wrong. */
async function inspect(walk, name, { atWork = false } = {}) {
  const { page } = walk;
  const wrong = [];
  for (const size of SIZES) {
    await page.setViewportSize({ width: size.width, height: size.height });
    await page.evaluate((text) => (document.documentElement.style.fontSize = text), size.text);
    await page.evaluate(() => scrollTo(0, 0));
    wrong.push(...(await measure(page, size, atWork)).map((words) => `${name}, ${size.name}: ${words}`));
    // Colours do not depend on the size.
    for (const look of size === SIZES[0] ? LOOKS : [null]) {
      await page.evaluate((is) => {
        if (is) {
          document.documentElement.dataset.look = is;
        } else {
          delete document.documentElement.dataset.look;
        }
      }, look);
      const violations = await axe(page);
      for (const { id, nodes } of violations) {
        for (const { target, failureSummary } of nodes) {
          wrong.push(`${name}, ${size.name}, ${look ?? "light"}: ${id} at ${target}: ${failureSummary}`);
        }
      }
    }
    await page.evaluate(() => delete document.documentElement.dataset.look);
  }
  await page.setViewportSize({ width: SIZES[0].width, height: SIZES[0].height });
  await page.evaluate(() => (document.documentElement.style.fontSize = ""));
  // A page that was too wide leaves the browser zoomed out.
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setPageScaleFactor", { pageScaleFactor: 1 });
  await devtools.detach();
  await page.evaluate(() => scrollTo(0, 0));
  expect.soft(wrong, name).toEqual([]);
}

/** What axe finds. It waits by timers, which stand still here, so it gets the browser's own. */
async function axe(page) {
  const swap = () =>
    page.evaluate(() => {
      [window.setTimeout, window.otherTimeout] = [window.otherTimeout, window.setTimeout];
    });
  await swap();
  // In this page itself: a page of its own for the report would take the focus away.
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).setLegacyMode(true).analyze();
  await swap();
  return violations;
}

/** Home, its time stopped, with the browser's own timers put by. */
async function start(page) {
  await page.addInitScript(() => {
    window.otherTimeout = window.setTimeout.bind(window);
  });
  return Walk.start(page);
}

/** Widths, heights, and whether every control can be reached. */
function measure(page, { width }, atWork) {
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
    [width, { any: LEAST, work: atWork ? LEAST_AT_WORK : LEAST }],
  );
}

test.describe("every page", () => {
  // Each is looked at in three looks and two sizes.
  test.setTimeout(process.env.PENLIGHT_LONG ? 15 * 60_000 : 3 * 60_000);

  test("home, a new visit, settings, sources", async ({ page }) => {
    const walk = await start(page);
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
    const walk = await start(page);
    await walk.press(BUTTONS.settings);
    await walk.press(BUTTONS.policy);
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
    await page.evaluate(() => localStorage.setItem("penlight.policy", "{"));
    await page.goto("./");
    await appStarted(page);
    await expect(page.getByText(SAYS.policyLost)).toBeVisible();
    await inspect(walk, "home, the policy can't be used");
  });

  test("the gate and the tasks before water", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit();
    for (const heading of PAGES.gates) {
      await walk.isOn(heading);
      const line = page.locator("li.item").last().getByRole("button").first();
      await walk.press(line);
      await walk.press(page.locator("li.item").last().locator("summary"));
      await inspect(walk, String(heading));
      await walk.press(BUTTONS.itHolds);
      await walk.press(BUTTONS.groupHolds);
    }
    await walk.unfold(FOLDS.readings);
    await inspect(walk, "breaths, ready", { atWork: true });
    await walk.startPad();
    await walk.count(3);
    await inspect(walk, "breaths, running", { atWork: true });
    await walk.wait(60_000);
    await walk.settle();
    await inspect(walk, "breaths, over", { atWork: true });
  });

  test("dry swallows, show to patient", async ({ page }) => {
    const walk = await start(page);
    await walk.toDry();
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
    await walk.press(BUTTONS.next);
    await inspect(walk, "water, held", { atWork: true });
    await walk.press(BUTTONS.allTheSame);
    await inspect(walk, "water, asked why", { atWork: true });
  });

  test("water, decision, handover: no sign", async ({ page }) => {
    const walk = await start(page);
    await walk.toWater();
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
    await walk.press(BUTTONS.signSeen);
    await walk.wait(60_000);
    await walk.settle();
    await walk.answer(ASKED.voiceAfter, ASKED.clear);
    await inspect(walk, "water, over", { atWork: true });
    await walk.toDecision(VERDICTS.pass);
    await inspect(walk, "decision, no sign");
    await walk.toHandover();
    await walk.unfold(FOLDS.levels);
    await inspect(walk, "handover, no sign");
  });

  test("choking, stop, handover, the visit at a glance", async ({ page, context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    const walk = await start(page);
    await walk.toWater();
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
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await walk.unfold(FOLDS.person);
    await walk.unfold(FOLDS.endHere);
    await walk.unfold(FOLDS.keepDelete);
    await walk.press(BUTTONS.deleteVisit);
    await inspect(walk, "the visit at a glance");
  });

  test("what the gate found, not done, emergency", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ slp: true });
    await walk.gate({ ...GATE.block, ...GATE.fix, ...GATE.caution });
    await walk.press(BUTTONS.allTheSame);
    await inspect(walk, "gate, found");
    await walk.press(BUTTONS.endNotDone);
    await inspect(walk, "decision, not done");
    await walk.press(BUTTONS.back);
    await walk.press(/^Ready now/);
    const [[line, exception]] = Object.entries(GATE.emergency);
    const row = page.locator("li.item", { hasText: line });
    await walk.press(row.getByRole("button").first());
    await walk.press(exception, row);
    await inspect(walk, "gate, emergency");
  });

  test("a count, its result, all visits, home with visits", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit();
    await walk.press(BUTTONS.back);
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
    await walk.saved();
    await walk.press(BUTTONS.back);
    await inspect(walk, "home with visits");
    await walk.press(BUTTONS.allVisits);
    await expect(walk.button(/^Visit 1/)).toBeVisible();
    await inspect(walk, "all visits");
  });

  test("repeated syllables, a held sound, decision and handover without a swallow", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ screen: "oralMotor", age: "30" });
    await walk.straightTo(PAGES.sequence);
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
    await walk.press(BUTTONS.next);
    await walk.isOn(PAGES.ah);
    await walk.startPad();
    await inspect(walk, "longest ah, running", { atWork: true });
    await walk.wait(9_000);
    await walk.press(walk.pad);
    await walk.settle();
    await inspect(walk, "longest ah, over", { atWork: true });
    await walk.toDecision(VERDICTS.examined);
    await inspect(walk, "decision, examined");
    await walk.toHandover();
    await inspect(walk, "handover, examined");
    await walk.press(BUTTONS.back);
    await walk.press(BUTTONS.back);
    await inspect(walk, "the visit at a glance, speech");
  });

  test("one task: the list, the beat, its result", async ({ page }) => {
    const walk = await start(page);
    await walk.newVisit({ screen: "fullVisit", age: "2" });
    await walk.straightTo(PAGES.pa);
    await inspect(walk, "pa, left out");
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
    await walk.press(BUTTONS.clearNumber);
    await walk.press(BUTTONS.done);
    await walk.oneTask(PAGES.glide);
    await walk.held(3);
    await inspect(walk, "glide, over", { atWork: true });
    await walk.press(BUTTONS.done);
    await walk.oneTask(PAGES.five);
    await walk.held(3);
    await inspect(walk, "5 cm, over", { atWork: true });
  });

  test("banners: a store that is missing", async ({ page }) => {
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", { configurable: true, value: undefined });
    });
    const walk = await start(page);
    await inspect(walk, "home, less safe");
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

test("show to patient: large, nothing cut off, on the smallest screen with the largest text", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.toDry();
  await page.setViewportSize({ width: 320, height: 640 });
  await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
  await walk.press(BUTTONS.show);
  const words = page.getByRole("heading", { level: 1 });
  await expect(words).toContainText("Swallow your saliva");
  const fits = await words.evaluate((heading) => ({
    page: document.documentElement.scrollWidth,
    words: heading.scrollWidth <= heading.clientWidth,
    size: Number.parseFloat(getComputedStyle(heading).fontSize),
  }));
  expect(fits.page).toBeLessThanOrEqual(320);
  expect(fits.words).toBe(true);
  expect(fits.size).toBeGreaterThanOrEqual(32);
});

for (const width of [390, 320]) {
  test(`${width} px: the pad stays where the thumb is, before and after the start`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    const walk = await Walk.start(page);
    await walk.toWater();
    await walk.answer(ASKED.voiceBefore, ASKED.clear);
    // At 320 px the heading takes two lines and more: the head is as high as it is.
    const atTheEdge = async () => {
      const box = await walk.pad.boundingBox();
      expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
      expect(box.y + box.height).toBeGreaterThan(844 - 24);
      expect(box.y + box.height).toBeLessThanOrEqual(844);
      return box.y;
    };
    const ready = await atTheEdge();
    await walk.startPad();
    expect(Math.abs((await atTheEdge()) - ready)).toBeLessThan(1);
  });
}
