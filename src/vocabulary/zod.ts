import type * as zod from 'zod';

/** The library of schemas. Whoever wants a schema brings it along, so that an editor, which wants none, carries and loads none. */
export type Zod = typeof zod;
export type { ZodType } from 'zod';
