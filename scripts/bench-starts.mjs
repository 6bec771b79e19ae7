// How long it takes until the app can be used: a first visit over a slow network, a cold start without any.

import { setTimeout as pause } from "node:timers/promises";
import { BareBrowser, temporaryFolder } from "./bench-browser.mjs";
import { count, judge, median, ms, spread, tell } from "./bench-figures.mjs";
import { watchStart } from "./bench-page.mjs";

/** What is called slow 4G: bytes a second, and milliseconds to an answer. */
const SLOW_4G = { latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const FIRST_VISIT = 4_500;
const COLD_START = 500;

/** Opens the address in a new browser process and waits until its first button has answered. */
async function start({ profile, url, rate, network }) {
  const browser = new BareBrowser(profile);
  try {
    await browser.page({ rate, network, script: `(${watchStart})({ press: true })` });
    await browser.send("Page.navigate", { url });
    const interactive = await browser.until("window.bench?.interactive");
    const { words, button, sent } = await browser.evaluate("bench.summary()");
    return { interactive, words, button, sent };
  } finally {
    await browser.close();
  }
}

/** Opens the address, waits for the last visits, and presses "All visits". */
async function startToVisits({ profile, url, rate }) {
  const browser = new BareBrowser(profile);
  try {
    await browser.page({ rate, script: `(${watchStart})({ press: false })` });
    await browser.send("Page.navigate", { url });
    const visits = await browser.until("window.bench?.visits");
    await pause(700);
    const point = await browser.evaluate(`(() => {
      const button = [...document.querySelectorAll("button")].find((b) => b.textContent === "All visits");
      button.scrollIntoView({ block: "center" });
      const box = button.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    })()`);
    await pause(200);
    await browser.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] });
    await browser.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    return { visits, history: await browser.until("window.bench.history") };
  } finally {
    await browser.close();
  }
}

const of = (samples, key) => samples.map((sample) => sample[key]);

/** Each in a profile that never saw the app. */
export async function firstVisits({ url, rate, times }) {
  const samples = [];
  for (let i = 0; i < times; i += 1) {
    samples.push(await start({ profile: temporaryFolder(), url, rate, network: SLOW_4G }));
  }
  const values = of(samples, "interactive");
  const what = `First visit over slow 4G, ${rate}x slower`;
  judge(`${what}: to interactive [1]`, spread(values), median(values), FIRST_VISIT, "ms");
  tell(`${what}: first words, then the first button`, `${ms(median(of(samples, "words")))}, ${ms(median(of(samples, "button")))}`);
  tell(`${what}: sent until then`, `${(median(of(samples, "sent")) / 1_000).toFixed(1)} KB`);
}

/** `places`: how many visits a phone holds, and its profile, with the app installed. The server must be gone. */
export async function coldStarts({ url, rate, times, places }) {
  const starts = places.map((place) => ({ ...place, samples: [] }));
  const { visits: most, profile: full } = places.at(-1);
  const lists = [];
  for (let i = 0; i < times; i += 1) {
    for (const { profile, samples } of starts) {
      samples.push(await start({ profile, url, rate }));
    }
    lists.push(await startToVisits({ profile: full, url, rate }));
  }
  for (const { visits, samples } of starts) {
    const values = of(samples, "interactive");
    judge(`Cold start offline, ${count(visits)} visits, ${rate}x slower: to interactive [1]`, spread(values), median(values), COLD_START, "ms");
  }
  const what = `${count(most)} visits, ${rate}x slower`;
  tell(`Cold start offline, ${what}: to the last visits`, spread(of(lists, "visits")));
  tell(`"All visits", ${what}: press to 30 rows`, spread(of(lists, "history")));
}
