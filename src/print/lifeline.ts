/** The signals that ask a command to end. */
const SIGNALS: readonly NodeJS.Signals[] = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/** What must end with us. One list for the whole process, as the process has one set of signals. */
const ends = new Set<() => void>();

function endAll(): void {
  for (const end of ends) end();
  ends.clear();
  stopListening();
}

function onSignal(signal: NodeJS.Signals): void {
  endAll();
  // Having listened, we kept the signal from ending us. Where nobody else listens, it must still do so.
  if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
}

function listen(): void {
  process.on('exit', endAll);
  for (const signal of SIGNALS) process.on(signal, onSignal);
}

function stopListening(): void {
  process.off('exit', endAll);
  for (const signal of SIGNALS) process.off(signal, onSignal);
}

/**
 * Has `end` called before this process ends, by a signal or by itself. Other listeners of the signals keep their say.
 * @param end Must do all it does at once: a process that ends waits for no promise.
 * @returns A function that takes it back.
 */
export function endWithUs(end: () => void): () => void {
  if (ends.size === 0) listen();
  ends.add(end);
  return () => {
    ends.delete(end);
    if (ends.size === 0) stopListening();
  };
}
