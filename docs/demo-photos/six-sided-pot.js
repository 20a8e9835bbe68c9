import { camera, face, polygon } from './standing-box.js';

/** The corners of a regular hexagon from above, the front's left one first, in inches across and deep. */
function hexagon(side) {
  let [x, deep] = [0, 0];
  return Array.from({ length: 6 }, (_, index) => {
    const corner = [x, deep];
    const angle = (index * Math.PI) / 3;
    x += side * Math.cos(angle);
    deep += side * Math.sin(angle);
    return corner;
  });
}

/** A pencil that leans in the pot: its barrel, its cut end and its lead. */
function pencil(view, [x, deep], [tipX, tipDeep, tip], color) {
  const [foot, end] = [view(x, deep, 0.2), view(tipX, tipDeep, tip)];
  const long = Math.hypot(end[0] - foot[0], end[1] - foot[1]);
  const [across, up] = [(end[1] - foot[1]) / long, (foot[0] - end[0]) / long];
  const at = (share, off) =>
    `${foot[0] + (end[0] - foot[0]) * share + across * off} ${foot[1] + (end[1] - foot[1]) * share + up * off}`;
  const cone = (from, half, fill) =>
    `<path d="M${at(from, -half)} L${at(1, 0)} L${at(from, half)}z" fill="${fill}"/>`;
  const barrel = (left, right, attributes) =>
    `<path d="M${at(0, left)} L${at(0.91, left)} L${at(0.91, right)} L${at(0, right)}z" ${attributes}/>`;
  return `${cone(0.905, 18, '#e2c08d')}${cone(0.98, 4, '#33302c')}${barrel(-18, 18, `fill="${color}"`)}
    ${barrel(-6, 6, 'fill="#fff" opacity="0.12"')}${barrel(-18, -6, 'fill="#000" opacity="0.2"')}`;
}

/** A hexagonal pot standing on the table; `layers` are drawn in the inches of a wall, by its number from the front on. */
export function sixSidedPot({ side, height, scale, color, inside, layers, pencils }) {
  const view = camera(scale, 720, 1010);
  const round = hexagon(side);
  const wall = (index) => [round[index], round[(index + 1) % 6]];
  const corners = ([a, b]) => [
    [...a, height],
    [...b, height],
    [...b, 0],
    [...a, 0],
  ];
  const shaded = (index, shade, fill) =>
    polygon(view, corners(wall(index)), `fill="${fill}"`) +
    polygon(view, corners(wall(index)), `fill="${shade < 0 ? '#000' : '#fff'}" opacity="${Math.abs(shade)}"`);
  const dressed = (index, shade) => {
    const [[ax, ad], [bx, bd]] = wall(index);
    const along = [(bx - ax) / side, (bd - ad) / side, 0];
    return `${shaded(index, 0, color)}<g transform="${face(view, [ax, ad, height], along, [0, 0, -1])}">
      ${layers[index] ?? ''}<rect width="${side}" height="${height}" fill="url(#sheen)"/></g>
      ${polygon(view, corners(wall(index)), `fill="#000" opacity="${shade}"`)}`;
  };
  const onFloor = (grow, dx, dd) =>
    round.map(([x, deep]) => [
      side / 2 + (x - side / 2) * grow + dx,
      side * 0.87 + (deep - side * 0.87) * grow + dd,
      0,
    ]);
  const rim = [...round, round[0]].map(([x, deep]) => view(x, deep, height).join(' ')).join('L');
  return `${polygon(view, onFloor(1.15, 1.6, 0.7), 'fill="#1a120b" opacity="0.5" filter="url(#wide)"')}
    ${polygon(view, onFloor(1.04, 0.06, 0), 'fill="#120c07" opacity="0.7" filter="url(#soft)"')}
    ${[4, 3, 2].map((index) => shaded(index, -0.45, inside)).join('')}
    ${pencils.map(({ from, to, fill }) => pencil(view, from, to, fill)).join('')}
    ${dressed(5, 0.04)}${dressed(1, 0.4)}${dressed(0, 0.1)}
    <path d="M${rim}" fill="none" stroke="#fff" stroke-width="2" opacity="0.35"/>`;
}
