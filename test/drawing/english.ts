import { readLabels } from '../../src/make/package-files.ts';
import { type Say, speaker } from '../../src/words/labels.ts';

const labels = readLabels().get('en');
if (!labels) throw new Error('there is no English');

/** Every English word there is. */
export const english: Say = speaker(labels);
