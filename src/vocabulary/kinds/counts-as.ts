import { ledMany } from '../kind.js';
import { countsAsSays, topicWords } from '../topics.js';
import { choice, listOf } from '../values.js';

/** Shared by every kind of line that can count as something. */
export const countsAs = ledMany('counts as', listOf(choice('a trade topic', topicWords)), countsAsSays);
