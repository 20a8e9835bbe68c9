// The picture of a folded piece: what paper.js says is seen of it, as SVG.
(() => {
  const { paint, placeInPicture, shaded } = globalThis.sheetwright.paper;
  const SVG = 'http://www.w3.org/2000/svg';
  /** The picture's own units, the border it keeps free, and the gap between two sheets. */
  const [WIDTH, HEIGHT, BORDER, GAP] = [600, 420, 8, 24];

  function svg(name, attributes) {
    const made = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    return made;
  }

  /** Draws folded sheets side by side; paths are used again, so that a frame costs no more than its numbers. */
  class Picture {
    element = svg('svg', { class: 'turn-shape', viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: 'img' });
    #used = 0;

    draw(folded, look) {
      const across = folded.reduce((sum, { radius }) => sum + 2 * radius, 0);
      const tallest = Math.max(...folded.map(({ radius }) => 2 * radius));
      const gaps = (folded.length - 1) * GAP + 2 * BORDER;
      const scale = Math.min((WIDTH - gaps) / across, (HEIGHT - 2 * BORDER) / tallest);
      let x = (WIDTH - across * scale - gaps) / 2 + BORDER;
      this.#used = 0;
      for (const shape of folded) {
        const from = placeInPicture(look)(shape.middle);
        const place = (point) =>
          [x + (shape.radius + point.x - from.x) * scale, HEIGHT / 2 + (point.y - from.y) * scale]
            .map((value) => value.toFixed(1))
            .join(' ');
        for (const face of paint(shape.tree, look)) this.#face(face, face.points.map(place));
        x += 2 * shape.radius * scale + GAP;
      }
      for (const spare of [...this.element.children].slice(this.#used)) spare.remove();
    }

    #face({ sides, color, shade }, places) {
      const outline = `M${places.join('L')}Z`;
      const fill = shaded(color, shade);
      if (sides.every(Boolean)) {
        this.#path('whole', outline, fill);
        return;
      }
      this.#path('part', outline, fill);
      if (!sides.some(Boolean)) return;
      const edges = places.map((place, side) =>
        sides[side] ? `M${place}L${places[(side + 1) % places.length]}` : '',
      );
      this.#path('edges', edges.join(''), 'none');
    }

    #path(kind, d, fill) {
      const path = this.element.children[this.#used] ?? this.element.appendChild(svg('path', {}));
      this.#used += 1;
      path.setAttribute('class', `turn-${kind}`);
      path.setAttribute('d', d);
      // A part has a hair of its own color round it, so that nothing shines through where a face was cut.
      path.setAttribute('style', kind === 'part' ? `fill: ${fill}; stroke: ${fill}` : `fill: ${fill}`);
    }
  }

  globalThis.sheetwright = { ...globalThis.sheetwright, Picture };
})();
