import { fork, type ChildProcess } from 'node:child_process';
import type { Answer, Asked } from './messages.js';

/** The longest silence of a worker before it is taken to hang, in milliseconds. */
const SILENCE = 60_000;

/** A process that runs tests. It may hang or run out of memory with a mutant on; then the next question starts another. */
export class Worker {
  #child: ChildProcess | undefined;

  /** `script` is what a worker runs, with these words behind it. */
  constructor(readonly script: string, readonly words: readonly string[]) {}

  /** What a worker says to it; nothing where it died or fell silent. */
  ask(asked: Asked, silence = SILENCE): Promise<Answer | undefined> {
    const child = (this.#child ??= fork(this.script, [...this.words], { execArgv: ['--max-old-space-size=1500'], stdio: ['ignore', 'ignore', 'ignore', 'ipc'] }));
    return new Promise((resolve) => {
      const end = (answer: Answer | undefined) => {
        clearTimeout(timer);
        child.off('message', heard);
        child.off('exit', lost);
        resolve(answer);
      };
      const lost = () => {
        this.#child = undefined;
        child.kill('SIGKILL');
        end(undefined);
      };
      const heard = (answer: Answer) => {
        if (answer.say !== 'busy') return end(answer);
        clearTimeout(timer);
        timer = setTimeout(lost, silence);
      };
      let timer = setTimeout(lost, silence);
      child.on('message', heard);
      child.on('exit', lost);
      child.send(asked);
    });
  }

  stop(): void {
    this.#child?.kill('SIGKILL');
    this.#child = undefined;
  }
}
