// The way through a screen as a hand goes it: one method a step, every press counted.
//
// All wording that the tests look for stands in this file; a changed label is one edit here.

import { put } from "./store.mjs";
import { expect, openApp } from "./support.mjs";

const plain = (words) => words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
const begins = (words) => new RegExp(`^${plain(words)}`);
const anywhere = (words) => new RegExp(plain(words));

/** Buttons, by name. A pattern where the button says more than its name. */
export const BUTTONS = {
  swallowScreen: begins("Swallow screen"),
  oralMotor: begins("Oral motor screen"),
  fullVisit: begins("Full visit"),
  steppedScreen: begins("Stepped swallow screen"),
  ownScreen: begins("Own trials"),
  oneTask: begins("One task"),
  count: begins("Just count something"),
  goOnVisit: begins("Go on: "),
  allVisits: "All visits",
  olderVisits: "Older visits",
  itWasGiven: "Yes: it was given",
  settings: "Settings",
  sources: begins("Sources"),
  back: "Back",
  beginSlp: begins("Begin as speech-language pathologist"),
  adult: "16 or over",
  begin: begins("Begin as clinician trained to screen"),
  groupHolds: /^(All \d+ hold|The other \d+ hold|The other one holds|Go on)$/,
  goOn: "Go on",
  itHolds: "It holds",
  sayTheCase: "First say what is the case",
  sayTheFinding: "First say what you found",
  next: /^Next(?! trial)/,
  skip: /^(Skip: not done|Leave this out)$/,
  nextTrial: begins("Next trial"),
  couldNot: "Could not",
  takeBack: "Take this answer back",
  soundOn: "Sound on again",
  attach: "Attach",
  detach: "Detach",
  detachIt: "Detach it",
  anotherVisit: "Another visit",
  keepOrder: "Keep this for the next visits",
  earlier: (title) => `${title} earlier`,
  leaveOut: (title) => `${title}: Leave out`,
  askForIt: (title) => `${title}: Ask for it`,
  done: "Done",
  sayAloud: "Say it aloud",
  askAgain: "Ask again",
  hearAgain: "Hear it again",
  show: "Show to patient",
  undo: begins("Undo: "),
  lastSwallow: "Last swallow",
  stopCount: "Stop",
  countAgain: "Count again",
  allTheSame: "Go on all the same",
  thisReason: "Go on with this reason",
  endNotDone: "End: screen not done",
  endEmergency: "Emergency: end the screen",
  endStopped: "Nothing by mouth: to the text",
  goOnWithTrials: "Go on with trials",
  declined: "Person declined",
  wantsToStop: "Person wants to stop",
  breakOff: "I must break off",
  takeUp: "Take the screen up again",
  decision: "Decision",
  handover: "Handover",
  copy: "Copy",
  share: "Share",
  saveText: "Save as a file",
  forNurse: "For the nurse",
  fullNote: "Full note",
  helpCalled: "Help called",
  baseline: "Back to baseline",
  choking: "Choking",
  backToChoking: "Back to it",
  clearNumber: "Clear this number",
  decisionSoFar: begins("Decision so far"),
  mistake: "Pressed by mistake",
  newChoking: "This is a new choking",
  signSeen: "Sign seen",
  keep: "Keep",
  deleteVisit: "Delete this visit",
  deleteForGood: "Delete for good",
  saveUnsaved: "Save a copy as a file",
  saveAside: "Save them as a file",
  tryAgain: "Try again",
  useUpdate: "Use it now",
  table: begins("At the table"),
  sixSigns: begins("Signs after a stroke"),
  mouthEmpty: "Mouth empty",
  endTally: "End the tally",
  /** Where several kinds of things are counted it says what it takes. */
  undoOf: (what) => `Undo: ${what}`,
  addNote: "Add",
  saveTally: "Save the tally as a file",
  backToTally: "Back to the tally",
  leaveSignsOut: "Leave them out",
  done: "Done",
  leftHand: begins("Left hand"),
  larynxRests: "Larynx at rest",
  changeGiven: "Change what is given",
  byTaps: "By taps",
  thirtyOnly: "30 seconds only",
  anotherPerson: "Another person",
  withinMinute: "It was within the minute",
  wasLater: "It was later",
  itWasWith: (what) => `It was with ${what}`,
  policy: "Local policy",
  savePolicy: "Save this policy as a file",
  usePolicy: "Use this policy",
  leavePolicy: "Leave it as it is",
  defaultPolicy: "Back to Penlight's default",
  withDefault: "Go on with the default",
};

/** Questions that several buttons answer, by the group's name, and their answers. */
export const ASKED = {
  voiceBefore: "Voice before",
  voiceAfter: begins("Voice after"),
  watched: /not on the screen for all of the 60 seconds/,
  onlyDark: "I watched; only the phone was dark",
  clear: "Clear",
  wet: "Wet",
  cup: "The cup",
  oneGo: "Empty, in one go",
  someLeft: "Some left",
  because: "Because",
  goOnBecause: begins("I go on all the same"),
  howLong: "How long?",
  sound: "How did it sound?",
  allergy: "Allergy to anything in it?",
  teeth: begins("Teeth, or dentures"),
  dietOrder: "Does the diet order allow it?",
  orderAllows: "Yes, or none in force",
  pads: "Pads",
  slurred: "Speech slurred?",
  extra: begins("Two more dry swallows"),
  both: "Both",
  cupSize: "How much is in the cup?",
  whatGiven: begins("What is given?"),
  howMuch: "How much?",
  by: "By",
};

/** Lines of the gate and what may be the case instead, one of each kind. */
export const GATE = {
  block: { "Awake, and will stay awake": "Cannot stay awake" },
  fix: { "Mouth clean and moist": "Mouth dry or not clean" },
  emergency: { "No new or worse weakness": "New or worse weakness, droop or speech; the team did not know" },
};

/** Folds that a press opens. */
export const FOLDS = {
  endHere: "End the screen here",
  notValid: "Not valid?",
  readings: "A rate counted elsewhere",
  anotherLength: "Another length",
  levels: "Levels you set",
  keepDelete: "Keep a copy, delete",
  person: "Person and place",
  otherWay: "Another way to count",
  why: "Where this comes from",
  order: "Syllables: order, leave out",
  readBy: "For whom, and by which rules",
  fixed: /^Fixed choices, and why/,
  addTo: "Add to this visit",
  toWhom: /^To .*, /,
  gloves: /^Gloves on/,
};

export const FIELDS = {
  label: /Label of this visit/,
  age: /or exactly/,
  initials: /^Initials/,
  left: "Left in the cup",
  leftInIt: "Left in it",
  rate: /enter a rate/,
  spo2: /^SpO2, if/,
  lowestSpo2: /^Lowest SpO2/,
  seconds: "Seconds",
  lastWell: /last well/,
  remark: /^Remark/,
  highest: "Highest number said",
  leftInSyringe: "Left in the syringe",
  ownMl: /or so many millilitres/,
  note: /^Note/,
  policyFile: "Take a policy file in",
};

/** Headings of pages. */
export const PAGES = {
  home: "Penlight",
  newVisit: "Swallow screen",
  gates: [begins("The person"), begins("Orders and limits"), begins("Airway and chest"), begins("Ready now")],
  gateResult: "Before you start",
  breaths: "Breaths in 60 seconds",
  dry: "Dry swallows in 30 seconds",
  water: "90 mL of water without a pause",
  stepped: "Stepped swallow screen",
  sips: "Small sips of water",
  timed: "Timed cup of water",
  own: "Own trials",
  breathTaps: "Breathing by taps",
  breaths30: "Breaths in 30 seconds",
  choking: "Choking",
  decision: "Decision",
  handover: "Handover",
  count: "Just count something",
  oralMotor: "Oral motor screen",
  fullVisit: "Full visit",
  oneTask: "One task",
  pa: "pa-pa-pa",
  ta: "ta-ta-ta",
  ka: "ka-ka-ka",
  sequence: "pa-ta-ka",
  ah: 'Longest "ah"',
  s: "Longest s",
  z: "Longest z",
  glide: "Pitch glide",
  countOnBreath: "Counting on one breath",
  hold: "Breath hold",
  five: "5 cm of water for 5 seconds",
  settings: "Settings",
  sources: begins("Sources"),
  history: "All visits",
  thickness: "Drink thickness",
  cracker: "Timed cracker",
  table: "At the table",
  sixSigns: "Signs after a stroke",
  policy: "Local policy",
};

export const VERDICTS = {
  stop: anywhere("Stop: no further trial by mouth"),
  refer: anywhere("Refer to speech-language pathology"),
  referOn: anywhere("Refer: further examination"),
  incomplete: anywhere("Incomplete: not cleared"),
  pass: anywhere("No sign seen on this screen"),
  late: anywhere("No sign within the 60 seconds; one came later"),
  notDone: anywhere("Screen not done"),
  emergency: anywhere("Emergency: screen not done"),
  examined: anywhere("Examined: no food or drink was tested"),
};

export const SIGNS = {
  cough: "Cough",
  voice: "Wet voice",
  throatClear: "Throat clear",
  pause: "Pause",
  spill: "Spill, drool",
  breathing: "Breathing change",
  noSwallow: "No swallow",
  askedToStop: "Asked to stop",
  choke: "Choking",
};

export const ACTIONS = {
  nothingByMouth: begins("Nothing by mouth"),
  keepPlan: begins("Keep the current plan"),
  acknowledgedRisk: "Acknowledged-risk plan",
};

export const SAYS = {
  watchOn: "The screen was ended. Watch for 60 seconds all the same.",
  brokenOff: /^Broken off \d\d:\d\d$/,
  brokenOffLine: /broken off \d\d:\d\d/,
  lookAgain: "Look again now",
  oldBreaths: "Breaths were counted more than 60 minutes ago",
  oldVoice: "The voice was heard more than 60 minutes ago",
  saved: "Saved",
  notSaved: "Not saved",
  lessSafe: "Records are less safe here",
  cantBeRead: "can't be read",
  restarted: "The app was restarted during this time",
  outOfSight: "Penlight was out of sight for",
  notYet: "Not yet",
  doctorNow: "Call the doctor now.",
  onlySlp: "Only a speech-language pathologist may go on past this.",
  pressFirst: "First press what to do until review.",
  sayWhyKept: "Say why the current plan is kept.",
  sayWhyRisk: "Say why: no plan with acknowledged risks was known before.",
  copied: /^Copied at /,
  emergencyLine: "Use your local emergency procedure",
  newVersion: "A new version of Penlight is ready",
  beforeGo: /before "go", not counted/,
  keptApart: "later, kept apart",
  noSound: "No sound: the phone stopped it.",
  keptOrder: "Syllables, as kept: ",
  policyStays: "The policy in force stays.",
  policyUsed: "This policy is in force now.",
  policyLost: "The local policy kept on this phone can't be used.",
  nothingChanges: "Nothing would change: this policy is in force already.",
  wouldChange: "What would change",
};

/** How a trial sounded. */
export const SOUND = { correct: "Correct", distorted: "Distorted", couldNot: "Could not" };
/** The examination of face, mouth and throat. */
export const ORAL = {
  screen: begins("Oral motor screen"),
  pages: [
    begins("Face and neck"),
    begins("Lips and cheeks"),
    begins("Jaw"),
    begins("Teeth and mouth"),
    begins("Tongue"),
    begins("Soft palate"),
    begins("Feeling"),
    begins("Voice and throat"),
    begins("Gag"),
  ],
  first: begins("Is any weakness"),
  nothingNew: "No, nothing new or worse",
  isNew: "New or worse weakness, droop or speech; the team did not know",
  known: "Weakness, droop or speech change, known to the team",
  asExpected: /^I (checked|tested) (these \d+|this): as expected/,
  oneAsExpected: "As expected",
  undo: begins("Undo: "),
  clear: "Clear",
  rest: begins("Not tested: "),
  leaveRest: "Leave the rest untested",
  noReason: /^Not tested, and nobody said why: \d+ items?\. Because:$/,
  notNeeded: "Not needed today",
  noTime: "No time",
  left: "Patient's left",
  right: "Patient's right",
  both: "Both sides",
  cue: "How was it asked for?",
  answerFirst: "First answer whether anything is new or worse",
  gagWaits: "The gag is never tested before a swallow trial",
  undoTouch: "Undo last touch",
  noSide: "It is in the middle and has no side. Kept without one.",
  line: "Face, mouth and throat: ",
};

/** Words of the nursing text. */
export const TEXT = {
  pass: /^NO SIGN SEEN/,
  emergency: /^EMERGENCY: swallow screen NOT DONE/,
  nothingByMouth: "NOTHING BY MOUTH, tablets included, until assessed.",
  acknowledgedRisk: "Acknowledged-risk plan, because the doctor decided so: follow it where it is recorded.",
  level: "Drinks level 2 Mildly thick: set by the clinician, not by this screen.",
  medicines: "Time-critical medicines: ask the prescriber now for another route.",
};

/** Watches, windows and the moment in which a page stands still after one of them. */
export const TIMES = { breaths: 60_000, dry: 30_000, watch: 60_000, still: 700 };

/** The moment at which tests with a clock of their own begin. */
export const MORNING = new Date("2026-03-04T09:30:00");

/**
 * Stops the page's clocks: time passes only when a test says so. Before `goto`.
 */
export async function stopTime(page, at = MORNING) {
  // It runs until it is stopped, and can't be stopped in its own past.
  await page.clock.install({ time: at.getTime() - 60_000 });
  await page.clock.pauseAt(at);
}

/** Where a visit can be opened, as the end of its address. */
export const AT = {
  overview: "overview",
  gates: ["gate/person", "gate/orders", "gate/airway", "gate/ready"],
  gateResult: "gate/result",
  breaths: "task/breathing",
  breathTaps: "task/breath-taps",
  dry: "task/dry-swallows",
  water: "task/water",
  sips: "task/sips",
  timed: "task/timed-water",
  own: "task/own",
  cracker: "task/cracker",
  table: "task/table",
  thickness: "task/drink-thickness",
  sixSigns: "task/signs",
  pa: "task/pa",
  ta: "task/ta",
  ka: "task/ka",
  sequence: "task/pa-ta-ka",
  ah: "task/longest-ah",
  s: "task/longest-s",
  z: "task/longest-z",
  glide: "task/glide",
  countOnBreath: "task/count-on-one-breath",
  hold: "task/breath-hold",
  five: "task/five-for-five",
  regions: ["face", "lips", "jaw", "mouth", "tongue", "palate", "feeling", "voice", "gag"].map((region) => `oral/${region}`),
  choking: "choking",
  decision: "decision",
  handover: "handover",
};

/** A page of the same origin that is not the app: from here its store can be filled. */
const BESIDE = "beside";
const EMPTY = '<!doctype html><link rel="icon" href="data:,">';

/**
 * Fills the store with visits, the newest event of each a second ago. The page is left beside the
 * app, which opens with the next `goto`.
 */
export async function store(page, visits, { base = "./", now = MORNING } = {}) {
  await page.route(`**/${BESIDE}`, (route) => route.fulfill({ contentType: "text/html", body: EMPTY }));
  await page.goto(base === "./" ? base + BESIDE : new URL(BESIDE, base).href);
  await page.unroute(`**/${BESIDE}`);
  await put(page, visits, now.getTime() - 1_000);
}

export class Walk {
  /** `real`: the page's clocks run, so waiting is waiting. */
  constructor(page, { real = false } = {}) {
    this.page = page;
    this.real = real;
    this.presses = 0;
  }

  /** A walk from Home in a fresh page whose time stands still. */
  static async start(page, url = "./") {
    await stopTime(page);
    await openApp(page, url);
    return new Walk(page);
  }

  /** A page of a visit that was brought so far, see journal.mjs; its time stands still. */
  static async at(page, visit, where = AT.overview, { others = [] } = {}) {
    await stopTime(page);
    await store(page, [...others, visit]);
    await openApp(page, `./#${visit.head.loose ? `count/${visit.id}` : `visit/${visit.id}/${where}`}`);
    return new Walk(page);
  }

  /** The first page of a phone with these visits, which were left two hours ago. */
  static async home(page, ...visits) {
    await stopTime(page);
    await store(page, visits, { now: new Date(MORNING.getTime() - 2 * 3_600_000) });
    await openApp(page);
    return new Walk(page);
  }

  // --- Finding ----------------------------------------------------------------------------------

  named(role, name, within = this.page) {
    return within.getByRole(role, { name, exact: typeof name === "string" });
  }

  button(name, within) {
    return this.named("button", name, within);
  }

  group(name) {
    return this.named("group", name);
  }

  get pad() {
    return this.page.locator("#pad");
  }

  get text() {
    return this.page.locator("pre.handover");
  }

  get main() {
    return this.page.getByRole("main");
  }

  sign(sign) {
    // With a count behind it once it was pressed.
    return this.button(new RegExp(`^${plain(sign)}( \\d+)?$`), this.group("Signs"));
  }

  fold(words) {
    return this.page.locator("summary", { hasText: words });
  }

  field(name) {
    return this.named("textbox", name);
  }

  async isOn(heading) {
    await expect(this.page.getByRole("heading", { level: 1, name: heading, exact: typeof heading === "string" })).toBeVisible();
  }

  // --- Time -------------------------------------------------------------------------------------

  /** Lets time pass. */
  async wait(ms) {
    if (this.real) {
      await this.page.waitForTimeout(ms);
    } else {
      await this.page.clock.runFor(ms);
    }
  }

  /** After something ended by itself or by a press, the page takes no press for a moment. */
  async settle() {
    if (!this.real) {
      await this.page.clock.runFor(TIMES.still);
    }
    await expect(this.page.locator("main.still")).toHaveCount(0);
  }

  /** The phone is put away, or looked at again. */
  async sight(seen) {
    await this.page.evaluate((visible) => {
      Object.defineProperty(document, "hidden", { configurable: true, get: () => !visible });
      Object.defineProperty(document, "visibilityState", {
        configurable: true,
        get: () => (visible ? "visible" : "hidden"),
      });
      document.dispatchEvent(new Event("visibilitychange"));
    }, seen);
  }

  // --- Presses ----------------------------------------------------------------------------------

  /** One press that is no counted tap. */
  async press(target, within) {
    const locator = typeof target === "string" || target instanceof RegExp ? this.button(target, within) : target;
    await locator.tap();
    this.presses += 1;
  }

  /** A finger on its way down, at the page's own time: no time passes for its coming up again. */
  async touch(part) {
    await part.dispatchEvent("pointerdown", { button: 0, isPrimary: true });
  }

  /** Answers a question that has a group of its own. */
  async answer(question, words) {
    await this.press(words, this.group(question));
  }

  /** Opens a fold. */
  async unfold(words) {
    await this.press(this.fold(words));
  }

  /** From the breaths of 60 seconds to those by taps. */
  async byTaps() {
    await this.unfold(FOLDS.otherWay);
    await this.press(BUTTONS.byTaps);
  }

  /** Taps that are counted, `every` ms apart; the first after that time. */
  async count(n, every = 1000) {
    for (let i = 0; i < n; i += 1) {
      await this.wait(every);
      await this.pad.tap();
    }
  }

  /** The pad shows so many. */
  async counted(n) {
    await expect(this.pad.locator(".count")).toHaveText(String(n));
  }

  // --- Steps ------------------------------------------------------------------------------------

  /** `screen`: one of those with a button on the first page; `first`: the page it begins on. */
  async newVisit({ slp = false, age, screen = "swallowScreen", first } = {}) {
    await this.press(BUTTONS[screen]);
    const titles = {
      swallowScreen: PAGES.newVisit,
      oralMotor: PAGES.oralMotor,
      fullVisit: PAGES.fullVisit,
      steppedScreen: PAGES.stepped,
      ownScreen: PAGES.own,
    };
    await this.isOn(titles[screen]);
    if (age === undefined) {
      await this.press(BUTTONS.adult);
    } else {
      await this.field(FIELDS.age).fill(age);
    }
    if (slp) {
      await this.field(FIELDS.initials).fill("AB");
    }
    await this.press(slp ? BUTTONS.beginSlp : BUTTONS.begin);
    if (screen === "oralMotor") {
      // It begins with the examination, which has a test file of its own.
      await this.isOn(ORAL.pages[0]);
      await this.straightTo(first ?? PAGES.pa);
    } else {
      await this.isOn(first ?? PAGES.gates[0]);
    }
  }

  /** To another page of the visit that is open, by its address. */
  async go(where) {
    await this.page.evaluate((to) => (location.hash = location.hash.replace(/^(#visit\/[^/]+).*/, `$1/${to}`)), where);
  }

  /** From the first page to a task on its own. */
  async oneTask(title) {
    await this.press(BUTTONS.oneTask);
    await this.isOn(PAGES.oneTask);
    await this.press(title);
    await this.isOn(title);
  }

  /** From a page of a visit to one of its tasks, past those before it. */
  async straightTo(title) {
    await this.press(BUTTONS.back);
    await this.press(begins(title));
    await this.isOn(title);
  }

  /** Repeated syllables, the first at the start: `n` within `seconds`, evenly. */
  async syllables(n, seconds, { byCount = false, sound = SOUND.correct } = {}) {
    const whole = seconds * 1000;
    const every = Math.floor(whole / n);
    await this.startPad();
    await this.count(n - 1, every);
    await this.wait(whole - (n - 1) * every);
    if (byCount) {
      await this.press(BUTTONS.stopCount);
    }
    await this.settle();
    await this.answer(ASKED.sound, sound);
  }

  /** A sound, a breath: the whole pad is start and stop. */
  async held(seconds) {
    await this.startPad();
    await this.wait(seconds * 1000);
    await this.press(this.pad);
    await this.settle();
  }

  /**
   * Goes through the gate. `but`: lines that do not hold, as `{ "what is wanted": "what is the case" }`.
   */
  async gate(but = {}) {
    const left = new Map(Object.entries(but));
    for (const heading of PAGES.gates) {
      await this.isOn(heading);
      for (const [line, exception] of [...left]) {
        const row = this.page.locator("li.item", { hasText: line });
        if ((await row.count()) > 0) {
          await this.press(row.getByRole("button").first());
          await this.press(exception, row);
          left.delete(line);
          if (exception === Object.values(GATE.emergency)[0]) {
            // It waits for no other question.
            return;
          }
        }
      }
      await this.press(BUTTONS.groupHolds);
    }
    expect([...left.keys()], "lines of the gate that were not found").toEqual([]);
  }

  /** Home to the first page of the examination, as the oral motor screen has it. */
  async oralVisit(screen = ORAL.screen, age) {
    await this.press(screen);
    if (age === undefined) {
      await this.press(BUTTONS.adult);
    } else {
      await this.field(FIELDS.age).fill(age);
    }
    await this.press(BUTTONS.begin);
    await this.isOn(ORAL.pages[0]);
  }

  /** The line of an item of the examination. */
  item(name) {
    return this.page.locator("li.item").filter({ has: this.page.locator("b", { hasText: new RegExp(`^${plain(name)}$`) }) });
  }

  /** Opens an item's line. */
  async openItem(name) {
    await this.press(this.item(name).locator("button.line"));
  }

  /** An exception: the item, what is the case, and what more is said of it. */
  async exception(name, what, ...more) {
    await this.openItem(name);
    await this.press(what, this.item(name));
    for (const words of more) {
      await this.press(words, this.item(name));
    }
  }

  /** "I checked these": settles what it names. */
  async asExpected() {
    await this.press(ORAL.asExpected);
    await this.settle();
  }

  /** Everything on this page is as expected, and what is left is not needed. */
  async region(at) {
    await this.isOn(ORAL.pages[at]);
    const here = this.page.getByRole("heading", { level: 1, name: ORAL.pages[at] });
    while ((await here.count()) > 0) {
      if ((await this.button(ORAL.asExpected).count()) > 0) {
        await this.asExpected();
      } else {
        await this.answer(ORAL.rest, ORAL.notNeeded);
        await this.settle();
      }
    }
  }

  async startPad() {
    await this.press(this.pad);
  }

  async breaths(n = 16) {
    await this.isOn(PAGES.breaths);
    await this.startPad();
    const every = Math.floor(TIMES.breaths / (n + 1));
    await this.count(n, every);
    await this.wait(TIMES.breaths - n * every);
    await this.settle();
  }

  async dry(n = 4) {
    await this.isOn(PAGES.dry);
    await this.startPad();
    await this.count(n, 2_000);
    await this.wait(TIMES.dry - n * 2_000);
    await this.settle();
  }

  /** Home to the page of the water, all as it should be. */
  async toWater({ dry = 4, breaths = 16, slp = false } = {}) {
    await this.toDry({ breaths, slp });
    await this.dry(dry);
    await this.press(BUTTONS.next);
    await this.isOn(PAGES.water);
  }

  /** Home to the page of the dry swallows. */
  async toDry({ breaths = 16, slp = false, age } = {}) {
    await this.newVisit({ slp, age });
    await this.gate();
    await this.breaths(breaths);
    await this.press(BUTTONS.next);
    await this.isOn(PAGES.dry);
  }

  /** One small sip: lip contact and swallow; its questions; the minute after it. */
  async sip({ before, extra, after = ASKED.clear, watch = true } = {}) {
    if (before) {
      await this.answer(ASKED.voiceBefore, before);
    }
    await this.startPad();
    await this.wait(1_500);
    await this.press(this.pad);
    await this.settle();
    if (after) {
      await this.answer(ASKED.voiceAfter, after);
    }
    if (extra) {
      await this.answer(ASKED.extra, extra);
    }
    if (watch) {
      await this.wait(TIMES.watch - TIMES.still);
      await this.settle();
    }
  }

  /** The six sips of Penlight's own plan, all clear. */
  async clearSips() {
    await this.isOn(PAGES.sips);
    await this.sip({ before: ASKED.clear, extra: ASKED.both });
    await this.sip({ extra: ASKED.both });
    for (let n = 0; n < 4; n += 1) {
      await this.sip();
    }
  }

  /** Voice, first lip contact, swallows, last swallow. */
  async drink({ before = ASKED.clear, swallows = 3, end = true } = {}) {
    await this.answer(ASKED.voiceBefore, before);
    await this.startPad();
    await this.count(swallows, 2_000);
    if (end) {
      await this.wait(1_000);
      await this.press(BUTTONS.lastSwallow);
      await this.settle();
    }
  }

  /** What the last swallow leaves to do; `watched`: how long ago that was. */
  async finishWater({ cup = ASKED.oneGo, after = ASKED.clear, watched = TIMES.still } = {}) {
    await this.answer(ASKED.cup, cup);
    await this.wait(TIMES.watch - watched);
    await this.settle();
    await this.answer(ASKED.voiceAfter, after);
  }

  /** Attaches what stands alone to the visit of this name. */
  async attachTo(label) {
    await this.press(label);
    await this.press(BUTTONS.attach);
    await this.isOn(label);
  }

  async toDecision(verdict) {
    await this.press(BUTTONS.next);
    await this.isOn(PAGES.decision);
    await this.decided(verdict);
  }

  /** The decision page says this. */
  async decided(verdict) {
    await expect(this.page.locator(".verdict .word")).toHaveText(verdict);
  }

  async toHandover() {
    await this.press(BUTTONS.handover);
    await this.isOn(PAGES.handover);
  }

  /** Shows the full note instead of the text for the nurse. */
  async fullNote() {
    await this.press(BUTTONS.fullNote);
    await expect(this.text).toContainText("FULL NOTE");
  }

  /** Copies the text and gives what is in the clipboard. */
  async copy() {
    await this.press(BUTTONS.copy);
    await expect(this.page.getByText(SAYS.copied)).toBeVisible();
    return this.page.evaluate(() => navigator.clipboard.readText());
  }

  async saved() {
    await expect(this.page.locator(".saved")).toHaveText(SAYS.saved);
  }
}
