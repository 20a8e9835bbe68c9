import { v5 as uuidOf } from 'uuid';
import type { Site } from '../project/model.ts';

/** Where the site stands on the web, with a closing `/`; undefined where `site.yaml` does not say. */
export function siteAddress({ url }: Pick<Site, 'url'>): string | undefined {
  if (url === undefined) return undefined;
  return url.value.endsWith('/') ? url.value : `${url.value}/`;
}

/** A path below the site's root as an address, where the site has one. */
export function absolute(site: Pick<Site, 'url'>, path: string): string | undefined {
  const root = siteAddress(site);
  return root === undefined ? undefined : new URL(path, root).href;
}

/** A name for something of the site that stays the same as long as the site keeps its address, or else its title. */
export function lastingName(site: Pick<Site, 'url' | 'title'>, what: string): string {
  return uuidOf(`${siteAddress(site) ?? site.title} ${what}`, uuidOf.URL);
}
