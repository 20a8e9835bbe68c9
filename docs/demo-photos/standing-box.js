/** Looks down on upright things from the front right: inches across, deep and high to picture points. */
export function camera(scale, originX, originY) {
  const [yaw, pitch] = [(-32 * Math.PI) / 180, (24 * Math.PI) / 180];
  return (x, deep, high) => {
    const across = x * Math.cos(yaw) - deep * Math.sin(yaw);
    const away = x * Math.sin(yaw) + deep * Math.cos(yaw);
    return [originX + scale * across, originY - scale * (high * Math.cos(pitch) + away * Math.sin(pitch))];
  };
}

/** An SVG matrix that lays a face's own inches (right, down) on the picture; exact, since the camera is parallel. */
export function face(view, corner, right, down) {
  const [at, a, b] = [view(...corner), view(...add(corner, right)), view(...add(corner, down))];
  return `matrix(${a[0] - at[0]} ${a[1] - at[1]} ${b[0] - at[0]} ${b[1] - at[1]} ${at[0]} ${at[1]})`;
}

function add(a, b) {
  return a.map((value, i) => value + b[i]);
}

export function polygon(view, corners, attributes) {
  return `<path d="M${corners.map((corner) => view(...corner).join(' ')).join('L')}z" ${attributes}/>`;
}

/**
 * A clip-top box standing on the table, its front dressed with `layers` drawn in the front panel's inches.
 * @param at the picture point of its lower left corner.
 */
export function standingBox({ width, depth, height, flange, scale, color, shades, layers, at = [620, 985] }) {
  const view = camera(scale, ...at);
  const [w, d, h, m] = [width, depth, height, depth / 2];
  const tone = (corners, shade) =>
    polygon(view, corners, `fill="${color}"`) +
    polygon(view, corners, `fill="${shade < 0 ? '#000' : '#fff'}" opacity="${Math.abs(shade)}"`);
  const shadow = [
    [0, 0, 0],
    [w, 0, 0],
    [w + 2.8, 1.1, 0],
    [w + 2.8, d + 1.1, 0],
    [2.8, d + 1.1, 0],
    [0, d, 0],
  ];
  const top = [
    [0, 0, h],
    [w, 0, h],
    [w, d, h],
    [0, d, h],
  ];
  const side = [
    [w, 0, 0],
    [w, d, 0],
    [w, d, h],
    [w, 0, h],
  ];
  const upright = [
    [0, m, h],
    [w, m, h],
    [w, m, h + flange],
    [0, m, h + flange],
  ];
  const edge = (points) =>
    `<path d="M${points.map((p) => view(...p).join(' ')).join('L')}" fill="none" stroke="#fff" stroke-width="2" opacity="0.35"/>`;
  return `${polygon(view, shadow, 'fill="#1a120b" opacity="0.5" filter="url(#wide)"')}
    ${polygon(
      view,
      [
        [-0.05, -0.06, 0],
        [w + 0.1, -0.06, 0],
        [w + 0.1, d, 0],
        [0, d, 0],
      ],
      'fill="#120c07" opacity="0.7" filter="url(#soft)"',
    )}
    ${tone(side, shades.side)}${tone(top, shades.top)}
    ${polygon(
      view,
      [
        [0, m, h],
        [w, m, h],
        [w, d, h],
        [0, d, h],
      ],
      'fill="#000" opacity="0.22" filter="url(#near)"',
    )}
    ${tone(upright, shades.flange)}
    <g transform="${face(view, [0, 0, h], [1, 0, 0], [0, 0, -1])}">
      <rect width="${w}" height="${h}" fill="${color}"/>${layers}
      <rect width="${w}" height="${h}" fill="url(#sheen)"/></g>
    ${edge([
      [0, 0, h],
      [w, 0, h],
      [w, 0, 0],
    ])}${edge([
      [0, m, h + flange],
      [w, m, h + flange],
    ])}
    ${peg(view, [w / 2, m, h + flange])}`;
}

/** A small wooden clothes peg that grips the flanges from above. */
function peg(view, [x, deep, high]) {
  const blade = (offset, fill) =>
    polygon(
      view,
      [
        [x - 0.17, deep + offset, high - 0.5],
        [x + 0.17, deep + offset, high - 0.5],
        [x + 0.17, deep + offset * 2.2, high + 1],
        [x - 0.17, deep + offset * 2.2, high + 1],
      ],
      `fill="${fill}" stroke="#8a6a40" stroke-width="1.5"`,
    );
  const [left, right] = [view(x - 0.2, deep - 0.09, high + 0.2), view(x + 0.2, deep - 0.09, high + 0.2)];
  return `${blade(0.09, '#b8935f')}${blade(-0.09, '#dcb983')}
    <path d="M${left.join(' ')} L${right.join(' ')}" stroke="#8f9498" stroke-width="9" stroke-linecap="round"/>
    <path d="M${left.join(' ')} L${right.join(' ')}" stroke="#dfe3e6" stroke-width="3" stroke-linecap="round"/>`;
}
