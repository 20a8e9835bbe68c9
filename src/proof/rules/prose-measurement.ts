import { Length, type Unit } from '../../measure/length.ts';
import { type Measurement, type Spelling, scanMeasurements } from '../../measure/scan.ts';
import { languageOf, spellingIn, wordsIn } from '../../project/language.ts';
import type { Prose } from '../../project/model.ts';
import { everyProse } from '../../project/prose/prose.ts';
import type { Place } from '../../project/source.ts';
import { type KnownMeasure, measuredIn } from '../measured.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sentencesOf } from '../sentences.ts';
import { sizedBy, subjectOf } from '../subject.ts';
import { quote, sayLengths, sayList } from '../words.ts';

type Facts = {
  readonly written: string;
  /** What measures nearly so, if anything does. */
  readonly nearest?: KnownMeasure;
  readonly unit: Unit;
  /** The pieces that its sentence names, where it is a measure of others. */
  readonly about?: readonly string[];
};

export const proseMeasurement: Rule<Facts> = {
  severity: 'warning',
  summary:
    'Every measurement in the text is that of something its sentence names or, where it names nothing, of something in the project.',
  why: 'A number typed into a step does not change with its piece, and then the cut list says one thing and the step another. Write `:size[front]` or `:reveal[front]`, and the text always follows.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nfront: { stock: cream, cut: 4 x 5 1/4, on: card }',
    body: '## Layer\nStick :piece[front] on :piece[card], leaving 3/16 in all round.\n',
    blames: '3/16 in',
  },
  passes: { with: '1/8 in', insteadOf: '3/16 in' },
  ownEditionOnly: true,
  oneVariantWillDo: true,
  *check({ workspace, project, shapes }) {
    if (!isWhole({ project, shapes })) return;
    const { unit } = project;
    const language = languageOf(project, workspace.site);
    const [spelling, articles] = [spellingIn(language), wordsIn(language, 'reads-articles')];
    const sizing = wordsIn(language, 'reads-sizing');
    const measured = everyProse(project).flatMap((prose) => {
      const measurements = measurementsIn(prose, spelling);
      return measurements.length > 0 ? [{ prose, measurements }] : [];
    });
    const known = measured.length > 0 ? measuredIn(project, shapes, workspace.site) : [];
    for (const { prose, measurements } of measured) {
      const sentences = sentencesOf(prose, project.file);
      for (const { at, written, ...found } of measurements) {
        const having = known.filter((each) => matches(found, each, unit));
        const sized = found.lengths.length > 1 ? sizedBy(at, prose, sizing) : undefined;
        const subject = sized ?? subjectOf(at, sentences, prose, project, articles);
        if (having.some((each) => subject?.mayMean(each) ?? true)) continue;
        const isElsewhere = having.length > 0;
        const nearest = nearestOf(found, isElsewhere && subject ? known.filter(subject.mayMean) : known);
        const about = isElsewhere && subject ? { about: subject.pieces } : {};
        yield { at, facts: { written, unit, ...about, ...(nearest && { nearest }) } };
      }
    }
  },
  say: ({ written, nearest, unit, about }) => {
    const near = nearest ? `; nearest is ${sayLengths(nearest.lengths, unit)}, ${nearest.what}` : '';
    return {
      message: `${sayLack(written, about)}${near}`,
      remedy: nearest?.directive
        ? `write ${nearest.directive}, which follows by itself, or put the number right`
        : 'put the number right, or say it without one',
    };
  },
};

function sayLack(written: string, about: Facts['about']): string {
  if (!about) return `nothing in this project measures ${quote(written)}`;
  return `${quote(written)} is not a measurement of ${sayList(about, 'or')}, which this sentence names`;
}

/** With a measurement missing, everything that is said of it would be called wrong. */
function isWhole({ project, shapes }: Pick<ProofContext, 'project' | 'shapes'>): boolean {
  return project.readable && project.names.pieces.every((id) => shapes.nets.has(id));
}

function matches(found: Measurement, known: KnownMeasure, unit: Unit): boolean {
  const slack = slackFor(found.unit, unit);
  if (found.lengths.length === 1) {
    const [only] = found.lengths;
    return known.lengths.length === 1 && apart(only, known.lengths[0], slack);
  }
  const left = [...known.lengths];
  return found.lengths.every((length) => {
    const index = left.findIndex((each) => apart(length, each, slack));
    if (index >= 0) left.splice(index, 1);
    return index >= 0;
  });
}

function apart(a: Length | undefined, b: Length | undefined, slack: Length): boolean {
  return a !== undefined && b !== undefined && !a.minus(b).abs().greaterThan(slack);
}

/** A measurement said in the other system is taken as rounded there: to a millimeter, or to a sixteenth. */
function slackFor(written: Unit, own: Unit): Length {
  if ((written === 'in') === (own === 'in')) return Length.zero;
  return written === 'in' ? Length.of(1, 32, 'in') : Length.of(1, 2, 'mm');
}

/** The measured thing of as many sides that is least different, if it is anywhere near. */
function nearestOf(found: Measurement, known: readonly KnownMeasure[]): KnownMeasure | undefined {
  const limit = Length.min(Length.of(1, 2, 'in'), Length.sum(found.lengths).half());
  const candidates = known
    .filter(({ lengths, kind }) => kind !== 'tool' && lengths.length === found.lengths.length)
    .map((each) => ({ each, difference: difference(found.lengths, each.lengths) }))
    .filter((candidate) => !candidate.difference.greaterThan(limit));
  return candidates.toSorted((a, b) => a.difference.compare(b.difference))[0]?.each;
}

function difference(a: readonly Length[], b: readonly Length[]): Length {
  const [first, second] = [a, b].map((lengths) => lengths.toSorted((x, y) => x.compare(y)));
  return Length.sum((first ?? []).map((length, index) => length.minus(second?.[index] ?? length).abs()));
}

type MeasurementInText = Measurement & { readonly at: Place; readonly written: string };

/** Every measurement of a stretch of prose with its own characters: a run of it is kept as it stands in the file. */
function measurementsIn({ texts }: Prose, spelling: Spelling): readonly MeasurementInText[] {
  return texts.flatMap(({ value, at }) =>
    scanMeasurements(value, spelling).map((found) => ({
      ...found,
      at: { ...at, start: at.start + found.start, end: at.start + found.end },
      written: value.slice(found.start, found.end),
    })),
  );
}
