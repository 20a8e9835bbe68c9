/**
 * What the processes that a program starts take, where the system tells (`/proc` of Linux; elsewhere nothing is known):
 * those of Node count as ours, all others as the browser's.
 */
import { readdirSync, readFileSync, readlinkSync, realpathSync } from 'node:fs';

/** Milliseconds from one look to the next. Memory takes longer to ask for, and is asked for every so many looks. */
const PACE = 100;
const LOOKS = 5;
/** Ticks of the processor in a second, as `/proc` counts them. */
const TICKS = 100;

/** What `ask` says, or nothing: a process may be gone, and some systems say nothing of any. */
function ifThere(ask, otherwise) {
  try {
    return ask();
  } catch {
    return otherwise;
  }
}

const running = () => ifThere(() => readdirSync('/proc'), []).filter((name) => /^\d+$/u.test(name));

/** What stands behind a process's name: its parent, and its ticks in user and in system mode. */
function statOf(pid) {
  const stat = ifThere(() => readFileSync(`/proc/${pid}/stat`, 'utf8'), '');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return { parent: Number(fields[1]), seconds: (Number(fields[11]) + Number(fields[12])) / TICKS };
}

/** Memory that several share is counted once: each has its part of it. */
function megabytesOf(pid) {
  const rollup = ifThere(() => readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8'), '');
  return Number(/^Pss:\s+(\d+)/mu.exec(rollup)?.[1] ?? 0) / 1024;
}

const NODE = realpathSync(process.execPath);
const kindOf = (pid) => {
  const program = ifThere(() => readlinkSync(`/proc/${pid}/exe`), undefined);
  return program && (program === NODE ? 'ours' : 'browser');
};

/**
 * Watches what a running program starts until `stop`, which gives seconds of the processor, and megabytes at most, of
 * ours and of the browser's.
 */
export function watchProcesses(pid) {
  const strangers = new Set(running());
  const known = new Map();
  const megabytes = { ours: 0, browser: 0 };
  let looks = 0;
  const look = () => {
    const now = { ours: 0, browser: 0 };
    const asksMemory = looks % LOOKS === 0;
    looks += 1;
    for (const name of running()) {
      const each = Number(name);
      if (strangers.has(name) || each === pid) continue;
      const { parent, seconds } = statOf(each);
      if (!known.has(each) && parent !== pid && !known.has(parent)) {
        strangers.add(name);
        continue;
      }
      // Until its own program runs, a process is a copy of the one that started it; one that is ending has none any more.
      const kind = kindOf(each) ?? known.get(each)?.kind ?? 'browser';
      // One that has ended takes nothing any more.
      known.set(each, { kind, seconds: seconds || (known.get(each)?.seconds ?? 0) });
      if (asksMemory) now[kind] += megabytesOf(each);
    }
    for (const kind of ['ours', 'browser']) megabytes[kind] = Math.max(megabytes[kind], now[kind]);
  };
  const timer = setInterval(look, PACE);
  return {
    stop: () => {
      clearInterval(timer);
      const cpu = { ours: 0, browser: 0 };
      for (const { kind, seconds } of known.values()) cpu[kind] += seconds;
      return { cpu, megabytes };
    },
  };
}
