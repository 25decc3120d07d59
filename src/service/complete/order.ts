import { kinds, type Kind } from '../../vocabulary/index.js';
import type { Offer } from './offer.js';

/**
 * What a writer fills in first on a line and below it, and in which order; everything else follows in the order of the
 * vocabulary. Common practice of writing a quote: what it takes and why, what it uses, and rarer things behind that.
 */
export const FIRST: ReadonlyMap<Kind, readonly string[]> = new Map<Kind, readonly string[]>([
  [kinds.estimate, ['written', 'start', 'valid']],
  [kinds.vehicle, ['odometer', 'worth', 'vin', 'built']],
  [kinds.finding, ['seen by', 'compression', 'leakage']],
  [kinds.access, ['remove', 'refit', 'includes', 'caution', 'uses', 'needs']],
  [kinds.labour, ['takes', 'because', 'uses', 'needs', 'class', 'caution', 'counts as', 'chance']],
  [kinds.chance, ['do', 'fit', 'send', 'part', 'labour', 'sublet']],
  [kinds.stage, ['do', 'opens', 'put back', 'destroys']],
  [kinds.option, ['do', 'part', 'labour', 'warranty', 'because', 'fit', 'send', 'charge', 'sublet', 'worth', 'lasts', 'resale']],
  [kinds.inspect, ['finds', 'class']],
  [kinds.quoted, ['for', 'on']],
  [kinds.authorised, ['for', 'on', 'by']],
  [kinds.closed, ['for', 'on', 'billed', 'clocked', 'paid', 'credited']],
]);

/** Offers for a line of a kind, or below one, the first first and those that have nothing to name yet last. */
export function inOrder(kind: Kind, offers: readonly Offer[]): Offer[] {
  const first = FIRST.get(kind) ?? [];
  const place = ({ label, waits }: Offer): number => {
    const at = first.indexOf(label.replace(/ …$/, ''));
    return waits === true ? first.length + 1 : at < 0 ? first.length : at;
  };
  return offers.map((offer) => ({ offer, at: place(offer) })).sort((a, b) => a.at - b.at).map(({ offer }) => offer);
}
