import { positionAt } from '../../cli/positions.js';
import type { PlaceOf } from '../../report/index.js';
import type { LanguageService } from '../../service/index.js';

/** Where a span stands, as the reports name it. */
export function placesIn(service: LanguageService): PlaceOf {
  return (span) => {
    const place = service.place(span);
    const tree = place === undefined ? undefined : service.tree(place.uri);
    return place === undefined || tree === undefined ? undefined : { file: place.uri, ...positionAt(tree.text, place.range.start) };
  };
}
