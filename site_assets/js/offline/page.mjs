/**
 * What every page does: its list of headings, its folds, light or dark, the search once it is asked
 * for, and reading without a signal where a host sent it.
 */

import { openFolds } from "../folds.mjs";
import { foldJumpList } from "../jump_list.mjs";
import { bringSearch } from "../late_search.mjs";
import { bindShade } from "../shade.mjs";
import { KeepPanel } from "./keep_panel.mjs";
import { searchFiles } from "./search_files.mjs";

const LATER_MS = 3000;

const script = /** @type {HTMLScriptElement | null} */ (document.currentScript);
const root = script?.dataset.root ?? ".";
// A page that is shown while somebody writes it names none.
const manifest = script?.dataset.manifest;
const from_server = location.protocol.startsWith("http");

foldJumpList(document);
openFolds(document);
bindShade(document);
bringSearch(document);

if (manifest !== undefined && from_server) {
  // Not in the page itself: browsers complain of one in a page opened from a disk.
  const link = document.createElement("link");
  link.rel = "manifest";
  link.href = manifest;
  document.head.append(link);
  if ("serviceWorker" in navigator) {
    // After the page itself, which matters more on a slow line.
    if (document.readyState === "complete") void start();
    else addEventListener("load", () => void start());
  }
}

async function start() {
  const workers = navigator.serviceWorker;
  try {
    await workers.register(new URL(`${root}/offline-worker.js`, location.href), {
      updateViaCache: "none",
    });
    const { active } = await workers.ready;
    if (active === null) return;
    const parts = performance.getEntriesByType("resource").map((one) => one.name);
    const page = location.origin + location.pathname;
    active.postMessage({ pencilwood: "keep", addresses: [page, ...parts] });
    const panel = document.querySelector("[data-pencilwood-keep]");
    if (panel !== null) new KeepPanel(/** @type {HTMLElement} */ (panel), active).bind();
    whenIdle(() => active.postMessage({ pencilwood: "keep", addresses: searchFiles(document) }));
  } catch {
    // A browser that keeps nothing, as in a private window: the handbook works with a signal.
  }
}

/**
 * What nobody waits for comes when the line and the page have nothing else to do.
 *
 * @param {() => void} work
 */
function whenIdle(work) {
  const idle = "requestIdleCallback" in window ? () => requestIdleCallback(work) : work;
  setTimeout(idle, LATER_MS);
}
