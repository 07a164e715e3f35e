/**
 * One drawing of the vine on the page: shows a state of the wood by classes, shows a window of
 * it by its viewBox, and finds the cut point under a finger.
 *
 * What it reads of the SVG: `[data-part]` groups, `[data-from-bud]` stretches in them, and
 * `[data-cut]` circles, with `data-buds` for a cut above that bud and without for the base. A
 * drawing may show the wood in more than one view: each part has then a group in each, and
 * `data-view` of a circle says in which view it lies.
 */

/** @import {Sheet} from "./types.mjs" */

/**
 * @typedef {{x: number, y: number, width: number, height: number}} Box  in user units, mm
 * @typedef {object} CutPoint
 * @property {SVGCircleElement} circle
 * @property {number} piece  index in the sheet
 * @property {number | null} buds
 * @property {number} x
 * @property {number} y
 * @property {string} view  empty where there is one view
 */

/** A finger finds the nearest cut point within half a 44 px target. */
export const REACH_PX = 22;
export const CIRCLE_PX = 11;
const SMALLEST_CIRCLE_PX = 6;
/** Of the room between two cut points, so that the wood between them stays in sight. */
const RING_SHARE = 0.4;
/** What has a name that no other element of the page may have, or leads to one. */
const NAMING =
  '[id], [href^="#"], [fill^="url("], [stroke^="url("], [clip-path], [mask], [filter], [marker-start], [marker-mid], [marker-end]';

export class VineDrawing {
  /**
   * @param {SVGSVGElement} svg
   * @param {Sheet} sheet
   */
  constructor(svg, sheet) {
    this.svg = svg;
    this.sheet = sheet;
    const whole = svg.viewBox.baseVal;
    /** @type {Box} */
    this.whole = { x: whole.x, y: whole.y, width: whole.width, height: whole.height };
    /** @type {Box} */
    this.box = this.whole;
    this.parts = groupsOfParts(svg, sheet);
    this.wood = this.parts.map((groups) => groups.map(stretchesOf));
    /** @type {string[]}  how each piece is shown now */
    this.painted = [];
    this.cutPoints = cutPointsOf(svg, sheet);
    this.views = [...new Set(this.cutPoints.map(({ view }) => view))];
    /** @type {CutPoint[]} */
    this.offered = [];
  }

  /**
   * Shows what is left. Wood that is gone gets the class `pw-gone`, and `pw-fallen` too when
   * it fell with the wood below it and so shows no cut of its own.
   *
   * @param {readonly number[]} states
   */
  paint(states) {
    this.sheet.pieces.forEach((piece, number) => {
      const gone = states[number] === 0;
      const fallen = gone && piece.grows >= 0 && states[piece.grows] === 0;
      const look = `${states[number]} ${fallen}`;
      if (this.painted[number] === look) return;
      this.painted[number] = look;
      for (const { group, stretches } of this.wood[number]) {
        group.classList.toggle("pw-gone", gone);
        group.classList.toggle("pw-fallen", fallen);
        for (const { stretch, from } of stretches) {
          stretch.classList.toggle("pw-gone", from > 0 && from >= states[number]);
        }
      }
    });
  }

  /**
   * Marks the position that is being pruned; the others step back.
   *
   * @param {number | null} position  null marks none
   */
  mark(position) {
    this.parts.forEach((groups, number) => {
      const here = this.sheet.pieces[number].position === position;
      for (const group of groups) group.classList.toggle("pw-far", position !== null && !here);
    });
  }

  /**
   * Points out one piece, the one that the list has the focus on.
   *
   * @param {number | null} piece
   */
  point(piece) {
    this.parts.forEach((groups, number) => {
      for (const group of groups) group.classList.toggle("pw-picked", number === piece);
    });
  }

  /**
   * Shows the cut points that can be used now, and hides all others.
   *
   * @param {(point: CutPoint) => boolean} isOffered
   * @param {number} [scale]  pixels per mm, where it is known already
   */
  offer(isOffered, scale = this.pixelsPerMm()) {
    const before = new Set(this.offered);
    this.offered = this.cutPoints.filter(isOffered);
    for (const point of this.offered) {
      if (!before.delete(point)) point.circle.classList.add("pw-offered");
    }
    for (const { circle } of before) circle.classList.remove("pw-offered");
    this.resize(scale);
  }

  /** @param {{piece: number, buds: number | null} | null} cut  one that waits for its answer */
  hold(cut) {
    for (const { circle, piece, buds } of this.cutPoints) {
      circle.classList.toggle("pw-held", piece === cut?.piece && buds === cut.buds);
    }
  }

  /** @param {Box} box */
  show(box) {
    this.box = box;
    this.svg.setAttribute("viewBox", `${box.x} ${box.y} ${box.width} ${box.height}`);
    this.resize();
  }

  /**
   * Keeps the circles the same size on the glass, whatever the scale of the drawing.
   *
   * @param {number} [scale]  pixels per mm, where it is known already
   */
  resize(scale = this.pixelsPerMm()) {
    if (scale === 0) return;
    for (const point of this.offered) {
      const room = roomAround(point, this.offered) * scale;
      const radius = Math.max(SMALLEST_CIRCLE_PX, Math.min(CIRCLE_PX, room * RING_SHARE));
      point.circle.setAttribute("r", (radius / scale).toFixed(2));
    }
  }

  /** CSS pixels that one millimetre takes; 0 while the drawing isn't shown. */
  pixelsPerMm() {
    const { width, height } = this.svg.getBoundingClientRect();
    return Math.min(width / this.box.width, height / this.box.height);
  }

  /**
   * The cut point on offer that a finger means, or null when none is within reach.
   *
   * @param {number} clientX
   * @param {number} clientY
   * @returns {CutPoint | null}
   */
  cutPointAt(clientX, clientY) {
    const at = this.toMm(clientX, clientY);
    let best = null;
    let reach = REACH_PX / this.pixelsPerMm();
    for (const point of this.offered) {
      const distance = Math.hypot(point.x - at.x, point.y - at.y);
      if (distance <= reach) [best, reach] = [point, distance];
    }
    return best;
  }

  /**
   * @param {number} clientX
   * @param {number} clientY
   * @returns {{x: number, y: number}}  the place on the drawing, mm
   */
  toMm(clientX, clientY) {
    const { left, top, width, height } = this.svg.getBoundingClientRect();
    const scale = this.pixelsPerMm();
    return {
      x: this.box.x + this.box.width / 2 + (clientX - left - width / 2) / scale,
      y: this.box.y + this.box.height / 2 + (clientY - top - height / 2) / scale,
    };
  }

  /**
   * The way back: where a place on the drawing lies in its box on the glass.
   *
   * @param {number} x
   * @param {number} y
   */
  toPixels(x, y) {
    const { width, height } = this.svg.getBoundingClientRect();
    const scale = this.pixelsPerMm();
    return {
      left: width / 2 + (x - this.box.x - this.box.width / 2) * scale,
      top: height / 2 + (y - this.box.y - this.box.height / 2) * scale,
    };
  }

  /**
   * Where a position's wood leaves the arm.
   *
   * @param {number} position
   * @param {string} [view]
   * @returns {{x: number, y: number} | null}
   */
  foot(position, view = this.views[0]) {
    const feet = this.cutPoints.filter(
      (point) =>
        point.buds === null &&
        point.view === view &&
        this.sheet.pieces[point.piece].position === position,
    );
    if (view !== this.views[0]) return feet[0] ?? null;
    return feet.length === 0 ? null : feet.reduce((low, one) => (one.y > low.y ? one : low));
  }
}

/**
 * @param {SVGSVGElement} svg
 * @param {Sheet} sheet
 * @returns {Element[][]}  by index of the piece, a group for each view
 */
function groupsOfParts(svg, sheet) {
  /** @type {Map<string | null, Element[]>} */
  const byName = new Map();
  for (const group of svg.querySelectorAll("[data-part]")) {
    const name = group.getAttribute("data-part");
    byName.set(name, [...(byName.get(name) ?? []), group]);
  }
  return sheet.pieces.map((piece) => byName.get(piece.name) ?? []);
}

/**
 * @param {Element} group  of a part
 * @returns {{group: Element, stretches: {stretch: Element, from: number}[]}}
 */
function stretchesOf(group) {
  const stretches = [...group.querySelectorAll("[data-from-bud]")].map((stretch) => {
    return { stretch, from: Number(stretch.getAttribute("data-from-bud")) };
  });
  return { group, stretches };
}

/**
 * @param {SVGSVGElement} svg
 * @param {Sheet} sheet
 * @returns {CutPoint[]}
 */
function cutPointsOf(svg, sheet) {
  const byName = new Map(sheet.pieces.map((piece, number) => [piece.name, number]));
  return [...svg.querySelectorAll("circle[data-cut]")].flatMap((found) => {
    const circle = /** @type {SVGCircleElement} */ (found);
    const piece = byName.get(circle.getAttribute("data-cut") ?? "");
    const buds = circle.getAttribute("data-buds");
    if (piece === undefined) return [];
    const at = { x: Number(circle.getAttribute("cx")), y: Number(circle.getAttribute("cy")) };
    const view = circle.getAttribute("data-view") ?? "";
    return [{ circle, piece, buds: buds === null ? null : Number(buds), view, ...at }];
  });
}

/**
 * @param {CutPoint} point
 * @param {readonly CutPoint[]} points
 * @returns {number}  distance of the nearest other point, mm
 */
function roomAround(point, points) {
  return points.reduce((room, other) => {
    const distance = Math.hypot(point.x - other.x, point.y - other.y);
    return other === point ? room : Math.min(room, distance);
  }, Infinity);
}

/**
 * A second copy of a drawing for the same page, with ids of its own and a plain label.
 *
 * @param {SVGSVGElement} svg
 * @param {string} prefix
 * @returns {SVGSVGElement}
 */
export function copyOf(svg, prefix) {
  const copy = /** @type {SVGSVGElement} */ (svg.cloneNode(true));
  for (const words of copy.querySelectorAll(":scope > title, :scope > desc")) words.remove();
  copy.setAttribute("role", "img");
  copy.removeAttribute("aria-labelledby");
  copy.removeAttribute("aria-describedby");
  for (const one of [copy, ...copy.querySelectorAll(NAMING)]) {
    for (const { name, value } of [...one.attributes]) {
      if (name === "id") one.setAttribute(name, `${prefix}-${value}`);
      else if (/^(url\()?['"]?#/.test(value)) {
        one.setAttribute(name, value.replace("#", `#${prefix}-`));
      }
    }
  }
  return copy;
}
