/**
 * The drawing of a vine stands on the vine's own page; the page for a room fetches it from there,
 * so that a handbook carries it once. A page that was opened from a disk may read no other file,
 * so there the vine's page is opened in a hidden frame and tells its drawing.
 */

/** Behind the address of a vine's page: the page only tells its drawing. */
const ASKED = "#drawing";
const PATIENCE_MS = 20000;
const DRAWING = "svg.pw-vine[data-case]";

/** Whether this page was opened by `drawingFor`. */
export function isAsked() {
  return location.hash === ASKED && window.parent !== window;
}

/** Tells the page around this one what its vine looks like. */
export function tellDrawing() {
  const svg = document.querySelector(DRAWING);
  // A page on a disk has no origin to name; the drawing is no secret.
  if (svg !== null) window.parent.postMessage({ pencilwoodDrawing: svg.outerHTML }, "*");
}

/**
 * Puts the drawing in place of the small picture that holds its place.
 *
 * @param {HTMLElement} place  `data-from`: the vine's page, `data-box`: the part to show,
 *   `data-near`, `data-trunk` and `data-parts`: for the drawing
 * @returns {Promise<void>}
 */
export async function drawingFor(place) {
  const { from = "", box = "", near, trunk, parts } = place.dataset;
  const text = location.protocol === "file:" ? await told(from) : await fetched(from);
  const page = new DOMParser().parseFromString(text, "text/html");
  const found = /** @type {SVGSVGElement | null} */ (page.querySelector(DRAWING));
  if (found === null) throw new Error(`no drawing in ${from}`);
  const svg = document.importNode(found, true);
  svg.querySelector(".pw-cutpoints")?.remove();
  svg.setAttribute("viewBox", box);
  Object.assign(svg.dataset, { near, trunk, parts });
  place.replaceChildren(svg);
}

/** @param {string} address */
async function fetched(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.text();
}

/**
 * @param {string} address
 * @returns {Promise<string>}
 */
function told(address) {
  const frame = document.createElement("iframe");
  frame.hidden = true;
  frame.src = address + ASKED;
  /** @type {Promise<string>} */
  const answer = new Promise((resolve, reject) => {
    window.addEventListener("message", ({ source, data }) => {
      if (source !== frame.contentWindow) return;
      if (typeof data?.pencilwoodDrawing === "string") resolve(data.pencilwoodDrawing);
    });
    setTimeout(() => reject(new Error(`${address} tells no drawing`)), PATIENCE_MS);
  });
  document.body.append(frame);
  return answer.finally(() => frame.remove());
}
