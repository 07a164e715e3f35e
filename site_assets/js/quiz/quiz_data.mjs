/**
 * What the page gives a quiz, in `script.pw-quiz-data`; `generator/pencilwood/quiz` writes it.
 *
 * @typedef {object} Drawing
 * @property {string} drawing  name of the page's template that holds it
 * @property {string | null} at  position in the close-up, for its button
 * @property {[number, number, number, number] | null} box  viewBox of the close-up, mm
 *
 * @typedef {object} CommonQuestion
 * @property {string} id
 * @property {string} about  `choose`, `cane`, `part`, `count`, `order`, `safe`, `sum` or `prune`
 * @property {string} text
 * @property {boolean} mustKnow
 * @property {string[]} rules
 * @property {string | null} chapter
 * @property {Drawing | null} drawing
 *
 * @typedef {{text: string, why: string, right: boolean}} Choice
 * @typedef {{name: string, label: string, kind: string}} Target
 * @typedef {CommonQuestion & {kind: "choice", choices: Choice[]}} ChoiceQuestion
 * @typedef {CommonQuestion & {kind: "part", targets: Target[], right: string[], why: string, whys: Record<string, string>}} PartQuestion
 * @typedef {CommonQuestion & {kind: "order", items: {text: string, why: string}[], order: number[]}} OrderQuestion
 * @typedef {CommonQuestion & {kind: "prune", case: string}} PruneQuestion
 * @typedef {ChoiceQuestion | PartQuestion | OrderQuestion | PruneQuestion} Question
 *
 * @typedef {{title: string, href: string}} Link
 *
 * @typedef {object} QuizData
 * @property {number} format
 * @property {string} quiz
 * @property {string} version
 * @property {string} language
 * @property {string} title
 * @property {string} intro
 * @property {number} minutes
 * @property {number} tries
 * @property {number} needed
 * @property {string[]} scored  ids
 * @property {string[]} mustKnow  ids
 * @property {Question[]} questions
 * @property {{rules: Record<string, Link>, chapters: Record<string, Link>}} links
 * @property {Record<string, string>} strings
 *
 * @typedef {{passed: boolean, score: number}} Pruned
 * @typedef {number | string | number[] | Pruned} Answer  by kind: index, name, indices, result
 */

/**
 * What the quiz is about, for the slip: the chapters it draws on, without them its rules.
 *
 * @param {QuizData} data
 * @returns {string[]}
 */
export function topicsOf(data) {
  const chapters = data.questions.map(({ chapter }) => data.links.chapters[chapter ?? ""]);
  const rules = data.questions.flatMap((question) => question.rules.map((rule) => data.links.rules[rule]));
  const titles = (/** @type {(Link | undefined)[]} */ links) => [
    ...new Set(links.flatMap((link) => (link === undefined ? [] : [link.title]))),
  ];
  const found = titles(chapters);
  return found.length > 0 ? found : titles(rules);
}
