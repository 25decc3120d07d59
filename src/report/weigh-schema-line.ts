import * as z from 'zod';
import { at, figure } from './schema-values.js';

/** A line of an option or of a stage, in what `steelyard weigh --json` prints. */
export const line = () => z.strictObject({
  id: z.string().describe('For --explain.'),
  kind: z.enum(['labour', 'part', 'sublet', 'fee', 'core']),
  share: z.enum(['work', 'access']),
  title: z.string(),
  name: z.string().optional(),
  amount: figure(),
  hours: figure().optional(),
  quantity: figure().optional(),
  condition: z.enum(['new', 'aftermarket', 'rebuilt', 'used', 'customer-supplied']).optional(),
  with: z.array(z.string()).describe('The ways in that its hours take.'),
  at: at(),
});
