// Hands a project on: by the phone's own way of sharing, by copying, by a picture of the code. Copies the text that goes with a link. Without this script it can be selected and copied by hand.
(() => {
  for (const button of document.querySelectorAll('[data-copies]')) {
    const field = document.getElementById(button.dataset.copies);
    const status = button.parentElement.querySelector('[role="status"]');
    field.addEventListener('focus', () => field.select?.());
    button.hidden = false;
    button.addEventListener('click', async () => {
      status.textContent = '';
      status.textContent = (await copied(field)) ? button.dataset.done : button.dataset.failed;
    });
  }

  async function copied(field) {
    try {
      await navigator.clipboard.writeText(field.value ?? field.textContent);
      return true;
    } catch {
      // Not every browser lets a page opened from disk have the clipboard; the older way needs the text selected.
      if (field.select) field.select();
      else getSelection().selectAllChildren(field);
      return document.execCommand('copy');
    }
  }

  const send = document.querySelector('.send');
  if (send && navigator.share) {
    send.parentElement.hidden = false;
    send.addEventListener('click', async () => {
      const { title, url } = send.dataset;
      // Somebody who thinks better of it has not failed.
      await navigator.share({ title, url }).catch(() => undefined);
    });
  }

  const code = document.querySelector('.code svg');
  const drawn = code && `data:image/svg+xml,${encodeURIComponent(code.outerHTML)}`;
  offer('.save-svg', () => drawn);
  offer('.save-png', async () => {
    const image = new Image();
    image.src = drawn;
    await image.decode();
    /** Pixels: sharp on a poster. */
    const side = 1200;
    const canvas = Object.assign(document.createElement('canvas'), { width: side, height: side });
    canvas.getContext('2d').drawImage(image, 0, 0, side, side);
    return canvas.toDataURL('image/png');
  });

  /** A button that saves the code as a file. */
  function offer(selector, make) {
    const save = document.querySelector(selector);
    if (!save || !code) return;
    save.parentElement.hidden = false;
    save.addEventListener('click', async () => {
      const link = { href: await make(), download: save.dataset.name };
      Object.assign(document.createElement('a'), link).click();
    });
  }
})();
