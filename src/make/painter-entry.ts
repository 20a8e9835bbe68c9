import { paintFaultOf } from './paint-fault.ts';
import type { PaintOrder, PaintReport } from './painter-process.ts';
import { painting } from './painting.ts';

// It has nobody to paint for any more.
process.once('disconnect', () => process.exit());
// A terminal sends Ctrl-C to this process, too; whoever it paints for ends it.
process.on('SIGINT', () => {});

process.on('message', async (order: PaintOrder) => process.send?.(await answer(order)));

async function answer({ number, name, given }: PaintOrder): Promise<PaintReport> {
  try {
    const paint = painting[name] as (...given: readonly unknown[]) => Promise<unknown>;
    return { number, kind: 'done', painted: await paint(...given) };
  } catch (error) {
    return { number, kind: 'failed', fault: paintFaultOf(error) };
  }
}
