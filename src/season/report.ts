import { benchRows, COLUMNS } from '../kit/report/csv.ts';
import type { Currency } from '../kit/report/figures.ts';
import { benchValue, jsonText } from '../kit/report/json.ts';
import { tableCsv } from '../kit/report/table.ts';
import type { PiecesKept, Preparation } from './preparation.ts';
import type { Season } from './season.ts';

/** A season for another program: `{sessions, spares, stocks, shopping, cost, preparations}`, else as a kit is. */
export function seasonJson(season: Season, currency: Currency): string {
  return jsonText({
    sessions: season.sessions.map(({ project, session, attendees, variant }) => ({
      project: project.slug,
      date: session.date,
      attendees,
      ...(variant === undefined ? {} : { variant }),
    })),
    spares: season.spares,
    ...benchValue(season, currency),
    preparations: season.preparations.map(preparationValue),
  });
}

/** A season for a spreadsheet: a kit's table, and before it a row for all that is to be done on a day. */
export function seasonCsv(season: Season, currency: Currency): string {
  const days = season.preparations.map((preparation) => ({
    list: 'day',
    date: preparation.date,
    item: preparation.kind === 'buy' ? 'buy' : `${preparation.kind} ${preparation.session.project.slug}`,
    count: preparation.kind === 'meet' ? preparation.attendees : undefined,
  }));
  return tableCsv<'date' | (typeof COLUMNS)[number]>(
    [...COLUMNS, 'date'],
    [...days, ...benchRows(season, currency)],
  );
}

function preparationValue(preparation: Preparation): object {
  const { date, kind } = preparation;
  if (preparation.kind === 'buy') return { date, kind, items: preparation.lines.map(({ item }) => item) };
  const own = { date, kind, project: preparation.session.project.slug };
  if (preparation.kind === 'meet') return { ...own, attendees: preparation.attendees };
  if (preparation.kind === 'ahead') return { ...own, steps: preparation.steps };
  return {
    ...own,
    sheets: preparation.sheets.map(({ stock, layout, count }) => ({
      stock: stock.id.value,
      layout: layout + 1,
      count,
    })),
    taken: preparation.taken.map(keptValue),
    kept: preparation.kept.map(keptValue),
  };
}

function keptValue({ piece, count }: PiecesKept): object {
  return { piece: piece.name, count };
}
