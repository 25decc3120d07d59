import { ledMany } from '../kind.js';
import { names } from '../values.js';

/** Shared by what can wait for other work: jobs and outside work. */
export const after = ledMany('after', names('labour', 'sublet', 'part'), 'Work, outside work and parts that it waits for, beyond the parts and outside work it uses. What an option does not have is not waited for.');
