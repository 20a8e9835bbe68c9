import type { MeetingView } from '../handout/meeting-view.ts';
import type { NamedLink, Site } from '../project/model.ts';
import type { Fact } from '../words/fact.ts';
import type { Labels } from '../words/labels.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import type { ListedProject } from './listed.ts';
import { hoursOf, whenText } from './when.ts';

/** Where and with whom, in plain words. */
type SaidMeeting = {
  readonly place: string | undefined;
  readonly host: string | undefined;
  readonly contact: string | undefined;
  readonly terms: string | undefined;
  readonly links: readonly NamedLink[];
};

/** What a site's settings say of all its sessions. */
export function siteMeeting({ place, host, contact, terms, links }: Site): SaidMeeting {
  return {
    place: place?.value,
    host: host?.value,
    contact: contact?.value,
    terms: terms?.value,
    links,
  };
}

/** What holds for one project: its own words, else the settings'. */
export function saidMeeting(project: ListedProject, site: Site): SaidMeeting {
  const usual = siteMeeting(site);
  return {
    place: project.place ?? usual.place,
    host: project.host ?? usual.host,
    contact: project.contact ?? usual.contact,
    terms: project.terms ?? usual.terms,
    links: project.links ?? usual.links,
  };
}

/** @param calendar The session's own calendar file, as the page finds it. */
export function meetingView(
  project: ListedProject,
  { site, labels }: { readonly site: Site; readonly labels: Labels },
  calendar: string,
): MeetingView {
  const voice = voiceOf(labels);
  const { session } = project;
  const meeting = saidMeeting(project, site);
  const when = session === undefined ? [] : [fact('session', whenText(session, hoursOf(site), voice), voice)];
  return {
    session,
    calendar: session === undefined ? undefined : calendar,
    facts: [...when, ...meetingFacts(meeting, voice)],
    terms: meeting.terms,
    links: meeting.links,
  };
}

/** Place, host and where questions go. */
export function meetingFacts({ place, host, contact }: SaidMeeting, voice: Voice): readonly Fact[] {
  return [
    ...(place === undefined ? [] : [fact('meeting-place', place, voice)]),
    ...(host === undefined ? [] : [fact('meeting-host', host, voice)]),
    ...(contact === undefined ? [] : [fact('meeting-contact', contactElement(contact), voice)]),
  ];
}

function fact(term: string, value: string | SafeHtml, { say }: Voice): Fact {
  return { term: say(term), value: html`${value}` };
}

/** Enough to tell a mail address from other words; it is the mail program that judges it. */
const MAIL = /^[^\s@<>"]+@[^\s@<>"]+\.[^\s@<>"]+$/u;

/** The mail address in what `contact:` says, if it is one. */
export function mailOf(contact: string | undefined): string | undefined {
  return contact !== undefined && MAIL.test(contact) ? `mailto:${contact}` : undefined;
}

function contactElement(contact: string): SafeHtml {
  const href = mailOf(contact) ?? (/^https?:\/\/\S+$/iu.test(contact) ? contact : undefined);
  return href === undefined ? html`${contact}` : html`<a href="${href}">${contact}</a>`;
}
