// What looks on inside the page: these functions are sent into it, and use nothing from here.

/**
 * Runs before anything of the app. Notes when Today stands on the screen, taps a place at once and notes when that is
 * answered, or waits until all is told; how long each write takes, and each key.
 * @param {boolean} taps
 */
export function lookOn(taps) {
  const seen = {
    today: 0,
    told: 0,
    /** @type {number[]} */
    keys: [],
    answered: 0,
    up: 0,
    heard: 0,
    begun: 0,
    kept: 0,
    /** @type {number[]} */
    frames: [],
  };
  let over = () => {};
  /** Until it is known what a start is looked on for. */
  const looking = new Promise((go) => {
    over = () => go(null);
  });
  Object.assign(window, { seen, looking });
  /** The next frame is on the screen once a task after it runs. @param {() => void} then */
  const painted = (then) =>
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = then;
      port2.postMessage(null);
    });
  const title = () => document.querySelector('h1')?.textContent ?? '';
  /** @param {() => boolean} is @param {() => void} then */
  const once = (is, then) => {
    if (is()) return void then();
    const looking = new MutationObserver(() => {
      if (!is()) return;
      looking.disconnect();
      then();
    });
    looking.observe(document, { subtree: true, childList: true, characterData: true });
  };
  Object.assign(window, {
    /** Milliseconds since the page began, once `is` holds and is on the screen. @param {() => boolean} is */
    shown: (is) => new Promise((go) => once(is, () => painted(() => go(performance.now())))),
    title,
  });
  // The last row of Today.
  const hasToday = () => document.querySelector('a[href="#/due"]') !== null;
  const containers = () => document.querySelector('nav a[href="#/containers"]');
  once(hasToday, () =>
    painted(() => {
      seen.today = performance.now();
      if (!taps)
        return once(
          () => !document.querySelector('main')?.textContent?.includes('being worked out'),
          () =>
            painted(() => {
              seen.told = performance.now();
              over();
            }),
        );
      const before = title();
      once(
        () => title() !== before && containers()?.getAttribute('aria-current') === 'page',
        () =>
          painted(() => {
            seen.answered = performance.now();
            over();
          }),
      );
      setTimeout(() => /** @type {HTMLElement | null} */ (containers())?.click());
    }),
  );
  addEventListener(
    'pointerup',
    ({ timeStamp }) => {
      Object.assign(seen, { up: timeStamp, heard: 0, begun: 0, kept: 0 });
    },
    { capture: true },
  );
  addEventListener(
    'click',
    () => {
      seen.heard = performance.now();
    },
    { capture: true },
  );
  addEventListener(
    'keydown',
    ({ timeStamp }) =>
      addEventListener('input', () => painted(() => seen.keys.push(performance.now() - timeStamp)), {
        capture: true,
        once: true,
      }),
    { capture: true },
  );
  const { transaction } = IDBDatabase.prototype;
  /** @this {IDBDatabase} @param {string | string[]} stores @param {IDBTransactionMode} mode @param {IDBTransactionOptions} options */
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const made = transaction.call(this, stores, mode, options);
    if (mode === 'readwrite' && options?.durability === 'strict' && stores.includes('entries')) {
      seen.begun = performance.now();
      made.addEventListener('complete', () => {
        seen.kept = performance.now();
      });
    }
    return made;
  };
}

/** Puts entries into the app's store, as if they had been written there. @param {readonly import('../../src/ledger/entries/entry').Entry[]} entries */
export async function keepEntries(entries) {
  const open = indexedDB.open('leesbook-real');
  await new Promise((go) => {
    open.onsuccess = go;
  });
  const transaction = open.result.transaction(['entries', 'meta'], 'readwrite', { durability: 'relaxed' });
  for (const entry of entries) transaction.objectStore('entries').put(entry);
  const last = entries[entries.length - 1];
  if (last) {
    const { device, counter, hash, writtenAt } = last;
    transaction.objectStore('meta').put({ device, counter, hash, writtenAt }, 'head');
  }
  await new Promise((go) => {
    transaction.oncomplete = go;
  });
  open.result.close();
}

/** @param {readonly { hash: string, base64: string }[]} photos */
export async function keepPhotos(photos) {
  const open = indexedDB.open('leesbook-real');
  await new Promise((go) => {
    open.onsuccess = go;
  });
  const transaction = open.result.transaction('photos', 'readwrite', { durability: 'relaxed' });
  for (const { hash, base64 } of photos) {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    transaction.objectStore('photos').put({ hash, bytes, keptAt: new Date().toISOString() });
  }
  await new Promise((go) => {
    transaction.oncomplete = go;
  });
  open.result.close();
}

/** Milliseconds between frames, from now on until `stopFrames`. */
export function countFrames() {
  const { seen } = /** @type {any} */ (window);
  seen.frames = [];
  let last = performance.now();
  const next = () => {
    const now = performance.now();
    seen.frames.push(now - last);
    last = now;
    seen.counting = requestAnimationFrame(next);
  };
  seen.counting = requestAnimationFrame(next);
}

export function stopFrames() {
  const { seen } = /** @type {any} */ (window);
  cancelAnimationFrame(seen.counting);
  return /** @type {number[]} */ (seen.frames);
}
