/** What the paper lies or stands on, and the light that falls on it. */

export const WIDTH = 1600;
export const HEIGHT = 1200;

/** A table top seen from straight above. */
export const TABLE_TOP = `<rect width="${WIDTH}" height="${HEIGHT}" fill="#c9a77e"/>
  <rect width="${WIDTH}" height="${HEIGHT}" filter="url(#plank)"/>
  ${[300, 640, 985]
    .map(
      (y) => `<path d="M0 ${y} H${WIDTH}" stroke="#5d432b" stroke-width="3" opacity="0.5"/>
  <path d="M0 ${y + 3} H${WIDTH}" stroke="#ecd3ad" stroke-width="2" opacity="0.35"/>`,
    )
    .join('')}`;

/** A table seen from the side of the room, its far edge and the wall behind out of focus. */
export const TABLE_AND_WALL = `<rect width="${WIDTH}" height="${HEIGHT}" fill="url(#wall)"/>
  <rect width="${WIDTH}" height="${HEIGHT}" fill="url(#board)"/>
  <g mask="url(#table)"><rect width="${WIDTH}" height="${HEIGHT}" filter="url(#plank)"/></g>`;

/** Light through a window and darker corners, over everything. */
export const LIGHT = `<rect width="${WIDTH}" height="${HEIGHT}" fill="url(#lamp)"/>`;

/** A scene drawn in inches, centered on the picture, turned a little as things lie on a table. */
export function onTable(pixelsPerInch, turn, size, content) {
  return `<g transform="translate(${WIDTH / 2} ${HEIGHT / 2}) rotate(${turn}) scale(${pixelsPerInch})
    translate(${-size[0] / 2} ${-size[1] / 2})">${content}</g>`;
}
