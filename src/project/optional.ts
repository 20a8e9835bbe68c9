/** An optional property: there with its value, or not there at all. */
export function present<K extends string, T>(key: K, value: T | undefined): { readonly [P in K]?: T } {
  return value === undefined ? {} : ({ [key]: value } as { readonly [P in K]?: T });
}
