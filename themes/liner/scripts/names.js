/** Names in HTML that scripts write. */

/** @param {string} text */
export const escape = (text) =>
  text.replace(/[&<>"]/g, (sign) => `&#${/** @type {number} */ (sign.codePointAt(0))};`);

/** A name of any script, which does not disorder what stands around it. @param {string} name */
export const isolated = (name) => name && `<bdi>${escape(name)}</bdi>`;
