import { bookOf, FEW, historyOf, labourJob, type Book } from '../../weigh/index.js';

const job = labourJob({ name: 'front-seal', title: 'Front seal: replace, as in the book' }, []);

let book: Book | undefined;

/** The book behind the example of its check: one job with as many cases as are needed. Made when the example is first looked at. */
export function exampleBook(): Book {
  return (book ??= bookOf(historyOf(Array.from({ length: FEW }, (_, i) => ({ job, hours: 2.6 + i * 0.3, estimated: 3, on: undefined })))));
}
