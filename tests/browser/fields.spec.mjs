// Bad input: a message beside the field, what was typed stays, nothing of it is recorded.

import { visit } from "./journal.mjs";
import { expect, test } from "./support.mjs";
import { storedEvents } from "./store.mjs";
import { ASKED, AT, BUTTONS, FIELDS, FOLDS, ORAL, PAGES, SIGNS, TIMES, Walk } from "./walk.mjs";

/** The field says what is wrong with it, to the eye and to a screen reader. */
async function refuses(page, field, typed, words) {
  await field.fill(typed);
  await expect(field).toHaveAttribute("aria-invalid", "true");
  await expect(field).toHaveAccessibleDescription(words);
  const message = page.getByText(words);
  await expect(message).toBeVisible();
  await expect(field).toHaveValue(typed);
  const [at, said] = [await field.boundingBox(), await message.boundingBox()];
  expect(said.y - (at.y + at.height), "beside the field").toBeLessThan(80);
}

async function takes(field, typed) {
  await field.fill(typed);
  await expect(field).toHaveAttribute("aria-invalid", "false");
  await expect(field).toHaveAccessibleDescription("");
}

test.describe("a new visit", () => {
  test("bad labels and ages are refused beside the field, hold Begin and take nothing else away", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.press(BUTTONS.swallowScreen);
    await walk.unfold("Sex, language, setting");
    await walk.press("Care home");
    expect(await walk.field(FIELDS.label).inputValue()).toMatch(/^Visit 1, \d\d:\d\d$/);
    for (const [field, typed, words] of [
      [FIELDS.label, "   ", "Give the visit a label, so that it can be found."],
      [FIELDS.label, "x".repeat(200), "A label has at most 60 characters; this one has 200."],
      [FIELDS.age, "0", "Under 1 year: choose months."],
      [FIELDS.age, "121", "Age goes up to 120 years."],
      [FIELDS.age, "1.5", "Age is a whole number, like 72."],
    ]) {
      await refuses(page, walk.field(field), typed, words);
      await walk.press(BUTTONS.begin);
      await walk.isOn(PAGES.newVisit);
      await expect(page.getByText(words)).toBeVisible();
      // Put right, it may go on.
      await takes(walk.field(field), field === FIELDS.age ? "72" : "Bed by the door");
    }
    expect(await storedEvents(page)).toEqual([]);
    await walk.press("Months");
    await refuses(page, walk.field(FIELDS.age), "36", "From 36 months on, choose years.");
    await takes(walk.field(FIELDS.age), "35");
    await walk.press("Years");
    await takes(walk.field(FIELDS.age), "72");
    await walk.press(BUTTONS.begin);
    await walk.isOn(PAGES.gates[0]);
    await walk.saved();
    const [{ event }] = await storedEvents(page);
    expect(event.Opened.details).toEqual({
      label: "Bed by the door",
      age: { Years: 72 },
      sex: null,
      setting: "CareHome",
    });
  });

  test("the suggested label is written over, one of one's own is added to", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.press(BUTTONS.swallowScreen);
    const label = walk.field(FIELDS.label);
    await walk.press(label);
    await page.keyboard.type("Bed by the door");
    await expect(label).toHaveValue("Bed by the door");
    await label.blur();
    await label.focus();
    await page.keyboard.press("End");
    await page.keyboard.type(", again");
    await expect(label).toHaveValue("Bed by the door, again");
    // What is known already is no suggestion.
    await walk.press(BUTTONS.adult);
    await walk.press(BUTTONS.begin);
    await walk.isOn(PAGES.gates[0]);
    await walk.press(BUTTONS.back);
    await walk.unfold(FOLDS.person);
    await label.focus();
    await page.keyboard.press("End");
    await page.keyboard.type(".");
    await expect(label).toHaveValue("Bed by the door, again.");
  });
});

test("a visit begins with a role that is pressed; a speech-language pathologist signs", async ({ page }) => {
  const walk = await Walk.home(page, visit({ label: "Bed by the door" }));
  await walk.press(BUTTONS.swallowScreen);
  await walk.press(BUTTONS.beginSlp);
  const initials = walk.field(FIELDS.initials);
  await expect(initials).toHaveAccessibleDescription("Give your initials, like AB.");
  await refuses(page, initials, "A".repeat(40), "Initials have at most 4 letters; these have 40.");
  await walk.press(BUTTONS.beginSlp);
  await walk.isOn(PAGES.newVisit);
  await takes(initials, "A.B.");
  // A label that is there already gets a number that is seen.
  await walk.field(FIELDS.label).fill("Bed by the door");
  await walk.press(BUTTONS.beginSlp);
  await walk.isOn(PAGES.gates[0]);
  await walk.saved();
  const opened = (await storedEvents(page)).map(({ event }) => event.Opened).filter(Boolean);
  expect(opened.map(({ details }) => details.label).sort()).toEqual(["Bed by the door", "Bed by the door (2)"]);
  expect(opened.find(({ initials }) => initials)).toMatchObject({ role: "Slp", initials: "AB" });
  // The last role is shown, and has to be pressed all the same.
  await walk.press(BUTTONS.back);
  await walk.isOn("Bed by the door (2)");
  await walk.press(BUTTONS.back);
  await walk.press(BUTTONS.swallowScreen);
  await expect(walk.button(BUTTONS.beginSlp)).toContainText("Last time on this phone");
  await expect(walk.button(BUTTONS.begin)).not.toContainText("Last time");
  await expect(initials).toHaveValue("");
});

test("person and place afterwards: a bad age is not recorded, the earlier one stays", async ({ page }) => {
  const walk = await Walk.at(page, visit({ age: 72 }));
  await walk.unfold(FOLDS.person);
  await refuses(page, walk.field(FIELDS.age), "200", "Age goes up to 120 years.");
  await walk.press(BUTTONS.keep);
  await walk.saved();
  const events = await storedEvents(page);
  expect(events).toHaveLength(1);
  expect(events[0].event.Opened.details.age).toEqual({ Years: 72 });
  await takes(walk.field(FIELDS.age), "73");
  await walk.press(BUTTONS.keep);
  await expect(page.getByText("Kept.")).toBeVisible();
  await walk.saved();
  expect((await storedEvents(page))[1].event.Details.age).toEqual({ Years: 73 });
});

test("what is left in the cup: not below nothing, not more than was offered", async ({ page }) => {
  const walk = await Walk.at(page, visit().readyForWater(), AT.water);
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.someLeft);
  const field = walk.field(FIELDS.left);
  const recorded = async () => {
    await walk.saved();
    return (await storedEvents(page)).map(({ event }) => event.Answer).filter((answer) => answer?.question === "left");
  };
  for (const [typed, words] of [
    ["-5", "Between 1 and 90 mL."],
    ["95", "Between 1 and 90 mL."],
    ["90.5", "Between 1 and 90 mL."],
    ["abc", "This is a number, like 15."],
    ["1.25", "One decimal at most, like 15.5."],
    ["1e1", "This is a number, like 15."],
  ]) {
    await refuses(page, field, typed, words);
  }
  expect(await recorded()).toEqual([]);
  await takes(field, "15,5");
  expect((await recorded()).at(-1).answer).toEqual({ Tenths: 155 });
  const n = (await recorded()).length;
  await refuses(page, field, "155", "Between 1 and 90 mL.");
  expect(await recorded()).toHaveLength(n);
  // The page goes on around it: the watch ends, other questions come, another is answered.
  await field.focus();
  await walk.wait(TIMES.watch - TIMES.still);
  await walk.settle();
  await expect(walk.button(ASKED.clear, walk.group(ASKED.voiceAfter))).toBeVisible();
  await expect(field).toHaveValue("155");
  await expect(field).toBeFocused();
  await expect(page.getByText("Between 1 and 90 mL.")).toBeVisible();
  await walk.answer(ASKED.voiceAfter, ASKED.clear);
  await expect(field).toHaveValue("155");
  await expect(page.getByText("Between 1 and 90 mL.")).toBeVisible();
});

test("digits on the way to a refused number are no answer; what stood before is", async ({ page }) => {
  const walk = await Walk.at(page, visit().readyForWater(), AT.water);
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.someLeft);
  const field = walk.field(FIELDS.left);
  const stands = async () => {
    await walk.saved();
    const answers = (await storedEvents(page)).map(({ event }) => event.Answer);
    return answers.filter((answer) => answer?.question === "left").at(-1).answer;
  };
  await field.tap();
  await page.keyboard.type("250");
  await expect(page.getByText("Between 1 and 90 mL.")).toBeVisible();
  expect(await stands()).toBeNull();
  await expect(field).toHaveValue("250");
  await page.keyboard.press("Backspace");
  expect(await stands()).toEqual({ Tenths: 250 });
  await walk.answer(ASKED.cup, ASKED.someLeft);
  // What was taken and left stands, whatever is typed to it later.
  await field.tap();
  await page.keyboard.press("End");
  await page.keyboard.type("0");
  await expect(page.getByText("Between 1 and 90 mL.")).toBeVisible();
  expect(await stands()).toEqual({ Tenths: 250 });
});

test("a refused field holds Next: the page stays, the field has the focus, and it can be cleared", async ({ page }) => {
  const walk = await Walk.at(page, visit().readyForWater(), AT.water);
  await walk.drink();
  await walk.answer(ASKED.cup, ASKED.someLeft);
  const field = walk.field(FIELDS.left);
  await field.fill("250");
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.water);
  await expect(field).toBeFocused();
  await expect(field).toHaveAccessibleDescription("Between 1 and 90 mL.");
  await expect(page.getByRole("alert").filter({ hasText: "Between 1 and 90 mL." })).toBeInViewport({ ratio: 1 });
  await expect(walk.button(BUTTONS.clearNumber)).toBeInViewport({ ratio: 0.5 });
  // Neither are signs held by it, nor choking.
  await walk.press(walk.sign(SIGNS.cough));
  await expect(walk.sign(SIGNS.cough)).toHaveClass(/seen/);
  await walk.press(walk.sign(SIGNS.choke));
  await walk.settle();
  await walk.isOn(PAGES.choking);
  await walk.press(BUTTONS.mistake);
  await field.fill("250");
  await walk.press(BUTTONS.clearNumber);
  await walk.wait(1);
  await expect(field).toBeFocused();
  await expect(field).toHaveValue("");
  await expect(walk.button(BUTTONS.clearNumber)).toHaveCount(0);
  await walk.press(BUTTONS.next);
  await walk.isOn(PAGES.decision);
});

test("a refused field in a closed fold is opened, and what goes on waits for it; the ways out do not", async ({ page }) => {
  const walk = await Walk.at(page, visit());
  await walk.unfold(FOLDS.person);
  const age = walk.field(FIELDS.age);
  await age.fill("200");
  await walk.unfold(FOLDS.person);
  await expect(age).toBeHidden();
  await walk.press(BUTTONS.goOn);
  await expect(age).toBeFocused();
  await expect(page.getByText("Age goes up to 120 years.")).toBeVisible();
  await walk.press(BUTTONS.keep);
  await walk.wait(1);
  await expect(age).toBeFocused();
  await walk.unfold(FOLDS.endHere);
  await walk.press(BUTTONS.breakOff);
  await walk.isOn(PAGES.decision);
});

test("a number of the examination that is refused holds its page", async ({ page }) => {
  const walk = await Walk.at(page, visit({ screen: "OralMotor" }).weakness().regions(0, 1), AT.regions[2]);
  await walk.asExpected();
  await walk.asExpected();
  await walk.openItem("Mouth opening in millimetres");
  const field = walk.field("Mouth opening");
  await field.fill("300");
  await walk.answer(/^Not tested: jaw opening/, ORAL.noTime);
  await walk.settle();
  await walk.isOn(ORAL.pages[2]);
  await expect(field).toBeFocused();
  // Cleared, it takes nothing of the newer answer back.
  await walk.press(BUTTONS.clearNumber);
  await expect(walk.item("Mouth opening in millimetres")).toContainText("not tested: no time");
  await walk.press(BUTTONS.next);
  await walk.isOn(ORAL.pages[3]);
});

test.describe("numbers of a task", () => {
  test("a length of a count", async ({ page }) => {
    const walk = await Walk.start(page);
    await walk.press(BUTTONS.count);
    await walk.unfold(FOLDS.anotherLength);
    for (const [typed, words] of [
      ["0", "Between 1 and 3600 s."],
      ["5000", "Between 1 and 3600 s."],
      ["abc", "This is a number, like 15."],
    ]) {
      await refuses(page, walk.field(FIELDS.seconds), typed, words);
    }
    await takes(walk.field(FIELDS.seconds), "12");
    await expect(page.getByText("12 seconds from the start")).toBeVisible();
  });

  test("a rate, a saturation and the highest number said", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "FullVisit" }).gateHolds(), AT.breaths);
    await walk.unfold(FOLDS.readings);
    await refuses(page, walk.field(FIELDS.rate), "140", /Between 1 and 120/);
    await takes(walk.field(FIELDS.rate), "18");
    await walk.straightTo(PAGES.countOnBreath);
    await walk.held(12);
    // Nothing beside it that makes a reading with one stray press.
    await expect(walk.main.locator(".stepper button")).toHaveCount(0);
    for (const [typed, words] of [
      ["500", "Between 0 and 200."],
      ["-1", "Between 0 and 200."],
      ["many", "This is a number, like 15."],
    ]) {
      await refuses(page, walk.field(FIELDS.highest), typed, words);
      await expect(walk.main.locator(".flag", { hasText: "Counted to" })).toHaveCount(0);
    }
  });

  test("millimetres of the mouth: a message at the field, what was typed stays, a reading that is rare is asked again", async ({ page }) => {
    const walk = await Walk.at(page, visit({ screen: "OralMotor" }).weakness().regions(0, 1), AT.regions[2]);
    await walk.openItem("Mouth opening in millimetres");
    const field = walk.field("Mouth opening");
    for (const [wrong, message] of [
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
  });
});
