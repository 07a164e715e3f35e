/** The door to a quiz: what it is, what it is not, and the two ways to take it. */

import { button, element } from "../dom.mjs";

/** @import {Mode, Progress} from "./progress.mjs" */
/** @import {QuizData} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

/**
 * @param {QuizData} data
 * @param {QuizWords} words
 * @param {Progress} progress
 * @param {{start: (mode: Mode) => void, allow: () => void, forget: () => void}} actions
 * @returns {HTMLElement}
 */
export function startView(data, words, progress, actions) {
  const root = element("section", { class: "pw-ask pw-ask-start" });
  const heading = element("h2", { tabindex: -1 }, words.say("start.heading"));
  const facts = { n: data.questions.length, minutes: data.minutes };
  root.append(element("p", {}, words.say("start.size", facts)));
  const needed = { needed: data.needed, of: data.scored.length };
  if (data.mustKnow.length > 0) {
    root.append(
      element("p", {}, words.count("start.must-know", data.mustKnow.length)),
      element("p", {}, words.say("start.needed-others", needed)),
    );
  } else {
    root.append(element("p", {}, words.say("start.needed", needed)));
  }
  root.append(heading, way("practice"), test(), element("p", { class: "pw-ask-plain" }, words.say("plain")));
  root.append(another(words, actions.forget));
  return root;

  /** @param {Mode} mode */
  function way(mode) {
    const press = button(words.say(`start.${mode}`), () => actions.start(mode), { class: "pw-main" });
    return element("div", { class: "pw-ask-way" }, press, element("p", {}, words.say(`start.${mode}.how`)));
  }

  function test() {
    if (progress.tries < data.tries) {
      const box = way("test");
      if (progress.tries > 0) {
        const tried = { n: progress.tries, of: data.tries };
        box.append(element("p", {}, words.say("start.tried", tried)));
      }
      return box;
    }
    const press = button(words.say("start.allow"), actions.allow);
    const why = element("p", {}, words.say("start.used-up", { n: progress.tries }));
    return element("div", { class: "pw-ask-way pw-ask-closed" }, why, press);
  }
}

/**
 * Phones are shared in a crew: the next person starts with nothing of the last one.
 *
 * @param {QuizWords} words
 * @param {() => void} forget
 */
function another(words, forget) {
  const yes = button(words.say("another.yes"), forget);
  return element(
    "details",
    { class: "pw-ask-another" },
    element("summary", {}, words.say("another")),
    element("p", {}, words.say("another.what")),
    yes,
  );
}
