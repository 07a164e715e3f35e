/**
 * The story of a vine stands above its drawing. On a phone a long one shows its first lines, so that
 * the vine stays on the first screen, and a button that shows all of it. The button stands before the
 * words: they flow around it, so that the last line ends with a whole word (css/exercise/bench.css).
 */

import { button, element } from "./dom.mjs";

/** @import {Words} from "./words.mjs" */

/**
 * @param {HTMLElement} root  of the exercise
 * @param {Words} words
 */
export function offerWholeStory(root, words) {
  const story = /** @type {HTMLElement | null} */ (root.parentElement?.querySelector(".pw-story"));
  if (!story) return;
  const more = button(
    "",
    () => {
      story.classList.add("pw-story-whole");
      more.remove();
      // Whoever uses the keyboard goes on from here, not from the top of the page.
      story.tabIndex = -1;
      story.focus({ preventScroll: true });
    },
    { class: "pw-story-more" },
  );
  more.append(element("span", {}, words.say("story.more")));
  more.hidden = true;
  story.prepend(more);
  // It is asked after each layout, so that none is forced; a phone that is turned is asked again.
  new ResizeObserver(() => {
    more.hidden = story.scrollHeight <= story.clientHeight + 1;
  }).observe(story);
}
