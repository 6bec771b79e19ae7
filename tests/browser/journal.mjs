// Visits as the app would have stored them, so that a test opens straight at the state it is about.
//
//   visit().gateHolds().breaths(16).dry(4).water({ cough: 12 })
//
// What is written here is checked against what a hand stores: tests/browser/whole.spec.mjs goes
// through the same visits press by press and compares the two journals.

/** Every line of the gate, a list for each of its pages. */
const GATE = [
  ["identity", "consent", "language", "aids"],
  ["nothing-by-mouth", "diet", "tube", "clot-treatment", "fluids", "allergy", "spine", "risk-plan"],
  ["airway-tube", "mask", "extubation", "high-flow", "chest", "distress"],
  ["new-weakness", "awake", "upright", "saliva", "cough", "requests", "mouth", "suction"],
];

/** The examination of face, mouth and throat: what a press settles by eye, by hand, and the rest. */
const REGIONS = [
  { eye: ["face.rest", "face.forehead", "face.eyes", "neck.rest"] },
  { eye: ["lips.together", "lips.smile", "lips.pucker"], hand: ["lips.cheeks", "lips.pull"] },
  {
    eye: ["jaw.open", "jaw.sides", "jaw.forward"],
    hand: ["jaw.bite", "jaw.against", "jaw.against-side"],
    alone: ["jaw.fingers", "jaw.mm"],
  },
  {
    eye: [
      "teeth.upper",
      "teeth.lower",
      "mouth.gums",
      "mouth.lining",
      "mouth.moist",
      "mouth.clean",
      "mouth.sulci",
      "mouth.hard-palate",
    ],
  },
  {
    eye: [
      "tongue.rest",
      "tongue.out",
      "tongue.sides",
      "tongue.up",
      "tongue.palate",
      "tongue.lick-upper",
      "tongue.lick-lower",
      "tongue.back",
    ],
    hand: ["tongue.push"],
  },
  { eye: ["palate.rest", "palate.ah", "throat.wall"] },
  {
    hand: ["touch.forehead", "touch.cheek", "touch.chin", "touch.tongue", "touch.inner-cheek"],
    alone: ["taste"],
  },
  {
    eye: ["voice.ah", "voice.pitch", "speech", "nose", "cough", "throat.clear"],
    hand: ["larynx"],
    alone: ["cough.flow", "neck.strength"],
  },
  { alone: ["touch.palate", "touch.tongue-back", "gag"] },
];

/** Signs by their plain names, as they are stored. */
const SIGNS = {
  cough: "Cough",
  voice: "VoiceChange",
  throatClear: "ThroatClear",
  pause: "Pause",
  spill: "Spill",
  breathing: "BreathingChange",
  noSwallow: "NoSwallow",
  askedToStop: "AskedToStop",
  choke: "Choke",
};

/** The policy a record names when none was taken in. */
const POLICY = {
  name: "Penlight default 1",
  voice_refers: true,
  requests_block: false,
  breaths_low: 8,
  breaths_high: 25,
  spo2_low: 91,
  dry_swallow_from_years: 16,
  dry_none_stops: false,
  spo2_fall: 2,
};

/** A moment of the visit; it becomes a stamp when it is known when the visit ended. */
class Moment {
  constructor(ms) {
    this.ms = ms;
  }
}

let made = 0;

/** A visit that has just begun, or one task on its own. */
export const visit = (details) => new Journal().begun(details);
export const loose = () => new Journal();

class Journal {
  constructor() {
    made += 1;
    this.id = `seeded-visit-${String(made).padStart(4, "0")}`;
    this.now = 0;
    this.written = [];
    this.trials = 0;
    this.earlier = 0;
    this.head = { label: "", what: "Count", loose: true, running: false, unclosed: false, issued: false, verdict: "" };
  }

  // --- What everything is made of ---------------------------------------------------------------

  say(...events) {
    this.written.push(...events.map((event) => ({ at: new Moment(this.now), event })));
    return this;
  }

  /** Time passes before what comes next. */
  wait(ms) {
    this.now += ms;
    return this;
  }

  open(task, length = null) {
    this.trials += 1;
    return this.say({ TrialOpened: { trial: this.trials - 1, task, length } });
  }

  mark(kind) {
    return this.say({ Mark: { trial: this.trials - 1, at: new Moment(this.now), kind } });
  }

  answer(question, answer) {
    const kinds = { string: (id) => ({ Choice: id }), number: (n) => ({ Tenths: Math.round(n * 10) }) };
    const stored = typeof answer === "object" ? answer : kinds[typeof answer](answer);
    return this.say({ Answer: { trial: this.trials - 1, question, answer: stored } });
  }

  sign(name) {
    return this.mark({ Sign: SIGNS[name] });
  }

  /** Signs after the last swallow, `{ cough: 12 }` in seconds, then the rest of the minute. */
  watched(signs) {
    const from = this.now;
    for (const [name, seconds] of Object.entries(signs).sort(([, a], [, b]) => a - b)) {
      this.now = from + seconds * 1000;
      this.sign(name);
    }
    this.now = Math.max(this.now, from + 60_000);
    return this.mark("WatchOver");
  }

  // --- A visit ----------------------------------------------------------------------------------

  /** `age`: years; not given, 16 or over. */
  begun({ screen = "Swallow", slp = false, age, label = "Visit 1, 09:30" } = {}) {
    this.head = { ...this.head, label, what: { Screen: screen }, loose: false };
    return this.say({
      Opened: {
        details: { label, age: age === undefined ? "Adult" : { Years: age }, sex: null, setting: null },
        screen,
        versions: { app: "0.1.0", rules: "1" },
        policy: POLICY,
        role: slp ? "Slp" : "Screener",
      },
    });
  }

  /** The pages of the gate, but for lines such as `{ awake: "no" }`; `pages`: only so many. */
  gateHolds(but = {}, pages = GATE.length) {
    for (const lines of GATE.slice(0, pages)) {
      const found = lines.filter((line) => but[line]);
      found.forEach((line) => this.wait(1_000).say({ Gate: [[line, but[line]]] }));
      const hold = lines.filter((line) => !but[line]);
      this.wait(1_000).say({ Gate: hold.map((line) => [line, "holds"]) });
    }
    return this;
  }

  /** Breaths counted for 60 seconds; `spo2` where it was read too. */
  breaths(n = 16, { spo2 } = {}) {
    this.open("Breathing");
    if (spo2 !== undefined) {
      this.answer("spo2", spo2);
    }
    return this.#window("Tap", n, 60_000);
  }

  /** Dry swallows in 30 seconds. */
  dry(n = 4) {
    return this.open("DrySwallow").#window("Tap", n, 30_000);
  }

  #window(kind, n, length) {
    this.wait(1_000).mark("Start");
    const from = this.now;
    for (let i = 1; i <= n; i += 1) {
      this.now = from + Math.floor((length * i) / (n + 1));
      this.mark(kind);
    }
    this.now = from + length;
    return this.mark("WindowOver");
  }

  /** Everything before the water, as it should be. */
  readyForWater({ breaths = 16, dry = 4, spo2 } = {}) {
    return this.gateHolds().breaths(breaths, { spo2 }).dry(dry);
  }

  /**
   * 90 mL: signs are seconds after the last swallow, as `{ cough: 12 }`. `end: false`: it still
   * runs; `cup`, `after`: null where it was not answered.
   */
  water({ before = "clear", swallows = 3, end = true, cup = "one-go", after = "clear", ...signs } = {}) {
    this.open("Water90").answer("voice-before", before);
    this.#drunk(swallows);
    if (!end) {
      return this;
    }
    this.wait(1_000).mark("End");
    if (cup) {
      this.answer("cup", cup);
    }
    this.watched(signs);
    return after ? this.answer("voice-after", after) : this;
  }

  #drunk(swallows) {
    this.wait(1_000).mark("Start");
    for (let i = 0; i < swallows; i += 1) {
      this.wait(2_000).mark("Tap");
    }
  }

  /** One small sip with its minute, so many millilitres. */
  sip(ml, { after = "clear", ...signs } = {}) {
    const first = !this.written.some(({ event }) => event.TrialOpened?.task === "Sips");
    this.open("Sips");
    if (first) {
      this.answer("voice-before", "clear");
    }
    this.answer("sip", ml);
    if (ml === 3) {
      this.answer("sip-way", "under-tongue");
    }
    if (!first) {
      this.answer("voice-before", "clear");
    }
    this.wait(1_000).mark("Start").wait(1_500).mark("End").answer("voice-after", after);
    if (ml === 3) {
      this.answer("extra-swallows", "2");
    }
    return this.watched(signs);
  }

  /** The six sips of Penlight's own plan. */
  clearSips() {
    [3, 3, 5, 5, 10, 10].forEach((ml) => this.sip(ml));
    return this;
  }

  /** One of the clinician's own trials, as `{ level: "d2", amount: "5", by: "spoon" }`. */
  own({ level, amount, by, ...signs }) {
    this.open("Own").answer("own-level", level);
    if (amount) {
      this.answer("own-amount", amount);
    }
    if (by) {
      this.answer("own-by", by);
    }
    return this.wait(1_000).mark("Start").wait(2_000).mark("End").watched(signs);
  }

  /** A sound or a breath held for so long. */
  held(task, seconds) {
    return this.open(task).wait(1_000).mark("Start").wait(seconds * 1_000).mark("End");
  }

  /** Repeated syllables, the first at the start: `n` in 5 seconds. */
  syllables(task, n, sound = "correct") {
    this.open(task).wait(1_000).answer("how", "5s").answer("each-tap", "syllable").mark("Start").mark("Tap");
    const from = this.now;
    for (let i = 1; i < n; i += 1) {
      this.now = from + Math.floor((5_000 * i) / n);
      this.mark("Tap");
    }
    this.now = from + 5_000;
    return this.mark("WindowOver").answer("sound", sound);
  }

  /** The screen was ended: "Refused", "Withdrew", "BrokenOff". */
  ended(why) {
    return this.wait(1_000).say({ EndedEarly: why });
  }

  // --- Face, mouth and throat -------------------------------------------------------------------

  /** Whether any weakness is new. */
  weakness(answer = "holds") {
    return this.wait(1_000).say({ Gate: [["new-weakness", answer]] });
  }

  /** Something found, as `("face.rest", { what: "droop", side: "Left" })`. */
  found(item, ...exceptions) {
    return this.saw(item, { Found: exceptions });
  }

  /** One item's answer, as it is stored. */
  saw(item, answer) {
    return this.wait(1_000).say({ Oral: [[item, answer]] });
  }

  /** These regions, by number: the rest of each as expected, or not needed. */
  regions(...numbers) {
    const seen = new Set(this.written.flatMap(({ event }) => event.Oral ?? []).map(([item]) => item));
    for (const number of numbers) {
      const { eye = [], hand = [], alone = [] } = REGIONS[number];
      for (const [items, answer] of [
        [eye, "AsExpected"],
        [hand, "AsExpected"],
        [alone, { NotTested: "NotNeeded" }],
      ]) {
        const left = items.filter((item) => !seen.has(item));
        if (left.length > 0) {
          this.wait(1_000).say({ Oral: left.map((item) => [item, answer]) });
        }
      }
    }
    return this;
  }

  /** The whole examination, with nothing to remark. */
  examined({ but = [] } = {}) {
    return this.regions(...[...REGIONS.keys()].filter((number) => !but.includes(number)));
  }

  // --- As it is stored ---------------------------------------------------------------------------

  /** In lists this visit is so. */
  listed(as) {
    this.head = { ...this.head, ...as };
    return this;
  }

  /** It was left so much earlier than the others. */
  ago(ms) {
    this.earlier = ms;
    return this;
  }

  /** What IndexedDB holds of it, where the last event was at `now`, by the clock on the wall. */
  rows(now) {
    const last = now - this.earlier;
    const stamp = ({ ms }) => ({ l: 7, m: 1_000 + ms, w: last - this.now + ms });
    const stamped = (_, value) => (value instanceof Moment ? stamp(value) : value);
    const events = this.written.map(({ at, event }, seq) => ({
      device: "seeded-device-01",
      visit: this.id,
      seq,
      schema: 1,
      key: "",
      at: stamp(at),
      body: JSON.stringify(event, stamped),
    }));
    const head = {
      visit: this.id,
      opened: last - this.now,
      touched: last,
      ...this.head,
      deleted: false,
      events: events.length,
    };
    return { events, head };
  }
}
