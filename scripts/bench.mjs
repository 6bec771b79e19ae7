// Measures the release in dist/ as a phone would use it and writes what it finds into BENCH.md.
//   node scripts/bench.mjs [--quick]
//
// Progress goes to stderr. A limit that is not met changes nothing about the exit status.

import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { BareBrowser, cleanups, phone, temporaryFolder, withFreshPhone } from "./bench-browser.mjs";
import { count, median, ms, table, tell } from "./bench-figures.mjs";
import { meals } from "./bench-meal.mjs";
import { loop, seedVisits } from "./bench-page.mjs";
import { lostPresses, presses, pressesBehind } from "./bench-presses.mjs";
import { coldStarts, firstVisits } from "./bench-starts.mjs";
import { measure, total } from "./sizes.mjs";
import { storedEvents, storedHeads } from "../tests/browser/store.mjs";
import { controlledByServiceWorker, DIST, openApp, ROOT, startServer } from "../tests/browser/support.mjs";
import { Walk } from "../tests/browser/walk.mjs";

const QUICK = process.argv.includes("--quick");
const [STARTS, MEALS, ROUNDS, TAPS] = QUICK ? [5, 2, 1, 60] : [9, 5, 2, 110];
/** A mid-range phone, as the browser slows down. */
const RATE = 4;
const FEW = 10;
const MANY = 1_000;
const MARKS = [10, 2_000, 20_000];
const MEAL = { minutes: 45, marks: 2_000, notes: 10 };
const STORM = { seconds: QUICK ? 4 : 10, perSecond: 15, blocked: 40, of: 60 };
const BASE = "/wards/penlight/";
const RESULT = path.join(ROOT, "BENCH.md");

const NOTES = `
Every time is one of this machine, shared with whatever else runs on it: medians and quantiles, not best values. The slow-down is the browser's own (Emulation.setCPUThrottlingRate) and holds back the page's main thread only, not the service worker, the store or the disk. Sizes are told and not judged.

1. From the start of the navigation in a new browser process: Home's "Swallow screen" button is there, the frame with it is painted, it gets a click, and the page that answers is painted. Slow 4G is 1.6 Mbit/s with 150 ms to each answer (Network.emulateNetworkConditions), the files as \`scripts/run\` sends them. For a cold start the app was installed, the server stopped and the browser ended. Median of ${STARTS} (fastest to slowest).
2. Real touches (Input.dispatchTouchEvent) at random moments on the running pad of "Breaths in 60 seconds", ${TAPS * ROUNDS} of them. The count is in the page when a MutationObserver is told of it. Judged is what the page does from the press's arrival in it: what lies between the touch's own stamp and that arrival is the browser's, as the bare page shows, which has one button that puts the next number into itself.
3. From the touch's own stamp to "complete" of the transaction that holds it (durability strict).
4. So many marks were written into the store behind a count that was begun by hand; the app then finds it as after a crash and gets ${TAPS / 2} touches. Counted from the press's arrival in the page: what comes before is the browser's and the same for all.
5. The same with ${MEAL.notes} notes among the marks. From the touch's own stamp to the end of the main thread's work on the frame with the page asked for; "saved as a file" to the moment the file is offered to the browser; while scrolling the longest time between two animation frames of a fling down and up. Median of ${MEALS} (fastest to slowest).`;

/** One after the other; beside each other they would measure each other. */
async function step(name, work) {
  console.error(name);
  return work();
}

/** Walks a screen from Home to the copied handover and gives what the app stored of it. */
const recordVisit = (url) =>
  withFreshPhone(
    async (context, browser) => {
      const page = await context.newPage();
      const walk = await Walk.start(page, url);
      await walk.toWater();
      await walk.drink();
      await walk.finishWater();
      await walk.toDecision(/./);
      await walk.toHandover();
      await walk.copy();
      await walk.saved();
      const events = (await storedEvents(page)).map(({ event, ...stored }) => stored);
      const heads = await storedHeads(page);
      if (heads.length !== 1 || !heads[0].issued) {
        throw new Error(`the recorded visit is not as expected: ${JSON.stringify(heads)}`);
      }
      return { events, head: heads[0], version: browser.version() };
    },
    { permissions: ["clipboard-read", "clipboard-write"] },
  );

/** A profile in which Penlight is installed and holds so many copies of a visit. */
async function installed(url, { events, head }, copies) {
  const profile = temporaryFolder();
  const context = await phone(profile);
  const page = context.pages()[0];
  await openApp(page, url);
  await controlledByServiceWorker(page);
  await page.evaluate(seedVisits, { events, head, copies });
  const stored = (await storedHeads(page)).length;
  if (stored !== copies) {
    throw new Error(`${stored} visits stored instead of ${copies}`);
  }
  await context.close();
  return profile;
}

/** How long a fixed piece of work takes with and without the slow-down. */
async function slowDown() {
  const browser = new BareBrowser(temporaryFolder());
  try {
    await browser.page({ rate: 1 });
    const times = [];
    for (const rate of [1, RATE]) {
      await browser.send("Emulation.setCPUThrottlingRate", { rate });
      const tries = [];
      for (let i = 0; i < 5; i += 1) {
        tries.push(await browser.evaluate(`(${loop})()`));
      }
      times.push(median(tries));
    }
    return times;
  } finally {
    await browser.close();
  }
}

function sizes(folder) {
  const files = measure(folder);
  for (const [what, ending] of [["Main module (wasm)", ".wasm"], ["Scripts", ".js"], ["Styles", ".css"], ["All files of the app", ""]]) {
    const { raw, gzip, br } = total(files.filter(({ name }) => name.endsWith(ending)));
    tell(`${what}: as it is, gzip, brotli`, [raw, gzip, br].map((bytes) => `${(bytes / 1_000).toFixed(1)} KB`).join(", "));
  }
}

async function main() {
  const begun = new Date();
  const load = () => os.loadavg()[0].toFixed(1);
  const before = load();
  const dist = path.join(temporaryFolder(), "dist");
  // A build in the meantime must not change what is measured.
  fs.cpSync(DIST, dist, { recursive: true });
  sizes(dist);

  // It is stopped whatever happens: as long as it runs this process would not end.
  const served = async (use) => {
    const server = await startServer({ dir: dist, base: BASE });
    cleanups.push(() => server.stop());
    try {
      return await use(server.url);
    } finally {
      await server.stop();
    }
  };
  const [full, slowed] = await step("the slow-down", slowDown);
  const { url, visit, none, few, many } = await served(async (url) => {
    await step("first visits", () => firstVisits({ url, rate: RATE, times: STARTS }));
    const visit = await step("recording a visit", () => recordVisit(url));
    const [none, few, many] = await step("installing", async () => {
      const profiles = [];
      for (const visits of [0, FEW, MANY]) {
        profiles.push({ visits, profile: await installed(url, visit, visits) });
      }
      return profiles;
    });
    return { url, visit, none, few, many };
  });

  // Without a server, by the address it had.
  await step("cold starts", () => coldStarts({ url, rate: RATE, times: STARTS, places: [none, many] }));
  await step("presses", () => presses({ url, rate: RATE, rounds: ROUNDS, taps: TAPS, few, many }));
  await step("presses on a busy page", () => lostPresses({ url, profile: few.profile, ...STORM }));

  await served(async (url) => {
    await step("presses behind many marks", () => pressesBehind({ url, rate: RATE, marks: MARKS, taps: TAPS / 2, minutes: MEAL.minutes }));
    await step("meals", () => meals({ url, rate: RATE, times: MEALS, ...MEAL }));
  });

  const machine = `${os.cpus().length} cores, ${os.cpus()[0].model.trim()}, ${os.type()} ${os.arch()}; Chromium ${visit.version}, headless`;
  const slow = `A fixed loop takes ${ms(full)} at full speed and ${ms(slowed)} with the slow-down`;
  fs.writeFileSync(
    RESULT,
    `# How fast it is

\`./scripts/bench\` measures the release and writes this file.

Measured ${begun.toISOString().slice(0, 16).replace("T", " ")} UTC${QUICK ? ", quickly: fewer repeats" : ""}. ${machine}. Load ${before} before, ${load()} after. ${slow}. One stored visit is ${count(visit.events.length)} events.

${table()}
${NOTES}
`,
  );
}

await main();
