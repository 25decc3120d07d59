// Servers run in process groups of their own, so Ctrl+C doesn't reach them: whoever starts one registers here how it
// is ended when this process goes without having stopped it.
const pending = new Set<() => void>();
let listening = false;

function runAll(): void {
  for (const action of pending) {
    try {
      action();
    } catch (error) {
      console.error(error); // the process is ending: the other actions still have to run
    }
  }
  pending.clear();
}

function listen(): void {
  listening = true;
  process.once('exit', runAll);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => {
      runAll();
      process.kill(process.pid, signal); // the handler is gone now, so this ends the process as usual
    });
  }
}

/** Runs a synchronous action when this process ends; the returned function withdraws it. */
export function onProcessEnd(action: () => void): () => void {
  if (!listening) listen();
  pending.add(action);
  return () => pending.delete(action);
}
