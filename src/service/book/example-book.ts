import { bookOf, FEW, historyOf, labourJob, type Book } from '../../weigh/index.js';

const job = labourJob({ name: 'front-seal', title: 'Front seal: replace, as in the book' }, []);

/** The book behind the example of its check: one job with as many cases as are needed. */
export const exampleBook: Book = bookOf(historyOf(Array.from({ length: FEW }, (_, i) => ({ job, hours: 2.6 + i * 0.3, estimated: 3, on: undefined }))));
