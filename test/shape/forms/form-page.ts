import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { Form } from '../../../src/shape/form.ts';

/** How the page of a form and its pictures are called. */
export function slugOf({ name }: Form): string {
  return name.replace(/ /gu, '-');
}

/**
 * Begins the page of a form that has none, and its row in the list, from what the form says of itself; whoever adds the
 * form goes on from there. Never in CI, where a page that was not committed is missing.
 */
export function beginPage(folder: string, form: Form): void {
  const path = `${folder}${slugOf(form)}.md`;
  if (existsSync(path) || process.env.CI) return;
  writeFileSync(path, pageOf(form));
  const list = readFileSync(`${folder}README.md`, 'utf8');
  const rows = [...list.matchAll(/^\| \[.*\n/gmu)];
  const end = rows.reduce((_, row) => row.index + row[0].length, 0);
  const row = `| [${form.name}](${slugOf(form)}.md) | ${form.summary} |\n`;
  writeFileSync(`${folder}README.md`, list.slice(0, end) + row + list.slice(end));
}

function pageOf(form: Form): string {
  const { name, summary, parameters, panels, closing, example } = form;
  const slug = slugOf(form);
  const { layer } = example;
  const title = name.charAt(0).toUpperCase() + name.slice(1);
  const cover = layer ? [`    layer: { stock: cream, cut: ${layer.cut}, on: piece.${layer.panel} }`] : [];
  return [
    `# ${title}`,
    summary,
    `![Folded](${slug}-folded.svg)`,
    `![The sheet, flat](${slug}.svg)`,
    'Continuous lines are cut, chain lines fold away from you, and dashed lines fold toward you. What is hatched is cut away.\nDots are glue on this side, crosses glue on the far side. The outside faces you.',
    '## Its measurements',
    [
      '| setting | what it is |',
      '| --- | --- |',
      ...parameters.map(({ key, says }) => `| \`${key}\` | ${says} |`),
    ].join('\n'),
    '## An example',
    [
      '````markdown',
      '---',
      `title: ${title}`,
      'measurements:',
      '  unit: in',
      '  stock:',
      '    cream: { name: Cream cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover, color: "#efe4c8" }',
      '  pieces:',
      `    piece: { stock: cream, form: ${name}, ${example.settings.join(', ')} }`,
      ...cover,
      '---',
      '## Score and fold',
      'Score :piece[piece], then work every line with the bone folder.',
      ...(layer ? ['', '## Add the layer', 'Stick :piece[layer] on, leaving :reveal[layer] all round.'] : []),
      '````',
    ].join('\n'),
    '## Its panels',
    `Layers go on: ${panels.map((panel) => `\`${panel}\``).join(', ')}.`,
    '## Folding it',
    `1. ${closing}`,
  ]
    .join('\n\n')
    .concat('\n');
}
