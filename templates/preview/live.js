// A previewed page follows what is saved: it is brought on in place, and shows what was found.
(() => {
  const slug = decodeURIComponent(location.pathname.split('/')[1] ?? '');
  const place = `preview-scroll:${location.pathname}`;
  const shown = sessionStorage.getItem(place);
  // Kept until it is back there: a second save may come while the page still loads.
  let returned = shown === null;
  addEventListener('load', () => {
    sessionStorage.removeItem(place);
    if (!returned) scrollTo({ top: Number(shown), behavior: 'instant' });
    returned = true;
  });

  const make = (name, content, className) => {
    const element = document.createElement(name);
    element.append(...[content].flat().filter((part) => part !== undefined));
    if (className) element.className = className;
    return element;
  };

  /** The line a finding stands in and the carets under it, as a terminal shows them. */
  const quoted = ({ source, carets }) =>
    source === undefined ? undefined : make('pre', [`${source}\n`, make('b', carets)]);

  const where = ({ where: words, editor }) => {
    if (!editor) return make('code', words);
    const link = make('a', make('code', words));
    link.href = editor;
    return link;
  };

  /** What a finding is about on the page: a step, or a piece by the name it has in every list. */
  const placesOf = ({ mark }) => {
    if (!mark) return [];
    if (mark.kind === 'title') return [...document.querySelectorAll('.masthead h1')];
    if (mark.kind === 'step')
      return [...document.querySelectorAll('.step')].slice(mark.number - 1, mark.number);
    const names = [...document.querySelectorAll('.piece-name')];
    const isMeant = ({ firstChild }) =>
      firstChild?.textContent.trim().toLowerCase() === mark.name.toLowerCase();
    return names.filter(isMeant).map((name) => name.closest('tbody tr, table'));
  };

  const finding = (each) => {
    const { severity, message, rule, remedy, notes } = each;
    const [first] = placesOf(each);
    const item = make('li', [
      make('p', [make('strong', severity, severity), ` ${message} `, make('small', `[${rule}]`)]),
      make('p', where(each)),
      quoted(each),
      remedy ? make('p', `To put it right: ${remedy}.`) : undefined,
      ...notes.flatMap((note) => [make('p', [`${note.message}: `, where(note)]), quoted(note)]),
    ]);
    if (first) {
      const button = make('button', 'Show it on the page');
      button.type = 'button';
      // On a phone all that is told would cover it.
      button.addEventListener('click', () => {
        const panel = button.closest('details');
        panel.open = false;
        panel.querySelector('summary').focus({ preventScroll: true });
        first.scrollIntoView({ block: 'center' });
      });
      item.append(button);
    }
    return item;
  };

  /** What stands in a file that projects share comes first: what is wrong there is the cause of all else. */
  const here = (findings) => {
    const shared = findings.filter((each) => each.slug === null);
    return [
      ...shared,
      ...findings.filter((each) => each.slug !== null && (slug === '' || each.slug === slug)),
    ];
  };

  const mark = (findings) => {
    for (const marked of document.querySelectorAll('.preview-mark')) marked.classList.remove('preview-mark');
    for (const each of findings)
      if (each.slug === slug) for (const at of placesOf(each)) at.classList.add('preview-mark');
  };

  const show = ({ findings: all, drafts, trouble }) => {
    const before = document.getElementById('preview-findings');
    const findings = here(all);
    mark(findings);
    const draft = drafts.find((each) => each.slug === slug);
    const kept = before && { open: before.open, said: before.dataset.said, top: before.scrollTop };
    before?.remove();
    if (findings.length === 0 && !draft && !trouble) return;
    const panel = make('details');
    panel.id = 'preview-findings';
    panel.dataset.said = JSON.stringify([findings, trouble]);
    const isGrave = trouble !== undefined || findings.some(({ severity }) => severity === 'error');
    panel.open = kept?.said === panel.dataset.said ? kept.open : isGrave || (kept?.open ?? false);
    const count = `${findings.length} finding${findings.length === 1 ? '' : 's'}`;
    panel.append(make('summary', [trouble ? 'Not made' : count, draft ? ', draft' : '']));
    if (trouble) panel.append(make('p', trouble, 'error'));
    if (findings.length > 0) panel.append(make('ol', findings.map(finding)));
    if (draft) {
      panel.append(make('p', 'Not published yet:'));
      panel.append(
        make(
          'ul',
          draft.changes.map((change) => make('li', change)),
        ),
      );
    }
    document.body.append(panel);
    panel.scrollTop = kept?.top ?? 0;
  };

  const anew = () => {
    if (returned) sessionStorage.setItem(place, String(scrollY));
    location.reload();
  };

  let { version } = document.currentScript.dataset;
  let turn = Promise.resolve();
  const follow = async (latest) => {
    const [state, page] = await Promise.all([
      fetch('/-preview/state.json'),
      latest === version ? undefined : fetch(location.href, { headers: { Accept: 'text/html' } }),
    ]);
    if (page && !globalThis.pagePatch(await page.text())) return anew();
    version = latest;
    show(await state.json());
  };
  const events = new EventSource('/-preview/events');
  events.addEventListener('message', ({ data }) => {
    // One after the other; whatever keeps one from being shown, the page loaded anew has it.
    turn = turn.then(() => follow(data)).catch(anew);
  });
  addEventListener('pagehide', () => events.close());
})();
