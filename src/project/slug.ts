/** A folder's name made fit for an address: lower case, letters without accents, digits and hyphens. */
export function slugOf(folder: string): string {
  const plain = folder
    .replaceAll('ß', 'ss')
    .replaceAll('æ', 'ae')
    .replaceAll('ø', 'o')
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase();
  const slug = plain.replace(/[^a-z0-9]+/gu, '-').replace(/^-+|-+$/gu, '');
  return slug === '' ? 'project' : slug;
}
