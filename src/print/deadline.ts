/**
 * The result of `work`, or the error that `late` makes when it takes longer.
 * @param milliseconds How long it may take.
 */
export async function withDeadline<T>(work: Promise<T>, milliseconds: number, late: () => Error): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const deadline = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(late()), milliseconds);
  });
  try {
    return await Promise.race([work, deadline]);
  } finally {
    clearTimeout(timer);
  }
}
