import type { Labour, Part, Sublet } from './work-types.js';

/** The jobs with all that they need, each once, in the order in which they are first asked for. */
export function withNeeded(jobs: readonly Labour[]): Labour[] {
  const all = new Set<Labour>();
  const visit = (job: Labour) => {
    if (all.has(job)) return;
    all.add(job);
    job.needs.forEach(visit);
  };
  jobs.forEach(visit);
  return [...all];
}

/** The parts and outside work that jobs bring along, each once. */
export function bring(jobs: readonly Labour[]): { readonly parts: readonly Part[]; readonly sublets: readonly Sublet[] } {
  const parts = new Set<Part>();
  const sublets = new Set<Sublet>();
  for (const job of jobs) {
    for (const part of job.parts) parts.add(part);
    for (const sublet of job.sublets) sublets.add(sublet);
  }
  return { parts: [...parts], sublets: [...sublets] };
}
