/**
 * Work that nobody has to wait for: it is done when the next frame has been drawn, or at once when
 * the page is left or put away before.
 */

/** A phone has few cores: while it draws the frame, it is left alone. */
const DRAWN_MS = 16;

/** @type {Set<AfterFrame>} */
const waiting = new Set();
let listens = false;

/** Once for all of them: to begin to listen takes longer than to cut. */
function listen() {
  if (listens) return;
  listens = true;
  const finish = () => waiting.forEach((one) => one.finish());
  // Before others hear of it: what they keep of the page is then whole.
  addEventListener("pagehide", finish, { capture: true });
  addEventListener("visibilitychange", finish, { capture: true });
}

export class AfterFrame {
  constructor() {
    /** @type {(() => void) | null} */
    this.work = null;
    listen();
  }

  /** @param {() => void} work  takes the place of what still waits */
  put(work) {
    this.work = work;
    if (document.hidden) return this.finish();
    if (waiting.has(this)) return;
    waiting.add(this);
    requestAnimationFrame(() => setTimeout(() => this.finish(), DRAWN_MS));
  }

  /** Does now what still waits. */
  finish() {
    const { work } = this;
    this.drop();
    work?.();
  }

  /** What waits is not done any more. */
  drop() {
    this.work = null;
    waiting.delete(this);
  }
}
