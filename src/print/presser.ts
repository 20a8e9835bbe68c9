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

async function answer(order: Exclude<PressOrder, { kind: 'warm-up' }>): Promise<Uint8Array<ArrayBuffer>> {
  if (order.kind === 'pdf') return new Uint8Array(await printer.pdf(order.html, order.options));
  await printer.close();
  return new Uint8Array();
}

parentPort?.on('message', (order: PressOrder) => {
  if (order.kind === 'warm-up') return printer.warmUp();
  const { number } = order;
  answer(order).then(
    (bytes) => tell({ kind: 'done', number, bytes }, [bytes.buffer]),
    (error: unknown) => tell({ kind: 'failed', number, fault: faultData(error) }),
  );
});
