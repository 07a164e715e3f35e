/** A piece of the vine is the answer: tap it on the drawing, or pick its name from a list. */

import { element, setText } from "../dom.mjs";
import { onTap } from "../tap.mjs";
import { field } from "./fields.mjs";

/** @import {Answer, PartQuestion} from "./quiz_data.mjs" */
/** @import {QuestionDrawing} from "./question_drawing.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

export class PartWidget {
  /**
   * @param {PartQuestion} question
   * @param {QuizWords} words
   * @param {QuestionDrawing | null} drawing
   * @param {(answer: Answer | undefined) => void} changed
   */
  constructor(question, words, drawing, changed) {
    this.question = question;
    this.words = words;
    this.drawing = drawing;
    this.locked = false;
    const options = question.targets.map(({ name, label }) => element("option", { value: name }, label));
    const none = element("option", { value: "" }, words.say("part.none"));
    this.select = element("select", {}, none, ...options);
    this.select.addEventListener("change", () => changed(this.select.value || undefined));
    this.said = element("p", { class: "pw-ask-said", role: "status" });
    this.root = element(
      "div",
      { class: "pw-ask-part" },
      element("p", { class: "pw-ask-hint" }, words.say("part.hint")),
      field(words.say("part.list"), this.select),
      this.said,
    );
    const names = new Set(question.targets.map(({ name }) => name));
    if (drawing?.svg) {
      drawing.svg.classList.add("pw-ask-tap");
      onTap(drawing.svg, (x, y) => {
        if (this.locked) return;
        const name = drawing.nameAt(x, y, names);
        if (name === null) setText(this.said, words.say("part.missed"));
        else changed(name);
      });
    }
  }

  /**
   * @param {Answer | undefined} answer
   * @param {boolean} locked
   */
  show(answer, locked) {
    this.locked = locked;
    const picked = this.question.targets.find(({ name }) => name === answer);
    this.select.value = picked?.name ?? "";
    this.select.disabled = locked;
    const said = picked === undefined ? "" : this.words.say("part.picked", { name: picked.label });
    setText(this.said, said);
    this.drawing?.mark(picked === undefined ? [] : [picked.name], "picked");
    this.drawing?.mark(locked ? this.question.right : [], "right");
  }

  destroy() {}
}
