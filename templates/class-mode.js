// At the table: one step a screen, large, the screen kept awake where the browser can, and timers for what dries.
(() => {
  const bar = document.querySelector('.class-bar');
  const open = document.querySelector('.class-open');
  const steps = [...document.querySelectorAll('.step')];
  if (!bar || steps.length === 0) return;
  const place = bar.querySelector('[role="status"]');
  const buttons = [...bar.querySelectorAll('[data-go]')];
  const close = bar.querySelector('.class-close');
  let at;
  let awake;

  function show(step) {
    at = Math.min(Math.max(step, 0), steps.length - 1);
    for (const [index, each] of steps.entries()) each.toggleAttribute('data-now', index === at);
    place.textContent = place.dataset.words.replace('{step}', at + 1).replace('{all}', steps.length);
    const held = document.activeElement;
    for (const button of buttons)
      button.disabled = at + Number(button.dataset.go) !== clamp(at + Number(button.dataset.go));
    if (held?.disabled) focusBar();
    scrollTo(0, 0);
  }

  /** The keyboard stays on the bar: on the way onward, after the last step on the way out. */
  const focusBar = () => {
    const onward = buttons.at(-1);
    (onward.disabled ? close : onward).focus();
  };

  const clamp = (step) => Math.min(Math.max(step, 0), steps.length - 1);

  /** Not every browser can, and a phone low on power may refuse. */
  async function stayAwake() {
    try {
      awake = await navigator.wakeLock?.request('screen');
    } catch {
      awake = undefined;
    }
  }

  function enter() {
    document.documentElement.classList.add('in-class');
    bar.hidden = false;
    const undone = steps.findIndex((step) => !step.classList.contains('ticked'));
    show(Math.max(undone, 0));
    focusBar();
    stayAwake();
  }

  function leave() {
    document.documentElement.classList.remove('in-class');
    bar.hidden = true;
    awake?.release();
    awake = undefined;
    const step = steps[at];
    at = undefined;
    step.scrollIntoView();
    open.focus({ preventScroll: true });
  }

  open.hidden = false;
  open.addEventListener('click', enter);
  close.addEventListener('click', leave);
  for (const button of buttons) button.addEventListener('click', () => show(at + Number(button.dataset.go)));
  addEventListener('keydown', (event) => {
    if (at === undefined || event.defaultPrevented || document.querySelector('dialog[open]')) return;
    if (event.key === 'Escape') leave();
    if (event.target.matches?.('input, .turn-picture')) return;
    if (event.key === 'ArrowRight' || event.key === 'PageDown') show(at + 1);
    if (event.key === 'ArrowLeft' || event.key === 'PageUp') show(at - 1);
  });
  // A screen that was switched off has let go.
  document.addEventListener('visibilitychange', () => {
    if (at !== undefined && document.visibilityState === 'visible') stayAwake();
  });
})();

(() => {
  for (const button of document.querySelectorAll('.timer')) {
    const words = button.textContent;
    let tick;
    button.hidden = false;
    button.setAttribute('aria-live', 'off');
    button.addEventListener('click', () => {
      if (tick !== undefined) {
        stop(words);
        return;
      }
      const end = Date.now() + Number(button.dataset.minutes) * 60_000;
      const show = () => {
        const left = Math.ceil((end - Date.now()) / 1000);
        if (left <= 0) stop(button.dataset.over);
        else button.textContent = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`;
      };
      tick = setInterval(show, 250);
      show();
    });

    function stop(say) {
      clearInterval(tick);
      tick = undefined;
      button.setAttribute('aria-live', 'assertive');
      button.textContent = say;
      if (say !== words) navigator.vibrate?.(400);
    }
  }
})();
