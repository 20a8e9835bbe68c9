import { type Key, made, mapOf, type Value } from '../grammar/grammar.ts';
import { listed, optional, required } from '../grammar/keys.ts';
import { asLink, asText } from '../grammar/values.ts';
import type { NamedLink } from '../model.ts';
import type { At } from '../source.ts';

const LINK = mapOf('a link, such as { name: Library catalog, link: "https://example.org" }', {
  name: required(asText, 'What people read.'),
  link: required(asLink, 'Where it leads: `https://` and so on.'),
});

const asNamedLink: Value<NamedLink> = made(LINK, ({ name, link }) => ({
  name: name.value,
  href: link.value,
}));

/** The keys that tell where and with whom a session is: the settings say them of all, a sheet of its own. */
export const MEETING: {
  readonly place: Key<At<string>, false>;
  readonly host: Key<At<string>, false>;
  readonly contact: Key<At<string>, false>;
  readonly links: Key<readonly NamedLink[], true>;
  readonly terms: Key<At<string>, false>;
} = {
  place: optional(asText, 'Where people meet: `Reading room, 12 Harbour Street`.'),
  host: optional(asText, 'Who leads the session.'),
  contact: optional(asText, 'Where questions go: a mail address, a web address or a telephone number.'),
  links: listed(asNamedLink, 'Pages that belong to it, each as `{ name: …, link: "https://…" }`.'),
  terms: optional(asText, 'What people may do with the sheets: `Free for classes and for your own use`.'),
};
