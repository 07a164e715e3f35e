/**
 * Starts before the page's own script and joins the page to the learning system that shows it.
 * Without one, the page works as in the handbook and says so.
 *
 * What the page gives: `<p data-pencilwood-package role="status">` to say how it stands, and
 * `<script type="application/json" class="pw-package-words">` with the sentences.
 */

import { setText } from "../dom.mjs";
import { readJson } from "../script_json.mjs";
import { Bridge } from "./bridge.mjs";
import { findApi } from "./find_api.mjs";
import { LearningSystem } from "./learning_system.mjs";

/** @import {Held} from "./suspended.mjs" */

const line = document.querySelector("[data-pencilwood-package]");
/** @type {Record<string, string>} */
const words = readJson(document, "pw-package-words") ?? {};

/**
 * @param {string} key
 * @param {Record<string, string | number>} [facts]
 */
function tell(key, facts = {}) {
  if (line === null) return;
  const template = words[`scorm.page.${key}`] ?? key;
  setText(line, template.replace(/\{([a-z]+)\}/g, (_, name) => `${facts[name]}`));
  line.setAttribute("data-state", key);
}

/** @returns {Held} */
function held() {
  const sheets = [...document.querySelectorAll("script.pw-sheet")];
  return {
    sheets: sheets.map((one) => JSON.parse(one.textContent ?? "null")),
    quiz: readJson(document, "pw-quiz-data"),
  };
}

function join() {
  // `window` fits: only its parents, its opener and their `API` are looked at.
  const api = findApi(/** @type {import("./find_api.mjs").Seen} */ (/** @type {unknown} */ (window)));
  if (api === null) return tell("alone");
  const system = new LearningSystem(api);
  if (!system.begin()) return tell("no-start", { code: system.trouble });
  const bridge = new Bridge(held(), system, tell);
  // storage.mjs keeps the work there instead of in the browser's own store.
  Object.assign(globalThis, { pencilwoodShelf: bridge.work });
  document.documentElement.classList.add("pw-in-system");
  listen(bridge);
}

/** @param {Bridge} bridge */
function listen(bridge) {
  document.addEventListener("pencilwood:scored", (event) => {
    // The vines of a quiz are told with the quiz.
    if (bridge.held.quiz !== null) return;
    const { case: exercise, score, cutting, passed } = /** @type {CustomEvent} */ (event).detail;
    bridge.exerciseDone({ exercise, score, cutting, passed });
  });
  document.addEventListener("pencilwood:handed-in", (event) => {
    bridge.quizDone(/** @type {CustomEvent} */ (event).detail);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") bridge.hidden();
  });
  window.addEventListener("pagehide", () => bridge.system.end());
  // A page that the browser had kept aside has ended its session: it needs a new one.
  window.addEventListener("pageshow", (event) => {
    if (event.persisted) location.reload();
  });
}

/** To leave this page would end the session, so that what it links to opens beside it. */
function openBeside() {
  document.addEventListener("click", (event) => {
    const link = /** @type {Element | null} */ (event.target)?.closest?.("a[href]");
    if (!(link instanceof HTMLAnchorElement) || link.hasAttribute("download")) return;
    if (link.getAttribute("href")?.startsWith("#")) return;
    link.target = "_blank";
    link.rel = "noopener";
  }, true);
}

join();
openBeside();
