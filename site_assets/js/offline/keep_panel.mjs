/** The box that puts the whole handbook on the device: how much it is, how far it is. */

/**
 * @typedef {object} Kept  what the worker tells
 * @property {string} pencilwood
 * @property {boolean} wanted
 * @property {boolean} all
 * @property {number} bytes
 * @property {number} held
 * @property {number} download
 * @property {"full" | "broken"} [trouble]
 */

export class KeepPanel {
  /**
   * @param {HTMLElement} root
   * @param {ServiceWorker} worker
   */
  constructor(root, worker) {
    this.root = root;
    this.worker = worker;
    this.keep = /** @type {HTMLButtonElement} */ (root.querySelector(".pw-keep-all"));
    this.forget = /** @type {HTMLButtonElement} */ (root.querySelector(".pw-keep-forget"));
    this.bar = /** @type {HTMLProgressElement} */ (root.querySelector("progress"));
    this.said = /** @type {HTMLElement} */ (root.querySelector(".pw-keep-said"));
    this.asked = false;
  }

  bind() {
    navigator.serviceWorker.addEventListener("message", ({ data }) => {
      if (data?.pencilwood === "kept") this.show(data);
    });
    this.keep.addEventListener("click", () => this.start());
    this.forget.addEventListener("click", () => this.worker.postMessage({ pencilwood: "forget" }));
    this.worker.postMessage({ pencilwood: "state" });
  }

  start() {
    this.asked = true;
    // Without it a browser may throw the handbook away when the device is short of room.
    void navigator.storage?.persist?.();
    this.worker.postMessage({ pencilwood: "keep-all" });
  }

  /** @param {Kept} state */
  show(state) {
    this.root.hidden = false;
    const under_way = state.wanted && !state.all;
    // Begun on an earlier visit and cut off: it goes on where it was.
    if (under_way && !this.asked) this.start();
    this.keep.hidden = state.all || (under_way && state.trouble === undefined);
    this.forget.hidden = !state.wanted;
    this.bar.hidden = !under_way;
    this.bar.value = state.bytes ? state.held / state.bytes : 1;
    this.said.textContent = this.words(state, under_way);
  }

  /** @param {Kept} state @param {boolean} under_way */
  words(state, under_way) {
    const { dataset } = this.root;
    if (state.trouble !== undefined) return dataset[state.trouble] ?? "";
    if (state.all) return dataset.all ?? "";
    const text = (under_way ? dataset.underWay : dataset.size) ?? "";
    return text
      .replace("{download}", megabytes(state.download))
      .replace("{bytes}", megabytes(state.bytes))
      .replace("{held}", megabytes(state.held));
  }
}

/** @param {number} bytes */
function megabytes(bytes) {
  return String(Math.max(1, Math.round(bytes / 1_000_000)));
}
