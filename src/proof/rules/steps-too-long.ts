import type { Rule } from '../rule.ts';

type Facts = {
  /** What the whole is said to take, and what the steps add up to, in minutes. */
  readonly whole: number;
  readonly steps: number;
};

export const stepsTooLong: Rule<Facts> = {
  severity: 'warning',
  summary: 'The steps take no longer than the whole project.',
  why: 'The list of projects promises an hour, the steps add up to an hour and a half, and the room is booked until eight. Time spent ahead of the session and drying time are not counted, and up to a tenth more is allowed as rounding.',
  fails: {
    head: 'minutes: 30',
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    body: '## Cut :step{minutes=20 ahead}\nCut :piece[card].\n\n## Score :step{minutes=15}\nScore it.\n\n## Decorate :step{minutes=25 dry=10}\nStamp it.\n',
    blames: '30',
  },
  passes: { with: 'minutes: 40', insteadOf: 'minutes: 30' },
  ownEditionOnly: true,
  *check({ project: { minutes, steps } }) {
    if (!minutes) return;
    const sum = steps.reduce((total, step) => total + (step.ahead ? 0 : (step.minutes?.value ?? 0)), 0);
    if (sum * 10 > minutes.value * 11) yield { at: minutes.at, facts: { whole: minutes.value, steps: sum } };
  },
  say: ({ whole, steps }) => ({
    message: `the project takes ${whole} minutes, but its steps add up to ${steps}`,
    remedy: `write minutes: ${steps}, or shorten the steps; what is done before the session is marked "ahead"`,
  }),
};
