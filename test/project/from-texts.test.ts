import { describe, expect, it } from 'vitest';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

describe('a workspace read from texts', () => {
  it('reads a project and what it shares', () => {
    const workspace = readWorkspaceFromTexts({
      'card/sheet.md':
        '---\ntitle: Card\nmeasurements:\n  pieces: { base: { stock: shared.moss, cut: 4 x 5 } }\n---\n',
      'shared/stock.yaml': 'stock: { moss: { sheet: 8 1/2 x 11 } }\n',
    });
    const [project] = workspace.projects;
    expect(project?.findings).toEqual([]);
    expect(project?.stock.get('shared.moss')?.name).toBe('Moss');
    expect(project?.pieces.get('base')?.body.kind).toBe('flat');
  });
});
