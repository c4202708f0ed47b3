/** Building elements. Text from data only ever becomes text. */

/** @typedef {Node | string | null | undefined | false} Child */

/**
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Record<string, string | boolean>} [attributes] `true` writes an empty one, `false` none
 * @param {...Child} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function el(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== false) element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...present(children));
  return element;
}

/**
 * @param {Element} element
 * @param {...Child} children
 */
export function fill(element, ...children) {
  element.replaceChildren(...present(children));
}

/**
 * All elements that a selector finds, of one class.
 * @template {Element} Kind
 * @param {ParentNode} root
 * @param {string} selector
 * @param {abstract new (...given: any) => Kind} kind
 * @returns {Kind[]}
 */
export function all(root, selector, kind) {
  return [...root.querySelectorAll(selector)]
    .filter((found) => found instanceof kind)
    .map((found) => /** @type {Kind} */ (found));
}

/**
 * Whether a key pressed there is meant as text.
 * @param {EventTarget | null} target
 */
export function isTyping(target) {
  return (
    target instanceof HTMLElement && (target.isContentEditable || target.matches("input, select, textarea"))
  );
}

/**
 * @param {readonly Child[]} children
 * @returns {(Node | string)[]}
 */
function present(children) {
  return children
    .filter((child) => child !== null && child !== undefined && child !== false && child !== "")
    .map((child) => /** @type {Node | string} */ (child));
}
