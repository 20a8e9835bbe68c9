// Turns and folds the pictures of folded pieces. Without this script a still picture stands in each one's place.
(() => {
  const { foldPaper, sharesAfter, USUAL_LOOK } = globalThis.sheetwright.paper;
  /** Degrees: how far one press of a key turns a shape. */
  const PRESS = 15;
  const DEGREES_A_PIXEL = 0.5;
  /** How far one press of a key moves the folding, in steps. */
  const NUDGE = 0.25;
  /** A step takes this long when played, and holds still for its last part. */
  const [MILLISECONDS_A_STEP, MOVING] = [1400, 0.8];
  const LONGEST_FRAME = 100;
  const WAYS = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };
  const STEPS_OF_KEYS = { ArrowRight: NUDGE, ArrowUp: NUDGE, ArrowLeft: -NUDGE, ArrowDown: -NUDGE };
  const reduced = matchMedia('(prefers-reduced-motion: reduce)');

  /** One figure: how far it is folded, how it is seen, and what changes either. */
  class Turn {
    #picture = new globalThis.sheetwright.Picture();
    #look = { ...USUAL_LOOK };
    #asked = false;
    #folded = { done: Number.NaN, shapes: [] };
    #words;

    constructor(figure) {
      this.figure = figure;
      const { sheets, steps, said } = JSON.parse(figure.querySelector('script').textContent);
      this.sheets = sheets;
      this.steps = steps;
      this.said = said;
      this.done = steps;
      this.frame = figure.querySelector('.turn-picture');
      this.slider = figure.querySelector('input');
      this.step = figure.querySelector('.turn-step');
      this.playing = new Playing(this, figure.querySelector('.turn-play'));
      this.#standIn();
      this.#listen();
      this.show();
    }

    /** Takes the still picture's place. */
    #standIn() {
      const { frame, figure } = this;
      frame.replaceChildren(this.#picture.element);
      frame.tabIndex = 0;
      frame.setAttribute('role', 'group');
      frame.setAttribute('aria-label', frame.dataset.name);
      frame.setAttribute('aria-describedby', figure.querySelector('.turn-hint').id);
      figure.querySelector('.turn-controls').hidden = false;
    }

    #listen() {
      const { slider, frame, figure } = this;
      slider.addEventListener('input', () => this.foldByHand(slider.valueAsNumber));
      slider.addEventListener('keydown', (event) => this.#slideByKey(event));
      frame.addEventListener('keydown', (event) => this.#turnByKey(event));
      for (const button of figure.querySelectorAll('[data-turn]')) {
        button.addEventListener('click', () => this.#turnOnce(button.dataset.turn));
      }
      frame.addEventListener('pointerdown', (event) => this.#takeHold(event));
    }

    foldByHand(done) {
      this.playing.stop();
      this.step.removeAttribute('aria-live');
      this.foldTo(done);
    }

    foldTo(done) {
      this.done = Math.min(this.steps, Math.max(0, done));
      this.show();
    }

    #slideByKey(event) {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      const { key } = event;
      const wanted = {
        PageUp: Math.floor(this.done) + 1,
        PageDown: Math.ceil(this.done) - 1,
        ...(key in STEPS_OF_KEYS && { [key]: this.done + STEPS_OF_KEYS[key] }),
      }[key];
      if (wanted === undefined) return;
      event.preventDefault();
      this.foldByHand(wanted);
    }

    #turnByKey(event) {
      if (event.altKey || event.ctrlKey || event.metaKey || event.target !== this.frame) return;
      const way = event.key === 'Home' ? 'back' : event.key.replace(/^Arrow/u, '').toLowerCase();
      if (way !== 'back' && !(event.key.startsWith('Arrow') && way in WAYS)) return;
      event.preventDefault();
      this.#turnOnce(way);
    }

    #turnOnce(way) {
      if (way === 'back') this.#look = { ...USUAL_LOOK };
      else this.#turnBy(...WAYS[way].map((presses) => presses * PRESS));
      this.show();
    }

    #turnBy(turn, tilt) {
      this.#look.turn = (this.#look.turn + turn) % 360;
      this.#look.tilt = Math.min(90, Math.max(-90, this.#look.tilt + tilt));
    }

    /** Dragged, until the pointer is let go; undone when the browser takes it to scroll the page. */
    #takeHold(event) {
      if (event.button !== 0) return;
      const { frame } = this;
      const before = { ...this.#look };
      const letGo = new AbortController();
      let { clientX: x, clientY: y } = event;
      const on = (name, act) => {
        const own = (moved) => moved.pointerId === event.pointerId && act(moved);
        frame.addEventListener(name, own, { signal: letGo.signal });
      };
      const end = () => {
        frame.classList.remove('held');
        letGo.abort();
      };
      frame.setPointerCapture(event.pointerId);
      frame.classList.add('held');
      on('pointermove', ({ clientX, clientY }) => {
        this.#turnBy((clientX - x) * DEGREES_A_PIXEL, (clientY - y) * DEGREES_A_PIXEL);
        [x, y] = [clientX, clientY];
        this.show();
      });
      on('pointerup', end);
      on('pointercancel', () => {
        end();
        this.#look = before;
        this.show();
      });
    }

    /** Draws before the next frame, however often it is asked to. */
    show() {
      if (this.#asked) return;
      this.#asked = true;
      requestAnimationFrame(() => {
        this.#asked = false;
        this.#draw();
      });
    }

    #draw() {
      if (this.#folded.done !== this.done) {
        const shapes = this.sheets.map((sheet) => foldPaper(sheet, sharesAfter(this.done, sheet)));
        this.#folded = { done: this.done, shapes };
        this.slider.value = this.done;
        this.#say();
      }
      this.#picture.draw(this.#folded.shapes, this.#look);
    }

    /** Says how far it is folded, only when there is something new to say. */
    #say() {
      const { done, steps, figure, step } = this;
      const end = done === 0 ? 'flat' : done === steps ? 'folded' : undefined;
      const words = end ? step.dataset[end] : this.said[Math.ceil(done) - 1];
      if (words === this.#words) return;
      this.#words = words;
      step.textContent = words;
      this.slider.setAttribute('aria-valuetext', words);
      this.#picture.element.setAttribute('aria-label', end ? figure.dataset[end] : words);
    }
  }

  /** The button that plays the folding; where motion is unwelcome it goes from step to step instead. */
  class Playing {
    #turn;
    #button;
    #frame;

    constructor(turn, button) {
      this.#turn = turn;
      this.#button = button;
      button.addEventListener('click', () => this.#press());
      reduced.addEventListener('change', () => this.stop());
      this.#name();
    }

    stop() {
      cancelAnimationFrame(this.#frame);
      this.#frame = undefined;
      this.#name();
    }

    #press() {
      const turn = this.#turn;
      if (this.#frame !== undefined) {
        this.stop();
        return;
      }
      // Said while the focus is on this button; from the slider its own value is heard.
      turn.step.setAttribute('aria-live', 'polite');
      const atEnd = turn.done === turn.steps;
      if (reduced.matches) turn.foldTo(atEnd ? 0 : Math.floor(turn.done) + 1);
      else this.#play(atEnd ? 0 : turn.done);
    }

    #play(from) {
      let clock = clockAt(from);
      let last;
      this.#turn.done = from;
      const tick = (now) => {
        // A page that was out of sight goes on from where it was.
        clock += Math.min(now - (last ?? now), LONGEST_FRAME) / MILLISECONDS_A_STEP;
        last = now;
        this.#turn.foldTo(doneAt(clock));
        if (this.#turn.done >= this.#turn.steps) this.stop();
        else this.#frame = requestAnimationFrame(tick);
      };
      this.#frame = requestAnimationFrame(tick);
      this.#name();
    }

    #name() {
      const { play, pause, next } = this.#turn.figure.dataset;
      this.#button.textContent = reduced.matches ? next : this.#frame === undefined ? play : pause;
    }
  }

  /** How much of the folding is done after some steps' time: each eases in and out, then holds. */
  function doneAt(clock) {
    const share = Math.min(1, (clock % 1) / MOVING);
    return Math.floor(clock) + share * share * (3 - 2 * share);
  }

  /** The other way round, so that playing goes on from where it is. */
  function clockAt(done) {
    const share = 0.5 - Math.sin(Math.asin(1 - 2 * (done % 1)) / 3);
    return Math.floor(done) + share * MOVING;
  }

  // Whatever order the scripts of a page stand in, all have run by then.
  document.addEventListener('DOMContentLoaded', () => {
    for (const figure of document.querySelectorAll('.turn')) new Turn(figure);
  });
  // A preview puts another in the place of one that changed.
  document.addEventListener('sheetwright:come', ({ target }) => new Turn(target));
})();
