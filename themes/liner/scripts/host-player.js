/** The player of another host, made only after the reader asked for it. */

/**
 * @param {DOMStringMap} told `kind`, `address` and `name` of the player
 * @param {number} seconds
 */
export function makePlayer({ kind = "", address = "", name = "" }, seconds) {
  const source = addressAt(address, seconds);
  return kind === "frame" ? makeFrame(source, name) : makeMedia(kind, source, name, seconds);
}

/**
 * @param {string} address with `{seconds}` where the moment belongs
 * @param {number} seconds
 */
export function addressAt(address, seconds) {
  return address.replaceAll("{seconds}", `${Math.floor(seconds)}`);
}

/**
 * @param {string} source
 * @param {string} name
 */
function makeFrame(source, name) {
  const frame = document.createElement("iframe");
  // Scripts and the host's own storage: no windows, no forms, no leading the page elsewhere. A
  // frame from this very host could lift its sandbox, so that it gets no storage.
  const isOurs = new URL(source, location.href).origin === location.origin;
  frame.setAttribute("sandbox", `allow-scripts${isOurs ? "" : " allow-same-origin"}`);
  frame.allow = "autoplay; fullscreen";
  // Hosts want to know which site shows their player; which page of it stays here.
  frame.referrerPolicy = "strict-origin";
  frame.loading = "lazy";
  frame.title = name;
  frame.src = source;
  return frame;
}

/**
 * @param {string} kind
 * @param {string} source
 * @param {string} name
 * @param {number} seconds
 */
function makeMedia(kind, source, name, seconds) {
  const media = /** @type {HTMLMediaElement} */ (document.createElement(kind));
  media.controls = true;
  media.setAttribute("aria-label", name);
  media.src = source;
  media.currentTime = seconds;
  return media;
}
