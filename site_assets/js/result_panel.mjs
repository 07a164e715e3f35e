/** The result: points, what could not be helped, each rule with its reason, and the answers. */

import { button, element } from "./dom.mjs";
import { byReason, byRule, byWords } from "./findings.mjs";

/** @import {Broken, PageWords, Result, Sheet, ShownCut} from "./types.mjs" */
/** @import {Finding, Place} from "./findings.mjs" */
/** @import {Headings} from "./headings.mjs" */

const SHOWN_AT_ONCE = 4;

export class ResultPanel {
  /**
   * @param {Sheet} sheet
   * @param {PageWords} page
   * @param {import("./words.mjs").Words} words
   * @param {Headings} headings
   * @param {import("./compare_view.mjs").CompareView} compare
   * @param {{change: () => void, tryAgain: () => void}} actions
   * @param {HTMLElement | null} [onward]  leads to the next vine, once this one is passed
   */
  constructor(sheet, page, words, headings, compare, actions, onward = null) {
    this.sheet = sheet;
    this.page = page;
    this.words = words;
    this.headings = headings;
    this.compare = compare;
    this.actions = actions;
    this.onward = onward;
    this.again = button(words.say("result.try-again"), actions.tryAgain);
    this.heading = element(headings.main, { class: "pw-verdict-now", tabindex: -1 });
    this.summary = element("div", { class: "pw-summary" });
    this.vineFindings = element("div");
    this.cutFindings = element("div");
    this.root = this.layOut();
  }

  layOut() {
    const { words, page, compare } = this;
    const again = element(
      "div",
      { class: "pw-buttons pw-again" },
      ...(this.onward === null ? [] : [this.onward]),
      this.again,
      button(words.say("result.change"), this.actions.change),
    );
    const answer = page.answer === null ? [] : [this.reasons(words.say("answer.title"), page.answer.cuts)];
    const plan = this.reasons(words.say("plan.title"), page.plan.cuts);
    compare.touched = (number) => this.goTo(number);
    return element(
      "div",
      { class: "pw-result" },
      element("div", { class: "pw-verdict-block" }, this.heading, this.summary),
      compare.root,
      element("div", { class: "pw-why-all" }, this.vineFindings, this.cutFindings, ...answer, plan),
      again,
    );
  }

  /**
   * From a number on the drawing to the same number in the list.
   *
   * @param {string} number
   */
  goTo(number) {
    const line = /** @type {HTMLElement | null} */ (
      this.vineFindings.querySelector(`[data-number="${CSS.escape(number)}"]`)
    );
    const fold = line?.closest("details");
    if (fold) fold.open = true;
    line?.focus();
  }

  /**
   * @param {Result} result
   * @param {readonly number[]} states
   * @param {Map<string, import("./types.mjs").WireSide>} [tied]  where canes were tied
   * @param {number} [cuts]  how many were made
   */
  update(result, states, tied = new Map(), cuts = 0) {
    const findings = byRule(result.broken);
    const { words } = this;
    this.heading.textContent = this.verdict(result);
    this.root.classList.toggle("pw-passed", result.passed);
    if (this.onward !== null) this.onward.hidden = !result.passed;
    this.again.classList.toggle("pw-main", this.onward === null || !result.passed);
    this.summary.replaceChildren(...this.summaryLines(result, cuts));
    this.vineFindings.replaceChildren(
      element(this.headings.main, {}, words.say("result.vine-title")),
      ...(findings.length === 0
        ? [element("p", {}, words.say("result.nothing-broken"))]
        : findings.map((finding) => this.findingBlock(finding))),
    );
    this.cutFindings.replaceChildren(...this.cuttingBlock(result.cutting, cuts));
    this.compare.update(states, findings, tied);
  }

  /**
   * A good vine that was badly cut is passed, but not without a word.
   *
   * @param {Result} result
   */
  verdict({ passed, score, cutting }) {
    const { words } = this;
    if (!passed) return words.say("result.not-passed", { score });
    const verdict = words.say("result.passed", { score });
    if (cutting.broken.length === 0) return verdict;
    return `${verdict}. ${words.say("result.cutting-title", { score: cutting.score })}`;
  }

  /**
   * @param {Result} result
   * @param {number} cuts
   */
  summaryLines(result, cuts) {
    const { words, sheet } = this;
    const helped = Math.max(0, result.lost - sheet.planLost);
    const lines = [words.say("result.score", { score: result.score, mark: sheet.passMark })];
    if (sheet.planLost > 0) lines.push(words.count("result.plan-lost", sheet.planLost));
    if (helped > 0) lines.push(words.count("result.lost", helped));
    if (result.broken.some((one) => one.must)) lines.push(words.say("result.must-broken"));
    // Who cut nothing cut nothing badly either, and is not praised for it.
    if (cuts > 0) lines.push(words.say("result.cutting-score", { score: result.cutting.score }));
    return lines.map((line) => element("p", {}, line));
  }

  /** @param {Finding} finding */
  findingBlock(finding) {
    const lines = finding.places.map((place) => this.placeLine(place));
    const rest = lines.length > SHOWN_AT_ONCE + 1 ? lines.splice(SHOWN_AT_ONCE) : [];
    const block = element(
      "section",
      { class: `pw-finding ${finding.must ? "pw-must" : "pw-should"}` },
      ...this.ruleHead(finding.rule, finding.must, finding.points),
      element("ul", {}, ...lines),
    );
    if (rest.length > 0) {
      const more = element("summary", {}, this.words.count("result.more", rest.length));
      block.append(element("details", {}, more, element("ul", {}, ...rest)));
    }
    return block;
  }

  /**
   * @param {string} rule
   * @param {boolean} must
   * @param {number} points
   */
  ruleHead(rule, must, points) {
    const { words } = this;
    const found = this.page.rules[rule];
    const tag = words.say(must ? "result.must" : "result.should");
    const cost = words.count("result.points", points);
    const head = [
      element(this.headings.sub, {}, found?.title ?? rule),
      element("p", {}, element("strong", { class: "pw-tag" }, tag), ` ${cost}`),
    ];
    if (found === undefined) return head;
    const more = words.say("result.rule-page", { rule: found.title });
    head.push(element("p", {}, `${found.why} `, element("a", { href: found.href }, more)));
    return head;
  }

  /** @param {Place} place */
  placeLine({ number, broken }) {
    const { words } = this;
    const kind = broken.must ? "pw-mark-must" : "pw-mark-should";
    const item = element("li", number === null ? {} : { "data-number": number, tabindex: -1 });
    if (number !== null) item.append(element("span", { class: `pw-mark ${kind}` }, `${number}`), " ");
    const where = this.whereWords(broken);
    const cost = `(${words.count("result.points", broken.points)})`;
    const says = element("span", { class: "pw-place-says" }, element("strong", {}, where));
    says.append(`: ${this.message(broken)} ${cost} `);
    item.append(says);
    item.append(...this.showButton(broken, where, number));
    return item;
  }

  /**
   * A button that turns the drawing to the place of a charge; none where it has no place.
   *
   * @param {Broken} broken
   * @param {string} more  told to those who listen
   * @param {number | null} [number]  its number on the drawing
   */
  showButton(broken, more, number = null) {
    const position = this.positionOf(broken);
    if (position < 0) return [];
    const show = () => {
      this.compare.lookAtMine(position, number);
      this.compare.stage.root.focus();
    };
    return [button(this.words.say("result.show"), show, { more })];
  }

  /** @param {Broken} broken */
  message(broken) {
    const template = this.page.rules[broken.rule]?.messages[broken.message] ?? broken.message;
    const facts = { where: this.whereWords(broken), part: broken.where.part ?? "", ...broken.facts };
    return this.words.fill(template, facts);
  }

  /** @param {Broken} broken */
  whereWords({ where }) {
    const { words } = this;
    if (where.part !== undefined) return this.page.pieces[where.part]?.label ?? where.part;
    const [a, b] = where.positions ?? [];
    if (where.kind === "vine") return words.say("where.vine");
    if (b !== undefined) return words.say("where.between", { a, b });
    if (a === undefined) return words.say("where.whole-arm");
    return words.say(`where.to-${where.end}-end`, { a });
  }

  /** @param {Broken} broken */
  positionOf({ where }) {
    const { pieces, positions } = this.sheet;
    if (where.part !== undefined) {
      return pieces.find((piece) => piece.name === where.part)?.position ?? -1;
    }
    return positions.findIndex((position) => position.name === where.positions?.[0]);
  }

  /**
   * @param {Result["cutting"]} cutting
   * @param {number} cuts
   */
  cuttingBlock(cutting, cuts) {
    const { words } = this;
    if (cuts === 0) return [element("p", {}, words.say("result.cutting-none"))];
    const title = element(this.headings.main, {}, words.say("result.cutting-title", { score: cutting.score }));
    if (cutting.broken.length === 0) {
      return [title, element("p", {}, words.say("result.cutting-clean"))];
    }
    const blocks = byRule(cutting.broken).map((finding) => {
      const lines = byWords(finding.places.map(({ broken }) => broken), (one) => this.message(one)).map(
        ({ first, points, parts }) => {
          const cost = words.count("result.points", points);
          // A piece may be cut more than once; it is named once.
          const names = [...new Set(parts)].map((part) => words.wood(part)).join(", ");
          const says = element("span", { class: "pw-place-says" }, `${names}: ${this.message(first)} (${cost}) `);
          return element("li", {}, says, ...this.showButton(first, names));
        },
      );
      const head = this.ruleHead(finding.rule, finding.must, finding.points);
      return element("section", { class: "pw-finding" }, ...head, element("ul", {}, ...lines));
    });
    return [title, ...blocks];
  }

  /**
   * @param {string} title
   * @param {readonly ShownCut[]} cuts
   */
  reasons(title, cuts) {
    const { words } = this;
    const lines = byReason(cuts).map(({ pass, buds, tied, why, parts }) => {
      const were = parts.length === 1 ? "was" : "were";
      const cut = buds === null ? words.say(`cut.${were}-off`) : words.count(`cut.${were}-to`, buds);
      const what = tied === undefined ? cut : words.say(`tie.${were}.${tied}`);
      const names = parts.map((part) => words.wood(part)).join(", ");
      const name = `${words.say(`pass.${pass}`)}: ${names} ${what}.`;
      return element("li", {}, element("strong", {}, name), ` ${why}`);
    });
    const list = element("ol", {}, ...lines);
    return element("details", { class: "pw-reasons" }, element("summary", {}, title), list);
  }
}
