/**
 * What is kept on the device: every file under its address and the hash of its bytes.
 *
 * Because the hash is part of the name, an old page can never be given a new script, nor a new page
 * an old one: what is found is what was asked for, or nothing.
 */

/**
 * @typedef {object} Build  what the site is made of, written by the generator
 * @property {string} version
 * @property {number} download  bytes to fetch for all of it, as a web host sends it
 * @property {string[]} core  what every page needs
 * @property {Record<string, [hash: string, bytes: number]>} files  by address from the site's root
 *
 * @typedef {object} Outside  what the browser lends
 * @property {CacheStorage} caches
 * @property {(request: Request | string, how?: RequestInit) => Promise<Response>} fetch
 * @property {SubtleCrypto} subtle
 */

const HASH_LENGTH = 16;
const AT_A_TIME = 4;

/** The bytes of a file are not those that the site says it has. */
export class WrongBytesError extends Error {}

export class Store {
  /**
   * @param {string} root address of the site, with a slash at its end
   * @param {Build} build
   * @param {Outside} outside
   */
  constructor(root, build, outside) {
    this.root = root;
    this.build = build;
    this.outside = outside;
  }

  open() {
    return this.outside.caches.open(`pencilwood ${this.root}`);
  }

  /** @param {string} path @param {string} hash */
  key(path, hash) {
    return `${this.root}${path}?v=${hash}`;
  }

  /** @param {string} path @returns {string | undefined} */
  hashOf(path) {
    return this.build.files[path]?.[0];
  }

  /** @param {string} path @param {string | undefined} hash @returns {Promise<Response | undefined>} */
  async get(path, hash) {
    return hash === undefined ? undefined : (await this.open()).match(this.key(path, hash));
  }

  /**
   * Keeps what a response holds.
   * @param {string} path
   * @param {Response} response
   * @param {string} [wanted] its hash, or the beginning of it; anything else is not kept
   * @returns {Promise<{hash: string, copy: Response}>}
   */
  async put(path, response, wanted = "") {
    const bytes = await response.arrayBuffer();
    const hash = await this.digest(bytes);
    if (!hash.startsWith(wanted)) throw new WrongBytesError(path);
    // A fresh one: a browser refuses to show a page that a redirect has led to.
    const type = response.headers.get("content-type") ?? "";
    const copy = new Response(bytes, { headers: { "content-type": type } });
    await (await this.open()).put(this.key(path, hash), copy.clone());
    return { hash, copy };
  }

  /** @param {ArrayBuffer} bytes */
  async digest(bytes) {
    const digest = new Uint8Array(await this.outside.subtle.digest("SHA-256", bytes));
    const letters = [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
    return letters.slice(0, HASH_LENGTH);
  }

  /** Fetches a file of this build, past a browser's own cache if that has another one. @param {string} path */
  async fetchRight(path) {
    const wanted = this.hashOf(path);
    for (const cache of /** @type {RequestCache[]} */ (["default", "reload"])) {
      const response = await this.outside.fetch(this.root + path, { cache });
      if (!response.ok) throw new Error(`${path}: ${response.status}`);
      try {
        return await this.put(path, response, wanted);
      } catch (error) {
        if (!(error instanceof WrongBytesError) || cache === "reload") throw error;
      }
    }
    throw new WrongBytesError(path);
  }

  /** The files of this build that are here. @returns {Promise<Set<string>>} */
  async here() {
    const keys = new Set((await (await this.open()).keys()).map((one) => one.url));
    const all = Object.entries(this.build.files);
    return new Set(all.filter(([path, [hash]]) => keys.has(this.key(path, hash))).map(([path]) => path));
  }

  /**
   * Fetches what is missing; what came before a failure stays, and is not fetched again.
   * @param {Iterable<string>} paths
   * @param {() => void} [told] after each file
   */
  async fetchMissing(paths, told = () => {}) {
    const here = await this.here();
    const missing = [...paths].filter((path) => !here.has(path));
    const line = async () => {
      for (let path = missing.pop(); path !== undefined; path = missing.pop()) {
        await this.fetchRight(path);
        told();
      }
    };
    const lines = Array.from({ length: AT_A_TIME }, line);
    const ended = await Promise.allSettled(lines);
    const failed = ended.find((one) => one.status === "rejected");
    if (failed !== undefined) throw failed.reason;
  }

  /** Whatever was kept of a file, in this build or an earlier one. @returns {Promise<Set<string>>} */
  async everKept() {
    const keys = (await (await this.open()).keys()).map((one) => new URL(one.url));
    const kept = keys.filter((one) => one.searchParams.has("v")).map((one) => this.pathOf(one));
    return new Set(kept.filter((path) => path in this.build.files));
  }

  /** @param {URL} url @returns {string} */
  pathOf(url) {
    return decodeURI(url.origin + url.pathname).slice(decodeURI(this.root).length);
  }

  /** A small note of our own, such as what the reader asked for. @param {string} name */
  async note(name) {
    const found = await (await this.open()).match(`${this.root}?note=${encodeURIComponent(name)}`);
    return found?.text();
  }

  /** @param {string} name @param {string | null} text null takes the note away */
  async writeNote(name, text) {
    const key = `${this.root}?note=${encodeURIComponent(name)}`;
    const cache = await this.open();
    if (text === null) await cache.delete(key);
    else await cache.put(key, new Response(text));
  }

  /**
   * Lets go of what no build needs. What the last build needed stays for one more turn, for pages
   * of it that are still open.
   */
  async clearOld() {
    const cache = await this.open();
    const valid = new Set(Object.entries(this.build.files).map(([path, [hash]]) => this.key(path, hash)));
    const leaving = new Set(JSON.parse((await this.note("leaving")) ?? "[]"));
    const next = [];
    for (const { url } of await cache.keys()) {
      const asked = new URL(url).searchParams;
      if (asked.get("note")?.startsWith("latest ")) await cache.delete(url);
      if (!asked.has("v") || valid.has(url)) continue;
      if (leaving.has(url)) await cache.delete(url);
      else next.push(url);
    }
    await this.writeNote("leaving", JSON.stringify(next));
  }
}
