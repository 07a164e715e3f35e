/**
 * The sums of a block as forms that work offline.
 *
 * The page gives `<div data-pencilwood-block-forms>` with `<script type="application/json"
 * class="pw-block-data">` inside: words, units, fields and sums, as the handbook's own sums know
 * them; and a `<div data-sum="crew">` under a heading `id="sum-crew"` for each sum. Everything
 * else is made here from native elements.
 */

import { SumForm } from "./block/sum_form.mjs";
import { Shown } from "./block/shown.mjs";
import { check, element, radios } from "./dom.mjs";

/** @import {BlockPage} from "./block/types.mjs" */

export class BlockForms {
  /** @param {HTMLElement} root */
  constructor(root) {
    this.root = root;
    const data = root.querySelector(".pw-block-data");
    /** @type {BlockPage} */
    this.page = JSON.parse(data?.textContent ?? "{}");
    this.shown = new Shown(this.page, this.page.show);
    this.forms = this.page.questions.map((one) => new SumForm(this.page, one, this.shown));
  }

  /** Builds the forms in their places. */
  bind() {
    this.controls = element("div", { class: "pw-sum-controls" }, this.units(), this.ranges());
    this.root.prepend(this.controls);
    for (const form of this.forms) {
      form.build();
      this.root.querySelector(`[data-sum="${form.question.name}"]`)?.append(form.root);
    }
    this.root.classList.add("pw-live");
    const openNamed = () => this.open(location.hash);
    addEventListener("hashchange", openNamed);
    openNamed();
    return this;
  }

  units() {
    const choices = ["metric", "us"].map((value) => ({ value, text: this.shown.say(`form.${value}`) }));
    const group = radios(this.shown.say("form.units"), "pw-block-units", choices, (value) => {
      this.shown = new Shown(this.page, value === "us" ? "us" : "metric");
      for (const form of this.forms) form.setShown(this.shown);
    });
    check(group, this.page.show);
    return group;
  }

  ranges() {
    const box = element("input", { type: "checkbox" });
    box.addEventListener("change", () => {
      for (const form of this.forms) form.setSpread(box.checked);
    });
    const words = element("span", {}, this.shown.say("form.ranges"));
    return element("label", { class: "pw-ranges" }, box, words);
  }

  /**
   * A link such as `#sum-crew` opens its form.
   *
   * @param {string} hash
   */
  open(hash) {
    const wanted = this.forms.find((form) => `#sum-${form.question.name}` === hash);
    if (wanted !== undefined) wanted.root.open = true;
  }
}
