/** The words of a sheet in one language: key to text, `{name}` standing for a value. */
export type Labels = { readonly language: string; readonly texts: ReadonlyMap<string, string> };

/** Says a label: `say('cut-list')`, `say('page-of', { page: 2, pages: 4 })`. An unknown key is our own bug and throws. */
export type Say = (key: string, values?: Readonly<Record<string, string | number>>) => string;

export function speaker(labels: Labels): Say {
  return (key, values = {}) => {
    const text = labels.texts.get(key);
    if (text === undefined) throw new Error(`no label "${key}" in ${labels.language}`);
    return text.replace(/\{(\w+)\}/gu, (whole, name: string) => String(values[name] ?? whole));
  };
}
