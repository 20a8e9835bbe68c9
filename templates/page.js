// What a sheet can do beyond being read: remember ticks on this device, and show one system of measurement alone.
// Without this script every tick box still works for as long as the page is open.

(() => {
  const sheet = document.querySelector('.sheet');
  const memory = `sheetwright/${sheet?.dataset.ticks}`;

  /** A browser may forbid keeping anything; then nothing is kept. */
  function recall(key) {
    try {
      return JSON.parse(localStorage.getItem(key) ?? 'null');
    } catch {
      return null;
    }
  }

  function keep(key, value) {
    try {
      localStorage.setItem(key, JSON.stringify(value));
    } catch {
      // Nothing to be done, and nothing lost but the memory.
    }
  }

  function rememberTicks() {
    const boxes = [...document.querySelectorAll('[data-tick]')];
    const ticked = new Set(recall(memory) ?? []);
    const show = (box) => box.closest('li')?.classList.toggle('ticked', box.checked);
    for (const box of boxes) {
      box.checked = ticked.has(box.id);
      show(box);
      box.addEventListener('change', () => {
        show(box);
        keep(
          memory,
          boxes.filter(({ checked }) => checked).map(({ id }) => id),
        );
      });
    }
  }

  function switchUnits() {
    const group = document.querySelector('.units');
    if (!group) return;
    const choose = (value) => {
      document.documentElement.dataset.units = value;
    };
    const known = [...group.querySelectorAll('input')];
    const chosen = known.find(({ value }) => value === recall('sheetwright/units'));
    if (chosen) {
      chosen.checked = true;
      choose(chosen.value);
    }
    group.addEventListener('change', ({ target }) => {
      choose(target.value);
      keep('sheetwright/units', target.value);
    });
    group.hidden = false;
  }

  /** Says how many steps are done, and begins anew on request. */
  function tellProgress() {
    const line = document.querySelector('.progress');
    const boxes = [...document.querySelectorAll('[data-tick="step"]')];
    if (!line || boxes.length === 0) return;
    const status = line.querySelector('[role="status"]');
    const reset = line.querySelector('.reset');
    const all = [...document.querySelectorAll('[data-tick]')];
    const tell = () => {
      const done = boxes.filter(({ checked }) => checked).length;
      status.textContent = status.dataset.words.replace('{done}', done).replace('{all}', boxes.length);
      reset.hidden = all.every(({ checked }) => !checked);
    };
    for (const box of all) box.addEventListener('change', tell);
    reset.addEventListener('click', () => {
      for (const box of all.filter(({ checked }) => checked)) box.click();
      boxes[0].focus();
    });
    line.hidden = false;
    tell();
  }

  rememberTicks();
  tellProgress();
  switchUnits();
})();
