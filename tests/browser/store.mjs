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

/** The marks of a kind in stored events: "Tap", "Start", "End", "WindowOver", "WatchOver", "Sign". */
export function marksOf(events, kind) {
  return events
    .map(({ event }) => event?.Mark)
    .filter((mark) => mark && (mark.kind === kind || mark.kind?.[kind] !== undefined));
}

/** Copies the newest head under `n` other visits, all touched in one and the same millisecond. */
export function sameMoment(page, n) {
  return page.evaluate(async (count) => {
    const done = (request) =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open("penlight"));
    const heads = database.transaction("heads", "readwrite").objectStore("heads");
    const [head] = await done(heads.getAll());
    for (let i = 0; i < count; i += 1) {
      const visit = `aaaaaaaaaaaa${String(i).padStart(4, "0")}`;
      await done(heads.put({ ...head, visit, label: `Visit ${i + 2}`, touched: head.touched - 1000 }));
    }
    database.close();
  }, n);
}
