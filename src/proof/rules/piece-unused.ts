import type { Project } from '../../project/model.ts';
import { nearestName } from '../../project/nearest.ts';
import type { Reference } from '../../project/prose/reference.ts';
import type { Rule } from '../rule.ts';

export const pieceUnused: Rule<{ readonly piece: string }> = {
  severity: 'warning',
  summary: 'Every piece that is cut is used in a step.',
  why: 'A piece in the cut list that no step uses leaves people with a scrap in their hand, wondering what they missed. A step uses a piece by naming it, as in `:piece[front]` or `:size[front]`, or by showing it, as in `::drawing{of=front}`.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: card }',
    body: '## Begin\nTake :piece[card].\n',
    blames: 'front',
  },
  passes: { with: '[card].\n\n## Layer\nStick on :piece[front].', insteadOf: '[card].' },
  ownEditionOnly: true,
  *check({ project }) {
    if (project.steps.length === 0) return;
    const named = project.steps.flatMap(({ prose }) => prose.references).map(meant(project));
    const used = new Set([...named, ...misnamed(project)]);
    for (const [id, piece] of project.pieces) {
      if (!used.has(id)) yield { at: piece.id.at, facts: { piece: id } };
    }
  },
  say: ({ piece }) => ({
    message: `${piece} is cut, but no step uses it`,
    remedy: `name it where it is used, as :piece[${piece}], or take it out`,
  }),
};

/** The pieces in directives that are none, which have their own findings: `:pieces[front]`. */
function misnamed({ findings }: Project): readonly string[] {
  return findings.flatMap((finding) =>
    finding.rule === 'unknown-directive' ? (finding.facts.written.match(/(?<=\[|\bof=)[\w-]+/gu) ?? []) : [],
  );
}

/** The piece a reference means; a misspelt one, which has its own finding, means the piece most like it. */
function meant({ names }: Project): (reference: Reference) => string | undefined {
  return ({ of: { value } }) => {
    const { piece } = value;
    return names.pieces.includes(piece) ? piece : nearestName(piece, names.pieces);
  };
}
