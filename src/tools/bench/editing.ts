import { createLanguageService, type LanguageService } from '../../service/index.js';
import { largeEstimate } from './large-estimate.js';
import { struckTexts } from './struck.js';

const URI = '/bench/large.yard';

/** A large estimate in an editor: opened as a whole, and typed in. */
export class Editing {
  readonly text: string;
  /** Behind the word `uses` of a job. */
  private readonly use: number;
  /** The text with one digit of a job's hours typed anew. */
  readonly struck: (round: number) => string;
  private typed: LanguageService | undefined;
  private current: string;

  constructor(lines: number) {
    this.text = largeEstimate(lines);
    this.current = this.text;
    const job = this.text.indexOf('takes', this.text.indexOf('labour job-', this.text.length / 3));
    this.struck = struckTexts(this.text, this.text.indexOf(' h', job) - 1);
    this.use = this.text.indexOf('uses ', job) + 'uses '.length;
  }

  /** The text with a remark at its end that no other round has. */
  whole(round: number): number {
    const text = this.remarked(round);
    const service = createLanguageService({ read: () => ({ text }), resolvePath: () => undefined });
    service.allDiagnostics(URI);
    return service.weighing(URI).comparison.options.length;
  }

  /** One digit of a job's hours typed anew, in a service that knows the file. */
  keystroke(round: number): number {
    this.typed ??= this.opened();
    this.current = this.struck(round);
    this.typed.allDiagnostics(URI);
    return this.typed.weighing(URI).comparison.options.length;
  }

  /** What is offered behind a name that somebody has begun to write, in a text that changed just before. */
  completion(round: number): number {
    this.typed ??= this.opened();
    const begun = `${this.text.slice(0, this.use)}part-${round % 10}`;
    this.current = `${begun}${this.text.slice(this.use)}`;
    return this.typed.completions(URI, begun.length).length;
  }

  weighing() {
    return this.opened().weighing(URI);
  }

  remarked(round: number): string {
    return `${this.text}# ${round}\n`;
  }

  private opened(): LanguageService {
    const service = createLanguageService({ read: () => ({ text: this.current }), resolvePath: () => undefined });
    service.allDiagnostics(URI);
    return service;
  }
}
