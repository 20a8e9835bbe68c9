// Copies the text that goes with a link. Without this script it can be selected and copied by hand.
(() => {
  for (const button of document.querySelectorAll('[data-copies]')) {
    const field = document.getElementById(button.dataset.copies);
    const status = button.parentElement.querySelector('[role="status"]');
    field.addEventListener('focus', () => field.select());
    button.hidden = false;
    button.addEventListener('click', async () => {
      status.textContent = '';
      status.textContent = (await copied(field)) ? button.dataset.done : button.dataset.failed;
    });
  }

  async function copied(field) {
    try {
      await navigator.clipboard.writeText(field.value);
      return true;
    } catch {
      // Not every browser lets a page opened from disk have the clipboard; the older way needs the text selected.
      field.select();
      return document.execCommand('copy');
    }
  }
})();
