// What the bench runs in the page. These functions are sent there as text, so they may use nothing
// from around them.

/** Notes when Home can be used, counted from the start of the navigation. */
export function watchStart({ press }) {
  const notes = (window.bench = {});
  const painted = (then) => {
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => then(performance.now());
      channel.port2.postMessage(0);
    });
  };
  const heading = () => document.querySelector("h1")?.textContent;
  const look = () => {
    if (press && notes.button === undefined) {
      const button = [...document.querySelectorAll("button")].find((b) => b.textContent.startsWith("Swallow screen"));
      if (button) {
        notes.button = performance.now();
        // Nobody presses what can't be seen yet.
        painted(() => {
          notes.pressed = performance.now();
          button.click();
        });
      }
    }
    if (notes.pressed && notes.answered === undefined && heading() === "Swallow screen") {
      notes.answered = performance.now();
      painted((now) => (notes.interactive = now));
    }
    if (!press && notes.rows === undefined && document.querySelectorAll(".recent .head").length >= 3) {
      notes.rows = performance.now();
      painted((now) => (notes.visits = now));
    }
    if (notes.historyPressed && notes.all === undefined && heading() === "All visits") {
      if (document.querySelectorAll(".heads .head").length >= 30) {
        notes.all = performance.now();
        painted((now) => (notes.history = now - notes.historyPressed));
      }
    }
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true, characterData: true });
  addEventListener(
    "pointerdown",
    (event) => {
      if (event.target.closest("button")?.textContent === "All visits") {
        notes.historyPressed = event.timeStamp;
      }
    },
    true,
  );
  notes.summary = () => ({
    button: notes.button,
    words: performance.getEntriesByName("first-contentful-paint")[0]?.startTime,
    sent: ["navigation", "resource"]
      .flatMap((type) => performance.getEntriesByType(type))
      .reduce((sum, entry) => sum + entry.transferSize, 0),
  });
}

/**
 * Notes of every tap on the running pad: its stamp (`at`), when it came to the page (`came`), its
 * count was in the page (`shown`), the frame with it was begun and done (`frame`, `painted`), and
 * it was stored (`kept`).
 */
export function watchTaps() {
  const notes = (window.bench = { taps: [] });
  const unshown = [];
  const unkept = [];
  const onPad = () => Number(document.querySelector("#pad .count")?.textContent ?? Number.NaN);
  addEventListener(
    "pointerdown",
    (event) => {
      if (event.target.closest("#pad") && !Number.isNaN(onPad())) {
        const tap = { at: event.timeStamp, came: performance.now() };
        notes.taps.push(tap);
        unshown.push(tap);
        unkept.push(tap);
      }
    },
    true,
  );

  let last;
  const look = () => {
    const now = onPad();
    if (Number.isNaN(now)) {
      return;
    }
    const taps = unshown.splice(0, Math.max(0, now - (last ?? now)));
    last = now;
    if (taps.length === 0) {
      return;
    }
    const shown = performance.now();
    requestAnimationFrame((frame) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => {
        const painted = performance.now();
        for (const tap of taps) {
          Object.assign(tap, { shown, frame, painted });
        }
      };
      channel.port2.postMessage(0);
    });
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true, characterData: true });

  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const made = transaction.call(this, stores, mode, options);
    if (mode === "readwrite") {
      const taps = unkept.splice(0);
      made.addEventListener("complete", () => {
        const kept = performance.now();
        for (const tap of taps) {
          tap.kept = kept;
        }
      });
    }
    return made;
  };
}

/** `bench.arm(words)`: notes the next press and when the frame with these words is painted. */
export function watchPress() {
  const bench = (window.bench = { pressed: undefined, painted: undefined });
  let wanted;
  addEventListener("pointerdown", (event) => (bench.pressed ??= event.timeStamp), true);
  const look = () => {
    if (wanted === undefined || bench.pressed === undefined || !document.body?.textContent.includes(wanted)) {
      return;
    }
    wanted = undefined;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => (bench.painted = performance.now());
      channel.port2.postMessage(0);
    });
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true, characterData: true });
  bench.arm = (words) => {
    Object.assign(bench, { pressed: undefined, painted: undefined });
    wanted = words;
  };
  // A file is offered by a click on a link that stands nowhere in the page.
  const { click } = HTMLAnchorElement.prototype;
  HTMLAnchorElement.prototype.click = function () {
    click.call(this);
    bench.offered = performance.now();
  };
}

/** The times between frames while something moves, in `window.gaps`. */
export function watchFrames() {
  const gaps = (window.gaps = []);
  let last;
  const turn = (now) => {
    if (last !== undefined) {
      gaps.push(now - last);
    }
    last = now;
    window.framing = requestAnimationFrame(turn);
  };
  window.framing = requestAnimationFrame(turn);
}

/** Keeps the main thread busy for a part of every period. */
export function block({ blocked, of }) {
  const turn = () => {
    const until = performance.now() + blocked;
    while (performance.now() < until);
    window.blocking = setTimeout(turn, of - blocked);
  };
  turn();
}

/** Writes copies of a visit, each with an id and a time of its own, none younger than a day. */
export async function seedVisits({ events, head, copies }) {
  const letters = "0123456789abcdefghjkmnpqrstvwxyz";
  const id = () => [...crypto.getRandomValues(new Uint8Array(20))].map((byte) => letters[byte % 32]).join("");
  const shifted = (value, by) => {
    if (Array.isArray(value)) {
      return value.map((item) => shifted(item, by));
    }
    if (value === null || typeof value !== "object") {
      return value;
    }
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [key, key === "w" && typeof item === "number" ? item + by : shifted(item, by)]),
    );
  };
  const database = await new Promise((resolve, reject) => {
    const request = indexedDB.open("penlight");
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const newest = Date.now() - 24 * 3_600_000;
  for (let first = 0; first < copies; first += 50) {
    const writing = database.transaction(["events", "heads"], "readwrite");
    const over = new Promise((resolve, reject) => {
      writing.oncomplete = resolve;
      writing.onabort = () => reject(writing.error);
    });
    for (let copy = first; copy < Math.min(copies, first + 50); copy += 1) {
      const visit = id();
      // Some four a day.
      const by = newest - copy * 6 * 3_600_000 - ((copy * 7_919) % 3_600_000) - head.touched;
      const label = `Visit ${1 + (copy % 4)}, ${new Date(head.opened + by).toTimeString().slice(0, 5)}`;
      for (const event of events) {
        const body = shifted(JSON.parse(event.body), by);
        if (body.Opened) {
          body.Opened.details.label = label;
        }
        writing.objectStore("events").add({ ...event, visit, at: shifted(event.at, by), body: JSON.stringify(body) });
      }
      writing.objectStore("heads").add({ ...head, visit, label, opened: head.opened + by, touched: head.touched + by });
    }
    await over;
  }
  database.close();
}

/**
 * Writes so many marks, of these kinds in turn, behind a count that was just begun, and moves all
 * of it into the past, so that the last mark is now. `notes`: how many of them are notes with words.
 */
export async function seedMarks({ minutes, marks, notes, kinds }) {
  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const back = minutes * 60_000;
  const moved = (value) => {
    if (Array.isArray(value)) {
      return value.map(moved);
    }
    if (value === null || typeof value !== "object") {
      return value;
    }
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [key, "mw".includes(key) && typeof item === "number" ? item - back : moved(item)]),
    );
  };
  const database = await done(indexedDB.open("penlight"));
  const writing = database.transaction(["events", "heads"], "readwrite");
  const over = new Promise((resolve, reject) => {
    writing.oncomplete = resolve;
    writing.onabort = () => reject(writing.error);
  });
  const store = writing.objectStore("events");
  const events = await done(store.getAll());
  for (const event of events) {
    store.put({ ...event, at: moved(event.at), body: JSON.stringify(moved(JSON.parse(event.body))) });
  }
  const last = events.at(-1);
  const { Mark: begun } = JSON.parse(last.body);
  let { seq } = last;
  const add = (at, body) => store.add({ ...last, seq: (seq += 1), at, body: JSON.stringify(body) });
  for (let i = 1; i <= marks; i += 1) {
    const off = Math.round((i * back) / (marks + 1)) - back;
    const at = { l: begun.at.l, m: begun.at.m + off, w: begun.at.w + off };
    const noted = notes > 0 && i % Math.floor(marks / notes) === 0;
    add(at, { Mark: { trial: begun.trial, at, kind: noted ? { Count: "Note" } : kinds[((i * i) % 31) % kinds.length] } });
    if (noted) {
      add(at, { Answer: { trial: begun.trial, question: `note.${at.w}`, answer: { Words: `note ${i}` } } });
    }
  }
  for (const head of await done(writing.objectStore("heads").getAll())) {
    writing.objectStore("heads").put({ ...head, events: seq + 1 });
  }
  await over;
  database.close();
}

/** A fixed piece of work, in milliseconds. */
export function loop() {
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < 3e7; i += 1) {
    sum += i % 7;
  }
  return sum > 0 ? performance.now() - start : 0;
}

/** A page that does nothing but count. */
export const BARE = `<!doctype html><meta name="viewport" content="width=device-width">
<button id="pad" style="width:100%;height:300px"><span class="count">0</span></button>
<script>
  const pad = document.getElementById("pad");
  const count = pad.firstChild.firstChild;
  pad.addEventListener("pointerdown", () => (count.nodeValue = String(Number(count.nodeValue) + 1)));
  pad.addEventListener("touchstart", (event) => event.preventDefault());
</script>`;
