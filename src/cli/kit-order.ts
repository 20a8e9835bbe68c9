import Fraction from 'fraction.js';
import type { CuttingBench } from '../kit/bench.ts';
import type { KitOrder } from '../kit/kit.ts';
import type { Person } from '../kit/roster.ts';
import { Length, type Unit } from '../measure/length.ts';
import { parseLength } from '../measure/notation.ts';
import type { Project, Workspace } from '../project/model.ts';
import { leavesSomething, type Pricing } from '../project/pricing.ts';
import { type CommonOptions, Refusal } from './terminal.ts';

/** What `kit` takes, as it was typed. */
export type KitCommandOptions = CommonOptions & {
  readonly attendees?: string;
  readonly roster?: string;
  readonly variant?: readonly string[];
  readonly spares: string;
  readonly work: string;
  readonly margin?: string;
  readonly kerf?: string;
  readonly trimMargin?: string;
  readonly labels?: boolean;
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly out: string;
  readonly browser?: string;
};

/** More people than fit round any table, or spare kits than anybody needs, are a slip of the keyboard. */
export const MOST_PEOPLE = 1000;
const MOST_WORK = 600;

/**
 * Reads the numbers of a `kit` command; lengths wait for the project, whose unit a bare number has.
 * @throws Refusal for what is no such number.
 */
export function kitOrder(
  options: KitCommandOptions,
  people: readonly Person[],
): (project: Project, workspace: Workspace) => KitOrder {
  const attendees = attendeesOf(options, people);
  const spares = wholeNumber('--spares', options.spares, 0, MOST_PEOPLE);
  const work = workOf(options.work);
  const margin = options.margin === undefined ? undefined : marginOf(options.margin);
  const parcels = people.length > 0 ? people.filter(({ by }) => by === 'post').length : undefined;
  return (project, workspace) => {
    const pricing = pricingFor(margin, workspace.site.pricing);
    return {
      attendees,
      spares,
      work,
      ...(pricing && { pricing }),
      ...(parcels !== undefined && { parcels }),
      bench: benchFor(options, project, workspace),
    };
  };
}

/** As the settings have it, with the margin that is said. @throws Refusal where nothing would be left to pay with. */
function pricingFor(margin: Fraction | undefined, pricing: Pricing | undefined): Pricing | undefined {
  if (!margin) return pricing;
  const priced = { ...pricing, margin };
  if (leavesSomething(priced)) return priced;
  throw new Refusal('--margin and the platform share of the settings leave nothing of the price to pay with');
}

/** As many as are said, or as many kits as the roster asks for: the two must agree. */
function attendeesOf({ attendees, roster }: KitCommandOptions, people: readonly Person[]): number {
  const onRoster = people.reduce((sum, { kits }) => sum + kits, 0);
  if (attendees === undefined && roster === undefined)
    throw new Refusal("required option '--attendees <number>' not specified, nor a --roster");
  if (onRoster > MOST_PEOPLE)
    throw new Refusal(
      `the roster comes to ${onRoster} kits, more than the ${MOST_PEOPLE} that are planned at once: see that it is the right file`,
    );
  if (attendees === undefined) return onRoster;
  const said = wholeNumber('--attendees', attendees, 1, MOST_PEOPLE);
  if (roster === undefined || said === onRoster) return said;
  throw new Refusal(`--attendees says ${said}, but the roster comes to ${onRoster}: leave --attendees out`);
}

/** How it is cut: bare lengths are in the unit of the project. @throws Refusal for what is no length. */
export function benchFor(
  { kerf, trimMargin }: Pick<KitCommandOptions, 'kerf' | 'trimMargin'>,
  { unit }: Project,
  { site }: Workspace,
): CuttingBench {
  const lengthIn = (option: string, text: string | undefined): Length =>
    text === undefined ? Length.zero : lengthOf(option, text, unit);
  return {
    kerf: lengthIn('--kerf', kerf),
    trimMargin: lengthIn('--trim-margin', trimMargin),
    trimmer: site.bench.trimmer.value,
  };
}

/** @throws Refusal for any other text. */
export function wholeNumber(option: string, text: string, least: number, most: number): number {
  const number = /^\d{1,9}$/u.test(text.trim()) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return number;
  throw new Refusal(`${option} takes a whole number from ${least} to ${most}, not "${text}"`);
}

/** @throws Refusal for what is no such number. */
export function workOf(text: string): number {
  const work = /^\d{1,4}(?:\.\d{1,3})?$/u.test(text.trim()) ? Number(text) : Number.NaN;
  if (work > 0 && work <= MOST_WORK) return work;
  throw new Refusal(`--work takes a number above 0 and up to ${MOST_WORK}, not "${text}"`);
}

/** Exactly as typed: `20`, `12.5`, `20%`. */
function marginOf(text: string): Fraction {
  const [, whole, part = ''] = /^(\d{1,2})(?:\.(\d{1,4}))?\s*%?$/u.exec(text.trim()) ?? [];
  if (whole === undefined)
    throw new Refusal(
      `--margin takes percent from 0 to under 100, not "${text}": it is the share of the price that is left after costs`,
    );
  return new Fraction(BigInt(whole + part), 10n ** BigInt(part.length));
}

function lengthOf(option: string, text: string, unit: Unit): Length {
  const reading = parseLength(text, unit);
  if (reading.ok) return reading.value;
  if (reading.problem === 'zero') return Length.zero;
  throw new Refusal(`${option} takes a length, such as 1/8 in or 3 mm, not "${text}"`);
}
