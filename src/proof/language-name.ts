/** `Volapük (vo)`, or the BCP 47 tag alone where nobody knows a name for it. */
export function languageName(tag: string): string {
  const name = new Intl.DisplayNames('en', { type: 'language' }).of(tag) ?? tag;
  return name === tag ? tag : `${name} (${tag})`;
}
