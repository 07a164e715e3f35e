/** A tap that can still be called off: it counts when the finger lifts where it came down. */

const STEADY_PX = 10;

/**
 * @param {Element} target
 * @param {(clientX: number, clientY: number) => void} tapped
 */
export function onTap(target, tapped) {
  /** @type {{id: number, x: number, y: number} | null} */
  let down = null;
  let heard = false;
  listen(target, "pointerdown", (event) => {
    const counts = event.isPrimary && event.button === 0;
    down = counts ? { id: event.pointerId, x: event.clientX, y: event.clientY } : null;
  });
  listen(target, "pointercancel", () => {
    down = null;
  });
  listen(target, "pointerup", (event) => {
    const from = down;
    down = null;
    if (from === null || from.id !== event.pointerId) return;
    const moved = Math.hypot(event.clientX - from.x, event.clientY - from.y);
    heard = moved <= STEADY_PX;
    if (heard) tapped(event.clientX, event.clientY);
  });
  // What was heard as a tap need not be made a click too, which takes a phone as long again.
  target.addEventListener("touchend", (event) => {
    if (heard && event.cancelable) event.preventDefault();
    heard = false;
  });
}

/**
 * @param {Element} target
 * @param {string} name
 * @param {(event: PointerEvent) => void} heard
 */
function listen(target, name, heard) {
  target.addEventListener(name, (event) => heard(/** @type {PointerEvent} */ (event)));
}
