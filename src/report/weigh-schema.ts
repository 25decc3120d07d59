import * as z from 'zod';
import { coverage, flip, inspection } from './weigh-schema-decision.js';
import { authorised, stage, state } from './weigh-schema-job.js';
import { option } from './weigh-schema-option.js';

/**
 * The schema of what `steelyard weigh --json` prints; the one in schemas/ is emitted from this. Built when it is asked
 * for: an editor never does.
 */
export function weighReport() {
  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('weigh'),
    title: z.string().nullable(),
    vehicle: z.string().nullable(),
    currency: z.strictObject({ code: z.string().nullable(), digits: z.int() }),
    verdict: z.string(),
    pick: z.string().nullable().describe('The name of the option that is cheapest in all.'),
    state: state().nullable().describe('Null where no day was given to tell it for.'),
    authorised: z.array(authorised()).describe('For each option and stage the authorisation that holds, beside what it comes to today.'),
    stages: z.array(stage()).optional().describe('Only where there are any.'),
    options: z.array(option()),
    flips: z.array(flip()).describe('Where a written figure changes which option is the cheapest, all else held; the nearest first.'),
    flipsBeyond: z.array(z.enum(['figures', 'plans', 'sets'])).describe('Limits which were reached: more figures, or more plans of an option, than that search tries; or more chances that may move the day than averages plan together, so that cores count as quoted.'),
    inspections: z.array(inspection()).describe('What could be looked at before deciding.'),
    coverages: z.array(coverage()).describe('Recalls and the like, with whether they hold for the vehicle.'),
    cautions: z.array(z.string()),
  }).describe('All options of an estimate, side by side.');
}

export type WeighReport = z.infer<ReturnType<typeof weighReport>>;
