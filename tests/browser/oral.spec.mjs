// The examination of face, mouth and throat as a hand goes through it.

import fs from "node:fs";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { ROOT, expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ACTIONS, BUTTONS, FIELDS, FOLDS, ORAL, PAGES, SAYS, TEXT, VERDICTS, Walk } from "./walk.mjs";

const MOST_PRESSES = 20;
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

test.beforeEach(async ({ context, page }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.addInitScript(() => {
    window.typed = 0;
    addEventListener("input", () => (window.typed += 1), true);
    addEventListener("keydown", () => (window.typed += 1), true);
    window.otherTimeout = window.setTimeout.bind(window);
  });
});

/** A few words of each region's own caution; the depressor where one is used. */
const CAUTIONS = [
  "neck limit",
  "single-use depressor. Loose teeth",
  "Loose teeth: no hard bite",
  "single-use depressor. Dentures",
  "never between the teeth",
  "single-use depressor, no further back",
  "Soft cotton tip, one for each person",
  "Stand aside for the cough",
  "loose teeth, a risk of bleeding",
];

/**
 * A text against the one that was read and found right, in tests/fixtures. Versions aside, since
 * they change with every release. PENLIGHT_WRITE_TEXTS=1 writes it anew: read the difference.
 */
function sameAsReviewed(name, text) {
  const file = path.join(ROOT, "tests/fixtures", `${name}.txt`);
  const plain = `${text.replace(/^Penlight \S+, rules and published values \S+\.$/m, "Penlight (version), rules and published values (version).")}\n`;
  if (process.env.PENLIGHT_WRITE_TEXTS) {
    fs.writeFileSync(file, plain);
  }
  expect(plain).toBe(fs.readFileSync(file, "utf8"));
}

/** The events of the examination, as stored. */
async function oralEvents(page) {
  return (await storedEvents(page)).map(({ event }) => event).filter((e) => e.Oral || e.OralTakenBack || e.OralCue);
}

/** From any page of the visit to a region. */
async function toRegion(walk, at) {
  await walk.press(BUTTONS.back);
  await walk.press(ORAL.pages[at]);
  await walk.isOn(ORAL.pages[at]);
}

/** Leaves the timed tasks undone, up to the decision. */
async function toDecision(walk) {
  while ((await walk.button(BUTTONS.skip).count()) > 0) {
    await walk.press(BUTTONS.skip);
  }
  await walk.isOn(PAGES.decision);
}

test("a whole unremarkable examination: at most 20 presses from Home, and no typing", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  for (const at of ORAL.pages.keys()) {
    await walk.region(at);
  }
  await expect(walk.pad).toBeVisible();
  const presses = walk.presses;
  console.log(`\nunremarkable examination: ${presses} presses from Home`);
  expect(presses).toBeLessThanOrEqual(MOST_PRESSES);
  expect(await page.evaluate(() => window.typed), "keys and typing").toBe(0);
  await toDecision(walk);
  await expect(page.getByText(ORAL.points)).toHaveCount(0);
  await walk.toHandover();
  const text = await walk.copy();
  expect(text).toContain("All that was looked at: as expected.");
  expect(text).toContain("Not tested: jaw opening in fingers, mouth opening in millimetres, taste, peak cough flow, head turn and shoulder shrug, gag (not needed today).");
  expect(text.length).toBeLessThan(1_200);
  await walk.saved();
});

test("a mixed set of findings: what it points to, and the nursing text", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit(ORAL.screen, "72");
  await walk.answer(ORAL.first, ORAL.known);
  await walk.exception("Face at rest", "Droops", ORAL.left, ORAL.moderate);
  await walk.answer(ORAL.cue, "Copied");
  await walk.region(0);
  await walk.exception("Wide smile", "Mouth pulled to one side", ORAL.right);
  await walk.region(1);
  // A number that can't be: a message at the field, nothing lost.
  await walk.openItem("Mouth opening in millimetres");
  const field = walk.field("Mouth opening");
  for (const [wrong, message] of [
    ["0", "Between 1 and 100 mm."],
    ["350", "Between 1 and 100 mm."],
    ["three fingers", "This is a number, like 15."],
  ]) {
    await field.fill("");
    await field.pressSequentially(wrong);
    await expect(page.locator("#opening-problem")).toHaveText(message);
    await expect(field).toHaveValue(wrong);
  }
  await field.fill("12");
  await expect(page.getByText("Very narrow. Read again")).toBeVisible();
  await field.fill("35");
  await expect(page.locator("#opening-problem")).toBeEmpty();
  await walk.answer("Measured between", "Upper and lower front teeth");
  await walk.region(2);
  await walk.region(3);
  await walk.exception("Tongue put out", "Points to one side", ORAL.left);
  await walk.exception("Tongue side to side", "Does not reach the corner", ORAL.right);
  await walk.region(4);
  await walk.exception("Soft palate on \"ah\"", "Uvula pulled to one side", ORAL.right);
  await walk.region(5);
  await walk.openItem("Touch on the cheek");
  const left = walk.item("Touch on the cheek").getByRole("group", { name: ORAL.left });
  for (const felt of ["Felt", "Not felt", "Felt less"]) {
    await walk.press(felt, left);
  }
  await expect(left).toContainText("2 of 3 felt, 1 of them less");
  await walk.press("Felt", walk.item("Touch on the cheek").getByRole("group", { name: ORAL.right }));
  await walk.region(6);
  await walk.region(7);
  await walk.region(8);
  await walk.syllables(30, 5);
  await walk.press(BUTTONS.next);
  await toDecision(walk);
  await walk.decided(/Examined: no food or drink was tested/);
  const main = walk.main;
  for (const words of [
    "Cranial nerve VII: face",
    "Face at rest: droops on the left, moderate. Weak side: left",
    "Mouth pulled to the right on smiling: face (cranial nerve VII) weak on the left",
    "Lower face weak on the left, forehead moves there: upper motor neuron pattern",
    "Tongue points to the left: tongue (cranial nerve XII) weak on the left",
    "Uvula pulled to the right: palate (cranial nerve X) weak on the left",
    "tongue put out: points to the left; but as expected: tongue into the right cheek",
    "Touch on the cheek, left: 2 of 3 felt, 1 of them less",
    "odds ratio 2.72",
    "Mouth opens 35 millimetres",
    "No place of a lesion and no diagnosis is meant.",
  ]) {
    await expect(main.getByText(words, { exact: false }).first(), words).toBeVisible();
  }
  await walk.toHandover();
  const text = await walk.copy();
  expect(text).toContain(
    "Face, mouth and throat: face at rest: droops on the left, moderate; wide smile: mouth pulled to the right; " +
      "tongue put out: points to the left; tongue side to side: does not reach the corner on the right; " +
      'soft palate on "ah": uvula pulled to the right; 1 more in the record. ' +
      // One phone screen: what was not tested is counted before an exception is left out.
      "Not tested: 7 items (not needed today). Everything else looked at: as expected. Sides are the patient's.",
  );
  expect(text).toContain("mouth opens 35 millimetres (more than 35 expected)");
  expect(text).toContain("known to the team");
  expect(text).not.toMatch(/nerve|neuron|weak side/i);
  expect(text.length).toBeLessThan(1_200);
  sameAsReviewed("mixed-nursing", text);
  await walk.fullNote();
  const full = await walk.copy();
  expect(full).toBe(await walk.text.textContent());
  expect(full).toMatch(/cranial nerve/i);
  sameAsReviewed("mixed-full-note", full);
  // Back with one press, and each is stored as what it is.
  await walk.press(BUTTONS.forNurse);
  await expect(walk.text).toContainText(ORAL.line);
  await walk.saved();
  const issued = (await storedEvents(page)).map(({ event }) => event.Issued).filter(Boolean);
  expect(issued.map(({ text, which }) => [text, which])).toEqual([
    [text, undefined],
    [full, "FullNote"],
  ]);
});

test("a full note leaves by the same rule: not before it is said what to do", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit();
  await walk.gate();
  await toDecision(walk);
  await walk.decided(VERDICTS.incomplete);
  await walk.toHandover();
  await walk.fullNote();
  for (const way of [BUTTONS.copy, BUTTONS.saveText]) {
    await walk.press(way);
    await expect(page.getByText(SAYS.pressFirst)).toBeVisible();
  }
  await walk.saved();
  expect((await storedEvents(page)).filter(({ event }) => event.Issued)).toEqual([]);
  await walk.press(ACTIONS.nothingByMouth);
  const full = await walk.copy();
  expect(full).toContain(TEXT.nothingByMouth);
  const [download] = await Promise.all([page.waitForEvent("download"), walk.press(BUTTONS.saveText)]);
  expect(download.suggestedFilename()).toMatch(/full-note/);
});

test("touches are taken back one by one", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await toRegion(walk, 6);
  for (const name of ["Touch on the side of the tongue", "Touch inside the cheek"]) {
    await walk.openItem(name);
    const item = walk.item(name);
    const left = item.getByRole("group", { name: ORAL.left });
    const right = item.getByRole("group", { name: ORAL.right });
    await expect(walk.button(ORAL.undoTouch, item)).toHaveCount(0);
    await walk.press("Felt", left);
    await walk.press("Not felt", right);
    await walk.press("Felt", right);
    await walk.press("Not felt", left);
    await expect(left).toContainText("1 of 2 felt");
    await walk.press(ORAL.undoTouch, item);
    await expect(left).toContainText("1 of 1 felt");
    await expect(right).toContainText("1 of 2 felt");
    await walk.press(ORAL.undoTouch, item);
    await expect(right).toContainText("0 of 1 felt");
    // What was taken back stays so over a reload, and the next one taken back is the one before.
    await walk.saved();
    await page.reload();
    await expect(left).toContainText("1 of 1 felt");
    await walk.press("Felt", left);
    await walk.press(ORAL.undoTouch, item);
    await walk.press(ORAL.undoTouch, item);
    await expect(right).toContainText("no touch yet");
    await walk.press(ORAL.undoTouch, item);
    await expect(left).toContainText("no touch yet");
    await expect(walk.button(ORAL.undoTouch, item)).toHaveCount(0);
  }
});

test("the picture: targets at 320 px, what has no side or none that was noted, a side for the middle", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 568 });
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  const picture = page.locator(".oral-picture");
  const inspect = async () => {
    const boxes = await page.locator(".spot").evaluateAll((spots) => spots.map((s) => s.getBoundingClientRect().toJSON()));
    expect(boxes.length).toBeGreaterThan(0);
    for (const [i, box] of boxes.entries()) {
      expect(Math.min(box.width, box.height), "a target of the picture").toBeGreaterThanOrEqual(60);
      expect(box.left).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(320);
      for (const other of boxes.slice(i + 1)) {
        const apart = box.right <= other.left + 0.5 || other.right <= box.left + 0.5 || box.bottom <= other.top + 0.5 || other.bottom <= box.top + 0.5;
        expect(apart, "targets of the picture lie apart").toBe(true);
      }
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  };
  await inspect();
  // A side that nobody noted: at both places, as a question.
  await walk.exception("Forehead", "Does not rise fully");
  for (const side of [ORAL.left, ORAL.right]) {
    await expect(walk.button(`Forehead, ${side}: does not rise fully, side?`)).toBeVisible();
  }
  await walk.press(ORAL.right, walk.item("Forehead"));
  await expect(walk.button(`Forehead, ${ORAL.right}: does not rise fully`)).toBeVisible();
  await expect(walk.button(`Forehead, ${ORAL.left}`)).toBeVisible();
  for (const at of [0, 1, 2, 3]) {
    await walk.region(at);
    if ((await picture.count()) > 0) {
      await inspect();
    }
  }
  // A side was picked for what has none: said at the line, kept without it, shown at both places.
  await walk.press(`Tongue at rest, ${ORAL.left}`);
  const item = walk.item("Tongue at rest");
  await walk.press("Large or swollen", item);
  await expect(item.getByRole("alert")).toHaveText(ORAL.noSide);
  await expect(item.locator(".tick")).toHaveText("large or swollen");
  await expect(walk.button(`Tongue at rest, ${ORAL.left}: large or swollen`)).toBeVisible();
  await expect(walk.button(`Tongue at rest, ${ORAL.right}: large or swollen`)).toBeVisible();
  await walk.press("Thin or furrowed", item);
  await expect(item.getByRole("alert")).toHaveCount(0);
  await expect(item.locator(".tick")).toHaveText("large or swollen; thin or furrowed on the left");
  await expect(walk.button(`Tongue at rest, ${ORAL.left}: large or swollen, thin or furrowed`)).toBeVisible();
  for (const at of [4, 5]) {
    await walk.region(at);
  }
  // Touches that were not all felt are exceptions too.
  await inspect();
  await walk.openItem("Touch on the cheek");
  await walk.press("Not felt", walk.item("Touch on the cheek").getByRole("group", { name: ORAL.left }));
  await expect(walk.button(`Touch on the cheek, ${ORAL.left}: 0 of 1 felt`)).toBeVisible();
});

test("one press names what it settles, settles only that, and is taken back", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  // The question comes first.
  await walk.press(ORAL.asExpected);
  await walk.settle();
  // Said beside it, and there.
  await expect(page.getByText(ORAL.answerFirst)).toBeInViewport();
  await expect(page.locator("#weakness")).toBeFocused();
  expect(await oralEvents(page)).toEqual([]);
  await walk.answer(ORAL.first, ORAL.nothingNew);
  await expect(page.getByText(ORAL.answerFirst)).toHaveCount(0);
  await walk.exception("Forehead", "Does not rise fully", ORAL.both);
  await walk.answer(ORAL.cue, "Copied");
  await expect(walk.button(ORAL.asExpected)).toContainText("I checked these 3: as expected");
  await expect(walk.button(ORAL.asExpected)).toContainText("face at rest, eyes shut tight, neck");
  await walk.asExpected();
  await walk.isOn(ORAL.pages[1]);
  // On this page the first press leaves what is done by hand open.
  await walk.asExpected();
  await walk.isOn(ORAL.pages[1]);
  await expect(walk.item("Wide smile")).toContainText("as expected");
  await expect(walk.item("Cheeks puffed and held")).not.toContainText("as expected");
  await walk.press(ORAL.undo);
  await walk.settle();
  await expect(walk.item("Wide smile")).not.toContainText("as expected");
  // And the press before it, on its own page.
  await walk.press(ORAL.undo);
  await walk.settle();
  await walk.isOn(ORAL.pages[0]);
  await expect(walk.item("Forehead")).toContainText("does not rise fully on both sides");
  await expect(walk.item("Face at rest")).not.toContainText("as expected");
  await walk.saved();
  const events = await oralEvents(page);
  const items = ["face.rest", "face.eyes", "neck.rest"];
  expect(events).toContainEqual({ Oral: items.map((id) => [id, "AsExpected"]) });
  expect(events).toContainEqual({ OralTakenBack: items });
  expect(events).toContainEqual({ OralCue: { region: "Face", cue: "Copied" } });
});

test("not tested has a reason, and a finding does not overwrite it by a stray press", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  await walk.region(0);
  await walk.region(1);
  await walk.openItem("Bite");
  const bite = walk.item("Bite");
  await walk.press("No time", bite);
  await expect(bite).toContainText("not tested: no time");
  await walk.press("Weak", bite);
  await expect(bite.getByRole("alert")).toContainText("Marked as not tested (no time). Press again");
  await expect(bite).toContainText("not tested: no time");
  await walk.press("Weak", bite);
  await expect(bite).toContainText("weak (side not noted)");
  await walk.press(ORAL.clear, bite);
  await expect(bite).not.toContainText("side not noted");
  // All that is left of a page, with one reason.
  await walk.unfold(ORAL.leaveRest);
  await walk.answer(ORAL.rest, "Could not follow");
  await walk.settle();
  await walk.isOn(ORAL.pages[3]);
  await walk.press(BUTTONS.back);
  await expect(walk.button(/^Jaw/)).toContainText("done");
  await expect(walk.button(/^Tongue/)).toContainText("9 of 9 not tested");
  await walk.press("Go on");
  await walk.isOn(ORAL.pages[3]);
});

test("new weakness: the emergency route, before anything else; an old one goes on", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.isNew);
  await walk.isOn(PAGES.gateResult);
  await expect(page.getByText("use your local emergency procedure now").first()).toBeVisible();
  await walk.field(FIELDS.lastWell).fill("yesterday at supper");
  await walk.field(FIELDS.lastWell).blur();
  // A mistake can be put right.
  await walk.press(BUTTONS.askAgain);
  await walk.isOn(ORAL.pages[0]);
  await walk.answer(ORAL.first, ORAL.known);
  await walk.isOn(ORAL.pages[0]);
  await walk.answer(ORAL.first, ORAL.isNew);
  await walk.press(BUTTONS.endEmergency);
  await walk.decided(VERDICTS.emergency);
  await walk.toHandover();
  const text = await walk.copy();
  expect(text).toContain("Last well: yesterday at supper.");
  expect(text).toMatch(/^EMERGENCY/);
});

test("full visit: weakness that the gate did not know of is asked above the reasons", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.newVisit({ screen: "fullVisit", slp: true });
  await walk.gate();
  await walk.isOn(ORAL.pages[0]);
  await walk.exception("Face at rest", "Droops", ORAL.left);
  await walk.unfold(FOLDS.endHere);
  await walk.press(BUTTONS.breakOff);
  await walk.decided(VERDICTS.notDone);
  const open = walk.main.getByText("Weakness was found: not said whether it is new or worse");
  await expect(open).toBeVisible();
  await expect(walk.group(ORAL.first)).toBeInViewport();
  await expect(walk.group(ORAL.first).locator("[aria-pressed=true]")).toHaveCount(0);
  await walk.answer(ORAL.first, ORAL.nothingNew);
  await expect(open).toHaveCount(0);
  // It can still be answered otherwise, and the emergency way is open.
  await walk.answer(ORAL.first, ORAL.isNew);
  await walk.isOn(PAGES.gateResult);
});

test("the picture by keyboard: it leads to the line, knows the side, and shows what was found", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  const spot = walk.button(/^Face at rest, Patient's left/);
  await spot.focus();
  await page.keyboard.press("Enter");
  await page.clock.runFor(100);
  await expect(page.locator("[id='face.rest']")).toBeFocused();
  const what = walk.button("Droops", walk.item("Face at rest"));
  for (let i = 0; i < 3 && !(await what.evaluate((e) => e === document.activeElement)); i += 1) {
    await page.keyboard.press("Tab");
  }
  await expect(what).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(walk.item("Face at rest")).toContainText("droops on the left");
  await expect(walk.button("Face at rest, Patient's left: droops")).toBeVisible();
  await expect(walk.button("Face at rest, Patient's right")).toBeVisible();
  await walk.press(BUTTONS.show, walk.item("Face at rest"));
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Look at me and let your face go loose.");
  await walk.press(BUTTONS.back);
  await walk.isOn(ORAL.pages[0]);
});

test("an item that was opened is not settled with the others: it asks what was found", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  const lines = page.locator("li.item button.line");
  const first = lines.first();
  const id = await first.getAttribute("id");
  await walk.press(first);
  await walk.asExpected();
  // The others of its group are settled, it is not, and the page stays.
  await walk.isOn(ORAL.pages[0]);
  await expect(first.locator(".tick")).toHaveText("");
  while ((await walk.button(ORAL.asExpected).count()) > 0) {
    await walk.asExpected();
  }
  await walk.isOn(ORAL.pages[0]);
  await walk.press(BUTTONS.sayTheFinding);
  await walk.wait(1);
  await expect(first).toBeFocused();
  await walk.saved();
  const settled = (await storedEvents(page)).flatMap(({ event }) => event.Oral ?? []);
  expect(settled.length).toBeGreaterThan(0);
  expect(settled.map(([item]) => item)).not.toContain(id);
  await walk.press(ORAL.oneAsExpected, page.locator("li.item").first());
  await expect(walk.button(BUTTONS.sayTheFinding)).toHaveCount(0);
});

test("a reload in the middle keeps everything", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  await walk.region(0);
  await walk.exception("Wide smile", "Moves less", ORAL.right, "Mild");
  await walk.saved();
  await page.reload();
  await walk.isOn(ORAL.pages[1]);
  await expect(walk.item("Wide smile")).toContainText("moves less on the right, mild");
  await walk.press(BUTTONS.back);
  await expect(walk.button(/^Face and neck/)).toContainText("done");
});

test("full visit: the gag waits for the swallow trials", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.press(ORAL.fullVisit);
  await walk.press(BUTTONS.adult);
  await walk.press(BUTTONS.begin);
  await walk.gate();
  await walk.isOn(ORAL.pages[0]);
  // The gate has asked it: the answer stands here.
  await expect(walk.button(ORAL.nothingNew)).toHaveAttribute("aria-pressed", "true");
  for (const at of [0, 1, 2, 3, 4, 5, 6, 7]) {
    await walk.region(at);
  }
  await expect(walk.pad).toBeVisible();
  await walk.press(BUTTONS.back);
  await walk.press(/^Gag/);
  await expect(page.getByText(ORAL.gagWaits)).toBeVisible();
  await expect(page.locator("li.item")).toHaveCount(0);
});

test("figures for gag, wet voice and palpation: the page shows what stands in the source's row", async ({ page }) => {
  const rows = fs.readFileSync(path.join(ROOT, "src/clinical/sources.csv"), "utf8").split("\n");
  const walk = await Walk.start(page);
  await walk.oralVisit();
  for (const [region, name, key, figures] of [
    [7, "Voice on \"ah\"", "WAI11", ["8-29 %"]],
    [7, "Four fingers on a dry swallow", "DR2", ["87 people", "16 felt", "17 felt"]],
    [8, "Gag", "DAV95", ["37 %"]],
    [8, "Gag", "LED96", ["13 %"]],
  ]) {
    const row = rows.find((r) => r.startsWith(`${key},`));
    await toRegion(walk, region);
    const item = walk.item(name);
    if ((await item.locator(".exceptions").count()) === 0) {
      await walk.openItem(name);
    }
    await walk.press(item.locator("summary", { hasText: FOLDS.why }));
    await expect(item.locator("details.why li", { hasText: `${key}: ` })).toBeVisible();
    for (const figure of figures) {
      expect(row, key).toContain(figure);
      // In the rule's own words, and in the words about the source.
      await expect(item.locator("details.why > p").first(), key).toContainText(figure);
      await expect(item.locator("details.why li", { hasText: `${key}: ` }), key).toContainText(figure);
    }
  }
  // Why the gag never decides stands without a press more.
  await expect(walk.item("Gag").locator(".exceptions > .small").first()).toContainText(/37 %.*13 %.*decides nothing, alone or together/);
});

test("not tested: a reason for all that is left, on the decision page, with one press", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  await walk.asExpected();
  for (const heading of ORAL.pages.slice(1)) {
    await walk.isOn(heading);
    if ((await walk.fold(ORAL.leaveRest).count()) > 0) {
      await walk.unfold(ORAL.leaveRest);
      await walk.press(ORAL.later);
    } else {
      await walk.press(BUTTONS.next);
    }
    await walk.settle();
  }
  await toDecision(walk);
  await walk.decided(VERDICTS.examined);
  const count = (await storedEvents(page)).length;
  await walk.answer(ORAL.noReason, "No time");
  await expect(walk.group(ORAL.noReason)).toHaveCount(0);
  await walk.saved();
  expect((await storedEvents(page)).length).toBe(count + 1);
  await walk.toHandover();
  expect(await walk.copy()).toMatch(/Not tested: .*\(no time\)\. All that was looked at: as expected\./);
});

/** What axe finds, with timers of the browser's own. */
async function axe(page) {
  const swap = () =>
    page.evaluate(() => {
      [window.setTimeout, window.otherTimeout] = [window.otherTimeout, window.setTimeout];
    });
  await swap();
  // What stays at the lower edge covers whatever is scrolled under it; anybody scrolls on.
  await page.evaluate(() => document.querySelector(".settle")?.style.setProperty("position", "static"));
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).setLegacyMode(true).analyze();
  await swap();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.target).join(", ")}`);
}

test("for everybody: axe in three looks, 320 px with large text, targets", async ({ page }) => {
  test.setTimeout(4 * 60_000);
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.answer(ORAL.first, ORAL.known);
  const inspect = async (name) => {
    for (const look of [null, "dark", "contrast"]) {
      await page.evaluate((is) => {
        if (is) document.documentElement.dataset.look = is;
        else delete document.documentElement.dataset.look;
      }, look);
      expect.soft(await axe(page), `${name}, ${look ?? "light"}`).toEqual([]);
    }
    await page.evaluate(() => delete document.documentElement.dataset.look);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll("button")]
        .filter((b) => b.checkVisibility())
        .map((b) => [b.ariaLabel ?? b.textContent.slice(0, 30), b.getBoundingClientRect()])
        .filter(([, box]) => box.height < 47.5 || box.width < 44)
        .map(([words, box]) => `${words} ${Math.round(box.width)} x ${Math.round(box.height)}`),
    );
    expect.soft(small, `${name}: small targets`).toEqual([]);
    await page.setViewportSize({ width: 320, height: 640 });
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    const wide = await page.evaluate(() => ({
      page: document.documentElement.scrollWidth,
      buttons: [...document.querySelectorAll("button")]
        .filter((b) => b.checkVisibility() && b.scrollWidth > b.clientWidth + 1)
        .map((b) => b.textContent),
    }));
    expect.soft(wide.page, `${name}: scrolls sideways`).toBeLessThanOrEqual(320);
    expect.soft(wide.buttons, `${name}: too narrow for its words`).toEqual([]);
    expect.soft(await axe(page), `${name}, large text`).toEqual([]);
    await page.evaluate(() => (document.documentElement.style.fontSize = ""));
    await page.setViewportSize({ width: 390, height: 844 });
    await page.evaluate(() => scrollTo(0, 0));
  };
  await walk.exception("Face at rest", "Droops", ORAL.left, ORAL.moderate);
  await inspect("face with a finding");
  await walk.region(0);
  await walk.exception("Wide smile", "Mouth pulled to one side", ORAL.right);
  await walk.region(1);
  await walk.openItem("Mouth opening in millimetres");
  await walk.field("Mouth opening").fill("350");
  await inspect("jaw with a message");
  await walk.field("Mouth opening").fill("");
  for (const at of [2, 3]) {
    await walk.region(at);
  }
  await walk.exception("Tongue put out", "Points to one side", ORAL.left);
  await inspect("tongue");
  for (const at of [4, 5]) {
    await walk.region(at);
  }
  await walk.openItem("Touch on the forehead");
  await inspect("touch");
  for (const at of [6, 7]) {
    await walk.region(at);
  }
  await inspect("gag");
  await walk.region(8);
  await toDecision(walk);
  await inspect("decision");
  await walk.toHandover();
  await walk.fullNote();
  await inspect("full note");
});

test("what is to be done comes first; the words of safety are a line on every page, in full behind it, and the choking button on all", async ({ page }) => {
  const walk = await Walk.start(page);
  await walk.oralVisit();
  await walk.unfold(FOLDS.gloves);
  for (const words of ["Depressor and cotton tip for this person only", "never with a used glove", "Loose teeth first", "Stop at pain, distress"]) {
    await expect(page.getByText(words, { exact: false }).first()).toBeVisible();
  }
  await walk.unfold(FOLDS.gloves);
  // On the smallest phone too, without a scroll: the question, then its answers.
  const small = page.viewportSize();
  await page.setViewportSize({ width: 320, height: 568 });
  await expect(walk.button(ORAL.nothingNew)).toBeInViewport({ ratio: 1 });
  await page.setViewportSize(small);
  await expect(page.getByText("Left and right are the patient's.", { exact: false })).toBeVisible();
  await walk.answer(ORAL.first, ORAL.nothingNew);
  for (const at of ORAL.pages.keys()) {
    await expect(walk.button("Choking")).toBeVisible();
    await expect(walk.fold(FOLDS.gloves)).toBeVisible();
    if (at > 0) {
      await expect(page.getByText(CAUTIONS[at])).toBeVisible();
      await expect(page.locator("li.item").first()).toBeInViewport({ ratio: 1 });
      for (const later of [".oral-picture", "details"]) {
        const tops = await page.locator(`li.item .line, ${later}`).evaluateAll((all) => all.map((e) => e.matches(".line")));
        expect(tops.lastIndexOf(true), `items before ${later}`).toBeLessThan(tops.includes(false) ? tops.indexOf(false) : tops.length);
      }
    }
    await walk.region(at);
  }
  expect(SAYS.saved).toBe("Saved");
});
