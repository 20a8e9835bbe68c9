import { PAPER, rectangle, sheet } from './paper.js';
import { camera, face, polygon } from './standing-box.js';

/** Inches: the cover, the scene in it, and where the rock is cut. */
const COVER = [5.5, 4.25];
const SCENE = { width: 5.25, height: 4, edge: 0.125 };
const ROCK = { width: 1.625, depth: 1 };
/** How far the card is thicker than its cover alone, where the scene lies. */
const LIFT = 0.02;

/** The lighthouse card standing half open: a wall of sky, a floor of sea, the rock in the fold between them. */
export function lighthouseCard() {
  const view = camera(152, 420, 960);
  const [width, high] = COVER;
  const deep = high;
  const shadow = [
    [0, 0, 0],
    [width, 0, 0],
    [width + 1.6, deep * 0.5, 0],
    [width + 1.6, deep + 0.4, 0],
    [0.6, deep + 0.2, 0],
  ];
  const left = (width - ROCK.width) / 2;
  const front = deep - ROCK.depth;
  const floor = face(view, [0, deep, LIFT], [1, 0, 0], [0, -1, 0]);
  const wall = face(view, [0, deep - LIFT, high], [1, 0, 0], [0, 0, -1]);
  const riser = face(view, [left, front, ROCK.depth], [1, 0, 0], [0, 0, -1]);
  const roof = face(view, [left, deep, ROCK.depth], [1, 0, 0], [0, -1, 0]);
  return `${polygon(view, shadow, 'fill="#1a120b" opacity="0.5" filter="url(#wide)"')}
    ${polygon(
      view,
      [
        [-0.05, -0.05, 0],
        [width + 0.06, -0.05, 0],
        [width + 0.06, deep, 0],
        [0, deep, 0],
      ],
      'fill="#120c07" opacity="0.7" filter="url(#soft)"',
    )}
    <g transform="${wall}">${wallOf(width, high)}</g>
    <g transform="${floor}">${floorOf(width, deep, left)}</g>
    ${polygon(
      view,
      [
        [left + ROCK.width, front, 0],
        [left + ROCK.width + 0.9, front + 0.35, 0],
        [left + ROCK.width + 0.5, deep, 0],
        [left + ROCK.width, deep, 0],
      ],
      'fill="#120c07" opacity="0.45" filter="url(#near)"',
    )}
    ${polygon(
      view,
      [
        [left + ROCK.width, front, 0.01],
        [left + ROCK.width, deep, 0.01],
        [left + ROCK.width, deep, ROCK.depth],
        [left + ROCK.width, front, ROCK.depth],
      ],
      'fill="#2a2118" opacity="0.55"',
    )}
    <g transform="${roof}"><rect width="${ROCK.width}" height="${ROCK.depth}" fill="${PAPER.cream}"/>
      <rect width="${ROCK.width}" height="${ROCK.depth}" fill="#000" opacity="0.06"/></g>
    <g transform="${riser}">${riserOf()}</g>`;
}

function paper([width, height], color, shade) {
  const outline = rectangle(0, 0, width, height);
  return `<path d="${outline}" fill="${color}"/><path d="${outline}" fill="#000" opacity="${shade}"/>`;
}

function wallOf(width, high) {
  const { edge } = SCENE;
  return `${paper([width, high], PAPER.harbour, 0.1)}
    ${sheet(rectangle(edge, edge, SCENE.width, SCENE.height), PAPER.cream, 0.01)}
    ${sheet(rectangle(0.25, 0.25, 5, 2.75), 'url(#ripple)', 0.01)}`;
}

function floorOf(width, deep, left) {
  const { edge } = SCENE;
  return `${paper([width, deep], PAPER.harbour, 0)}
    ${sheet(rectangle(edge, edge, SCENE.width, SCENE.height), PAPER.cream, 0.01)}
    <path d="${rectangle(left, 0, ROCK.width, ROCK.depth)}" fill="#3a2d20" opacity="0.8"/>
    ${sheet(rectangle(0.25, 1.25, 5, 2.75), '#3a5a79', 0.01)}`;
}

/** The front of the rock with its stone, and the tower that stands up past it. */
function riserOf() {
  const { width, depth } = ROCK;
  const [middle, foot] = [width / 2, depth - 0.25];
  const top = foot - 2.5;
  const tower = `M${middle - 0.375} ${foot} V${top + 0.375} a0.375 0.375 0 0 1 0.75 0 V${foot}z`;
  const band = (up) => sheet(rectangle(middle - 0.3125, foot - up - 0.375, 0.625, 0.375), PAPER.brick, 0.01);
  return `${paper([width, depth], PAPER.cream, 0.03)}
    ${sheet(rectangle(0.125, 0.125, 1.375, 0.75), PAPER.driftwood, 0.012)}
    ${sheet(tower, PAPER.cream, 0.03)}${band(1)}${band(1.625)}`;
}
