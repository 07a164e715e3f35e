/**
 * Makes a scoring sheet out of its short form, which `generator/pencilwood/score/compact.py`
 * writes and describes. What follows from what grows where is worked out here again.
 */

/** @import {Charge, CuttingSheet, Facts, PassName, Row, Sheet, SheetPiece} from "./types.mjs" */

/**
 * @typedef {[rest: string, position: number, buds: number, grows: number, alive: number,
 *   wound: number, thickness: number, charges: (number | [number, number])[]]} PackedPiece
 *
 * @typedef {object} PackedSheet
 * @property {string} case
 * @property {string} version
 * @property {number} passMark
 * @property {number} planLost
 * @property {number} armLength
 * @property {[number, number]} ends
 * @property {[rule: string, name: string, must: number][]} messages
 * @property {[message: number, ...facts: string[]][]} shapes
 * @property {[shape: number, points: number, ...facts: number[]][]} atoms
 * @property {number[][]} lists
 * @property {[name: string, x: number, y: number][]} positions
 * @property {PackedPiece[]} pieces
 * @property {[Row[], Row[], Row[], Row[]]} steps
 * @property {[[number[], number][], number, [number, number, number, number][],
 *   [number, number, number], number, [number, number]]} cutting
 */

/** @type {readonly PassName[]} */
const PASSES = ["rough", "thinning-out", "fine"];

/**
 * @param {PackedSheet} packed
 * @returns {Sheet}
 */
export function unpackSheet(packed) {
  const { version, case: slug, passMark, planLost, armLength, ends } = packed;
  const [crowded, blank, buds, wounds] = packed.steps;
  const atoms = packed.atoms.map((atom) => chargeOf(packed, atom));
  const positions = packed.positions.map(([name, x, y]) => ({ name, x, y }));
  return {
    format: 1,
    case: slug,
    passMark,
    planLost,
    armLength,
    messages: packed.messages.map(([rule, name, must]) => ({ rule, name, must: must === 1 })),
    charges: packed.lists.map((list) => list.map((number) => atoms[number])),
    pieces: packed.pieces.map((_, number) => pieceOf(packed, number)),
    positions,
    ends,
    crowded,
    blank,
    buds,
    wounds,
    cutting: cuttingOf(packed.cutting),
    version,
  };
}

/**
 * @param {PackedSheet} packed
 * @param {PackedSheet["atoms"][number]} atom
 * @returns {Charge}
 */
function chargeOf(packed, [shape, points, ...values]) {
  const [message, ...names] = packed.shapes[shape];
  /** @type {Facts} */
  const facts = {};
  names.forEach((name, number) => (facts[name] = values[number]));
  return [message, points, facts];
}

/**
 * @param {PackedSheet} packed
 * @param {number} number
 * @returns {SheetPiece}
 */
function pieceOf(packed, number) {
  const [rest, position, buds, grows, alive, wound, thickness, charges] = packed.pieces[number];
  const isCane = buds > 0;
  const carries = fallingWith(packed.pieces, number);
  const standing = isCane ? ofPosition(packed.pieces, position) : carries;
  return {
    name: packed.positions[position][0] + rest,
    position,
    kind: isCane ? "cane" : "old",
    states: (isCane ? buds : 1) + 1,
    grows,
    carries,
    above: standing.filter((other) => other > number && isLivingCane(packed.pieces[other])),
    alive,
    wound,
    thickness,
    charges: charges.map((one) => (typeof one === "number" ? [one, one] : one)),
  };
}

/** @param {PackedPiece} piece */
function isLivingCane([, , buds, , alive]) {
  return buds > 0 && alive === 1;
}

/**
 * @param {readonly PackedPiece[]} pieces
 * @param {number} position
 */
function ofPosition(pieces, position) {
  return [...pieces.keys()].filter((number) => pieces[number][1] === position);
}

/**
 * Everything that grows on a piece, however far up.
 *
 * @param {readonly PackedPiece[]} pieces
 * @param {number} foot
 */
function fallingWith(pieces, foot) {
  const falls = new Set([foot]);
  pieces.forEach(([, , , grows], number) => {
    if (falls.has(grows)) falls.add(number);
  });
  falls.delete(foot);
  return [...falls];
}

/**
 * @param {PackedSheet["cutting"]} packed
 * @returns {CuttingSheet & Record<string, unknown>}
 */
function cuttingOf([passes, backwards, tools, [close, right, long], stubLength, roughBuds]) {
  const byPass = PASSES.map((name, number) => {
    const [shorten, remove] = passes[number];
    return [name, { shorten, remove }];
  });
  const byThickness = tools.map(([mm, shears, loppers, saw]) => [mm, { shears, loppers, saw }]);
  return {
    passes: PASSES,
    tools: ["shears", "loppers", "saw"],
    stubs: ["close", "right", "long"],
    pass: Object.fromEntries(byPass),
    backwards,
    tool: Object.fromEntries(byThickness),
    stub: { close, right, long },
    stubLength,
    roughBuds,
  };
}
