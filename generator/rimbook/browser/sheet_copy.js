/** Copying text, also where a browser keeps its clipboard from pages, as it does without https. */

/**
 * @param {string} text
 * @returns {Promise<boolean>} whether it was copied
 */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copySelected(text);
  }
}

/** @param {string} text */
function copySelected(text) {
  const field = document.createElement("textarea");
  const before = document.activeElement;
  field.value = text;
  field.className = "rb-copying";
  document.body.append(field);
  field.select();
  const isCopied = document.execCommand("copy");
  field.remove();
  if (before instanceof HTMLElement) before.focus();
  return isCopied;
}
