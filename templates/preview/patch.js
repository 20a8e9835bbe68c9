// Brings an open page to what is saved by changing what changed alone, so that it stays as its reader has it: scrolled,
// ticked, opened. Loaded before the page's own scripts, it knows the page as it was sent and leaves alone what they did.
globalThis.pagePatch = (() => {
  /** What a script of the page holds on to: such parts are not put in or taken out behind its back. */
  const HELD =
    'script, style, input, button, select, dialog, figure, .step, .net, [data-enlarge], [data-search]';
  let last = document.documentElement.cloneNode(true);
  let shown = new Map();
  pair(last, document.documentElement, shown);

  function pair(was, now, into) {
    into.set(was, now);
    for (const [index, child] of [...was.childNodes].entries()) pair(child, now.childNodes[index], into);
  }

  /** Another part that is equal to one that is shown stands for it from now on. */
  function keep(was, will, into) {
    into.set(will, shown.get(was));
    for (const [index, child] of [...was.childNodes].entries()) keep(child, will.childNodes[index], into);
  }

  const isElement = ({ nodeType }) => nodeType === Node.ELEMENT_NODE;
  const isTurn = (node) => isElement(node) && node.matches('.turn');
  const isOurs = (node) => isElement(node) && node.matches('[data-version]');
  const isSame = (was, will) => was.isEqualNode(will) || (isOurs(was) && isOurs(will));
  const isAlike = (was, will) => was.nodeName === will.nodeName && was.id === will.id;

  function isHeld(node, parent) {
    return (
      isElement(node) && !parent.closest('svg') && (node.matches(HELD) || node.querySelector(HELD) !== null)
    );
  }

  /** The changes that lead from one to the other, none of them done yet; throws where the page must be loaded anew. */
  function plan(was, will, now, into, changes) {
    into.set(will, now);
    if (isSame(was, will)) return keep(was, will, into);
    if (isTurn(was) && isTurn(will)) return planTurn(will, now, into, changes);
    if (!isElement(was)) return changes.push(() => (now.data = will.data));
    if (was.matches('script:not([type="application/ld+json"]), noscript')) throw new Error('loaded anew');
    for (const name of new Set([...was.getAttributeNames(), ...will.getAttributeNames()])) {
      const value = will.getAttribute(name);
      if (value === was.getAttribute(name)) continue;
      if (name.startsWith('data-')) throw new Error('loaded anew');
      changes.push(() => (value === null ? now.removeAttribute(name) : now.setAttribute(name, value)));
    }
    planChildren([...was.childNodes], [...will.childNodes], now, into, changes);
  }

  /** The folding piece is read once by its script, which is told of another in its place. */
  function planTurn(will, now, into, changes) {
    const copy = document.importNode(will, true);
    pair(will, copy, into);
    changes.push(() => {
      now.replaceWith(copy);
      copy.dispatchEvent(new Event('sheetwright:come', { bubbles: true }));
    });
  }

  function planChildren(before, after, parent, into, changes) {
    const most = Math.min(before.length, after.length);
    let start = 0;
    while (start < most && isSame(before[start], after[start])) start += 1;
    let end = 0;
    while (end < most - start && isSame(before.at(-1 - end), after.at(-1 - end))) end += 1;
    for (let index = 0; index < start; index += 1) keep(before[index], after[index], into);
    for (let index = 1; index <= end; index += 1) keep(before.at(-index), after.at(-index), into);
    const gone = before.slice(start, before.length - end);
    const come = after.slice(start, after.length - end);
    if (gone.length === come.length && gone.every((node, index) => isAlike(node, come[index]))) {
      for (const [index, node] of gone.entries()) plan(node, come[index], shown.get(node), into, changes);
      return;
    }
    if ([...gone, ...come].some((node) => isHeld(node, parent))) throw new Error('loaded anew');
    const next = shown.get(before[before.length - end]) ?? null;
    changes.push(() => {
      for (const node of gone) shown.get(node).remove();
    });
    for (const node of come) {
      const copy = document.importNode(node, true);
      pair(node, copy, into);
      changes.push(() => (next?.parentNode ?? parent).insertBefore(copy, next));
    }
  }

  /** Whether the page is now as this HTML has it; false, and nothing done, where it must be loaded anew. */
  return (html) => {
    const will = new DOMParser().parseFromString(html, 'text/html').documentElement;
    const into = new Map();
    const changes = [];
    try {
      plan(last, will, document.documentElement, into, changes);
    } catch {
      return false;
    }
    for (const change of changes) change();
    [last, shown] = [will, into];
    return true;
  };
})();
