/** Compares answers with what the page's data says is right. There is no rule in here. */

/** @import {Answer, Link, Pruned, Question, QuizData} from "./quiz_data.mjs" */

/**
 * @typedef {object} Marks  what came of a quiz
 * @property {number} right  right answers among the questions that make up the score
 * @property {number} scored
 * @property {number} needed
 * @property {number} mustRight
 * @property {number} must
 * @property {number} points  of 100, rounded down
 * @property {boolean} enough  whether the score is reached
 * @property {boolean} safe  whether all must-know questions are right
 * @property {boolean} passed
 * @property {string[]} wrong  ids, in the order of the quiz
 */

/**
 * Whether this is an answer to the question at all; what was kept on a device may be anything.
 *
 * @param {Question} question
 * @param {unknown} answer
 * @returns {answer is Answer}
 */
export function isAnswer(question, answer) {
  if (question.kind === "choice") return Number.isInteger(answer) && Number(answer) in question.choices;
  if (question.kind === "part") return question.targets.some(({ name }) => name === answer);
  if (question.kind === "order") return isOrder(question.items.length, answer);
  if (typeof answer !== "object" || answer === null) return false;
  const { passed, score } = /** @type {Partial<Pruned>} */ (answer);
  return typeof passed === "boolean" && Number.isInteger(score);
}

/**
 * @param {number} length
 * @param {unknown} answer
 */
function isOrder(length, answer) {
  if (!Array.isArray(answer) || answer.length !== length) return false;
  return [...Array(length).keys()].every((number) => answer.includes(number));
}

/**
 * @param {Question} question
 * @param {Answer | undefined} answer  undefined while there is none
 * @returns {boolean}
 */
export function isRight(question, answer) {
  if (answer === undefined || !isAnswer(question, answer)) return false;
  if (question.kind === "choice") return question.choices[Number(answer)].right;
  if (question.kind === "part") return question.right.includes(String(answer));
  if (question.kind === "order") return `${answer}` === `${question.order}`;
  return /** @type {Pruned} */ (answer).passed;
}

/**
 * @param {QuizData} data
 * @param {Record<string, Answer>} answers
 * @returns {Marks}
 */
export function markQuiz(data, answers) {
  const good = new Set(
    data.questions.filter((one) => isRight(one, answers[one.id])).map(({ id }) => id),
  );
  const right = data.scored.filter((id) => good.has(id)).length;
  const mustRight = data.mustKnow.filter((id) => good.has(id)).length;
  const enough = right >= data.needed;
  const safe = mustRight === data.mustKnow.length;
  return {
    right,
    scored: data.scored.length,
    needed: data.needed,
    mustRight,
    must: data.mustKnow.length,
    points: data.scored.length === 0 ? 100 : Math.floor((100 * right) / data.scored.length),
    enough,
    safe,
    passed: enough && safe,
    wrong: data.questions.map(({ id }) => id).filter((id) => !good.has(id)),
  };
}

/**
 * Questions without an answer, in the order of the quiz.
 *
 * @param {QuizData} data
 * @param {Record<string, Answer>} answers
 */
export function openQuestions(data, answers) {
  return data.questions.filter(({ id }) => answers[id] === undefined).map(({ id }) => id);
}

/**
 * Where to look again after these questions: each chapter and each rule once, most needed first.
 *
 * @param {QuizData} data
 * @param {readonly string[]} wrong  ids
 * @returns {Link[]}
 */
export function lookAgain(data, wrong) {
  /** @type {Map<string, {link: Link, times: number}>} */
  const found = new Map();
  for (const question of data.questions.filter(({ id }) => wrong.includes(id))) {
    const chapter = data.links.chapters[question.chapter ?? ""];
    for (const link of [chapter, ...question.rules.map((rule) => data.links.rules[rule])]) {
      if (link === undefined) continue;
      const name = `${link.href} ${link.title}`;
      const known = found.get(name) ?? { link, times: 0 };
      known.times += 1;
      found.set(name, known);
    }
  }
  return [...found.values()].sort((a, b) => b.times - a.times).map(({ link }) => link);
}
