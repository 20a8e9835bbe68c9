/**
 * A name made fit for an address or a file: lower case, letters without accents, digits and hyphens.
 * @param bare what it is where nothing of the name is left.
 */
export function slugOf(name: string, bare = 'project'): string {
  const plain = name
    .replaceAll('ß', 'ss')
    .replaceAll('æ', 'ae')
    .replaceAll('ø', 'o')
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase();
  const slug = plain.replace(/[^a-z0-9]+/gu, '-').replace(/^-+|-+$/gu, '');
  return slug === '' ? bare : slug;
}
