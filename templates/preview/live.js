// A previewed page follows what is saved: it comes anew in place, and shows what was found.
(() => {
  const slug = location.pathname.split('/')[1] ?? '';
  const place = `preview-scroll:${location.pathname}`;
  const shown = sessionStorage.getItem(place);
  // Kept until it is back there: a second save may come while the page still loads.
  let returned = shown === null;
  addEventListener('load', () => {
    sessionStorage.removeItem(place);
    if (!returned) scrollTo({ top: Number(shown), behavior: 'instant' });
    returned = true;
  });

  const text = (name, content, className) => {
    const element = document.createElement(name);
    element.textContent = content;
    if (className) element.className = className;
    return element;
  };

  const finding = ({ file, line, column, severity, message, rule, remedy }) => {
    const item = document.createElement('li');
    const where = line === null ? file : `${file}:${line}:${column}`;
    item.append(
      text('strong', severity, severity),
      ' ',
      text('code', where),
      ` ${message} `,
      text('small', rule),
    );
    if (remedy) item.append(text('p', remedy));
    return item;
  };

  const concerns = ({ file }) => slug === '' || !/sheet\.md$/.test(file) || file.split('/').includes(slug);

  const show = ({ findings, drafts, trouble }) => {
    document.getElementById('preview-findings')?.remove();
    const here = findings.filter(concerns);
    const draft = drafts.find((each) => each.slug === slug);
    if (here.length === 0 && !draft && !trouble) return;
    const panel = document.createElement('details');
    panel.id = 'preview-findings';
    panel.open = trouble !== undefined || here.some(({ severity }) => severity === 'error');
    const count = `${here.length} finding${here.length === 1 ? '' : 's'}`;
    panel.append(
      text('summary', [trouble ? 'not made' : count, draft ? 'draft' : ''].filter(Boolean).join(', ')),
    );
    if (trouble) panel.append(text('p', trouble, 'error'));
    const list = document.createElement('ul');
    list.append(...here.map(finding));
    panel.append(list);
    if (draft) {
      panel.append(text('p', 'Not published yet:'));
      const changes = document.createElement('ul');
      changes.append(...draft.changes.map((change) => text('li', change)));
      panel.append(changes);
    }
    document.body.append(panel);
  };

  const { version } = document.currentScript.dataset;
  const events = new EventSource('/-preview/events');
  events.addEventListener('message', async ({ data }) => {
    if (data !== version) {
      if (returned) sessionStorage.setItem(place, String(scrollY));
      location.reload();
      return;
    }
    const state = await fetch('/-preview/state.json');
    show(await state.json());
  });
  addEventListener('pagehide', () => events.close());
})();
