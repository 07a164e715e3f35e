/** Small helpers to build elements. Text always goes in as text, never as markup. */

/**
 * A new element. `attributes` are set as they are; a value of `false` or `null` is left out and
 * `true` sets an empty attribute.
 *
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {Record<string, string | number | boolean | null>} [attributes]
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[T]}
 */
export function element(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === false) continue;
    made.setAttribute(name, value === true ? "" : String(value));
  }
  made.append(...children);
  return made;
}

/**
 * A native button. `more` is read out after the visible words, to tell buttons apart.
 *
 * @param {string} text
 * @param {() => void} press
 * @param {{class?: string, more?: string}} [options]
 * @returns {HTMLButtonElement}
 */
export function button(text, press, options = {}) {
  const made = element("button", { type: "button", class: `pw-button ${options.class ?? ""}` });
  made.append(text);
  if (options.more !== undefined) {
    made.append(" ", element("span", { class: "pw-unseen" }, options.more));
  }
  made.addEventListener("click", press);
  return made;
}

/**
 * A native button that shows an arrow; its words are read out.
 *
 * @param {"back" | "on"} way
 * @param {string} text
 * @param {() => void} press
 */
export function arrow(way, text, press) {
  const made = button("", press, { class: `pw-arrow pw-arrow-${way}` });
  made.append(element("span", { class: "pw-unseen" }, text));
  return made;
}

/**
 * A native radio group with a legend.
 *
 * @param {string} legend
 * @param {string} name  unique on the page
 * @param {{value: string, text: string}[]} choices
 * @param {(value: string) => void} choose
 * @returns {HTMLFieldSetElement}
 */
export function radios(legend, name, choices, choose) {
  const group = element("fieldset", { class: "pw-radios" }, element("legend", {}, legend));
  for (const { value, text } of choices) {
    const input = element("input", { type: "radio", name, value });
    input.addEventListener("change", () => choose(value));
    group.append(element("label", { class: "pw-radio" }, input, element("span", {}, text)));
  }
  return group;
}

/**
 * Checks the radio with this value, or none for null.
 *
 * @param {ParentNode} group
 * @param {string | null} value
 */
export function check(group, value) {
  for (const input of group.querySelectorAll("input")) input.checked = input.value === value;
}

/**
 * Sets a text only when it differs, so that a screen reader isn't disturbed.
 *
 * @param {Element} target
 * @param {string} text
 */
export function setText(target, text) {
  if (target.textContent !== text) target.textContent = text;
}

/**
 * A sentence with its facts in the places of their names.
 *
 * @param {string} template
 * @param {Record<string, string | number>} facts
 */
export function fill(template, facts) {
  return template.replace(/\{([a-z]+)\}/g, (all, name) => String(facts[name] ?? all));
}
