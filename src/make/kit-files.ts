import type { Kit } from '../kit/plan.ts';
import { kitCsv } from '../kit/report/csv.ts';
import { kitJson } from '../kit/report/json.ts';
import type { Person } from '../kit/roster.ts';
import { bagLabels } from '../kit-pages/bag-labels.ts';
import { kitPage } from '../kit-pages/page.ts';
import { addressLabels, packingList } from '../kit-pages/roster-pages.ts';
import type { KitInput } from '../kit-pages/shell.ts';
import type { Paper } from '../project/model.ts';
import type { Written } from './files.ts';
import { labelsOf } from './languages.ts';
import { dayOfProject } from './output.ts';
import { readLabels } from './package-files.ts';
import { benchInput, type PagePrint, type PlanFilesOptions, putPlan } from './plan-files.ts';

export type KitFilesOptions = PlanFilesOptions & {
  readonly kit: Kit;
  /** A page of labels for the bags too. */
  readonly labels: boolean;
  /** Who gets the kits, if that is known: bags with names, a packing list and address labels. Nowhere else. */
  readonly people?: readonly Person[] | undefined;
};

/** Where the files of a kit lie below the output folder: the demonstrator's own, never part of the site. */
export function kitFolder(kit: Kit): string {
  return `host/${kitName(kit)}`;
}

/** `bulb-box-kit-12`; of variants `bulb-box-kit-6-small-6-large`. */
function kitName({ project, makings, attendees }: Kit): string {
  const variants = makings.flatMap(({ project: { variant }, attendees: own }) =>
    variant ? [`${own}-${variant.slug}`] : [],
  );
  return [project.slug, 'kit', ...(variants.length > 0 ? variants : [attendees])].join('-');
}

/**
 * Writes a kit: `index.html`, `kit.json`, `kit.csv` and the PDFs.
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export function makeKitFiles(options: KitFilesOptions): Promise<readonly Written[]> {
  const { kit, site, currency } = options;
  const { project } = kit;
  const input = { kit, ...benchInput(options, labelsOf(project, site, readLabels())) };
  return putPlan(options, {
    folder: kitFolder(kit),
    date: dayOfProject(project),
    screen: kitPage({ ...input, target: 'page' }),
    data: [
      { name: 'kit.json', bytes: kitJson(kit, currency) },
      { name: 'kit.csv', bytes: kitCsv(kit, currency) },
    ],
    prints: [{ name: `${kitName(kit)}.pdf`, page: kitPage(input) }, ...peoplePrints(input, options)],
  });
}

/** What goes on the bags and parcels, where it is asked for or it is known whose they are. */
function peoplePrints(
  input: KitInput & { readonly target: Paper },
  { kit: { project }, labels, people = [] }: KitFilesOptions,
): readonly PagePrint[] {
  const print = (isAsked: boolean, what: string, page: () => PagePrint['page']): readonly PagePrint[] =>
    isAsked ? [{ name: `${project.slug}-${what}.pdf`, page: page() }] : [];
  const isKnown = people.length > 0;
  const isPosted = people.some(({ by }) => by === 'post');
  return [
    ...print(labels || isKnown, 'labels', () => bagLabels(input, people)),
    ...print(isKnown, 'packing-list', () => packingList(input, people)),
    ...print(isPosted, 'addresses', () => addressLabels(input, people, input.target)),
  ];
}
