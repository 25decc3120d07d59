/** The shop's own book of times: what jobs really took. Sampled, in plain numbers; nothing here feeds a quoted total. */
export { accessJob, labourJob, type Case, type Job } from './case.js';
export { bookOf, FEW, historyOf, ratioOf, type Book, type BookEntry, type JobHistory } from './book.js';
export { mayBeClosed, readClosed, resolvedCases } from './read-closed.js';
