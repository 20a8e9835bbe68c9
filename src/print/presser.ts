import { parentPort, type TransferListItem, workerData } from 'node:worker_threads';
import { faultData } from './fault.ts';
import type { Guard } from './guard.ts';
import type { PressOptions, PressOrder, PressReport } from './press-thread.ts';
import { openPrinter } from './printer.ts';

function tell(report: PressReport, moved: readonly TransferListItem[] = []): void {
  parentPort?.postMessage(report, moved);
}

/** This thread is not told when the program ends. */
const guard: Guard = (guarded) => {
  tell({ kind: 'guard', guarded });
  return () => tell({ kind: 'forget', guarded });
};

const printer = openPrinter({ ...(workerData as PressOptions), guard });

parentPort?.on('message', (order: PressOrder) => {
  if (order.kind === 'warm-up') return printer.warmUp();
  if (order.kind === 'rest') return printer.rest();
  if (order.kind === 'close') return end();
  const { number, html, options } = order;
  printer.pdf(html, options).then(
    (pdf) => {
      const bytes = new Uint8Array(pdf);
      tell({ kind: 'done', number, bytes }, [bytes.buffer]);
    },
    (error: unknown) => tell({ kind: 'failed', number, fault: faultData(error) }),
  );
});

/** Ends this thread, but not before the browser. */
async function end(): Promise<void> {
  await printer.close().finally(() => process.exit());
}
