/** Answers what pages ask for: from the network where there is one, else from what is kept. */

import { WrongBytesError } from "./store.mjs";

/** @import {Store} from "./store.mjs" */

/** After so long without an answer a page that is kept is shown, and the answer kept for later. */
const PATIENCE_MS = 8000;
const GONE = "gone";
const NAMED_BY_CONTENT = /\.[0-9a-f]{8,}\.min\.(js|css)$/;

export class Answers {
  /**
   * @param {Store} store
   * @param {(work: Promise<unknown>) => void} later  lets work end after the answer is given
   * @param {number} [patience_ms]
   */
  constructor(store, later, patience_ms = PATIENCE_MS) {
    this.store = store;
    this.later = later;
    this.patience_ms = patience_ms;
  }

  /**
   * The answer to a request, or null for one that is none of ours.
   * @param {Request} request
   * @returns {Promise<Response> | null}
   */
  to(request) {
    const url = new URL(request.url);
    const { root } = this.store;
    if (request.method !== "GET" || !request.url.startsWith(root)) return null;
    const path = this.store.pathOf(url);
    const version = url.searchParams.get("v");
    if (version !== null) return this.ofVersion(path, version, request);
    if (request.mode === "navigate") return this.page(this.#pageAt(path), request);
    if (!(path in this.store.build.files)) return null;
    if (NAMED_BY_CONTENT.test(path)) {
      return this.ofVersion(path, this.store.hashOf(path) ?? "", request);
    }
    return this.latest(path, request).then((found) => found ?? Response.error());
  }

  /** The file behind an address as a web host reads it. @param {string} path */
  #pageAt(path) {
    if (path === "" || path.endsWith("/")) return `${path}index.html`;
    return path in this.store.build.files ? path : this.#withEnding(path);
  }

  /** @param {string} path */
  #withEnding(path) {
    return `${path}.html` in this.store.build.files ? `${path}.html` : path;
  }

  /**
   * A file whose address says what its bytes must be. Others are not handed on, wherever they come
   * from: half of a site may have changed under an open page.
   * @param {string} path
   * @param {string} version the beginning of its hash
   * @param {Request} request
   */
  async ofVersion(path, version, request) {
    const hash = this.store.hashOf(path);
    const whole = hash?.startsWith(version) ? hash : version;
    const kept = await this.store.get(path, whole);
    if (kept !== undefined) return kept;
    const response = await this.store.outside.fetch(request, { cache: "no-cache" });
    if (!response.ok) return response;
    try {
      return (await this.store.put(path, response, version)).copy;
    } catch (error) {
      if (error instanceof WrongBytesError) return Response.error();
      throw error;
    }
  }

  /** @param {string} path @param {Request} request */
  async page(path, request) {
    const found = await this.latest(path, request);
    return found ?? (await this.#apology(path)) ?? Response.error();
  }

  /** The page that says what is missing, in the language of the page. @param {string} path */
  async #apology(path) {
    const folder = path.slice(0, path.indexOf("/") + 1);
    const own = `${folder}offline.html`;
    const apology = this.store.hashOf(own) === undefined ? "offline.html" : own;
    const found = await this.store.get(apology, this.store.hashOf(apology));
    // Led there, so that what the page asks for is found from where it stands.
    return found && Response.redirect(this.store.root + apology);
  }

  /**
   * What the network says; what is kept only where it says nothing.
   * @param {string} path
   * @param {Request} request
   * @returns {Promise<Response | undefined>}
   */
  async latest(path, request) {
    const asked = this.#ask(path, request).catch(() => undefined);
    const answer = await Promise.race([asked, this.#patience()]);
    if (answer !== undefined && answer.status < 500) return answer;
    const kept = await this.kept(path);
    return kept ?? answer ?? asked;
  }

  /** @returns {Promise<undefined>} */
  #patience() {
    return new Promise((done) => setTimeout(done, this.patience_ms));
  }

  /** @param {string} path @param {Request} request */
  async #ask(path, request) {
    const response = await this.store.outside.fetch(request, { cache: "no-cache" });
    if (response.ok && !response.redirected) this.later(this.#keep(path, response.clone()));
    else if (response.status === 404) this.later(this.store.writeNote(`latest ${path}`, GONE));
    return response;
  }

  /** @param {string} path @param {Response} response */
  async #keep(path, response) {
    const { hash } = await this.store.put(path, response);
    const as_known = hash === this.store.hashOf(path);
    await this.store.writeNote(`latest ${path}`, as_known ? null : hash);
  }

  /** What the network last gave, or what this build has. @param {string} path */
  async kept(path) {
    const latest = await this.store.note(`latest ${path}`);
    return this.store.get(path, latest ?? this.store.hashOf(path));
  }
}
