import { join } from 'node:path';
import type { Study } from '../edition/study.ts';
import type { Workspace } from '../project/model.ts';
import { type Finding, isFailure } from '../proof/finding.ts';
import { proofFindings, proofSite } from '../proof/proof.ts';
import type { ProjectFindings } from '../proof/studied.ts';
import { cardOf } from './card.ts';
import { labelsOf } from './languages.ts';
import type { MakeOptions } from './make.ts';
import type { ProjectMaterial, Studio } from './output.ts';
import { outputs } from './outputs/index.ts';
import { type ProjectPicture, readPictures } from './pictures.ts';
import type { Plan } from './write-outputs.ts';

/** What a make knows before it plans. */
type Known = {
  readonly options: MakeOptions;
  readonly workspace: Workspace;
  readonly studio: Studio;
  readonly studies: readonly Study[];
  readonly proofs: ProjectFindings;
};

/** The plan of each project that may be made, worked out when it is asked for; and what became of the others. */
export class Plans implements AsyncIterable<Plan> {
  /** What was found while planning: pictures that cannot be shown. */
  readonly findings: Finding[] = [];
  /** Slugs of projects that keep their last good output because of a finding. */
  readonly held: string[] = [];
  /** Slugs of those that were planned. */
  readonly made: string[] = [];
  readonly #known: Known;
  readonly #site: readonly Finding[];

  constructor(known: Known) {
    this.#known = known;
    this.#site = proofSite(known.workspace);
  }

  async *[Symbol.asyncIterator](): AsyncGenerator<Plan> {
    const { studies, options } = this.#known;
    options.progress?.begin(studies.length);
    for (const study of studies) {
      const { slug } = study.project;
      const pictures = await this.#picturesOf(study);
      if (pictures) {
        this.made.push(slug);
        yield await this.#planOf(study, pictures);
      } else this.held.push(slug);
      options.progress?.passed();
    }
  }

  /** The pictures of a project; undefined when they, or anything else that concerns it, keep it from being made. */
  async #picturesOf({ project }: Study): Promise<readonly ProjectPicture[] | undefined> {
    const { options, proofs } = this.#known;
    const cache = { folder: join(options.out, '.cache', 'pictures') };
    const { pictures, findings } = await readPictures(join(options.root, project.folder), project, cache);
    const ofPictures = proofFindings(findings);
    this.findings.push(...ofPictures);
    const own = [...this.#site, ...(proofs.get(project) ?? []), ...ofPictures];
    return isFailure(own, options.strict === true) ? undefined : pictures;
  }

  async #planOf(study: Study, pictures: readonly ProjectPicture[]): Promise<Plan> {
    const { project, worked } = study;
    const { options, studio, workspace } = this.#known;
    const labels = labelsOf(project, workspace.site, studio.files.labels);
    const ledger = options.ledgerOf?.(study) ?? project.ledger;
    const { slug } = project;
    const material: ProjectMaterial = {
      ...studio,
      labels,
      slug,
      editions: worked.editions,
      ledger,
      pictures,
    };
    const jobs = await Promise.all(outputs.map((output) => output.ofProject?.(material) ?? []));
    return { project, card: cardOf(material), jobs: jobs.flat() };
  }
}
