// One named, timed step of the self-test.

export async function step<T>(name: string, action: () => Promise<T>): Promise<T> {
  const started = Date.now();
  const result = await action();
  console.log(`ok  ${name} (${((Date.now() - started) / 1000).toFixed(1)} s)`);
  return result;
}
