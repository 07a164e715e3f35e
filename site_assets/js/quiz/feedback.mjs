/** What is said about an answer: right or not, why, and what would have been right. */

import { element } from "../dom.mjs";
import { isRight } from "./marking.mjs";

/** @import {Answer, ChoiceQuestion, Link, OrderQuestion, PartQuestion, Question, QuizData} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

/** Of many right pieces only some are named; the drawing shows them all. */
const NAMED = 4;

/**
 * @param {QuizData} data
 * @param {Question} question
 * @param {Answer | undefined} answer
 * @param {QuizWords} words
 * @returns {HTMLElement}
 */
export function feedbackOn(data, question, answer, words) {
  const right = isRight(question, answer);
  const verdict = answer === undefined ? "none" : right ? "right" : "wrong";
  const heading = element("h3", { tabindex: -1 }, words.say(`feedback.${verdict}`));
  const box = element("div", { class: `pw-ask-feedback pw-ask-${right ? "good" : "bad"}` }, heading);
  if (question.kind === "choice") box.append(...onChoice(question, answer, words));
  if (question.kind === "part") box.append(...onPart(question, answer, words));
  if (question.kind === "order") box.append(onOrder(question, answer, words));
  if (question.kind === "prune") box.append(onPrune(answer, words));
  const links = linksOf(data, question);
  if (!right && links.length > 0) box.append(linkList(words.say("feedback.read"), links));
  return box;
}

/**
 * @param {ChoiceQuestion} question
 * @param {Answer | undefined} answer
 * @param {QuizWords} words
 */
function onChoice(question, answer, words) {
  const chosen = question.choices[Number(answer ?? -1)];
  const right = question.choices.find((choice) => choice.right);
  const said = [];
  if (chosen !== undefined && !chosen.right) {
    said.push(sentence(words.say("feedback.yours", { text: bare(chosen.text) }), chosen.why));
  }
  if (right !== undefined) {
    said.push(sentence(words.say("feedback.right-answer", { text: bare(right.text) }), right.why));
  }
  return said;
}

/**
 * @param {PartQuestion} question
 * @param {Answer | undefined} answer
 * @param {QuizWords} words
 */
function onPart(question, answer, words) {
  const picked = question.targets.find(({ name }) => name === answer);
  const right = question.targets.filter(({ name }) => question.right.includes(name));
  const labels = right.slice(0, NAMED).map(({ label }) => label);
  if (right.length > NAMED) labels.push(words.say("feedback.more", { n: right.length - NAMED }));
  const said = [];
  if (picked !== undefined && !question.right.includes(picked.name)) {
    const yours = words.say("feedback.yours", { text: picked.label });
    said.push(sentence(yours, question.whys[picked.kind] ?? ""));
  }
  const key = right.length > 1 ? "feedback.right-parts" : "feedback.right-answer";
  said.push(sentence(words.say(key, { text: labels.join(", ") }), question.why));
  return said;
}

/**
 * @param {OrderQuestion} question
 * @param {Answer | undefined} answer
 * @param {QuizWords} words
 */
function onOrder(question, answer, words) {
  const given = Array.isArray(answer) ? answer : [];
  const rows = question.order.map((item, at) => {
    const { text, why } = question.items[item];
    const was = given.indexOf(item);
    const place = was >= 0 && was !== at ? words.say("feedback.was-at", { n: was + 1 }) : "";
    const step = element("strong", {}, text);
    return element("li", {}, step, place === "" ? "" : ` (${place})`, " ", why);
  });
  return element("div", {}, element("p", {}, words.say("feedback.order")), element("ol", {}, ...rows));
}

/**
 * @param {Answer | undefined} answer
 * @param {QuizWords} words
 */
function onPrune(answer, words) {
  if (typeof answer !== "object" || Array.isArray(answer)) return element("p", {}, words.say("prune.none"));
  return element("p", {}, words.say("prune.score", { score: answer.score }));
}

/**
 * An answer as part of a sentence, which brings a full stop of its own.
 *
 * @param {string} text
 */
function bare(text) {
  return text.replace(/\.$/, "");
}

/**
 * @param {string} lead
 * @param {string} why
 */
function sentence(lead, why) {
  return element("p", {}, element("strong", {}, lead), " ", why);
}

/**
 * @param {QuizData} data
 * @param {Question} question
 * @returns {Link[]}
 */
function linksOf(data, question) {
  const chapter = data.links.chapters[question.chapter ?? ""];
  const rules = question.rules.map((rule) => data.links.rules[rule]);
  return [chapter, ...rules].filter((link) => link !== undefined);
}

/**
 * @param {string} lead
 * @param {readonly Link[]} links
 */
export function linkList(lead, links) {
  const rows = links.map(({ title, href }) =>
    // A package for a learning system names pages of the handbook that it doesn't hold.
    element("li", {}, href === "" ? title : element("a", { href }, title)),
  );
  return element("div", { class: "pw-ask-links" }, element("p", {}, lead), element("ul", {}, ...rows));
}
