/** The little of js-quantities that the tests use; the package has no types of its own. */
declare module 'js-quantities' {
  type Quantity = { to(unit: string): Quantity; readonly scalar: number };
  export default function Qty(value: number | string, unit?: string): Quantity;
}
