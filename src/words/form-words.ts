import type { Form } from '../shape/form.ts';
import { forms } from '../shape/forms/index.ts';

/** The key under which a language says how a form is closed. */
export function closingKey({ name }: Form): string {
  return `closing-${name.replaceAll(' ', '-')}`;
}

/** What the forms say of themselves, in English, by the keys under which other languages say it. */
export function wordsOfForms(): readonly (readonly [key: string, text: string])[] {
  return forms.map((form) => [closingKey(form), form.closing]);
}
