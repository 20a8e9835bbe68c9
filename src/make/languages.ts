import type { Finding } from '../project/finding.ts';
import type { Project, Site } from '../project/model.ts';
import type { At } from '../project/source.ts';
import type { Labels } from '../words/labels.ts';
import { labelsFor } from '../words/languages.ts';

/** All the labels there are, by the language of their file. */
export type AllLabels = ReadonlyMap<string, Labels>;

/** The words of a project: in its own language, else in the site's; and what it calls its pieces and their panels. */
export function labelsOf(project: Project, site: Site, all: AllLabels): Labels {
  const { labels } = labelsFor(all, project.lang?.value ?? site.language);
  const named = [...project.pieces.values()].flatMap(({ id, name }) =>
    name ? [[id.value, name.value] as const] : [],
  );
  const parts = project.called.map(({ name, value }) => [`part-${name.value}`, value.value] as const);
  const measured = project.unit === 'cm' ? inCentimeters(labels) : labels;
  const texts = parts.length === 0 ? measured.texts : new Map([...measured.texts, ...parts]);
  return { ...measured, texts, pieces: new Map(named) };
}

/** Who writes centimeters reads centimeters: the words for millimeters give way to those that are kept for that. */
function inCentimeters(labels: Labels): Labels {
  const { texts } = labels;
  const prefix = 'cm-';
  const own = [...texts].filter(([key]) => key.startsWith(prefix));
  const instead = own.map(([key, text]) => [key.slice(prefix.length), text] as const);
  return { ...labels, texts: new Map([...texts, ...instead]), metric: 'cm' };
}

/**
 * What has to be said in English because a language has no words for it: each unknown language where it is asked for,
 * each incomplete one where it is asked for first. English, which stands where none is asked for, lacks nothing.
 * @param asked Every language that is named, the site's first.
 */
export function languageFindings(asked: readonly At<string>[], all: AllLabels): readonly Finding[] {
  const incomplete = new Set<string>();
  return asked.flatMap(({ value: language, at }): Finding[] => {
    const { known, missing, from } = labelsFor(all, language);
    if (!known) return [{ rule: 'unknown-language', at, facts: { language, known: [...all.keys()].sort() } }];
    if (missing.length === 0 || incomplete.has(from)) return [];
    incomplete.add(from);
    return [{ rule: 'missing-label', at, facts: { language: from, keys: missing } }];
  });
}
