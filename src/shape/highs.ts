import highs from 'highs';

/** HiGHS, a solver of linear and integer programs, loaded once; takes about a tenth of a second. */
type Highs = Awaited<ReturnType<typeof highs.default>>;

let loading: Promise<Highs> | undefined;

export function loadHighs(): Promise<Highs> {
  // The package's types describe its CommonJS build; what an ES module gets is the loader itself.
  const loader = highs as unknown as typeof highs.default;
  loading ??= loader();
  return loading;
}
