// A tap or Enter shows a drawing as large as there is room, and larger: it can be moved about. Without this script it
// stands at its own size and can be scrolled.
(() => {
  const figures = [...document.querySelectorAll('figure.drawing, .net .drawn')].filter(
    (figure) => figure.querySelector('svg') && !figure.parentElement.closest('figure.drawing'),
  );
  const words = document.querySelector('.sheet')?.dataset;
  if (!words?.enlarge || figures.length === 0 || !globalThis.HTMLDialogElement) return;
  const dialog = document.createElement('dialog');
  dialog.className = 'enlarged';
  const close = Object.assign(document.createElement('button'), {
    type: 'button',
    className: 'button',
    textContent: words.close,
  });
  const room = Object.assign(document.createElement('div'), { className: 'enlarged-room', tabIndex: 0 });
  dialog.append(close, room);
  document.body.append(dialog);
  close.addEventListener('click', () => dialog.close());
  dialog.addEventListener('click', ({ target }) => {
    if (target === dialog) dialog.close();
  });
  dialog.addEventListener('close', () => room.replaceChildren());

  for (const figure of figures) {
    const button = Object.assign(document.createElement('button'), {
      type: 'button',
      className: 'enlarge',
      textContent: words.enlarge,
    });
    const show = () => {
      const drawing = figure.querySelector('svg').cloneNode(true);
      // Two drawings of one page never share a name.
      for (const named of drawing.querySelectorAll('[id]')) named.removeAttribute('id');
      room.replaceChildren(drawing);
      dialog.setAttribute(
        'aria-label',
        drawing.getAttribute('aria-label') ?? drawing.querySelector('title')?.textContent ?? words.enlarge,
      );
      dialog.showModal();
    };
    button.addEventListener('click', show);
    figure.querySelector('svg').addEventListener('click', show);
    if (figure.localName === 'figure') figure.append(button);
    else figure.after(button);
  }
})();
