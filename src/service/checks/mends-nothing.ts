import { isLeftAsItIs, type Option } from '../../estimate/index.js';

/** Whether an option only stops: it leaves the vehicle as it is, and promises nothing of it. */
export function mendsNothing(option: Option): boolean {
  const { chances, warranty, lasts, written } = option;
  return written && warranty === undefined && lasts === undefined && chances.length === 0 && isLeftAsItIs(option);
}
