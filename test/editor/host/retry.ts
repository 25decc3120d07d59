// The editor answers in its own time; what a test waits for is asked again until it is there or the time is over.
import { setTimeout as delay } from 'node:timers/promises';

export const patience = 15_000;

/** Repeats `attempt` until it gives a value. The error says what was waited for. */
export async function retry<T>(what: string, attempt: () => Promise<T | undefined>, timeout = patience): Promise<T> {
  let last: unknown;
  for (const deadline = Date.now() + timeout; Date.now() < deadline; await delay(100)) {
    try {
      const value = await attempt();
      if (value !== undefined) return value;
    } catch (error) {
      last = error; // a frame that is being replaced, a list that is being drawn: the next attempt may succeed
    }
  }
  throw new Error(`Waited ${timeout / 1000} s in vain: ${what}`, { cause: last });
}
