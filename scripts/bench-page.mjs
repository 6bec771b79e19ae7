// What bench.mjs runs in the page. These functions are sent there as text, so they may use nothing
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
    if (notes.pressed && notes.answered === undefined && document.querySelector("h1")?.textContent === "Swallow screen") {
      notes.answered = performance.now();
      painted((now) => (notes.interactive = now));
    }
    if (!press && notes.rows === undefined && document.querySelectorAll(".recent .head").length >= 3) {
      notes.rows = performance.now();
      painted((now) => (notes.visits = now));
    }
    if (notes.historyPressed && notes.all === undefined && document.querySelector("h1")?.textContent === "All visits") {
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
}

/** Notes for every tap on the running pad when it came, was shown and was kept. */
export function watchTaps() {
  const notes = (window.bench = { taps: [], writes: [], events: [], downs: 0 });
  const unkept = [];
  const shown = () => Number(document.querySelector("#pad .count")?.textContent ?? Number.NaN);
  addEventListener(
    "pointerdown",
    (event) => {
      if (event.target.closest("#pad") && !Number.isNaN(shown())) {
        const tap = { at: event.timeStamp };
        notes.downs += 1;
        notes.taps.push(tap);
        unkept.push(tap);
      }
    },
    true,
  );

  let last = 0;
  const look = () => {
    const now = shown();
    if (!(now > last)) {
      return;
    }
    last = now;
    const changed = performance.now();
    requestAnimationFrame((frame) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => {
        const painted = performance.now();
        for (const tap of notes.taps.slice(0, now).filter((t) => t.painted === undefined)) {
          Object.assign(tap, { changed, frame, painted });
        }
      };
      channel.port2.postMessage(0);
    });
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true, characterData: true });

  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const asked = performance.now();
    const made = transaction.call(this, stores, mode, options);
    if (mode === "readwrite") {
      const taps = unkept.splice(0);
      made.addEventListener("complete", () => {
        const over = performance.now();
        if (taps.length > 0) {
          notes.writes.push(over - asked);
        }
        for (const tap of taps) {
          tap.kept = over;
        }
      });
    }
    return made;
  };

  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      if (entry.name === "pointerdown" && entry.target?.closest("#pad")) {
        notes.events.push(entry.duration);
      }
    }
  }).observe({ type: "event", durationThreshold: 16 });
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
export async function seed({ events, head, copies }) {
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

export function loop() {
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < 3e7; i += 1) {
    sum += i % 7;
  }
  return sum > 0 ? performance.now() - start : 0;
}

export const BARE = `<!doctype html><meta name="viewport" content="width=device-width">
<button id="pad" style="width:100%;height:300px"><span class="count">0</span></button>
<script>
  const pad = document.getElementById("pad");
  const count = pad.firstChild.firstChild;
  pad.addEventListener("pointerdown", () => (count.nodeValue = String(Number(count.nodeValue) + 1)));
  pad.addEventListener("touchstart", (event) => event.preventDefault());
</script>`;
