/** Runs the search in a hidden frame where pages come from a disk: no browser starts a worker there. */

/** What a page sees of it: as much of `Worker` as the search needs. */
class DiskWorker extends EventTarget {
  /** @param {string | URL} address of the worker's script */
  constructor(address) {
    super();
    /** @type {((event: MessageEvent) => void) | null} */
    this.onmessage = null;
    this.frame = document.createElement("iframe");
    this.frame.hidden = true;
    document.body.append(this.frame);
    const inside = /** @type {Window & typeof globalThis} */ (this.frame.contentWindow);
    this.inside = inside;
    // The frame runs no script of its own, which the page's policy would not let it: what a worker
    // calls is put into it from here.
    Object.assign(inside, {
      postMessage: (/** @type {unknown} */ data) => this.tell(data),
      importScripts: (/** @type {string[]} */ ...all) =>
        all.reduce((before, one) => before.then(() => load(inside, one)), Promise.resolve()),
    });
    this.ready = load(inside, String(address));
  }

  /** @param {unknown} data from the worker to the page */
  tell(data) {
    const event = new MessageEvent("message", { data: structuredClone(data) });
    this.dispatchEvent(event);
    this.onmessage?.(event);
  }

  /** @param {unknown} data from the page to the worker */
  postMessage(data) {
    const copy = structuredClone(data);
    this.ready.then(
      () => this.inside.dispatchEvent(new MessageEvent("message", { data: copy })),
      () => this.dispatchEvent(new ErrorEvent("error")),
    );
  }

  terminate() {
    this.frame.remove();
  }
}

/**
 * @param {Window} inside
 * @param {string} address
 * @returns {Promise<void>}
 */
function load(inside, address) {
  return new Promise((done, failed) => {
    const script = inside.document.createElement("script");
    script.src = new URL(address, location.href).href;
    script.onload = () => done();
    script.onerror = failed;
    inside.document.body.append(script);
  });
}

// The search looks for the second name, to know that it runs in a frame.
if (location.protocol === "file:") {
  Object.assign(window, { Worker: DiskWorker, IFrameWorker: DiskWorker });
}
