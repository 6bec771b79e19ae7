// The stored journal, as the browser holds it.

/** All stored events, in order, their bodies read: `{ seq, visit, at, event, ... }`. */
export async function storedEvents(page) {
  const rows = await everything(page, "events");
  return rows.map((row) => ({ ...row, event: parsed(row.body) }));
}

/** All heads. */
export const storedHeads = (page) => everything(page, "heads");

function parsed(body) {
  try {
    return JSON.parse(body);
  } catch {
    return undefined;
  }
}

function everything(page, store) {
  return page.evaluate(async (name) => {
    const done = (request) =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open("penlight"));
    const rows = await done(database.transaction(name).objectStore(name).getAll());
    database.close();
    return rows;
  }, store);
}

/**
 * Puts visits made in journal.mjs into the store, which is made here where there is none yet, as
 * the app makes it. The page is one of the same origin, not the app's own.
 */
export function put(page, visits, last) {
  return page.evaluate(
    async (rows) => {
      const opening = indexedDB.open("penlight", 1);
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore("events", { keyPath: ["visit", "seq"] });
        opening.result.createObjectStore("heads", { keyPath: "visit" }).createIndex("touched", "touched");
      };
      const database = await new Promise((resolve, reject) => {
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(opening.error);
      });
      const writing = database.transaction(["events", "heads"], "readwrite");
      for (const { events, head } of rows) {
        events.forEach((event) => writing.objectStore("events").add(event));
        writing.objectStore("heads").put(head);
      }
      await new Promise((resolve, reject) => {
        writing.oncomplete = resolve;
        writing.onabort = () => reject(writing.error);
      });
      database.close();
    },
    visits.map((visit) => visit.rows(last)),
  );
}

/** The marks of a kind in stored events: "Tap", "Start", "End", "WindowOver", "WatchOver", "Sign". */
export function marksOf(events, kind) {
  return events
    .map(({ event }) => event?.Mark)
    .filter((mark) => mark && (mark.kind === kind || mark.kind?.[kind] !== undefined));
}
