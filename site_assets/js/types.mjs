/**
 * The shapes of the JSON that a page carries and of what a learner does with it.
 *
 * @typedef {Record<string, string | number>} Facts  names such as `gap_mm`; `_mm` marks a length
 * @typedef {[message: number, points: number, facts: Facts]} Charge
 * @typedef {[limit: number | null, charges: number]} Row  first row whose limit is not passed
 *
 * @typedef {object} Message
 * @property {string} rule  name of the rule, `crowded-spurs`
 * @property {string} name  name of the message within the rule, `too-close`
 * @property {boolean} must  whether breaking it keeps the score under the pass mark
 *
 * @typedef {object} SheetPiece  the smallest stretch of wood that one cut removes
 * @property {string} name  `L1a`, `L1m`, `L1m above a`
 * @property {number} position  index in `positions`
 * @property {"cane" | "old"} kind
 * @property {number} states  how many states it has; the last one is the uncut piece
 * @property {number} grows  index of the piece it grows from, -1 for the arm
 * @property {number[]} carries  indices of all pieces that fall with it
 * @property {number[]} above  indices of the living canes that count as living wood above it
 * @property {number} [alive]  1 for a cane whose buds can push
 * @property {number} [wound]  1 when cutting it off leaves a large wound
 * @property {number} thickness  mm
 * @property {[number, number][]} charges  by state, then by whether living wood is above it
 *
 * @typedef {"rough" | "thinning-out" | "fine" | "tie"} PassName
 * @typedef {"left" | "right"} WireSide
 * @typedef {"shears" | "loppers" | "saw"} ToolName
 * @typedef {"close" | "right" | "long"} StubName
 *
 * @typedef {object} CuttingSheet  what is charged for how a cut is made
 * @property {Record<PassName, {shorten: number[], remove: number}>} pass  `shorten[0]`: to 1 bud
 * @property {number} backwards  instead of `pass`, after a cut of a later pass
 * @property {Record<string, Record<ToolName, number>>} tool  by thickness in mm
 * @property {Record<StubName, number>} stub  of shortenings only
 * @property {[number, number]} roughBuds  fewest and most buds that a rough cut leaves
 * @property {readonly PassName[]} passes  those of the vine's form, in their order
 * @property {TyingSheet} [tie]  where canes are tied along the wire after the last cut
 *
 * @typedef {object} TyingSheet
 * @property {string} tally  name of the tally whose pieces are tied
 * @property {number} untied  what a cane costs that is not tied
 * @property {Record<WireSide, number[]>} sides  by how many canes were tied to that side before
 *
 * @typedef {object} Tally
 * @property {string} name
 * @property {number[][]} counts  by piece and state, 1 where it is one of them
 * @property {Row[]} steps
 *
 * @typedef {object} Sheet  one vine's scoring sheet
 * @property {number} format
 * @property {string} [version]
 * @property {string} case
 * @property {number} passMark
 * @property {number} planLost  points that even the best pruning of this vine loses
 * @property {number} armLength  length of all arms together, mm
 * @property {Message[]} messages
 * @property {Charge[][]} charges
 * @property {SheetPiece[]} pieces
 * @property {{name: string, x: number, y: number}[]} positions  along the line, mm
 * @property {[number, number]} ends
 * @property {number} [around]  once around the head, mm, where positions stand around one
 * @property {Tally[]} [tallies]  what the vine's form counts beside buds and wounds
 * @property {Row[]} crowded
 * @property {Row[]} blank
 * @property {Row[]} buds
 * @property {Row[]} wounds
 * @property {CuttingSheet} cutting
 *
 * @typedef {object} DoneCut
 * @property {string} part
 * @property {number | null} buds  null takes the whole part off
 * @property {PassName} pass
 * @property {ToolName} tool
 * @property {StubName} stub
 * @property {WireSide} [tied]  the side of the wire it is tied to; then nothing is cut
 *
 * @typedef {object} Where  the place on the vine that a charge speaks of
 * @property {"piece" | "pair" | "stretch" | "vine" | "cut"} kind
 * @property {string} [part]
 * @property {string[]} [positions]  names on both sides; an arm's end is left out
 * @property {"left" | "right"} [end]  the arm's end, for a stretch that runs to it
 * @property {number} [cut]  number of the cut, from 0
 *
 * @typedef {object} Broken  one charge that a learner has to pay
 * @property {string} message
 * @property {string} rule
 * @property {boolean} must
 * @property {number} points
 * @property {Facts} facts
 * @property {Where} where
 *
 * @typedef {object} Result
 * @property {number} score
 * @property {number} lost  all points lost, those that could not be helped included
 * @property {boolean} passed
 * @property {Broken[]} broken
 * @property {{score: number, broken: Broken[]}} cutting
 *
 * @typedef {object} ShownCut  a cut of the plan or of the trainer's answer
 * @property {string} part
 * @property {number | null} buds
 * @property {PassName} pass
 * @property {string} why
 * @property {WireSide} [tied]  the side of the wire it is tied to
 *
 * @typedef {object} RuleWords
 * @property {string} title
 * @property {Record<string, string>} messages  a template for each message of the rule
 * @property {string} why
 * @property {string} href
 *
 * @typedef {object} PageWords  everything a page says, in its own language
 * @property {string} language
 * @property {"metric" | "us"} units
 * @property {Record<string, string>} strings
 * @property {Record<string, RuleWords>} rules
 * @property {Record<string, {label: string, facts: string}>} pieces
 * @property {{cuts: ShownCut[], states: Record<"before" | PassName, number[]>} | null} answer
 *   null for a practice vine, which no trainer has pruned
 * @property {{cuts: ShownCut[], states: number[]}} plan
 */

export {};
