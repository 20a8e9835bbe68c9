/**
 * A script for the page, in which only ours run. A browser writes a drawing's text alternative into a PDF only when the
 * drawing holds text: to one without, this gives a space that cannot be seen. Pictures keep theirs by themselves.
 */
export const KEEP_ALTERNATIVES = `for (const drawing of document.querySelectorAll('svg[role="img"]')) {
  if ([...drawing.querySelectorAll('text')].some(({ textContent }) => /\\S|\\u00a0/.test(textContent))) continue;
  const space = document.createElementNS('http://www.w3.org/2000/svg', 'text');
  space.setAttribute('x', '50%');
  space.setAttribute('y', '50%');
  space.setAttribute('font-size', '1');
  space.textContent = '\\u00a0';
  drawing.append(space);
}`;
