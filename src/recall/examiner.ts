import { parentPort, workerData } from 'node:worker_threads';
import { openExamination } from '../examine/examine.ts';
import { readersIn } from '../project/load.ts';
import { foundIn } from './found.ts';
import { type ExaminerReport, type ExaminerTask, next } from './together.ts';

const { texts: data, folders, taken } = workerData as ExaminerTask;
const texts = { ...data, ...readersIn(data.root) };
const examination = openExamination(texts);
for (let folder = next(taken, folders); folder !== undefined; folder = next(taken, folders)) {
  const found = foundIn(texts, examination, examination.study(folder));
  parentPort?.postMessage({ folder, found } satisfies ExaminerReport);
}
